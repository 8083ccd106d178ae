//! What each event before the feed leads to.
//!
//! Answers are put into the journal together, when the hand has rested for a moment or the screen is
//! left: a number that is stepped to does not fill the journal.

use crate::app::around::Around;
use crate::app::asked;
use crate::app::open_visit::OpenVisit;
use crate::growth::Questioned;
use crate::record::{
    BabyDanger, BreastBefore, BreastState, Coded, Grams, Hold, Jaundice, LastDay, Millilitres,
    MotherDanger, Nappy, NippleBefore, ScaleStep, Side, StoolColour, StoredWord, TenthsCelsius,
    WallTime, Weighing, WeighingMoment, What,
};

use super::event::NappyKey;
use super::{Count, Effect, Event, Model, Question, SCALE_STEPS_G, WeightTrouble};

/// How long the hand rests before answers go into the journal, in milliseconds.
const SETTLE_MS: u64 = 1_500;
/// A weight further than this from the birth weight is asked about once more, in per cent. Common
/// practice: a slip of a digit or a unit is larger, a baby's change in the first weeks smaller.
const FAR_PERCENT: u32 = 30;
/// Where the first touch on the temperature starts, in tenths of a degree (common practice).
const TEMPERATURE_START: i32 = 368;

/// Takes an event; changes the model; says what is to be done.
pub fn update(model: &mut Model, event: Event, around: &Around<'_>) -> Vec<Effect> {
    let Some(open) = around.open else {
        return vec![Effect::Leave];
    };
    let day = open.last_day().overlaid(&model.draft);
    match event {
        Event::Came => {
            *model = Model {
                hold: model.hold,
                step_g: model.step_g,
                ..Model::default()
            };
            vec![]
        }
        Event::Counted(count, by) => {
            counted(&mut model.draft, &day, count, by);
            model.changed_ms = Some(around.now.boot_ms);
            vec![]
        }
        Event::Chose(question, index) => {
            chose(&mut model.draft, &day, question, index);
            model.changed_ms = Some(around.now.boot_ms);
            vec![]
        }
        Event::BreastTold(side, index) => breast(side, BreastState::ALL.get(index).copied(), None),
        Event::NippleTold(side, index) => breast(side, None, NippleBefore::ALL.get(index).copied()),
        Event::Clothed(clothed) => {
            model.clothed = clothed;
            vec![]
        }
        Event::WeightTaken(text) => weight_taken(model, &text, open.pair.birth_weight),
        Event::SideChosen(side) => {
            model.side = Some(side);
            vec![]
        }
        Event::HoldChosen(index) => {
            model.hold = Hold::offered(open.pair.babies).nth(index);
            vec![]
        }
        Event::StepChosen(index) => {
            let chosen = SCALE_STEPS_G.get(index).copied();
            model.step_g = if model.step_g == chosen { None } else { chosen };
            vec![]
        }
        Event::MomentChosen(index) => {
            model.moment = WeighingMoment::ALL.get(index).copied();
            vec![]
        }
        Event::NappyTouched(key) => {
            model.nappy = Some(nappy_touched(model.nappy, key));
            vec![]
        }
        Event::NappyAdded => model
            .nappy
            .take()
            .filter(|nappy| nappy.wet || nappy.stool.is_some())
            .map(|nappy| Effect::Note(What::Nappy(nappy)))
            .into_iter()
            .collect(),
        Event::SaidRight(index) => open_questions(open, around.now.wall)
            .get(index)
            .map(|it| {
                let (rule, by) = (asked::right(it.at), around.who(open));
                Effect::Note(What::FindingAcknowledged { rule, by })
            })
            .into_iter()
            .collect(),
        Event::CorrectWanted(index) => {
            let questions = open_questions(open, around.now.wall);
            let Some(it) = questions.get(index) else {
                return vec![];
            };
            model.weight = it.grams.to_string();
            model.trouble = None;
            weighed_at(open, it.at)
                .map(|entry| Effect::Note(What::Struck { entry }))
                .into_iter()
                .collect()
        }
        Event::Started if open.folded.running().is_some() => vec![],
        Event::Started => match (model.side, model.hold) {
            (Some(side), Some(hold)) => {
                let mut effects = settled(model);
                effects.push(Effect::Note(What::FeedStarted { side, hold }));
                effects.push(Effect::Bedside);
                effects
            }
            _ => vec![],
        },
        Event::Ticked => match model.changed_ms {
            Some(changed) if changed + SETTLE_MS <= around.now.boot_ms => settled(model),
            _ => vec![],
        },
        Event::BackWanted => {
            let mut effects = settled(model);
            effects.push(if open.folded.running().is_some() {
                Effect::Bedside
            } else if open.folded.feeds.is_empty() {
                Effect::Leave
            } else {
                Effect::LookBack
            });
            effects
        }
    }
}

/// The questions about this visit's weights that nobody has answered.
pub(super) fn open_questions(open: &OpenVisit, now: WallTime) -> Vec<Questioned> {
    let mut asked = asked::unanswered(&open.growth(now).questions, &open.folded.acknowledged);
    asked.retain(|it| open.folded.weighings.iter().any(|(wall, _)| *wall == it.at));
    asked
}

/// The number of the standing entry of a weight taken at a time.
fn weighed_at(open: &OpenVisit, at: WallTime) -> Option<u32> {
    let journal = &open.visit.journal;
    let entries = journal.entries().iter().zip(journal.standing());
    entries
        .rev()
        .find(|(it, stands)| *stands && it.wall == at && matches!(it.what, What::Weighed(_)))
        .map(|(it, _)| it.seq)
}

