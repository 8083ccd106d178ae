//! What the events while looking back lead to: of which feed a fact is told.

use feedside::app::around::Around;
use feedside::app::clock::Now;
use feedside::app::looking_back::{After, Effect, Event, Model, update};
use feedside::app::open_visit::{OpenVisit, Others};
use feedside::app::preferences::Preferences;
use feedside::findings::Policy;
use feedside::record::{BabyState, BreastAfter, EndedBy, Hold, NippleAfter, Pain, Side, What};

use crate::support::{add, empty_visit, sample_began, sample_pair};

fn started(side: Side) -> What {
    let hold = Hold::Cradle;
    What::FeedStarted { side, hold }
}

fn ended() -> What {
    let by = EndedBy::Specialist;
    What::FeedEnded { by }
}

fn pain(score: i64, feed: Option<u32>) -> What {
    let score = Pain::score(score).unwrap();
    What::Pain { score, feed }
}

fn note(what: What) -> Effect {
    Effect::Note(what)
}

/// What one event leads to while a feed is shown, after these entries, one each second.
fn leads_to(entries: &[What], shown: Option<usize>, event: Event) -> Vec<Effect> {
    let now = |ms: u64| Now {
        boot_ms: 5_000_000 + ms,
        wall: sample_began().plus_ms(i64::try_from(ms).unwrap()),
    };
    let mut visit = empty_visit();
    for (second, what) in (1..).zip(entries) {
        add(&mut visit, second * 1_000, what.clone());
    }
    let open = OpenVisit::take_up(sample_pair(), visit, Others::default(), now(60_000));
    let around = Around {
        now: now(60_000),
        open: Some(&open),
        preferences: &Preferences::default(),
        policy: &Policy::built_in(),
        has_pin: false,
    };
    let mut model = Model {
        feed: shown,
        ..Model::default()
    };
    update(&mut model, event, &around)
}

/// Both breasts, the second one from the one-touch "other breast".
fn both() -> Vec<What> {
    vec![started(Side::Left), ended(), started(Side::Right)]
}

#[test]
fn what_is_told_after_a_feed_is_of_the_feed_that_is_shown() {
    let told = |shown, after| leads_to(&both(), shown, Event::AfterTold(after, 1));
    for (shown, feed) in [(Some(0), Some(0)), (Some(1), None), (None, None)] {
        let nipple = NippleAfter::Flattened;
        let breast = BreastAfter::Unchanged;
        let state = BabyState::Hungry;
        assert_eq!(
            told(shown, After::Nipple),
            [note(What::NippleAfter { nipple, feed })]
        );
        assert_eq!(
            told(shown, After::Breast),
            [note(What::BreastAfter { breast, feed })]
        );
        assert_eq!(
            told(shown, After::Baby),
            [note(What::BabyState { state, feed })]
        );
    }
}

#[test]
fn pain_after_is_told_of_a_feed_that_has_ended_and_of_no_other() {
    let told = |entries: &[What], shown, key| leads_to(entries, shown, Event::PainTold(key));
    assert_eq!(told(&both(), Some(0), 3), [note(pain(3, Some(0)))]);
    // The second feed runs: its pain is told at the bedside.
    assert_eq!(told(&both(), Some(1), 3), []);
    let mut entries = both();
    entries.push(ended());
    assert_eq!(told(&entries, None, 10), [note(pain(10, None))]);
    let score = Pain::CannotSay;
    assert_eq!(
        told(&entries, Some(0), -1),
        [note(What::Pain {
            score,
            feed: Some(0)
        })]
    );
    assert_eq!(told(&entries, None, 11), []);
    assert_eq!(told(&[], None, 3), []);
}

#[test]
fn another_score_after_a_feed_takes_the_place_of_the_one_before() {
    let mut entries = both();
    entries.extend([ended(), pain(9, Some(0)), pain(4, None)]);
    let told = |shown, key| leads_to(&entries, shown, Event::PainTold(key));
    let struck = |entry| note(What::Struck { entry });
    assert_eq!(told(Some(0), 3), [struck(5), note(pain(3, Some(0)))]);
    assert_eq!(told(Some(1), 3), [struck(6), note(pain(3, None))]);
    // The same once more says nothing new.
    assert_eq!(told(Some(0), 9), []);
}
