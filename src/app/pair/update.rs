//! What each event on the Pair screen leads to.

use std::mem;

use crate::app::around::Around;
use crate::app::keeper::Story;
use crate::growth::{self, Checked, Questioned};
use crate::record::{
    Language, Pair, PairId, Reason, RiskNote, Sex, WallTime, WayOfBirth, Weighing, What,
};

use super::form::toggle;
use super::{BABIES_MOST, Effect, Event, Field, Form, Group, LANGUAGES, Model};

/// Takes an event; changes the model; says what is to be done. `fresh` is the id that a new pair
/// gets.
pub fn update(model: &mut Model, event: Event, around: &Around<'_>, fresh: PairId) -> Vec<Effect> {
    match event {
        Event::Came(story) => {
            *model = Model {
                story: Some(story),
                right: mem::take(&mut model.right),
                ..Model::default()
            };
        }
        Event::NewWanted => {
            *model = Model {
                form: Some(Form::default()),
                right: mem::take(&mut model.right),
                ..Model::default()
            };
        }
        Event::TwinWanted => {
            model.form = model.story.as_ref().map(|it| Form::twin_of(&it.pair));
        }
        Event::TableWanted(table) => model.table = table,
        Event::SaidRight(index) => {
            let asked = model.story.as_ref().and_then(|story| {
                let asked = open_questions(model, story, around);
                asked.get(index).map(|it| (story.pair.id, it.at))
            });
            if let Some((pair, at)) = asked {
                model.right.push((pair, at));
                return said_right(model, around);
            }
        }
        Event::VisitCame => return said_right(model, around),
        Event::CorrectWanted(index) => {
            let Some(story) = &model.story else {
                return vec![];
            };
            let asked = open_questions(model, story, around);
            let Some(asked) = asked.get(index) else {
                return vec![];
            };
            let visit = story
                .weighings
                .iter()
                .find(|(_, weighed)| weighed.at == asked.at);
            match visit {
                Some((visit, _)) => return vec![Effect::Open(*visit)],
                // Not a weighing: the birth weight.
                None => model.form = Some(Form::of(&story.pair)),
            }
        }
        Event::EditWanted => {
            model.form = model.story.as_ref().map(|story| Form::of(&story.pair));
        }
        Event::Typed(field, text) => {
            if let Some(form) = &mut model.form {
                *field_of(form, field) = text;
            }
        }
        Event::Chose(group, index) => {
            if let Some(form) = &mut model.form {
                choose(form, group, index);
            }
        }
        Event::SaveWanted => {
            if let Some(form) = &model.form {
                match form.checked(fresh, around.now.wall) {
                    Ok(pair) => return saved(form, pair),
                    Err(trouble) => model.trouble = Some(trouble),
                }
            }
        }
        Event::BeginWanted => {
            let Some(story) = &model.story else {
                return vec![];
            };
            if let Some(head) = story.visits.iter().find(|head| !head.signed) {
                return vec![Effect::Open(head.id)];
            }
            return vec![Effect::Begin(story.pair.id)];
        }
        Event::VisitOpened(index) => {
            return model
                .story
                .as_ref()
                .and_then(|story| story.visits.get(index))
                .map(|head| Effect::Open(head.id))
                .into_iter()
                .collect();
        }
        Event::BackWanted => {
            if model.form.take().is_some() && model.story.is_some() {
                model.trouble = None;
            } else {
                return vec![Effect::Leave];
            }
        }
    }
    vec![]
}

/// The questions about weights that nobody has answered, here or in any visit.
pub(super) fn open_questions(model: &Model, story: &Story, around: &Around<'_>) -> Vec<Questioned> {
    let pair = story.pair.id;
    let weighings = weighings(story);
    // The story was read before the last answers of a visit that is open.
    let visit = around.open.filter(|it| it.pair.id == pair);
    let here = visit.map_or(&[][..], |it| &it.folded.acknowledged);
    let checked = Checked::of(story.acknowledged.iter().chain(here));
    let mut open = growth::of_checked(&story.pair, &weighings, &checked, around.now.wall).questions;
    open.retain(|it| !model.right.contains(&(pair, it.at)));
    open
}

/// The weights of a story.
pub(super) fn weighings(story: &Story) -> Vec<(WallTime, Weighing)> {
    let all = story.weighings.iter();
    all.map(|(_, weighed)| (weighed.at, weighed.weighing))
        .collect()
}

/// The answers of the pair whose visit is open, for its journal; the others go on waiting.
fn said_right(model: &mut Model, around: &Around<'_>) -> Vec<Effect> {
    let Some(open) = around.open.filter(|it| it.folded.signed.is_none()) else {
        return vec![];
    };
    model
        .right
        .extract_if(.., |(pair, _)| *pair == open.pair.id)
        .map(|(_, at)| {
            let (rule, by) = (growth::right(at), around.who(open));
            Effect::Note(What::FindingAcknowledged { rule, by })
        })
        .collect()
}

/// A twin is kept with the first pair, which now shares the mother's id; what is shown is the last.
fn saved(form: &Form, pair: Pair) -> Vec<Effect> {
    let first = form.twin_of.as_deref().map(|first| Pair {
        mother_id: Some(Form::mother_of(first)),
        babies: first.babies.max(pair.babies),
        ..first.clone()
    });
    first
        .into_iter()
        .chain([pair])
        .map(|pair| Effect::Save(Box::new(pair)))
        .collect()
}

fn field_of(form: &mut Form, field: Field) -> &mut String {
    match field {
        Field::Bed => &mut form.bed,
        Field::Initials => &mut form.initials,
        Field::Birth => &mut form.birth,
        Field::Weight => &mut form.weight,
        Field::Gestation => &mut form.gestation,
        Field::MotherNumber => &mut form.mother_number,
        Field::BabyNumber => &mut form.baby_number,
    }
}

fn choose(form: &mut Form, group: Group, index: usize) {
    match group {
        Group::Sex => form.sex = Sex::ALL.get(index).copied(),
        Group::Way => {
            let chosen = WayOfBirth::ALL.get(index).copied();
            form.way = if form.way == chosen { None } else { chosen };
        }
        Group::Reasons => {
            if let Some(reason) = Reason::ALL.get(index) {
                toggle(&mut form.reasons, *reason);
            }
        }
        Group::Language => {
            let chosen = LANGUAGES.get(index).and_then(|tag| Language::new(tag).ok());
            form.language = if form.language == chosen {
                None
            } else {
                chosen
            };
        }
        Group::Babies => {
            form.babies = u8::try_from(index + 1).unwrap_or(1).clamp(1, BABIES_MOST);
        }
        Group::Risks => {
            if let Some(risk) = RiskNote::ALL.get(index) {
                toggle(&mut form.risks, *risk);
            }
        }
    }
}
