//! What the events on the Pair, Before, Plan and Ward screens lead to, and where the drawings put
//! their marks.

use feedside::app::around::Around;
use feedside::app::before::{self, NappyKey};
use feedside::app::clock::Now;
use feedside::app::keeper::{Story, WardLine};
use feedside::app::open_visit::{OpenVisit, Others, Weighed};
use feedside::app::pair::chart::{commands, nappies, weight_chart};
use feedside::app::pair::{self, Form};
use feedside::app::plan;
use feedside::app::preferences::Preferences;
use feedside::app::ward;
use feedside::findings::{CallWhom, Level, Policy, RULE_VERSION, VisitMark};
use feedside::record::{
    Coded, Grams, LastDay, Pair, PairId, PlanItem, PlanWhat, StoolColour, Text, Visit, VisitId,
    WallTime, WayOfBirth, Weighing, WeighingMoment, What,
};
use feedside::store::{VisitHead, WardRow};
use uuid::Uuid;

use crate::support::{add, empty_visit, sample_began, sample_pair};

const HOUR_MS: i64 = 3_600_000;

fn now(ms: u64) -> Now {
    Now {
        boot_ms: 5_000_000 + ms,
        wall: sample_began().plus_ms(i64::try_from(ms).unwrap()),
    }
}

fn specialist() -> Preferences {
    Preferences {
        specialist: "kb".to_owned(),
        ..Preferences::default()
    }
}

