//! What "take back" takes back at the bedside, and what can be taken back while looking back. That a
//! correction takes back what one touch told, and nothing that was told before it, is common practice.

use feedside::app::around::Around;
use feedside::app::bedside::take_back::{TakenBack, last};
use feedside::app::bedside::{Act, Event as Bedside, PadKind};
use feedside::app::entry_line::line;
use feedside::app::event::Event;
use feedside::app::looking_back::{self, Event as LookingBack, entries};
use feedside::app::preferences::Preferences;
use feedside::app::route::Route;
use feedside::app::ui;
use feedside::findings::Policy;
use feedside::record::{At, EndedBy, Hold, Label, Pain, Side, Sign, SignState, What, fold};
use feedside::words::{Lang, Words};
use slint::Global;

use super::bedside::{now, opened};
use super::tablet::{Tablet, tablet};
use crate::support::{sample_began, sample_visit};

fn bedside(tablet: &Tablet, event: Bedside) {
    (tablet.hear)(Event::Bedside(event));
}

fn sides(tablet: &Tablet) -> Vec<(Side, bool)> {
    let shell = tablet.shell.borrow();
    let feeds = &shell.open().unwrap().folded.feeds;
    feeds.iter().map(|it| (it.side, it.is_running())).collect()
}

#[test]
fn the_change_to_the_other_breast_goes_back_whole_and_the_pads_go_on_counting() {
    let tablet = tablet();
    bedside(&tablet, Bedside::Tapped(PadKind::Suck));
    bedside(&tablet, Bedside::Acted(Act::OtherBreast));
    assert_eq!(sides(&tablet), [(Side::Left, false), (Side::Right, true)]);
    bedside(&tablet, Bedside::TakenBack);
    assert_eq!(sides(&tablet), [(Side::Left, true)]);
    bedside(&tablet, Bedside::Tapped(PadKind::SuckSwallow));
    let shell = tablet.shell.borrow();
    let feed = &shell.open().unwrap().folded.feeds[0];
    let sucks = feed.taps.iter().filter(|it| it.what.is_suck()).count();
    assert_eq!(sucks, 2);
}

#[test]
fn nothing_that_was_told_before_the_feed_is_taken_back_at_the_bedside() {
    let told = vec![
        (
            100,
            What::Note {
                text: feedside::record::Text::new("a note").unwrap(),
            },
        ),
        (
            1_000,
            What::FeedStarted {
                side: Side::Left,
                hold: Hold::Cradle,
            },
        ),
    ];
    let open = opened(told, 2_000);
    assert!(matches!(last(&open), Some(TakenBack::Start(it)) if it.seq == 2));
    // And where no feed runs, nothing.
    let note = vec![(100, What::BabyOff)];
    assert_eq!(last(&opened(note, 2_000)), None);
}

#[test]
fn a_start_that_is_taken_back_leads_to_the_screen_before_the_feed() {
    let tablet = tablet();
    bedside(&tablet, Bedside::TakenBack);
    assert_eq!(tablet.shell.borrow().route(), Route::Before);
    assert_eq!(sides(&tablet), []);
}

#[test]
fn an_end_and_a_start_that_were_told_apart_do_not_go_back_together() {
    let started = |side| What::FeedStarted {
        side,
        hold: Hold::Cradle,
    };
    let ended = What::FeedEnded {
        by: EndedBy::Mother,
    };
    let apart = vec![
        (1_000, started(Side::Left)),
        (60_000, ended),
        (
            61_000,
            What::NippleAfter {
                nipple: feedside::record::NippleAfter::Rounded,
                feed: None,
            },
        ),
        (90_000, started(Side::Right)),
    ];
    let open = opened(apart, 91_000);
    assert!(matches!(last(&open), Some(TakenBack::Start(it)) if it.seq == 4));
}