/// A key of the nappy put in, or taken out where it was in. Heavy is wet as well.
fn nappy_touched(nappy: Option<Nappy>, key: NappyKey) -> Nappy {
    let mut nappy = nappy.unwrap_or(Nappy {
        wet: false,
        heavy: false,
        stool: None,
        urates: false,
    });
    match key {
        NappyKey::Wet => {
            nappy.wet = !nappy.wet;
            nappy.heavy = nappy.heavy && nappy.wet;
        }
        NappyKey::Heavy => {
            nappy.heavy = !nappy.heavy;
            nappy.wet = nappy.wet || nappy.heavy;
        }
        NappyKey::Urates => nappy.urates = !nappy.urates,
        NappyKey::Stool(index) => {
            let colour = StoolColour::ALL.get(index).copied();
            nappy.stool = if nappy.stool == colour { None } else { colour };
        }
    }
    nappy
}

fn settled(model: &mut Model) -> Vec<Effect> {
    model.changed_ms = None;
    let draft = std::mem::take(&mut model.draft);
    if draft == LastDay::default() {
        return vec![];
    }
    draft
        .checked()
        .map(|day| Effect::Note(What::LastDay(day)))
        .into_iter()
        .collect()
}

fn counted(draft: &mut LastDay, day: &LastDay, count: Count, by: i32) {
    let step = |now: Option<u8>, most: u8| {
        let next = i32::from(now.unwrap_or(0)) + if now.is_none() { 0 } else { by };
        u8::try_from(next.clamp(0, i32::from(most))).ok()
    };
    let millilitres = |now: Option<Millilitres>| {
        let next = now.map_or(0, |ml| i64::from(ml.value()) + i64::from(by) * 5);
        Millilitres::new(next.clamp(0, 500)).ok()
    };
    match count {
        Count::Feeds => draft.feeds = step(day.feeds, 40),
        Count::Wet => draft.wet = step(day.wet, 40),
        Count::Dirty => draft.dirty = step(day.dirty, 40),
        Count::HoursSinceWet => draft.hours_since_wet = step(day.hours_since_wet, 96),
        Count::Temperature => {
            let next = day
                .temperature
                .map_or(TEMPERATURE_START, |now| i32::from(now.value()) + by);
            draft.temperature = TenthsCelsius::new(next.into()).ok().or(day.temperature);
        }
        Count::Expressed => draft.expressed_ml = millilitres(day.expressed_ml),
        Count::Supplement => draft.supplement_ml = millilitres(day.supplement_ml),
    }
}

fn chose(draft: &mut LastDay, day: &LastDay, question: Question, index: usize) {
    match question {
        Question::Stool => draft.stool = StoolColour::ALL.get(index).copied(),
        Question::Urates => draft.urates = Some(index == 0),
        Question::Sleepy => draft.sleepy = Some(index == 0),
        Question::Jaundice => draft.jaundice = Jaundice::ALL.get(index).copied(),
        Question::BabyDanger => {
            draft.baby_danger = Some(danger(
                day.baby_danger.as_deref(),
                BabyDanger::ALL.get(index).copied(),
            ));
        }
        Question::MotherDanger => {
            draft.mother_danger = Some(danger(
                day.mother_danger.as_deref(),
                MotherDanger::ALL.get(index).copied(),
            ));
        }
    }
}

/// A danger sign put in or taken out; past the last one stands "none of these".
fn danger<T: StoredWord + PartialEq>(
    told: Option<&[Coded<T>]>,
    touched: Option<T>,
) -> Vec<Coded<T>> {
    let Some(touched) = touched.map(Coded::Known) else {
        return vec![];
    };
    let mut told = told.unwrap_or_default().to_vec();
    if let Some(place) = told.iter().position(|it| *it == touched) {
        told.remove(place);
    } else {
        told.push(touched);
    }
    told
}

fn breast(side: Side, breast: Option<BreastState>, nipple: Option<NippleBefore>) -> Vec<Effect> {
    vec![Effect::Note(What::BreastBefore(BreastBefore {
        side,
        breast,
        nipple,
    }))]
}

fn weight_taken(model: &mut Model, text: &str, birth_weight: Option<Grams>) -> Vec<Effect> {
    text.clone_into(&mut model.weight);
    let Some(grams) = text
        .trim()
        .parse()
        .ok()
        .and_then(|grams: i64| Grams::new(grams).ok())
    else {
        model.trouble = Some(WeightTrouble::NotGrams);
        return vec![];
    };
    let far = birth_weight.is_some_and(|birth| {
        let (birth, now) = (u64::from(birth.value()), u64::from(grams.value()));
        birth * u64::from(FAR_PERCENT) < birth.abs_diff(now) * 100
    });
    if far && model.trouble != Some(WeightTrouble::Far(grams.value())) {
        model.trouble = Some(WeightTrouble::Far(grams.value()));
        return vec![];
    }
    model.trouble = None;
    model.weight.clear();
    vec![Effect::Note(What::Weighed(Weighing {
        grams,
        step: model.step_g.and_then(|step| ScaleStep::new(step).ok()),
        clothed: model.clothed,
        moment: model.moment.unwrap_or(WeighingMoment::Routine),
    }))]
}
