//! What each event on the month's screen leads to.

use super::{Effect, Event, Model};

/// Takes an event; changes the model; says what is to be done.
pub fn update(model: &mut Model, event: Event) -> Vec<Effect> {
    match event {
        Event::Came => {
            *model = Model::default();
            vec![Effect::Ask]
        }
        Event::Told(month, left) => {
            *model = Model {
                month: Some(*month),
                left,
            };
            if 0 < left { vec![Effect::Ask] } else { vec![] }
        }
        Event::BackWanted => vec![Effect::Leave],
    }
}
