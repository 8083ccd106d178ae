//! Rows over the wire to the values of the rooms that computed them. Expected values by hand from
//! the table in `mod.rs`.

use feedside::desk::table::{UnknownWord, computed};
use feedside::findings::{CallWhom, Level};
use feedside::handover::{NumberRow, PhaseRow, RateRow};
use feedside::record::At;
use feedside::rhythm::{Doubt, Phase, Rate};

use super::{finding, handed_of};
use crate::support::bare_visit;

#[test]
fn a_table_becomes_the_summary_that_it_was_made_from() {
    let told = computed(&handed_of(bare_visit()));
    assert!(told.unknown.is_empty());
    let it = &told.rhythms[0];
    assert_eq!((it.watched_ms, it.sucks, it.swallows), (280_000, 40, 13));
    assert_eq!(it.first_flow, Some(At::ms(140_000)));
    assert_eq!(it.totals_ms.flow, 90_000);
    assert_eq!(it.totals_ms.rest, 120_000);
    assert_eq!(it.totals_ms.unwatched, 20_000);
    assert_eq!(it.phases[1].phase, Phase::Flow);
    assert!((it.phases[1].probability - 0.9).abs() < 1e-12);
    // One stretch of flow: the rest within it does not end it.
    assert_eq!(it.flow_episodes, 1);
    // Sucking 40 + 90 + 30 of 160 + 120 seconds on the breast and watched.
    assert!((it.share_sucking.unwrap() - 160.0 / 280.0).abs() < 1e-12);
    assert_eq!(it.run_statistics.count, 2);
    assert!((it.run_statistics.median_sucks - 20.0).abs() < 1e-12);
    assert!((it.run_statistics.median_ms - 65_000.0).abs() < 1e-9);
    assert!((it.run_statistics.spread_ms - 5_000.0).abs() < 1e-9);
    assert_eq!(it.rest_statistics.count, 2);
    assert!((it.rest_statistics.median_ms - 60_000.0).abs() < 1e-9);
    assert_eq!(it.doubts, [Doubt::FewSwallows]);
    let flow = it
        .rates
        .iter()
        .find(|it| it.phase == Some(Phase::Flow))
        .unwrap();
    let rate = |value, low, high| Some(Rate { value, low, high });
    assert_eq!(flow.sucks_per_min, rate(89.5, 80.0, 99.0));
    assert_eq!(flow.sucks_per_swallow, rate(2.5, 2.0, 3.1));
    let whole = it.rates.iter().find(|it| it.phase.is_none()).unwrap();
    assert_eq!(whole.sucks_per_swallow, None);
}

#[test]
fn unknown_words_are_left_out_with_a_doubt_each_once() {
    let mut handed = handed_of(bare_visit());
    let table = &mut handed.feeds[0];
    for _ in 0..2 {
        table.phases.push(PhaseRow {
            from: At::ms(400_000),
            to: At::ms(410_000),
            phase: "dozing".to_owned(),
            percent: 50,
        });
    }
    table.rates.push(RateRow {
        phase: Some("dozing".to_owned()),
        per_min: true,
        hundredths: [1, 1, 1],
    });
    table.doubts.push("noisy_room".to_owned());
    let told = computed(&handed);
    let unknown = |of, word: &str| UnknownWord {
        of,
        word: word.to_owned(),
    };
    assert_eq!(
        told.unknown,
        [unknown("phase", "dozing"), unknown("doubt", "noisy_room")]
    );
    assert_eq!(told.rhythms[0].phases.len(), 7);
    assert_eq!(told.rhythms[0].rates.len(), 2);
}

#[test]
fn a_finding_of_a_later_version_is_never_left_out() {
    let mut handed = handed_of(bare_visit());
    let mut strange = finding("look_at_once");
    strange.rule = "rule-of-a-later-version".to_owned();
    strange.call = "somebody_new".to_owned();
    strange.numbers.push(NumberRow {
        name: "glow".to_owned(),
        value: 1,
        unit: "lux".to_owned(),
    });
    handed.findings.insert(0, strange);
    let told = computed(&handed);
    let findings = &told.judged.findings;
    assert_eq!(findings.len(), 2);
    assert_eq!(
        findings[0].level,
        Level::MedicalReviewNow,
        "the gravest leads"
    );
    assert_eq!(findings[1].rule, "rule-of-a-later-version");
    assert_eq!(findings[1].level, Level::ActToday);
    assert_eq!(findings[1].call, CallWhom::MidwifeInCharge);
    assert_eq!(findings[1].numbers.len(), 1);
    assert_eq!(told.unknown.len(), 3);
    assert_eq!(told.judged.unjudged.len(), 1);
}
