//! What the events on the bedside screen lead to.

use feedside::app::around::Around;
use feedside::app::bedside::flag::flag_rows;
use feedside::app::bedside::{Act, Effect, Event, Model, PadKind, update};
use feedside::app::clock::Now;
use feedside::app::open_visit::{OpenVisit, Others};
use feedside::app::preferences::Preferences;
use feedside::findings::Policy;
use feedside::record::{At, EndedBy, Hold, Side, What, fold};

use crate::support::{add, empty_visit, sample_began, sample_pair, sample_visit};

pub fn now(ms: u64) -> Now {
    Now {
        boot_ms: 5_000_000 + ms,
        wall: sample_began().plus_ms(i64::try_from(ms).unwrap()),
    }
}

pub fn opened(entries: Vec<(u64, What)>, at_ms: u64) -> OpenVisit {
    let mut visit = empty_visit();
    for (at, what) in entries {
        add(&mut visit, at, what);
    }
    OpenVisit::take_up(sample_pair(), visit, Others::default(), now(at_ms))
}

/// What the events lead to in turn, at one moment of a feed of the left breast from second 1.
fn led_to(more: Vec<(u64, What)>, at_ms: u64, events: &[Event]) -> Vec<Effect> {
    let started = What::FeedStarted {
        side: Side::Left,
        hold: Hold::Cradle,
    };
    let mut entries = vec![(1_000, started)];
    entries.extend(more);
    let open = opened(entries, at_ms);
    let around = Around {
        now: now(at_ms),
        open: Some(&open),
        preferences: &Preferences::default(),
        policy: &Policy::built_in(),
        has_pin: false,
    };
    let mut model = Model::default();
    let mut effects = Vec::new();
    for event in events {
        effects.extend(update(&mut model, *event, &around));
    }
    effects
}

#[test]
fn a_tap_ends_the_looking_away_and_the_being_off() {
    let from = At::ms(3_000);
    let away = vec![(3_000, What::UnwatchedFrom { from })];
    assert_eq!(
        led_to(away, 9_000, &[Event::Tapped(PadKind::Suck)]),
        [
            Effect::NoteAt(now(9_000).boot_ms, What::UnwatchedTo),
            Effect::NoteAt(now(9_000).boot_ms, What::Suck)
        ]
    );
    assert_eq!(
        led_to(
            vec![(3_000, What::BabyOff)],
            9_000,
            &[Event::Tapped(PadKind::SuckSwallow)]
        ),
        [
            Effect::NoteAt(now(9_000).boot_ms, What::BabyOn),
            Effect::NoteAt(now(9_000).boot_ms, What::SuckSwallow)
        ]
    );
}

#[test]
fn looked_away_is_dated_back_to_just_after_the_last_tap() {
    assert_eq!(
        led_to(
            vec![(3_000, What::Suck)],
            60_000,
            &[Event::Ticked, Event::Answered(false)]
        ),
        [Effect::Note(What::UnwatchedFrom {
            from: At::ms(3_001)
        })]
    );
}

#[test]
fn a_rest_is_not_asked_about_twice() {
    let events = [
        Event::Ticked,
        Event::Answered(true),
        Event::Ticked,
        Event::Answered(false),
    ];
    assert_eq!(led_to(vec![(3_000, What::Suck)], 60_000, &events), []);
}

#[test]
fn the_other_breast_ends_one_feed_and_starts_the_other() {
    assert_eq!(
        led_to(vec![], 9_000, &[Event::Acted(Act::OtherBreast)]),
        [
            Effect::Note(What::FeedEnded {
                by: EndedBy::Specialist
            }),
            Effect::Note(What::FeedStarted {
                side: Side::Right,
                hold: Hold::Cradle
            }),
        ]
    );
}

#[test]
fn a_visit_taken_up_goes_on_from_its_last_entry_and_never_backwards() {
    for (wall_ms, expected_ms) in [(60_000, 60_000), (3_000, 3_000), (1_000, 3_000)] {
        let open = opened(vec![(3_000, What::Suck)], wall_ms);
        assert_eq!(open.at(now(wall_ms)), At::ms(expected_ms), "{wall_ms}");
    }
}

#[test]
fn marks_close_together_on_the_strip_share_one_flag_that_tells_each_change() {
    // In the sample: signs in seconds 110, 112 and 114, pain in seconds 120, 160 and 165.
    let visit = sample_visit();
    let folded = fold(&visit.journal);
    let flags = |from_s: u64, shown_s: f32| {
        let rows = flag_rows(&folded.feeds[0], At::ms(from_s * 1000), shown_s);
        let told = rows.into_iter().filter(|it| !it.label.is_empty());
        told.map(|it| (it.at_s, it.label.to_string()))
            .collect::<Vec<_>>()
    };
    let told = |all: &[(f32, &str)]| {
        let owned = all.iter().map(|(at, label)| (*at, (*label).to_owned()));
        owned.collect::<Vec<_>>()
    };
    let (signs, tried) = ((110.0, "✓×?"), (125.0, "+"));
    assert_eq!(
        flags(100, 120.0),
        told(&[(120.0, "6"), (160.0, "2"), (165.0, "?"), tried, signs])
    );
    assert_eq!(
        flags(100, 300.0),
        told(&[(120.0, "6"), (160.0, "2→?"), tried, signs])
    );
    // Close enough to look at each.
    assert_eq!(
        flags(100, 30.0)[4..],
        told(&[(110.0, "✓"), (112.0, "×"), (114.0, "?")])
    );
    // What lies before the part that is shown takes no flag from what lies in it.
    assert_eq!(flags(111, 120.0)[4], (112.0, "×?".to_owned()));
}
