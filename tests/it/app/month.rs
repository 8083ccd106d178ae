//! The last days in figures, as the screen comes to them. Source: the project's own rules (design: what
//! the ward's feeds look like this month); the figures themselves are held in `tests/it/report`.

use feedside::app::event::Event;
use feedside::app::keeper::{Ask, Told, answer};
use feedside::app::month::Event as Month;
use feedside::app::route::Route;
use feedside::app::{ui, ward};
use feedside::findings::Policy;
use feedside::record::{
    At, Entry, Hold, Label, Pair, PairId, Side, Visit, VisitId, WallTime, What,
};
use feedside::report::month::{DAYS, Month as Figures};
use feedside::store::Store;
use slint::{Global, Model};
use uuid::Uuid;

use super::tablet::{Tablet, tablet_over};
use crate::support::{sample_began, sample_pair};

const HOUR_MS: i64 = 3_600_000;
const DAY_MS: i64 = 24 * HOUR_MS;

fn pair(number: u128) -> Pair {
    Pair {
        id: PairId::of(Uuid::from_u128(0x100 + number)),
        ..sample_pair()
    }
}

fn id(number: u128) -> VisitId {
    VisitId::of(Uuid::from_u128(0x200 + number))
}

/// A visit so long ago with one feed of ten minutes, one suck a second.
fn visit(number: u128, of: u128, ago_ms: i64) -> Visit {
    let began = sample_began().plus_ms(-ago_ms);
    let mut visit = Visit::new(id(number), pair(of).id, began, Label::new("E. H.").unwrap());
    tell(
        &mut visit,
        0,
        What::FeedStarted {
            side: Side::Left,
            hold: Hold::Cradle,
        },
    );
    for second in 1..600 {
        let what = if second % 3 == 0 {
            What::SuckSwallow
        } else {
            What::Suck
        };
        tell(&mut visit, second * 1_000, what);
    }
    visit
}

fn tell(visit: &mut Visit, at_ms: u64, what: What) {
    let wall = visit.began.plus_ms(i64::try_from(at_ms).unwrap());
    let entry: Entry = visit.journal.next(At::ms(at_ms), wall, what);
    visit.journal.push(entry).unwrap();
}

/// Seven visits of three pairs; the eldest began just too long ago.
fn store() -> Store {
    let store = Store::in_memory().unwrap();
    for of in 0..3 {
        store.save_pair(&pair(of)).unwrap();
    }
    for number in 0..6 {
        let ago_ms = i64::try_from(number).unwrap() * DAY_MS + HOUR_MS;
        store
            .begin_visit(&visit(number, number % 3, ago_ms))
            .unwrap();
    }
    store
        .begin_visit(&visit(6, 0, DAYS * DAY_MS + HOUR_MS))
        .unwrap();
    store
}

fn now() -> WallTime {
    sample_began().plus_ms(2_000)
}

/// Asks until all is worked out; how often, and the figures.
fn all(store: &mut Store, now: WallTime) -> (u32, Figures) {
    for asked in 1.. {
        match answer(store, &Policy::built_in(), Ask::Month(now)) {
            Told::Month(month, 0) => return (asked, *month),
            Told::Month(..) => {}
            other => panic!("{other:?}"),
        }
    }
    unreachable!()
}

fn rows(tablet: &Tablet) -> usize {
    let screen = ui::MonthAdapter::get(&tablet.window);
    let (first, second) = (screen.get_first(), screen.get_second());
    let cards = first.iter().chain(second.iter());
    cards.map(|card| card.rows.row_count()).sum()
}

#[test]
fn a_few_visits_are_worked_out_at_a_time_and_what_was_is_kept() {
    let mut store = store();
    let (asked, month) = all(&mut store, now());
    assert_eq!((month.visits, month.pairs, month.feeds), (6, 3, 6));
    assert_eq!(asked, 3, "two at a time");
    let (again, same) = all(&mut store, now());
    assert_eq!((again, &same), (1, &month));
    // And by another start of the program, whose Ward list leaves it as it is.
    let ward = answer(&mut store, &Policy::built_in(), Ask::Ward);
    assert!(matches!(ward, Told::Ward(_)));
    assert_eq!(all(&mut store, now()), (1, month));
}

#[test]
fn an_entry_that_follows_is_counted_and_nothing_else_is_worked_out_again() {
    let mut store = store();
    let (_, before) = all(&mut store, now());
    let mut told = store.visit(id(1)).unwrap().unwrap();
    let by = Label::new("E. H.").unwrap();
    tell(&mut told, 700_000, What::Signed { by });
    let entry = told.journal.entries().last().unwrap();
    store.append(id(1), entry).unwrap();
    let (asked, after) = all(&mut store, now());
    assert_eq!(asked, 1);
    assert_eq!(after.signed.of, before.signed.of + 1);
}

#[test]
fn a_visit_that_was_amended_counts_once() {
    let mut store = store();
    let mut told = store.visit(id(1)).unwrap().unwrap();
    let by = Label::new("E. H.").unwrap();
    tell(&mut told, 700_000, What::Signed { by: by.clone() });
    let entry = told.journal.entries().last().unwrap();
    store.append(id(1), entry).unwrap();
    store
        .begin_visit(&told.amendment(id(99), by).unwrap())
        .unwrap();
    let (_, month) = all(&mut store, now());
    assert_eq!((month.visits, month.feeds), (6, 6));
}

#[test]
fn the_screen_asks_until_all_is_there_and_shows_it() {
    let tablet = tablet_over(store(), (1280, 800));
    (tablet.hear)(Event::Ward(ward::Event::MonthWanted));
    assert_eq!(tablet.shell.borrow().route(), Route::Month);
    let screen = ui::MonthAdapter::get(&tablet.window);
    assert_eq!(screen.get_working(), "");
    assert!(screen.get_title().contains("30"));
    assert!(10 < rows(&tablet), "{} rows", rows(&tablet));
    assert!(!screen.get_none());
    (tablet.hear)(Event::Month(Month::BackWanted));
    assert_eq!(tablet.shell.borrow().route(), Route::Ward);
}

#[test]
fn without_a_visit_it_says_so() {
    let tablet = tablet_over(Store::in_memory().unwrap(), (1280, 800));
    (tablet.hear)(Event::Ward(ward::Event::MonthWanted));
    assert!(ui::MonthAdapter::get(&tablet.window).get_none());
    assert_eq!(rows(&tablet), 0);
}

#[test]
fn what_comes_after_the_screen_was_left_asks_for_no_more() {
    let tablet = tablet_over(store(), (1280, 800));
    (tablet.hear)(Event::Ward(ward::Event::MonthWanted));
    (tablet.hear)(Event::Month(Month::BackWanted));
    let month = Figures::of(&[], now());
    (tablet.hear)(Event::Told(Told::Month(Box::new(month), 1_000_000)));
    assert_eq!(tablet.shell.borrow().route(), Route::Ward);
}
