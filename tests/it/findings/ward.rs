//! A pair's place in the ward list. The order is the project's own: what needs a doctor first, then
//! what is open, due, waiting for its receipt, not seen, and later.

use feedside::findings::{Level, Policy, VisitMark, WardPlace, WardWhy};
use feedside::record::{Acknowledged, BabyDanger, Label, Signed, WallTime};

use super::scene::{Scene, at, birth};

fn hours(hours: i64) -> WallTime {
    birth().plus_ms(hours * 3_600_000)
}

fn signed(mut it: Scene) -> Scene {
    it.visit.signed = Some(Signed {
        by: Label::new("kb").unwrap(),
        wall: hours(it.age_h),
    });
    it
}

fn mark(it: &Scene) -> VisitMark {
    VisitMark::of(hours(it.age_h), &it.visit, &it.judged(), &it.policy)
}

fn handed(it: Scene) -> Scene {
    let mut it = signed(it);
    it.visit.receipt = Some("12345678".to_owned());
    it
}

fn why(marks: &[VisitMark], now_h: i64) -> WardWhy {
    let waits = marks.iter().any(|it| it.signed && !it.receipt);
    WardPlace::of(marks, waits, hours(now_h)).why
}

#[test]
fn a_review_counts_until_it_is_acknowledged() {
    let mut ill = signed(at(50).danger(BabyDanger::Fit).danger(BabyDanger::Fit));
    assert!(mark(&ill).review);
    assert_eq!(mark(&ill).level, Some(Level::MedicalReviewNow));
    assert_eq!(why(&[mark(&ill)], 60), WardWhy::Review);
    ill.visit.acknowledged.push(Acknowledged {
        rule: "baby-floppy".to_owned(),
        by: Label::new("kb").unwrap(),
        wall: hours(51),
    });
    assert!(mark(&ill).review);
    ill.visit.acknowledged[0].rule = "baby-fit".to_owned();
    assert!(!mark(&ill).review);
    assert_eq!(mark(&ill).level, Some(Level::MedicalReviewNow));
}

#[test]
fn a_review_of_the_visit_before_still_counts_and_an_older_one_does_not() {
    let ill = mark(&signed(at(50).danger(BabyDanger::Fit)));
    let well = || mark(&handed(at(60).good_day()));
    assert_eq!(why(&[ill.clone(), well()], 70), WardWhy::Review);
    assert_ne!(why(&[ill, well(), well()], 70), WardWhy::Review);
}

#[test]
fn each_why_comes_in_its_order() {
    let next = |at_h: i64, due: i64| {
        let mut it = handed(at(at_h).good_day());
        it.visit.next_look = Some(hours(due));
        mark(&it)
    };
    assert_eq!(why(&[], 60), WardWhy::NotSeen);
    assert_eq!(why(&[mark(&at(50))], 60), WardWhy::Open);
    // A look that is due just now is due.
    assert_eq!(why(&[next(50, 60)], 60), WardWhy::Due);
    assert_eq!(why(&[next(50, 61)], 60), WardWhy::Later);
    assert_eq!(why(&[mark(&signed(at(50)))], 60), WardWhy::Waiting);
    assert_eq!(
        why(&[mark(&signed(at(40))), next(50, 61)], 60),
        WardWhy::Waiting
    );
    assert_eq!(why(&[mark(&handed(at(50)))], 60), WardWhy::NoNextLook);
    let order = [
        WardWhy::Review,
        WardWhy::Open,
        WardWhy::Due,
        WardWhy::Waiting,
        WardWhy::NotSeen,
        WardWhy::Later,
        WardWhy::NoNextLook,
    ];
    assert!(order.is_sorted());
}

/// Places in their order; equal ones stay as they came.
fn order(places: &[WardPlace]) -> Vec<usize> {
    let mut order: Vec<usize> = (0..places.len()).collect();
    order.sort_by_key(|index| places[*index]);
    order
}

#[test]
fn among_equals_the_graver_level_comes_first_and_then_the_earlier_look() {
    let due = |it: Scene, due: i64| {
        let mut it = handed(it);
        it.visit.next_look = Some(hours(due));
        WardPlace::of(&[mark(&it)], false, hours(90))
    };
    let few = || at(60).good_day().day(|day| day.feeds = Some(5));
    let places = [
        due(at(60).good_day(), 70),
        due(few(), 80),
        due(few(), 75),
        due(few(), 75),
        WardPlace::of(&[], false, hours(90)),
    ];
    assert_eq!(order(&places), [2, 3, 1, 0, 4]);
    assert!(order(&[]).is_empty());
}

#[test]
fn a_mark_holds_only_under_its_policy() {
    let it = mark(&at(50));
    assert!(it.holds_under(&Policy::built_in()));
    let other = "name = \"W\"\nversion = \"1\"\nauthor = \"L\"\ndate = \"2026-01-01\"\n";
    assert!(!it.holds_under(&Policy::from_toml(other).unwrap()));
    let older = VisitMark {
        rules: "findings-1".to_owned(),
        ..it
    };
    assert!(!older.holds_under(&Policy::built_in()));
}
