//! What each event before the feed leads to.
//!
//! Answers are put into the journal together, when the hand has rested for a moment or the screen is
//! left: a number that is stepped to does not fill the journal.

use crate::app::around::Around;
use crate::app::open_visit::OpenVisit;
use crate::growth::{self, Questioned};
use crate::record::{
    Grams, Hold, LastDay, Nappy, ScaleStep, StoolColour, WallTime, Weighing, WeighingMoment, What,
};

use super::event::NappyKey;
use super::told::{self, Stepped};
use super::{Earlier, Effect, Event, Model, SCALE_STEPS_G, TimePart, WeightTrouble};

/// How long the hand rests before answers go into the journal, in milliseconds.
const SETTLE_MS: u64 = 1_500;
/// A weight further than this from the birth weight is asked about once more, in per cent. Common
/// practice: a slip of a digit or a unit is larger, a baby's change in the first weeks smaller.
const FAR_PERCENT: u32 = 30;
/// Milliseconds in an hour.
const HOUR_MS: i64 = 3_600_000;
/// The step of minutes of an earlier time.
const MINUTES_MS: i64 = 5 * 60_000;

/// Takes an event; changes the model; says what is to be done.
pub fn update(model: &mut Model, event: Event, around: &Around<'_>) -> Vec<Effect> {
    let Some(open) = around.open else {
        return vec![Effect::Leave];
    };
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
            let offered = model.offered.take() == Some(count);
            let mut day = wanted(model, open);
            match told::stepped(&mut day, count, by, offered) {
                Stepped::Offered => model.offered = Some(count),
                Stepped::Told => changed(model, day, around),
            }
            vec![]
        }
        Event::CountCleared(count) => {
            model.offered = None;
            let mut day = wanted(model, open);
            told::set(&mut day, count, None);
            changed(model, day, around);
            vec![]
        }
        Event::Chose(question, index) => {
            model.offered = None;
            let mut day = wanted(model, open);
            told::chose(&mut day, question, index);
            changed(model, day, around);
            vec![]
        }
        Event::BreastTold(side, index) => notes(told::breast(
            &open.visit.journal,
            told::breast_at(side, index),
        )),
        Event::NippleTold(side, index) => notes(told::breast(
            &open.visit.journal,
            told::nipple_at(side, index),
        )),
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
        Event::EarlierChosen(earlier) => {
            // A whole hour, so that the steps give times as they are written down.
            let now = around.now.wall;
            let local_ms = now.utc_ms() + i64::from(now.offset_min()) * 60_000;
            let hour = now.plus_ms(-local_ms.rem_euclid(HOUR_MS));
            let at = earlier_stepped(hour, TimePart::Hour, 0, open.pair.birth, now);
            model.earlier = earlier.then_some(Earlier { at, set: false });
            model.trouble = None;
            vec![]
        }
        Event::EarlierStepped(part, by) => {
            if let Some(earlier) = &mut model.earlier {
                let (birth, now) = (open.pair.birth, around.now.wall);
                earlier.at = earlier_stepped(earlier.at, part, by, birth, now);
                earlier.set = true;
            }
            model.trouble = None;
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
                let (rule, by) = (growth::right(it.at), around.who(open));
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
                let mut effects = settled(model, open);
                effects.push(Effect::Note(What::FeedStarted { side, hold }));
                effects.push(Effect::Bedside);
                effects
            }
            _ => vec![],
        },
        Event::FindingsWanted => {
            let mut effects = settled(model, open);
            effects.push(Effect::LookBack);
            effects
        }
        Event::Left => settled(model, open),
        Event::Ticked => match model.changed_ms {
            Some(changed) if changed + SETTLE_MS <= around.now.boot_ms => settled(model, open),
            _ => vec![],
        },
        Event::BackWanted => {
            let mut effects = settled(model, open);
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
    let mut asked = open.growth(now).questions;
    asked.retain(|it| open.folded.weighings.iter().any(|(wall, _)| *wall == it.at));
    asked
}

/// The number of the standing entry of a weight taken at a time.
fn weighed_at(open: &OpenVisit, at: WallTime) -> Option<u32> {
    let is_it = |what: &What, noted| matches!(what, What::Weighed(it) if it.taken_at(noted) == at);
    open.visit
        .journal
        .standing_entries()
        .rev()
        .find(|it| is_it(&it.what, it.wall))
        .map(|it| it.seq)
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

/// Takes the answers as they are to be; they go into the journal when the hand has rested.
fn changed(model: &mut Model, day: LastDay, around: &Around<'_>) {
    model.draft = Some(day);
    model.changed_ms = Some(around.now.boot_ms);
}

/// The answers as they are to be: as changed here, or as the journal has them.
pub(super) fn wanted(model: &Model, open: &OpenVisit) -> LastDay {
    model.draft.clone().unwrap_or_else(|| open.last_day())
}

fn settled(model: &mut Model, open: &OpenVisit) -> Vec<Effect> {
    model.changed_ms = None;
    notes(
        model
            .draft
            .take()
            .map(|wanted| told::entries(&open.visit.journal, wanted))
            .unwrap_or_default(),
    )
}

fn notes(entries: Vec<What>) -> Vec<Effect> {
    entries.into_iter().map(Effect::Note).collect()
}

/// A step of the time at which a weight was taken, held between birth and now.
fn earlier_stepped(
    at: WallTime,
    part: TimePart,
    by: i32,
    birth: WallTime,
    now: WallTime,
) -> WallTime {
    let by_ms = i64::from(by)
        * match part {
            TimePart::Day => 24 * HOUR_MS,
            TimePart::Hour => HOUR_MS,
            TimePart::Minute => MINUTES_MS,
        };
    let next = at.plus_ms(by_ms);
    if next.since_ms(birth) < 0 {
        at.plus_ms(birth.since_ms(at))
    } else if now.since_ms(next) < 0 {
        at.plus_ms(now.since_ms(at))
    } else {
        next
    }
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
    if model.earlier.is_some_and(|it| !it.set) {
        model.trouble = Some(WeightTrouble::NoTime);
        return vec![];
    }
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
    // The next one is taken now unless it is said anew.
    let taken = model.earlier.take().map(|it| it.at);
    let moment = model.moment.filter(|_| taken.is_none());
    vec![Effect::Note(What::Weighed(Weighing {
        grams,
        step: model.step_g.and_then(|step| ScaleStep::new(step).ok()),
        clothed: model.clothed,
        moment: moment.unwrap_or(WeighingMoment::Routine),
        taken,
    }))]
}
