//! What each event on the Pair screen leads to.

use crate::app::around::Around;
use crate::record::{PairId, Reason, RiskNote, Sex, WayOfBirth};

use super::form::toggle;
use super::{Effect, Event, Field, Form, Group, Model};

/// Takes an event; changes the model; says what is to be done. `fresh` is the id that a new pair
/// gets.
pub fn update(model: &mut Model, event: Event, around: &Around<'_>, fresh: PairId) -> Vec<Effect> {
    match event {
        Event::Came(story) => {
            *model = Model {
                story: Some(story),
                ..Model::default()
            };
        }
        Event::NewWanted => {
            *model = Model {
                form: Some(Form::default()),
                ..Model::default()
            };
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
                    Ok(pair) => return vec![Effect::Save(Box::new(pair))],
                    Err(trouble) => model.trouble = Some(trouble),
                }
            }
        }
        Event::BeginWanted => {
            return model
                .story
                .as_ref()
                .map(|story| {
                    story
                        .visits
                        .iter()
                        .find(|head| !head.signed)
                        .map_or(Effect::Begin(story.pair.id), |head| Effect::Open(head.id))
                })
                .into_iter()
                .collect();
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

fn field_of(form: &mut Form, field: Field) -> &mut String {
    match field {
        Field::Bed => &mut form.bed,
        Field::Initials => &mut form.initials,
        Field::Birth => &mut form.birth,
        Field::Weight => &mut form.weight,
        Field::Gestation => &mut form.gestation,
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
        Group::Risks => {
            if let Some(risk) = RiskNote::ALL.get(index) {
                toggle(&mut form.risks, *risk);
            }
        }
    }
}
