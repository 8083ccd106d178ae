//! A record that was signed stands as it was: what is learnt later changes neither it nor its codes,
//! and it has one newest version. That a record shown again is the same record is what its receipt
//! rests on (README).

use feedside::app::event::Event;
use feedside::app::handover::Event as Handover;
use feedside::app::pair::Event as Pair;
use feedside::app::route::Route;
use feedside::app::ui;
use feedside::app::ward::Event as Ward;
use feedside::findings::Policy;
use feedside::growth::right;
use feedside::record::{Grams, Label, NippleAfter, Visit, VisitId, Weighing, WeighingMoment, What};
use feedside::store::Store;
use slint::{Global, Model};
use uuid::Uuid;

use super::tablet::{Tablet, tablet_over};
use crate::support::{add, empty_visit, sample_began, sample_pair, sample_visit};

/// A day, in milliseconds.
const DAY_MS: i64 = 24 * 3_600_000;

fn weighed(grams: i64) -> What {
    What::Weighed(Weighing {
        grams: Grams::new(grams).unwrap(),
        step: None,
        clothed: false,
        moment: WeighingMoment::Routine,
        taken: None,
    })
}

/// A visit a day after the sample's.
fn next_day(what: Vec<What>) -> Visit {
    let id = VisitId::of(Uuid::from_u128(0x77));
    let mut visit = empty_visit();
    (visit.id, visit.began) = (id, sample_began().plus_ms(DAY_MS));
    for (at, what) in (1_000..).step_by(1_000).zip(what) {
        add(&mut visit, at, what);
    }
    visit
}

/// A tablet with these visits of the sample pair, on the one that began first.
fn on_the_first(visits: &[&Visit]) -> Tablet {
    let store = Store::in_memory().unwrap();
    store.save_pair(&sample_pair()).unwrap();
    for visit in visits {
        store.begin_visit(visit).unwrap();
    }
    let tablet = tablet_over(store, (1280, 800));
    (tablet.hear)(Event::Arrived);
    (tablet.hear)(Event::Ward(Ward::Opened(0)));
    // The newest is first; an amendment began when what it amends did.
    let place = {
        let visits = ui::PairAdapter::get(&tablet.window).get_visits();
        visits.row_count() - 1
    };
    (tablet.hear)(Event::Pair(Pair::VisitOpened(place)));
    tablet
}

fn judged(tablet: &Tablet) -> String {
    let shell = tablet.shell.borrow();
    let open = shell.open().unwrap();
    let wall = open.folded.signed.as_ref().unwrap().wall;
    let growth = open.growth(wall);
    format!("{:?} {growth:?}", open.judged(&Policy::built_in(), wall))
}

#[test]
fn a_weight_of_a_later_visit_changes_nothing_of_a_visit_that_was_signed() {
    let signed = sample_visit();
    let alone = judged(&on_the_first(&[&signed]));
    let later = next_day(vec![weighed(3500)]);
    assert_eq!(judged(&on_the_first(&[&signed, &later])), alone);
    // Nor does one that is told later of a time before it, or an answer given later.
    let told_later = next_day(vec![What::Weighed(Weighing {
        taken: Some(sample_began().plus_ms(-DAY_MS)),
        ..match weighed(3330) {
            What::Weighed(it) => it,
            _ => unreachable!(),
        }
    })]);
    assert_eq!(judged(&on_the_first(&[&signed, &told_later])), alone);
    let at = signed
        .journal
        .entries()
        .iter()
        .find(|it| matches!(it.what, What::Weighed(_)))
        .unwrap()
        .wall;
    let answered = next_day(vec![What::FindingAcknowledged {
        rule: right(at),
        by: Label::new("kb").unwrap(),
    }]);
    assert_eq!(judged(&on_the_first(&[&signed, &answered])), alone);
}

#[test]
fn an_amendments_weights_are_not_counted_beside_those_it_carries_over() {
    let signed = sample_visit();
    let alone = judged(&on_the_first(&[&signed]));
    let by = Label::new("kb").unwrap();
    let id = VisitId::of(Uuid::from_u128(0x78));
    let amendment = signed.amendment(id, by).unwrap();
    let tablet = on_the_first(&[&signed, &amendment]);
    let shell = tablet.shell.borrow();
    let opened = shell.open().unwrap();
    let mut all = opened.weighings();
    let once = all.len();
    all.dedup();
    assert_eq!(all.len(), once);
    drop(shell);
    if tablet.shell.borrow().open().unwrap().visit.id == signed.id {
        assert_eq!(judged(&tablet), alone);
    }
}

#[test]
fn a_visit_that_an_amendment_replaces_is_not_amended_once_more() {
    let signed = sample_visit();
    let by = Label::new("kb").unwrap();
    let id = VisitId::of(Uuid::from_u128(0x78));
    let mut amendment = signed.amendment(id, by.clone()).unwrap();
    add(
        &mut amendment,
        900_000,
        What::NippleAfter {
            nipple: NippleAfter::Rounded,
            feed: None,
        },
    );
    add(&mut amendment, 910_000, What::Signed { by });
    for (visits, may) in [(vec![&signed], true), (vec![&signed, &amendment], false)] {
        let tablet = on_the_first(&visits);
        if tablet.shell.borrow().open().unwrap().visit.id != signed.id {
            (tablet.hear)(Event::Back);
            (tablet.hear)(Event::Ward(Ward::Opened(0)));
            (tablet.hear)(Event::Pair(Pair::VisitOpened(0)));
        }
        assert_eq!(tablet.shell.borrow().open().unwrap().visit.id, signed.id);
        assert_eq!(tablet.shell.borrow().route(), Route::Handover);
        (tablet.hear)(Event::Handover(Handover::AmendWanted));
        let shell = tablet.shell.borrow();
        let amends = shell.open().unwrap().visit.replaces.is_some();
        assert_eq!(amends, may, "{} visits", visits.len());
    }
}

#[test]
fn the_pairs_screen_says_which_version_was_replaced_and_keeps_its_receipt() {
    let mut signed = sample_visit();
    add(
        &mut signed,
        950_000,
        What::ReceiptTaken {
            receipt: "1234567890".to_owned(),
        },
    );
    let by = Label::new("kb").unwrap();
    let id = VisitId::of(Uuid::from_u128(0x78));
    let mut amendment = signed.amendment(id, by.clone()).unwrap();
    add(&mut amendment, 960_000, What::Signed { by });
    let store = Store::in_memory().unwrap();
    store.save_pair(&sample_pair()).unwrap();
    store.begin_visit(&signed).unwrap();
    store.begin_visit(&amendment).unwrap();
    let tablet = tablet_over(store, (1280, 800));
    (tablet.hear)(Event::Arrived);
    (tablet.hear)(Event::Ward(Ward::Opened(0)));
    let visits = ui::PairAdapter::get(&tablet.window).get_visits();
    let mut said: Vec<String> = visits.iter().map(|it| it.quiet.to_string()).collect();
    said.sort();
    assert_eq!(
        said,
        [
            "handed over, receipt 1234567890, replaced by a later version",
            "signed, waiting for a receipt, amends an earlier version",
        ]
    );
}