#[test]
fn the_key_says_what_it_takes_back() {
    let tablet = tablet();
    let said = || {
        ui::BedsideAdapter::get(&tablet.window)
            .get_take_back_what()
            .to_string()
    };
    bedside(&tablet, Bedside::PainTold(4));
    assert_eq!(said(), "Pain 4");
    bedside(&tablet, Bedside::SignSet(Sign::MouthWide, 1));
    assert_eq!(said(), "Mouth wide: Seen");
    bedside(&tablet, Bedside::Tapped(PadKind::SuckSwallow));
    assert_eq!(said(), "Suck with swallow");
    bedside(&tablet, Bedside::Acted(Act::OtherBreast));
    assert_eq!(said(), "Other breast");
}

/// The effects of striking what stands at a place of the list.
fn struck(open: &feedside::app::open_visit::OpenVisit, place: usize) -> Vec<looking_back::Effect> {
    let around = Around {
        now: now(200_000),
        open: Some(open),
        preferences: &Preferences::default(),
        policy: &Policy::built_in(),
        has_pin: false,
    };
    let mut model = looking_back::Model::default();
    looking_back::update(&mut model, LookingBack::EntryStruck(place), &around)
}

#[test]
fn an_end_told_by_mistake_is_taken_back_and_nobody_watched_since() {
    let told = vec![
        (
            1_000,
            What::FeedStarted {
                side: Side::Left,
                hold: Hold::Cradle,
            },
        ),
        (2_000, What::Suck),
        (
            60_000,
            What::FeedEnded {
                by: EndedBy::Specialist,
            },
        ),
    ];
    let open = opened(told, 200_000);
    assert_eq!(
        struck(&open, 0),
        [
            looking_back::Effect::Note(What::Struck { entry: 3 }),
            looking_back::Effect::Note(What::UnwatchedFrom {
                from: At::ms(60_000)
            }),
            looking_back::Effect::Bedside,
        ]
    );
}

#[test]
fn pain_signs_and_all_that_is_no_tap_can_be_taken_back_while_looking_back() {
    let told = vec![
        (
            500,
            What::Nappy(feedside::record::Nappy {
                wet: true,
                heavy: false,
                stool: None,
                urates: false,
            }),
        ),
        (
            1_000,
            What::FeedStarted {
                side: Side::Left,
                hold: Hold::Cradle,
            },
        ),
        (2_000, What::Suck),
        (
            3_000,
            What::Pain {
                score: Pain::score(7).unwrap(),
                feed: None,
            },
        ),
        (
            4_000,
            What::SignChanged {
                sign: Sign::ChinIn,
                state: Some(SignState::Seen),
            },
        ),
        (
            60_000,
            What::FeedEnded {
                by: EndedBy::Specialist,
            },
        ),
        (
            61_000,
            What::FeedStarted {
                side: Side::Right,
                hold: Hold::Cradle,
            },
        ),
    ];
    let open = opened(told.clone(), 200_000);
    let seqs: Vec<u32> = entries::told(&open).iter().map(|it| it.seq).collect();
    // Not the taps, not what a later feed stands on.
    assert_eq!(seqs, [5, 4, 1]);
    assert_eq!(
        struck(&open, 1),
        [looking_back::Effect::Note(What::Struck { entry: 4 })]
    );
    // Once it is signed, only a new version corrects it.
    let mut signed = told;
    signed.push((
        90_000,
        What::FeedEnded {
            by: EndedBy::Specialist,
        },
    ));
    signed.push((
        91_000,
        What::Signed {
            by: Label::new("E. Hart").unwrap(),
        },
    ));
    assert_eq!(struck(&opened(signed, 200_000), 0), []);
}

#[test]
fn every_entry_of_a_whole_visit_is_said_in_every_language() {
    for lang in Lang::ALL {
        let words = Words::new(*lang);
        for entry in sample_visit().journal.entries() {
            let said = line(&entry.what, sample_began(), &words);
            assert!(!said.trim().is_empty(), "{:?}", entry.what);
            assert!(!said.contains("entry-") && !said.contains('{'), "{said}");
        }
    }
    assert!(!fold(&sample_visit().journal).feeds.is_empty());
}
