//! A pair's place in the ward list. The order is the project's own: what needs a doctor first, then
//! what is open, due, not seen, waiting for its receipt, and later.

use feedside::findings::{Level, Policy, VisitMark, WardFound, WardPlace, WardWhy, weight_falls};
use feedside::record::{Acknowledged, BabyDanger, Coded, Label, Signed, WallTime};

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
        WardWhy::NotSeen,
        WardWhy::Waiting,
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

fn found(scenes: Vec<Scene>) -> Option<WardFound> {
    let marks: Vec<VisitMark> = scenes.iter().map(mark).collect();
    WardFound::of(&marks)
}

#[test]
fn a_line_says_by_which_rule_medical_review_is_called_for() {
    let both = [BabyDanger::Fit, BabyDanger::Floppy].map(Coded::Known);
    let ill = || at(50).day(|day| day.baby_danger = Some(both.to_vec()));
    let it = found(vec![ill()]).unwrap();
    assert_eq!((it.level, it.others), (Level::MedicalReviewNow, 1));
    let first = it.rule;
    let acknowledge = |it: &mut Scene, rule: &str| {
        it.visit.acknowledged.push(Acknowledged {
            rule: rule.to_owned(),
            by: Label::new("kb").unwrap(),
            wall: hours(51),
        });
    };
    // What was acknowledged is not the reason any more; the other is.
    let mut one = ill();
    acknowledge(&mut one, &first);
    let it = found(vec![one]).unwrap();
    assert!(it.rule != first && ["baby-fit", "baby-floppy"].contains(&it.rule.as_str()));
    assert_eq!((it.level, it.others), (Level::MedicalReviewNow, 0));
    // The visit before still counts, as it does for the place.
    let it = found(vec![ill(), at(60).good_day()]).unwrap();
    assert_eq!((it.level, it.rule), (Level::MedicalReviewNow, first));
}

#[test]
fn worse_is_a_graver_level_than_at_the_visit_before() {
    let few = || at(60).good_day().day(|day| day.feeds = Some(5));
    let well = || at(50).good_day();
    let worse = |scenes| found(scenes).unwrap().worse_than;
    let level = |it: Scene| mark(&it).level.unwrap();
    assert!(level(few()) < level(well()));
    assert_eq!(worse(vec![well(), few()]), Some(level(well())));
    assert_eq!(worse(vec![few(), well()]), None);
    assert_eq!(worse(vec![few(), few()]), None);
    assert_eq!(worse(vec![few()]), None);
    // Only the visit before counts.
    assert_eq!(worse(vec![well(), few(), few()]), None);
    assert_eq!(found(vec![]), None);
}

#[test]
fn the_rule_told_is_one_of_the_gravest_level() {
    let it = at(60).good_day().day(|day| day.feeds = Some(5));
    let told = found(vec![it.clone()]).unwrap();
    let judged = it.judged();
    let of_rule = judged
        .findings
        .iter()
        .find(|finding| finding.rule == told.rule);
    assert_eq!(of_rule.unwrap().level, told.level);
    assert_eq!(
        Some(told.level),
        judged.findings.iter().map(|it| it.level).min()
    );
}

#[test]
fn a_visit_with_nothing_found_yet_leaves_what_the_one_before_says() {
    let few = mark(&at(60).good_day().day(|day| day.feeds = Some(5)));
    let fresh = VisitMark {
        level: None,
        gravest: String::new(),
        ..few.clone()
    };
    let alone = WardFound::of(std::slice::from_ref(&few));
    assert_eq!(WardFound::of(&[few, fresh.clone()]), alone);
    assert_eq!(WardFound::of(&[fresh]), None);
}

#[test]
fn a_weight_falls_when_scale_and_handling_do_not_explain_it_and_the_first_loss_should_be_over() {
    use feedside::record::{Grams, Weighing, WeighingMoment};
    let falls = |grams: i64, to_h: i64| {
        let it = at(96);
        let weighed = |grams: i64| Weighing {
            grams: Grams::new(grams).unwrap(),
            step: None,
            clothed: false,
            moment: WeighingMoment::Routine,
            taken: None,
        };
        let from = hours(to_h - 30);
        let weighings = [(from, weighed(3300)), (hours(to_h), weighed(grams))];
        weight_falls(&feedside::growth::of(&it.pair, &weighings, hours(96)))
    };
    // 14 g either way are within the limits of two ward weighings (Savenije and Brand 2006).
    assert_eq!(falls(3290, 80), None);
    assert_eq!(falls(3310, 80), None);
    assert_eq!(falls(3213, 80), Some((-87, 30)));
    // The first loss usually stops by about day 3 to 4 (NICE NG75, 2017).
    assert_eq!(falls(3213, 71), None);
    assert_eq!(falls(3213, 72), Some((-87, 30)));
}