/// What an update gets, over a visit, at one moment.
fn with<T>(visit: Visit, at_ms: u64, act: impl FnOnce(&Around<'_>) -> T) -> T {
    let open = OpenVisit::take_up(sample_pair(), visit, Others::default(), now(at_ms));
    act(&Around {
        now: now(at_ms),
        open: Some(&open),
        preferences: &specialist(),
        policy: &Policy::built_in(),
        has_pin: false,
    })
}

fn weighed(grams: i64, clothed: bool) -> Weighing {
    Weighing {
        grams: Grams::new(grams).unwrap(),
        step: None,
        clothed,
        moment: WeighingMoment::Routine,
        taken: None,
    }
}

fn at_hours(hours: i64) -> WallTime {
    sample_pair().birth.plus_ms(hours * HOUR_MS)
}

fn story(weights: &[(i64, i64)], days: &[(i64, u8, u8)]) -> Story {
    let visit = empty_visit().id;
    let day = |(hours, wet, dirty): &(i64, u8, u8)| {
        let told = LastDay {
            wet: Some(*wet),
            dirty: Some(*dirty),
            ..LastDay::default()
        };
        (at_hours(*hours), told)
    };
    let weighings = weights.iter();
    Story {
        pair: sample_pair(),
        visits: Vec::new(),
        receipts: Vec::new(),
        weighings: weighings
            .map(|(hours, grams)| {
                let at = at_hours(*hours);
                let weighing = weighed(*grams, false);
                (
                    visit,
                    Weighed {
                        told: at,
                        at,
                        weighing,
                    },
                )
            })
            .collect(),
        last_day: None,
        days: days.iter().map(day).collect(),
        acknowledged: Vec::new(),
    }
}

#[test]
fn a_weight_is_kept_with_step_moment_and_clothes() {
    use before::Event as It;
    let effects = with(empty_visit(), 60_000, |around| {
        let mut model = before::Model::default();
        let mut effects = Vec::new();
        for event in [
            It::StepChosen(1),
            It::MomentChosen(2),
            It::Clothed(true),
            It::WeightTaken("3255".to_owned()),
        ] {
            effects.extend(before::update(&mut model, event, around));
        }
        effects
    });
    let [before::Effect::Note(What::Weighed(kept))] = &effects[..] else {
        panic!("{effects:?}");
    };
    assert_eq!(kept.step.map(|it| it.value()), Some(2));
    assert_eq!(kept.moment, WeighingMoment::AfterFeed);
    assert!(kept.clothed);
}

#[test]
fn a_nappy_is_added_once_told_and_heavy_is_wet_as_well() {
    use before::Event as It;
    let effects = with(empty_visit(), 60_000, |around| {
        let mut model = before::Model::default();
        let mut effects = Vec::new();
        for event in [
            // Nothing told yet: nothing added.
            It::NappyAdded,
            It::NappyTouched(NappyKey::Urates),
            It::NappyAdded,
            It::NappyTouched(NappyKey::Heavy),
            It::NappyTouched(NappyKey::Stool(2)),
            It::NappyAdded,
            // The same nappy is not added twice.
            It::NappyAdded,
        ] {
            effects.extend(before::update(&mut model, event, around));
        }
        effects
    });
    let [before::Effect::Note(What::Nappy(nappy))] = &effects[..] else {
        panic!("{effects:?}");
    };
    assert!(nappy.wet && nappy.heavy && !nappy.urates);
    assert_eq!(nappy.stool, Some(StoolColour::Yellow));
}

#[test]
fn a_weight_of_the_visit_that_is_asked_about_is_said_right_or_taken_back() {
    let mut visit = empty_visit();
    // A slip of a digit: a third lighter than at birth.
    add(&mut visit, 30_000, What::Weighed(weighed(2255, false)));
    let act = |visit: Visit, event| {
        with(visit, 60_000, |around| {
            before::update(&mut before::Model::default(), event, around)
        })
    };
    let right = act(visit.clone(), before::Event::SaidRight(0));
    let [before::Effect::Note(What::FindingAcknowledged { rule, by })] = &right[..] else {
        panic!("{right:?}");
    };
    assert!(rule.starts_with("weight-right-"));
    assert_eq!(by.as_str(), "kb");
    let correct = act(visit.clone(), before::Event::CorrectWanted(0));
    assert_eq!(correct, [before::Effect::Note(What::Struck { entry: 1 })]);
    // Once it is said to be right, nothing is asked any more.
    let said = What::FindingAcknowledged {
        rule: rule.clone(),
        by: by.clone(),
    };
    add(&mut visit, 40_000, said);
    assert_eq!(act(visit, before::Event::SaidRight(0)), []);
}

#[test]
fn a_weight_said_to_be_right_while_no_visit_is_open_waits_for_the_next_of_that_pair() {
    // A slip of a digit: a third lighter than at birth.
    let told = story(&[(40, 2255)], &[]);
    let (policy, preferences) = (Policy::built_in(), specialist());
    let closed = Around {
        now: now(60_000),
        open: None,
        preferences: &preferences,
        policy: &policy,
        has_pin: false,
    };
    let fresh = PairId::of(Uuid::from_u128(1));
    let mut model = pair::Model::default();
    let came = |told: &Story| pair::Event::Came(Box::new(told.clone()));
    for event in [
        came(&told),
        pair::Event::SaidRight(0),
        // Neither another pair's visit nor a look elsewhere takes it.
        pair::Event::NewWanted,
        came(&told),
    ] {
        assert_eq!(pair::update(&mut model, event, &closed, fresh), []);
    }
    let opened = |pair: Pair, model: &mut pair::Model| {
        let open = OpenVisit::take_up(pair, empty_visit(), Others::default(), now(60_000));
        let around = Around {
            open: Some(&open),
            ..closed
        };
        pair::update(model, pair::Event::VisitCame, &around, fresh)
    };
    let other = Pair {
        id: fresh,
        ..sample_pair()
    };
    assert_eq!(opened(other, &mut model), []);
    let noted = opened(sample_pair(), &mut model);
    let [pair::Effect::Note(What::FindingAcknowledged { rule, by })] = &noted[..] else {
        panic!("{noted:?}");
    };
    assert_eq!(*rule, format!("weight-right-{}", at_hours(40).utc_ms()));
    assert_eq!(by.as_str(), "kb");
    // Once only.
    assert_eq!(opened(sample_pair(), &mut model), []);
}

#[test]
fn going_back_leads_to_the_feeds_once_there_are_any() {
    use feedside::record::{EndedBy, Hold, Side};
    let back = |visit: Visit| {
        with(visit, 600_000, |around| {
            let event = before::Event::BackWanted;
            before::update(&mut before::Model::default(), event, around)
        })
    };
    assert_eq!(back(empty_visit()), [before::Effect::Leave]);
    let mut visit = empty_visit();
    let started = What::FeedStarted {
        side: Side::Left,
        hold: Hold::Cradle,
    };
    add(&mut visit, 1_000, started);
    assert_eq!(back(visit.clone()), [before::Effect::Bedside]);
    add(&mut visit, 90_000, What::FeedEnded { by: EndedBy::Baby });
    assert_eq!(back(visit), [before::Effect::LookBack]);
}

#[test]
fn whom_to_call_is_agreed_by_one_touch_and_taken_back_by_the_next() {
    let place = plan::CALLS
        .iter()
        .position(|it| *it == CallWhom::FeedingTeam);
    let touch = |visit: Visit| {
        with(visit, 60_000, |around| {
            let event = plan::Event::CallChosen(place.unwrap());
            plan::update(&mut plan::Model::default(), event, around)
        })
    };
    let item = |words: Option<&str>| PlanItem {
        what: Some(Coded::Known(PlanWhat::CallFeedingTeam)),
        words: words.map(|it| Text::new(it).unwrap()),
    };
    let told = touch(empty_visit());
    assert_eq!(told, [plan::Effect::Note(What::PlanItem(item(None)))]);
    // Told with a number that the ward's policy no longer gives: taken back all the same.
    for words in [None, Some("bleep 101")] {
        let mut visit = empty_visit();
        add(&mut visit, 30_000, What::PlanItem(item(words)));
        let struck = plan::Effect::Note(What::Struck { entry: 1 });
        assert_eq!(touch(visit), [struck]);
    }
}

#[test]
fn a_call_is_agreed_with_the_wards_own_number() {
    let policy = "name = \"W\"\nversion = \"1\"\nauthor = \"A\"\ndate = \"2026-11-25\"\n\
                  [call]\nbaby_doctor = \"bleep 101\"\n";
    let policy = Policy::from_toml(policy).unwrap();
    let open = OpenVisit::take_up(sample_pair(), empty_visit(), Others::default(), now(60_000));
    let around = Around {
        now: now(60_000),
        open: Some(&open),
        preferences: &specialist(),
        policy: &policy,
        has_pin: false,
    };
    let event = plan::Event::CallChosen(0);
    let told = plan::update(&mut plan::Model::default(), event, &around);
    let item = PlanItem {
        what: Some(Coded::Known(PlanWhat::CallBabyDoctor)),
        words: Some(Text::new("bleep 101").unwrap()),
    };
    assert_eq!(told, [plan::Effect::Note(What::PlanItem(item))]);
}

#[test]
fn a_twin_shares_the_mother_and_the_first_pair_learns_of_it() {
    let first = sample_pair();
    let fresh = PairId::of(Uuid::from_u128(7));
    let around_now = now(0);
    let around = Around {
        now: around_now,
        open: None,
        preferences: &specialist(),
        policy: &Policy::built_in(),
        has_pin: false,
    };
    let mut model = pair::Model {
        story: Some(Box::new(story(&[], &[]))),
        ..pair::Model::default()
    };
    pair::update(&mut model, pair::Event::TwinWanted, &around, fresh);
    let typed = pair::Event::Typed(pair::Field::BabyNumber, "W-2".to_owned());
    pair::update(&mut model, typed, &around, fresh);
    let effects = pair::update(&mut model, pair::Event::SaveWanted, &around, fresh);
    let saved: Vec<&Pair> = effects
        .iter()
        .filter_map(|it| match it {
            pair::Effect::Save(pair) => Some(&**pair),
            _ => None,
        })
        .collect();
    let [kept, twin] = saved[..] else {
        panic!("{effects:?}");
    };
    assert_eq!((kept.id, twin.id), (first.id, fresh));
    assert!(kept.mother_id.is_some());
    assert_eq!(kept.mother_id, twin.mother_id);
    assert_eq!((kept.babies, twin.babies), (2, 2));
    assert_eq!(twin.birth_weight, None);
    assert_eq!(twin.mother_number, first.mother_number);
    assert_eq!(twin.baby_number.as_ref().map(|it| it.as_str()), Some("W-2"));
}

#[test]
fn the_form_keeps_language_numbers_and_how_many() {
    let pair = sample_pair();
    let mut form = Form::of(&pair);
    assert_eq!(form.checked(pair.id, sample_began()).unwrap(), pair);
    form.babies = 3;
    form.language = None;
    form.mother_number = "  ".to_owned();
    let changed = form.checked(pair.id, sample_began()).unwrap();
    assert_eq!((changed.babies, changed.language), (3, None));
    assert_eq!(changed.mother_number, None);
    form.baby_number = "x".repeat(41);
    assert!(form.checked(pair.id, sample_began()).is_err());
}

#[test]
fn the_drawing_puts_each_weight_at_its_age_and_change() {
    // 3400 g at birth; 3060 g is exactly 10.0 % less.
    let weighings = [
        (at_hours(48), weighed(3060, false)),
        (at_hours(24), weighed(3230, true)),
    ];
    let chart = weight_chart(&sample_pair(), &weighings, at_hours(55)).unwrap();
    // Five days at least: 48 hours of 120.
    assert!((chart.weights[1].place.x - 0.4).abs() < 1e-5);
    assert_eq!(chart.weights[1].change_tenths, -100);
    assert_eq!(chart.weights[0].change_tenths, -50);
    assert!(chart.weights[0].clothed && !chart.weights[1].clothed);
    let across = |tenths| chart.across.iter().find(|it| it.1 == tenths).unwrap().0;
    assert!((across(-100) - chart.weights[1].place.y).abs() < 1e-5);
    assert!(across(0) < across(-50) && across(-50) < across(-100));
    // Vaginal birth: 4.2, 7.1 and 6.4 % at 24, 48 and 72 hours (Flaherman and others 2015).
    assert_eq!(chart.medians.len(), 3);
    assert!((chart.medians[1].x - 0.4).abs() < 1e-5);
    // -11.1 % on day 2 (van Dommelen and others 2007), and a line to day 5.
    assert_eq!(chart.line.len(), 4);
    assert!((chart.line[0].x - 0.4).abs() < 1e-5 && across(-100) < chart.line[0].y);
    for place in chart.line.iter().chain(&chart.medians) {
        assert!((0.0..=1.0).contains(&place.x) && (0.0..=1.0).contains(&place.y));
    }
    assert!(commands(&chart.line).starts_with("M 400.0 "));
}

#[test]
fn without_a_birth_weight_nothing_is_drawn_and_without_way_of_birth_no_median() {
    let mut pair = sample_pair();
    pair.way_of_birth = None;
    assert!(
        weight_chart(&pair, &[], at_hours(55))
            .unwrap()
            .medians
            .is_empty()
    );
    pair.way_of_birth = Some(WayOfBirth::Caesarean);
    assert_eq!(
        weight_chart(&pair, &[], at_hours(55))
            .unwrap()
            .medians
            .len(),
        4
    );
    pair.birth_weight = None;
    assert_eq!(weight_chart(&pair, &[], at_hours(55)), None);
}

#[test]
fn nappies_stand_against_the_least_expected_at_their_age() {
    // UK checklist family: 1 wet in 24 hours over days 1 to 2, 3 over days 3 to 4.
    let bars = nappies(&story(&[], &[(36, 1, 2), (84, 2, 1)]), true);
    let told: Vec<_> = bars.iter().map(|it| (it.day, it.count, it.least)).collect();
    assert_eq!(told, [(1, Some(1), Some(1)), (3, Some(2), Some(3))]);
    assert!(bars[1].height < bars[1].least_height);
    assert_eq!(bars[1].least_height, 1.0);
    assert!(nappies(&story(&[], &[]), false).is_empty());
}

fn ward_line(bed: u128, due_h: Option<i64>, level: Level) -> WardLine {
    let mut pair = sample_pair();
    pair.id = PairId::of(Uuid::from_u128(bed));
    let visit = empty_visit();
    let head = VisitHead {
        id: VisitId::of(Uuid::from_u128(100 + bed)),
        pair: pair.id,
        replaces: None,
        began: visit.began,
        specialist: visit.specialist.clone(),
        signed: true,
        receipt: true,
        next_look: due_h.map(|hours| sample_began().plus_ms(hours * HOUR_MS)),
        last_wall: visit.began,
    };
    let mark = VisitMark {
        gravest: String::new(),
        reviews: Vec::new(),
        began: visit.began,
        level: Some(level),
        review: level == Level::MedicalReviewNow,
        signed: true,
        receipt: true,
        next_look: head.next_look,
        rules: RULE_VERSION.to_owned(),
        policy: Policy::built_in().mark().hash,
    };
    WardLine {
        row: WardRow {
            pair,
            next_look: head.next_look,
            last: Some(head),
            waiting: 0,
        },
        marks: vec![mark],
        weighings: Vec::new(),
    }
}

#[test]
fn the_ward_is_ordered_by_what_is_due_the_gravest_of_it_first() {
    let lines = vec![
        ward_line(1, Some(5), Level::KeepWatching),
        ward_line(2, None, Level::KeepWatching),
        ward_line(3, Some(-1), Level::KeepWatching),
        ward_line(4, Some(-2), Level::KeepWatching),
        ward_line(5, Some(-1), Level::ActToday),
        ward_line(6, Some(3), Level::KeepWatching),
        ward_line(7, Some(4), Level::MedicalReviewNow),
    ];
    let policy = Policy::built_in();
    let around = Around {
        now: now(0),
        open: None,
        preferences: &Preferences::default(),
        policy: &policy,
        has_pin: false,
    };
    let mut model = ward::Model::default();
    ward::update(&mut model, ward::Event::Came(lines), &around);
    let order: Vec<u128> = model
        .lines
        .iter()
        .map(|line| line.pair.id.uuid().as_u128() & 0xff)
        .collect();
    assert_eq!(order, [7, 5, 4, 3, 6, 1, 2]);
}
