//! A running feed survives whatever happens around it.

use feedside::app::bedside::{Act, Event as Bedside, PadKind};
use feedside::app::clock::{Clock, Now};
use feedside::app::event::Event;
use feedside::app::looking_back::Event as LookingBack;
use feedside::app::open_visit::{OpenVisit, Others};
use feedside::app::route::Route;
use feedside::app::ui;
use feedside::record::{At, EndedBy, Pain, TapWhat, WallTime, What};
use feedside::report::visit_json;
use slint::Global;

use super::tablet::tablet;
use crate::support::{facts_of, sample_pair};

#[test]
fn leaving_the_screen_ends_nothing_and_a_banner_leads_back_from_everywhere() {
    let tablet = tablet();
    let frame = ui::FrameAdapter::get(&tablet.window);
    let route = || tablet.shell.borrow().route();
    assert_eq!(route(), Route::Bedside);
    for away in [
        Event::Bedside(Bedside::BackWanted),
        Event::Back,
        Event::Ward(feedside::app::ward::Event::SettingsWanted),
    ] {
        (tablet.hear)(away);
        assert_ne!(route(), Route::Bedside);
        assert_ne!(frame.get_running(), "");
        (tablet.hear)(Event::ToRunning);
        assert_eq!(route(), Route::Bedside);
    }
    assert_eq!(tablet.entries(), []);
}

#[test]
fn a_clock_that_is_put_back_and_another_time_zone_change_no_time_of_the_feed() {
    let tablet = tablet();
    let tap = || (tablet.hear)(Event::Bedside(Bedside::Tapped(PadKind::Suck)));
    tap();
    let before = tablet.clock.now();
    // An hour back, and two zones east; the device's own clock goes on.
    let wall = WallTime::new(before.wall.utc_ms() - 3_600_000, 120).unwrap();
    tablet.clock.set(Now {
        boot_ms: before.boot_ms + 500,
        wall,
    });
    tap();
    let times: Vec<u64> = tablet.entries().iter().map(|it| it.0).collect();
    assert_eq!(times, [2_000, 2_500]);
    let shell = tablet.shell.borrow();
    let last = shell
        .open()
        .unwrap()
        .visit
        .journal
        .entries()
        .last()
        .unwrap();
    assert_eq!(last.wall, wall);
}

#[test]
fn sleep_counts_and_the_question_afterwards_is_dated_back() {
    let tablet = tablet();
    let hear = |event| (tablet.hear)(Event::Bedside(event));
    hear(Bedside::Tapped(PadKind::Suck));
    // Ten minutes of sleep: the clock of the device goes on.
    tablet.clock.forward_ms(600_000);
    (tablet.hear)(Event::Ticked);
    assert_ne!(ui::BedsideAdapter::get(&tablet.window).get_question(), "");
    hear(Bedside::Answered(false));
    tablet.clock.forward_ms(1_000);
    hear(Bedside::Tapped(PadKind::Suck));
    assert_eq!(
        tablet.entries(),
        [
            (2_000, What::Suck),
            (
                602_000,
                What::UnwatchedFrom {
                    from: At::ms(2_001)
                }
            ),
            (603_000, What::UnwatchedTo),
            (603_000, What::Suck),
        ]
    );
}

#[test]
fn a_crash_in_unwatched_time_and_after_a_correction_is_taken_up_as_it_was() {
    let tablet = tablet();
    let hear = |event| (tablet.hear)(Event::Bedside(event));
    for pad in [PadKind::Suck, PadKind::SuckSwallow, PadKind::Swallow] {
        hear(Bedside::Tapped(pad));
        tablet.clock.forward_ms(800);
    }
    hear(Bedside::TakenBack);
    hear(Bedside::PainTold(4));
    hear(Bedside::LookedAway);
    let shell = tablet.shell.borrow();
    let open = shell.open().unwrap();
    // What is on disk is the journal; another zone and a device that was started anew.
    let now = Now {
        boot_ms: 12_000,
        wall: WallTime::new(tablet.clock.now().wall.utc_ms() + 60_000, -300).unwrap(),
    };
    let again = OpenVisit::take_up(sample_pair(), open.visit.clone(), Others::default(), now);
    assert_eq!(again.folded, open.folded);
    assert!(again.folded.running().unwrap().is_unwatched());
    let last = open.visit.journal.entries().last().unwrap().at;
    assert_eq!(again.at(now), last.plus_ms(60_000));
}

