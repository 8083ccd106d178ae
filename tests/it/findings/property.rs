//! What holds for any visit: no rule holds on missing data, missing data never reads as fine, and
//! a danger that was recorded is never silent.

use feedside::findings::{Level, Limit, Policy, catalogue, rule};
use feedside::record::{
    BabyDanger, Coded, Jaundice, LastDay, MotherDanger, NippleAfter, Sign, SignState, StoolColour,
    TenthsCelsius,
};
use proptest::prelude::*;

use super::scene::{Scene, at};

#[test]
fn of_a_visit_with_nothing_asked_or_seen_nothing_is_said_and_all_is_missing() {
    for age_h in [0, 23, 24, 72, 200, 400, 600, 3000] {
        let judged = at(age_h).judged();
        assert_eq!(judged.findings, [], "{age_h}");
        for it in &judged.unjudged {
            assert!(!it.missing.is_empty(), "{}", it.rule);
        }
    }
    // At three days every rule is either lacking something or not for this age or visit.
    let judged = at(72).judged();
    let judged: Vec<&str> = judged.unjudged.iter().map(|it| it.rule.as_str()).collect();
    let silent: Vec<&str> = catalogue()
        .map(|it| it.id)
        .filter(|id| !judged.contains(id))
        .collect();
    assert_eq!(
        silent,
        [
            "baby-urine-dark-yellow",
            "baby-urine-dark",
            "weight-loss-second-week",
            "weight-not-back-21",
            "weight-not-back-14",
            "weight-falling",
            "weight-below-second-centile",
            "weight-centile-fall",
            "weight-loss-born-early",
            "weight-asked",
            "weight-swapped",
            "weight-gain-slow",
            "weight-test-low",
            "weight-gaining",
            "weight-test-enough",
            "output-no-meconium",
            "output-wet-gap",
            "feeds-none-first-day",
            "feeds-few-first-day",
            "risk-born-early",
            "risk-twins",
            "risk-low-sugar",
            "risk-jaundice",
            "risk-milk-later",
            "risk-tongue",
        ]
    );
}

fn last_day() -> impl Strategy<Value = LastDay> {
    use proptest::option::of;
    let counts = (of(0u8..14), of(0u8..10), of(0u8..10), of(0u8..40));
    let looks = (
        of(proptest::sample::select(StoolColour::ALL)),
        of(any::<bool>()),
        of(any::<bool>()),
        of(proptest::sample::select(Jaundice::ALL)),
        of(340i64..390),
    );
    let dangers = (
        of(proptest::collection::vec(
            proptest::sample::select(BabyDanger::ALL),
            0..3,
        )),
        of(proptest::collection::vec(
            proptest::sample::select(MotherDanger::ALL),
            0..3,
        )),
    );
    (counts, looks, dangers).prop_map(|(counts, looks, dangers)| LastDay {
        feeds: counts.0,
        wet: counts.1,
        dirty: counts.2,
        hours_since_wet: counts.3,
        stool: looks.0,
        urates: looks.1,
        sleepy: looks.2,
        jaundice: looks.3,
        temperature: looks.4.map(|it| TenthsCelsius::new(it).unwrap()),
        baby_danger: dangers
            .0
            .map(|all| all.into_iter().map(Coded::Known).collect()),
        mother_danger: dangers
            .1
            .map(|all| all.into_iter().map(Coded::Known).collect()),
        ..LastDay::default()
    })
}

