//! What each event while looking back leads to.

use crate::app::around::Around;
use crate::record::{BabyState, BreastAfter, Label, NippleAfter, What};

use super::{After, Effect, Event, Model};

/// Takes an event; changes the model; says what is to be done.
pub fn update(model: &mut Model, event: Event, around: &Around<'_>) -> Vec<Effect> {
    let Some(open) = around.open else {
        return vec![Effect::Leave];
    };
    match event {
        Event::Came => {
            model.feed = None;
            vec![]
        }
        Event::FeedChosen(feed) => {
            model.feed = Some(feed);
            vec![]
        }
        Event::AfterTold(after, index) => {
            told(after, index).map(Effect::Note).into_iter().collect()
        }
        Event::Acknowledged(index) => {
            let judged = open.judged(around.policy, around.now.wall);
            let by = Label::new(&around.preferences.specialist)
                .unwrap_or_else(|_| open.visit.specialist.clone());
            judged
                .findings
                .get(index)
                .map(|finding| {
                    Effect::Note(What::FindingAcknowledged {
                        rule: finding.rule.clone(),
                        by,
                    })
                })
                .into_iter()
                .collect()
        }
        Event::AnotherFeed => vec![Effect::Before],
        Event::PlanWanted => vec![Effect::Plan],
        Event::BackWanted => vec![Effect::Leave],
    }
}

fn told(after: After, index: usize) -> Option<What> {
    match after {
        After::Nipple => NippleAfter::ALL
            .get(index)
            .map(|nipple| What::NippleAfter { nipple: *nipple }),
        After::Breast => BreastAfter::ALL
            .get(index)
            .map(|breast| What::BreastAfter { breast: *breast }),
        After::Baby => BabyState::ALL
            .get(index)
            .map(|state| What::BabyState { state: *state }),
    }
}