#[test]
fn unwatched_time_is_told_apart_from_rest_in_the_report() {
    let tablet = tablet();
    let hear = |event| (tablet.hear)(Event::Bedside(event));
    let taps = |count| {
        for _ in 0..count {
            hear(Bedside::Tapped(PadKind::Suck));
            tablet.clock.forward_ms(650);
        }
    };
    taps(40);
    hear(Bedside::LookedAway);
    tablet.clock.forward_ms(90_000);
    taps(40);
    tablet.clock.forward_ms(20_000);
    taps(40);
    hear(Bedside::Acted(Act::EndFeed));
    hear(Bedside::Chose(0));
    let shell = tablet.shell.borrow();
    let summary = shell.open().unwrap().summary(0).unwrap();
    assert!((89_000..91_000).contains(&summary.totals_ms.unwatched));
    assert!((19_000..22_000).contains(&summary.totals_ms.rest));
    let json = visit_json(&facts_of(&shell.open().unwrap().visit)).to_string();
    assert!(json.contains("unwatched"), "{json}");
}

#[test]
fn corrections_while_looking_back_are_entries_of_the_journal() {
    let tablet = tablet();
    let hear = |event| (tablet.hear)(Event::Bedside(event));
    for tap in 0..60 {
        let swallow = 30 <= tap && tap % 2 == 0;
        hear(Bedside::Tapped(if swallow {
            PadKind::SuckSwallow
        } else {
            PadKind::Suck
        }));
        tablet.clock.forward_ms(650);
    }
    hear(Bedside::Acted(Act::EndFeed));
    hear(Bedside::Chose(0));
    let look = |event| (tablet.hear)(Event::LookingBack(event));
    let entries = tablet.entries().len();
    look(LookingBack::Zoomed(8.0, 2.0));
    look(LookingBack::Picked(2.0));
    look(LookingBack::StrikeWanted);
    assert_eq!(
        tablet.entries().last().unwrap().1,
        What::Struck { entry: 2 }
    );
    look(LookingBack::AddWanted(TapWhat::SuckSwallow));
    let added = What::TapAdded {
        at: At::ms(2_000),
        what: TapWhat::SuckSwallow,
    };
    assert_eq!(tablet.entries().last().unwrap().1, added);
    look(LookingBack::StrikeWanted);
    look(LookingBack::BoundaryPut(0, 12.0));
    let last = tablet.entries().last().unwrap().1.clone();
    let What::BoundaryMoved(moved) = last else {
        panic!("{last:?}");
    };
    assert_eq!(moved.now, At::ms(12_000));
    assert_eq!(tablet.entries().len(), entries + 4);
    let shell = tablet.shell.borrow();
    let summary = shell.open().unwrap().summary(0).unwrap();
    assert!(
        summary.computed.is_some(),
        "what was computed is kept beside it"
    );
    assert_eq!(
        shell.open().unwrap().folded.feeds[0].ended.unwrap().by,
        EndedBy::Baby
    );
}

#[test]
fn pain_beyond_ten_is_no_entry() {
    let tablet = tablet();
    for (told, expected) in [
        (11, None),
        (-1, Some(Pain::CannotSay)),
        (10, Pain::score(10).ok()),
    ] {
        let before = tablet.entries().len();
        (tablet.hear)(Event::Bedside(Bedside::PainTold(told)));
        let entries = tablet.entries();
        let score = expected.map(|score| What::Pain { score, feed: None });
        assert_eq!(entries.get(before).map(|it| it.1.clone()), score);
    }
}
