//! Invented pairs and visits with fixed ids and a fixed clock, for the tests of several rooms.

use feedside::findings::{CallWhom, Finding, Judged, Level, Number, Unit, Unjudged};
use feedside::record::{
    Adjustment, At, BabyState, BreastAfter, BreastBefore, BreastState, Coded, EndedBy, Folded,
    Gestation, Grams, Hold, Jaundice, Label, Language, LastDay, Nappy, NippleAfter, Pain, Pair,
    PairId, PlanItem, PlanWhat, PolicyMark, Reason, RiskNote, ScaleStep, Sex, Side, Sign,
    SignState, StoolColour, Text, Visit, VisitId, WallTime, WayOfBirth, Weighing, WeighingMoment,
    What, fold,
};
use feedside::report::{Computed, Facts, RuleVersions};
use feedside::rhythm::{
    Doubt, Phase, PhaseRates, PhaseSpan, Rate, RestStatistics, Run, RunStatistics, Summary,
    TotalsMs,
};
use uuid::Uuid;

/// 4 March 2026, 09:30 at UTC+1: when the sample visit begins.
pub fn sample_began() -> WallTime {
    WallTime::new(1_772_613_000_000, 60).unwrap()
}

/// A girl of 39 weeks and 4 days, born two days and seven hours before the visit.
pub fn sample_pair() -> Pair {
    Pair {
        id: PairId::of(Uuid::from_u128(0x1111_2222_3333_4444_8555_6666_7777_8888)),
        mother_id: None,
        bed: Label::new("Bay 2 bed 4").unwrap(),
        initials: Label::new("T. W.").unwrap(),
        mother_number: Some(Label::new("W-00417").unwrap()),
        baby_number: Some(Label::new("W-00418").unwrap()),
        birth: sample_began().plus_ms(-55 * 3_600_000),
        sex: Sex::Female,
        gestation: Some(Gestation::weeks_days(39, 4).unwrap()),
        birth_weight: Some(Grams::new(3400).unwrap()),
        way_of_birth: Some(WayOfBirth::Vaginal),
        babies: 1,
        risk_notes: vec![Coded::Known(RiskNote::FirstBaby)],
        reasons: vec![Coded::Known(Reason::Pain), Coded::Known(Reason::Weight)],
        language: Some(Language::new("de").unwrap()),
    }
}

/// An empty visit of the sample pair.
pub fn empty_visit() -> Visit {
    let id = VisitId::of(Uuid::from_u128(0xabcd_ef01_2345_4678_89ab_cdef_0123_4567));
    let specialist = Label::new("kb").unwrap();
    Visit::new(id, sample_pair().id, sample_began(), specialist)
}

/// Adds an entry so many milliseconds after the visit began.
pub fn add(visit: &mut Visit, at_ms: u64, what: What) {
    let wall = visit.began.plus_ms(i64::try_from(at_ms).unwrap());
    let entry = visit.journal.next(At::ms(at_ms), wall, what);
    visit.journal.push(entry).unwrap();
}