fn scenes() -> impl Strategy<Value = Scene> {
    use proptest::option::of;
    (
        0i64..900,
        of(last_day()),
        proptest::collection::vec((0i64..900, 2400i64..4600, any::<bool>()), 0..4),
        any::<bool>(),
        proptest::collection::vec(
            (0usize..12, proptest::sample::select(SignState::ALL)),
            0..12,
        ),
        of((
            0u64..400,
            0u64..400,
            0u64..200,
            of(proptest::sample::select(NippleAfter::ALL)),
        )),
        proptest::collection::vec((0u64..600, 0i64..11), 0..5),
    )
        .prop_map(|(age_h, day, weights, known, signs, feed, pains)| {
            let mut it = at(age_h);
            it.visit.last_day = day;
            if !known {
                it.pair.birth_weight = None;
            }
            for (at_h, grams, clothed) in weights {
                it = it.weight_as(at_h.min(age_h), grams, clothed);
            }
            for (sign, state) in signs {
                it = it.sign(Sign::ALL[sign], state);
            }
            if let Some((quick, flow, flutter, nipple)) = feed {
                it = it.feed([quick, flow, flutter, 60], 20);
                it = it.last_feed(|feed| feed.nipple_after = nipple);
                let mut pains = pains;
                pains.sort_unstable();
                for (second, score) in pains {
                    it = it.pain(second, score);
                }
            }
            it
        })
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(400))]

    #[test]
    fn a_recorded_danger_is_never_silent(it in scenes()) {
        let ids = it.ids();
        let day = it.visit.last_day.clone().unwrap_or_default();
        for sign in day.baby_danger.iter().flatten() {
            let id = format!("baby-{}", sign.word().replace('_', "-"));
            prop_assert!(ids.contains(&id), "{id}");
        }
        for sign in day.mother_danger.iter().flatten() {
            let id = format!("mother-{}", sign.word().replace('_', "-"));
            prop_assert!(ids.contains(&id), "{id}");
        }
        if let Some(celsius) = day.temperature.map(i64::from) {
            let said = ids.iter().any(|id| id.starts_with("baby-temperature-")
                && rule(id).unwrap().level == Level::MedicalReviewNow);
            prop_assert_eq!(said, !(355..=375).contains(&celsius));
        }
        if day.wet == Some(0) && 24 <= it.age_h {
            prop_assert!(ids.contains(&"output-no-wet".to_owned()));
        }
        // The last bare weight, if none of the same hour disagrees.
        let bare = it.weights.iter().filter(|w| !w.1.clothed).max_by_key(|w| w.0.utc_ms());
        if let (Some(birth), Some(last)) = (it.pair.birth_weight, bare) {
            let alone = it.weights.iter().filter(|w| w.0 == last.0).count() == 1;
            let lost = i64::from(birth) - i64::from(last.1.grams);
            if alone && i64::from(birth) < lost * 10 {
                prop_assert!(ids.contains(&"weight-loss-over-ten".to_owned()));
            }
        }
    }

    #[test]
    fn taking_an_answer_away_never_makes_a_rule_hold_by_itself(it in scenes()) {
        let before = it.ids();
        let mut less = it.clone();
        less.visit.last_day = None;
        for id in less.ids() {
            // "No feed" asks whether milk was given another way; without the answers it has no count.
            prop_assert!(before.contains(&id), "{id} holds only when the answers are missing");
        }
        let mut no_weight = it.clone();
        no_weight.weights.clear();
        for id in no_weight.ids() {
            prop_assert!(before.contains(&id), "{id} holds only when the weights are missing");
        }
    }

    #[test]
    fn a_ward_s_threshold_changes_only_the_rules_that_name_it(it in scenes(), place in 0usize..14) {
        let limit = Limit::ALL[place];
        let facts = limit.facts();
        let written = |value: i64| if limit.is_in_tenths() {
            format!("{}.{}", value / 10, value % 10)
        } else {
            value.to_string()
        };
        // The other thresholds give way, so that every value of this one is in order.
        let policy = |value| Policy::from_toml(&format!(
            "name = \"W\"\nversion = \"1\"\nauthor = \"L\"\ndate = \"2026-01-01\"\n[limits]\n{}{} = {}\n",
            if limit == Limit::WeightLossAct { "weight_loss_watch_percent = 7.0\n" } else { "" },
            limit.as_word(),
            written(value),
        ));
        let (Ok(low), Ok(high)) = (policy(facts.low), policy(facts.high)) else {
            return Ok(());
        };
        let judged = |policy: Policy| Scene { policy, ..it.clone() }.judged();
        let (low, high) = (judged(low), judged(high));
        for rule in catalogue() {
            let of = |judged: &feedside::findings::Judged| (
                judged.findings.iter().find(|it| it.rule == rule.id).cloned(),
                judged.unjudged.iter().find(|it| it.rule == rule.id).cloned(),
            );
            if of(&low) != of(&high) {
                prop_assert!(rule.limits.contains(&limit), "{} does not name {:?}", rule.id, limit);
            }
        }
    }

    #[test]
    fn the_ward_list_from_marks_is_the_one_from_judging_every_visit_again(visits in proptest::collection::vec(scenes(), 0..5), now_h in 0i64..1200) {
        use feedside::findings::{REVIEW_VISITS, VisitMark, WardPlace, WardWhy};
        let kept: Vec<VisitMark> = visits.iter()
            .map(|it| VisitMark::of(super::scene::birth(), &it.visit, &it.judged(), &it.policy))
            .collect();
        let now = super::scene::birth().plus_ms(now_h * 3_600_000);
        let place = WardPlace::of(&kept, false, now);
        let review = visits.iter().rev().take(REVIEW_VISITS)
            .any(|it| it.judged().findings.iter().any(|it| it.level == Level::MedicalReviewNow));
        prop_assert_eq!(place.why == WardWhy::Review, review);
        let again: Vec<VisitMark> = visits.iter()
            .map(|it| VisitMark::of(super::scene::birth(), &it.visit, &it.judged(), &it.policy))
            .collect();
        prop_assert_eq!(place, WardPlace::of(&again, false, now));
    }

    #[test]
    fn no_rule_is_both_held_and_unjudged_and_the_gravest_come_first(it in scenes()) {
        let judged = it.judged();
        for finding in &judged.findings {
            prop_assert!(judged.unjudged.iter().all(|other| other.rule != finding.rule));
            prop_assert_eq!(finding.numbers.len(), rule(&finding.rule).unwrap().numbers.len());
        }
        let levels: Vec<_> = judged.findings.iter().map(|finding| finding.level).collect();
        prop_assert!(levels.is_sorted());
        for other in &judged.unjudged {
            prop_assert!(!other.missing.is_empty());
        }
    }
}