/// What happens in the sample visit, in order, without the signature.
fn sample_entries() -> Vec<(u64, What)> {
    let sign = |sign, state| What::SignChanged {
        sign,
        state: Some(state),
    };
    let mut all = vec![
        (30_000, What::LastDay(sample_last_day())),
        (
            60_000,
            What::Weighed(Weighing {
                grams: Grams::new(3049).unwrap(),
                step: Some(ScaleStep::new(5).unwrap()),
                clothed: false,
                moment: WeighingMoment::Routine,
                taken: None,
            }),
        ),
        (
            70_000,
            What::BreastBefore(BreastBefore {
                side: Side::Left,
                breast: Some(BreastState::Filling),
                nipple: None,
            }),
        ),
        (
            100_000,
            What::FeedStarted {
                side: Side::Left,
                hold: Hold::Cradle,
            },
        ),
        (110_000, sign(Sign::Close, SignState::Seen)),
        (112_000, sign(Sign::ChinIn, SignState::NotSeen)),
        (114_000, sign(Sign::MouthWide, SignState::Unclear)),
        (
            120_000,
            What::Pain {
                score: Pain::score(6).unwrap(),
                feed: None,
            },
        ),
        (
            125_000,
            What::AdjustmentTried {
                what: Adjustment::ChinFirst,
            },
        ),
    ];
    all.extend((0..40).map(|n| {
        let what = if n % 3 == 2 {
            What::SuckSwallow
        } else {
            What::Suck
        };
        (130_000 + n * 700, what)
    }));
    all.extend([
        (
            160_000,
            What::Pain {
                score: Pain::score(2).unwrap(),
                feed: None,
            },
        ),
        (
            165_000,
            What::Pain {
                score: Pain::CannotSay,
                feed: None,
            },
        ),
        (400_000, What::FeedEnded { by: EndedBy::Baby }),
        (
            410_000,
            What::NippleAfter {
                nipple: NippleAfter::Creased,
                feed: None,
            },
        ),
        (
            415_000,
            What::BreastAfter {
                breast: BreastAfter::Softer,
                feed: None,
            },
        ),
        (
            420_000,
            What::BabyState {
                state: BabyState::Content,
                feed: None,
            },
        ),
        (
            430_000,
            What::Nappy(Nappy {
                wet: true,
                heavy: false,
                stool: Some(StoolColour::Green),
                urates: false,
            }),
        ),
        (
            500_000,
            What::Note {
                text: Text::new("=she says \"better\", and smiles").unwrap(),
            },
        ),
        (
            510_000,
            What::FindingAcknowledged {
                rule: "weight-loss-over-ten".to_owned(),
                by: Label::new("kb").unwrap(),
            },
        ),
        (
            520_000,
            What::PlanItem(PlanItem {
                what: Some(Coded::Known(PlanWhat::WeighAgain)),
                words: None,
            }),
        ),
        (
            530_000,
            What::PlanItem(PlanItem {
                what: None,
                words: Some(Text::new("Ask Tamsin Wrenfold's sister to stay").unwrap()),
            }),
        ),
        (
            540_000,
            What::NextLook {
                due: sample_began().plus_ms(6 * 3_600_000),
            },
        ),
    ]);
    all
}

fn sample_last_day() -> LastDay {
    LastDay {
        feeds: Some(7),
        wet: Some(1),
        stool: Some(StoolColour::Green),
        sleepy: Some(true),
        jaundice: Some(Jaundice::Face),
        mother_danger: Some(Vec::new()),
        ..LastDay::default()
    }
}

/// The sample visit, signed.
pub fn sample_visit() -> Visit {
    let mut visit = empty_visit();
    for (at_ms, what) in sample_entries() {
        add(&mut visit, at_ms, what);
    }
    let by = Label::new("kb").unwrap();
    add(&mut visit, 600_000, What::Signed { by });
    visit
}

/// A visit at both breasts: at the left the chin was not in, at the right it was seen.
pub fn both_breasts_visit() -> Visit {
    let mut visit = empty_visit();
    let start = |side| What::FeedStarted {
        side,
        hold: Hold::Cradle,
    };
    let sign = |sign, state| What::SignChanged {
        sign,
        state: Some(state),
    };
    add(&mut visit, 100_000, start(Side::Left));
    add(&mut visit, 110_000, sign(Sign::ChinIn, SignState::NotSeen));
    add(&mut visit, 120_000, sign(Sign::MouthWide, SignState::Seen));
    add(&mut visit, 130_000, sign(Sign::Close, SignState::Seen));
    add(&mut visit, 400_000, start(Side::Right));
    add(&mut visit, 410_000, sign(Sign::ChinIn, SignState::Seen));
    add(&mut visit, 420_000, sign(Sign::Close, SignState::Unclear));
    add(&mut visit, 700_000, What::FeedEnded { by: EndedBy::Baby });
    visit
}

/// A visit with one feed in which pain was told only after it.
pub fn pain_after_visit() -> Visit {
    let mut visit = empty_visit();
    let what = What::FeedStarted {
        side: Side::Left,
        hold: Hold::Cradle,
    };
    add(&mut visit, 100_000, what);
    add(&mut visit, 400_000, What::FeedEnded { by: EndedBy::Baby });
    let score = Pain::score(3).unwrap();
    add(&mut visit, 450_000, What::Pain { score, feed: None });
    visit
}

/// An amendment of the sample visit that takes back its weight and is signed again.
pub fn sample_amendment() -> Visit {
    let id = VisitId::of(Uuid::from_u128(0x0a0b_0c0d_0e0f_4001_8002_0304_0506_0708));
    let by = Label::new("kb").unwrap();
    let mut visit = sample_visit().amendment(id, by.clone()).unwrap();
    let weight = visit
        .journal
        .entries()
        .iter()
        .find(|entry| matches!(entry.what, What::Weighed(_)))
        .unwrap()
        .seq;
    add(&mut visit, 700_000, What::Struck { entry: weight });
    add(&mut visit, 710_000, What::Signed { by });
    visit
}

/// What an analysis might say of the sample visit's feed. Not computed: numbers to be shown.
pub fn sample_rhythm() -> Summary {
    let span = |from, to, phase| PhaseSpan {
        from: At::ms(from),
        to: At::ms(to),
        phase,
        probability: 0.9,
    };
    let rate = |value, low, high| Some(Rate { value, low, high });
    Summary {
        computed: None,
        watched_ms: 240_000,
        sucks: 40,
        swallows: 13,
        first_flow: Some(At::ms(142_000)),
        phases: vec![
            span(100_000, 142_000, Phase::Quick),
            span(142_000, 158_000, Phase::Flow),
            span(158_000, 340_000, Phase::Rest),
            span(340_000, 400_000, Phase::Unwatched),
        ],
        runs: vec![Run {
            from: At::ms(130_000),
            to: At::ms(157_301),
            sucks: 40,
            swallows: 13,
        }],
        totals_ms: TotalsMs {
            quick: 42_000,
            flow: 16_000,
            rest: 182_000,
            unwatched: 60_000,
            ..TotalsMs::default()
        },
        rates: vec![
            PhaseRates {
                phase: Some(Phase::Flow),
                sucks_per_min: rate(85.714, 80.25, 91.5),
                sucks_per_swallow: rate(3.08, 1.9, 5.2),
            },
            PhaseRates {
                phase: None,
                sucks_per_min: rate(85.7, 81.0, 90.4),
                sucks_per_swallow: None,
            },
        ],
        flow_episodes: 1,
        share_sucking: Some(0.117),
        run_statistics: RunStatistics {
            count: 1,
            median_sucks: 40.0,
            median_ms: 27_301.0,
            spread_ms: 0.0,
        },
        rest_statistics: RestStatistics {
            count: 1,
            median_ms: 182_000.0,
            spread_ms: 0.0,
        },
        doubts: vec![Doubt::FewSwallows, Doubt::LongUnwatched],
    }
}

/// What the rules might say of the sample visit. Not computed: findings to be shown.
pub fn sample_judged() -> Judged {
    let finding = |rule: &str, level, numbers, call| Finding {
        rule: rule.to_owned(),
        level,
        numbers,
        source: "sample-source".to_owned(),
        tries: Vec::new(),
        plan: Vec::new(),
        call,
    };
    let loss = vec![
        Number::new("loss", 103, Unit::TenthsPercent),
        Number::new("age", 55, Unit::Hour),
    ];
    Judged {
        findings: vec![
            finding(
                "weight-loss-over-ten",
                Level::MedicalReviewNow,
                loss,
                CallWhom::BabyDoctor,
            ),
            finding(
                "sample-mother-rule",
                Level::MedicalReviewNow,
                Vec::new(),
                CallWhom::MotherDoctor,
            ),
            finding(
                "sample-chin-rule",
                Level::ActToday,
                Vec::new(),
                CallWhom::FeedingTeam,
            ),
            finding(
                "sample-good-rule",
                Level::GoingWell,
                Vec::new(),
                CallWhom::Nobody,
            ),
        ],
        unjudged: vec![Unjudged {
            rule: "sample-temperature-rule".to_owned(),
            missing: vec!["temperature".to_owned()],
        }],
    }
}

/// A ward policy's mark.
pub fn sample_policy() -> PolicyMark {
    PolicyMark {
        name: "Sample ward".to_owned(),
        version: "3".to_owned(),
        hash: "5f".repeat(32),
    }
}

/// The facts of a visit of the sample pair, with the sample numbers.
pub fn facts_of(visit: &Visit) -> Facts {
    let folded: Folded = fold(&visit.journal);
    let rhythms: Vec<Summary> = folded.feeds.iter().map(|_| sample_rhythm()).collect();
    let growth = feedside::growth::of(
        &sample_pair(),
        &folded.weighings,
        visit.began.plus_ms(600_000),
    );
    let computed = Computed {
        rhythms: &rhythms,
        growth: Some(&growth),
        judged: &sample_judged(),
        policy: &sample_policy(),
        rule_versions: &RuleVersions::from(
            ["rhythm-1", "growth-1", "findings-1"].map(str::to_owned),
        ),
    };
    let mut facts = Facts::of(&sample_pair(), visit, &folded, &computed);
    facts.app_version = "0.0.0".to_owned();
    facts
}

/// The facts of the sample visit.
pub fn sample_facts() -> Facts {
    facts_of(&sample_visit())
}

/// A visit with nothing in it but its signature.
pub fn bare_visit() -> Visit {
    let mut visit = empty_visit();
    let by = Label::new("kb").unwrap();
    add(&mut visit, 1000, What::Signed { by });
    visit
}
