//! Invented records to hand over, and fixed keys. Shared by tests, the bench and the example.

#![allow(missing_docs, clippy::unwrap_used, dead_code)]

use feedside::handover::{
    DeskKeyPair, FeedTable, FindingRow, Fresh, Handed, NumberRow, PhaseRow, RateRow, RunRow,
    TabletKey,
};
use feedside::record::{
    Adjustment, At, BabyState, BreastAfter, Coded, EndedBy, Entry, Gestation, Grams, Hold, Journal,
    Label, Language, LastDay, NippleAfter, Pain, Pair, PairId, PlanItem, PlanWhat, PolicyMark,
    Reason, RiskNote, ScaleStep, Sex, Side, Sign, SignState, Text, Visit, VisitId, WallTime,
    WayOfBirth, Weighing, WeighingMoment, What,
};

/// 14 March 2026, 03:12 UTC.
const BEGAN_UTC_MS: i64 = 1_773_457_920_000;

pub fn tablet() -> TabletKey {
    TabletKey::from_random([7; 32])
}

pub fn desk() -> DeskKeyPair {
    DeskKeyPair::from_random([9; 32]).unwrap()
}

pub fn fresh(number: u8) -> Fresh {
    Fresh::from_random(std::array::from_fn(|at| {
        number.wrapping_mul(31).wrapping_add(at as u8)
    }))
}

pub fn began() -> WallTime {
    WallTime::new(BEGAN_UTC_MS, 60).unwrap()
}

pub fn pair() -> Pair {
    Pair {
        id: PairId::from_random([1; 16]),
        mother_id: None,
        bed: Label::new("Bay 2 bed 4").unwrap(),
        initials: Label::new("M. K.").unwrap(),
        mother_number: Some(Label::new("900112").unwrap()),
        baby_number: Some(Label::new("900113").unwrap()),
        birth: WallTime::new(BEGAN_UTC_MS - 61 * 3_600_000, 60).unwrap(),
        sex: Sex::Female,
        gestation: Some(Gestation::weeks_days(38, 2).unwrap()),
        birth_weight: Some(Grams::new(3_240).unwrap()),
        way_of_birth: Some(WayOfBirth::Caesarean),
        babies: 1,
        risk_notes: vec![
            Coded::Known(RiskNote::EarlyTerm),
            Coded::Known(RiskNote::FirstBaby),
        ],
        reasons: vec![Coded::Known(Reason::Pain), Coded::of_word("asked_by_ward")],
        language: Some(Language::new("tr").unwrap()),
    }
}

/// A small generator, so that a sample is the same everywhere.
struct Dice(u64);

impl Dice {
    fn roll(&mut self, low: u64, high: u64) -> u64 {
        self.0 = self
            .0
            .wrapping_mul(6_364_136_223_846_793_005)
            .wrapping_add(1_442_695_040_888_963_407);
        low + (self.0 >> 33) % (high - low + 1)
    }
}

fn entry(journal: &Journal, at_ms: u64, what: What) -> Entry {
    let at = At::ms(at_ms);
    journal.next(at, began().plus_ms(at_ms as i64 + 3), what)
}

/// An ordinary visit: one feed of about twenty minutes, two adjustments, notes of two hundred
/// characters, six things agreed.
pub fn ordinary(seed: u64, taps: bool) -> Handed {
    let mut dice = Dice(seed);
    let mut journal = Journal::new();
    let mut table = FeedTable::default();
    let mut put = |at_ms: u64, what: What| {
        let entry = entry(&journal, at_ms, what);
        journal.push(entry).unwrap();
    };
    put(
        5_000,
        What::LastDay(
            LastDay {
                feeds: Some(9),
                wet: Some(2),
                dirty: Some(1),
                sleepy: Some(true),
                baby_danger: Some(Vec::new()),
                mother_danger: Some(Vec::new()),
                ..LastDay::default()
            }
            .checked()
            .unwrap(),
        ),
    );
    put(
        20_000,
        What::Weighed(Weighing {
            grams: Grams::new(2_995).unwrap(),
            step: Some(ScaleStep::new(5).unwrap()),
            clothed: false,
            moment: WeighingMoment::Routine,
            taken: None,
        }),
    );
    put(
        60_000,
        What::FeedStarted {
            side: Side::Left,
            hold: Hold::CrossCradle,
        },
    );
    for (at, sign) in (0u64..).zip(Sign::ALL) {
        put(
            70_000 + at * 1_300,
            What::SignChanged {
                sign: *sign,
                state: Some(if at % 4 == 1 {
                    SignState::NotSeen
                } else {
                    SignState::Seen
                }),
            },
        );
    }
    put(
        88_000,
        What::Pain {
            score: Pain::score(6).unwrap(),
            feed: None,
        },
    );
    let mut at_ms = 90_000;
    let mut last_end = At::ms(at_ms);
    for run in 0..55 {
        if run == 4 || run == 9 {
            put(
                at_ms + 500,
                What::AdjustmentTried {
                    what: if run == 4 {
                        Adjustment::CloserIn
                    } else {
                        Adjustment::ChinFirst
                    },
                },
            );
            put(
                at_ms + 900,
                What::SignChanged {
                    sign: Sign::ChinIn,
                    state: Some(SignState::Seen),
                },
            );
            put(
                at_ms + 1_200,
                What::Pain {
                    score: Pain::score(2).unwrap(),
                    feed: None,
                },
            );
        }
        at_ms += dice.roll(2_500, 9_000);
        let (from, mut sucks, mut swallows) = (At::ms(at_ms), 0, 0);
        table.phases.push(PhaseRow {
            from: last_end,
            to: from,
            phase: "rest".to_owned(),
            percent: 100,
        });
        for suck in 0..dice.roll(12, 28) {
            let swallow = 6 < run && suck % 3 == 2;
            if taps {
                put(
                    at_ms,
                    if swallow {
                        What::SuckSwallow
                    } else {
                        What::Suck
                    },
                );
            }
            sucks += 1;
            swallows += u32::from(swallow);
            at_ms += dice.roll(520, 860);
        }
        last_end = At::ms(at_ms + 1);
        table.runs.push(RunRow {
            from,
            to: last_end,
            sucks,
            swallows,
        });
        table.phases.push(PhaseRow {
            from,
            to: last_end,
            phase: if run < 7 { "quick" } else { "flow" }.to_owned(),
            percent: dice.roll(71, 99) as u8,
        });
        table.sucks += sucks;
        table.swallows += swallows;
    }
    at_ms += 4_000;
    put(at_ms, What::FeedEnded { by: EndedBy::Baby });
    put(
        at_ms + 9_000,
        What::NippleAfter {
            nipple: NippleAfter::Creased,
            feed: None,
        },
    );
    put(
        at_ms + 10_000,
        What::BreastAfter {
            breast: BreastAfter::Softer,
            feed: None,
        },
    );
    put(
        at_ms + 11_000,
        What::BabyState {
            state: BabyState::Content,
            feed: None,
        },
    );
    put(
        at_ms + 30_000,
        What::Note {
            text: Text::new(
                "Father there and keen to help. Baby rooted well after being unwrapped; the first \
                 latch was shallow and sore, deeper after two tries. Mother wants to try lying down \
                 tonight, please look in.",
            )
            .unwrap(),
        },
    );
    for (at, what) in (0u64..).zip(&PlanWhat::ALL[..5]) {
        put(
            at_ms + 40_000 + at * 2_000,
            What::PlanItem(PlanItem {
                what: Some(Coded::Known(*what)),
                words: None,
            }),
        );
    }
    put(
        at_ms + 52_000,
        What::PlanItem(PlanItem {
            what: None,
            words: Some(Text::new("Pillow behind the back, feet up").unwrap()),
        }),
    );
    put(
        at_ms + 60_000,
        What::NextLook {
            due: began().plus_ms(8 * 3_600_000),
        },
    );
    put(
        at_ms + 70_000,
        What::Signed {
            by: Label::new("R. Lindqvist-Oye").unwrap(),
        },
    );

    table.watched_ms = at_ms - 60_000;
    table.first_flow = table.runs.get(7).map(|row| row.from);
    table.doubts = vec!["long_silence".to_owned()];
    for (phase, per_min, hundredths) in [
        (Some("quick"), true, [10_120, 9_700, 10_540]),
        (Some("flow"), true, [8_780, 8_610, 8_950]),
        (Some("flow"), false, [301, 262, 346]),
        (None, true, [8_990, 8_830, 9_160]),
        (None, false, [352, 310, 402]),
    ] {
        table.rates.push(RateRow {
            phase: phase.map(str::to_owned),
            per_min,
            hundredths,
        });
    }
    Handed {
        pair: pair(),
        visit: Visit {
            id: VisitId::from_random([2; 16]),
            pair: PairId::from_random([1; 16]),
            began: began(),
            specialist: Label::new("R. Lindqvist-Oye").unwrap(),
            replaces: None,
            journal,
        },
        taps,
        feeds: vec![table],
        findings: vec![
            finding("pain-through-feed", "act_today", &[("score", 6, "score")]),
            finding(
                "nipple-misshapen",
                "act_today",
                &[("loss", 76, "tenths_percent"), ("age", 61, "h")],
            ),
            finding("output-few-wet", "keep_watching", &[("count", 2, "count")]),
        ],
        unjudged: vec![(
            "rhythm-no-first-flow".to_owned(),
            vec!["watched_time".to_owned()],
        )],
        policy: PolicyMark {
            name: "Published defaults".to_owned(),
            version: "1".to_owned(),
            hash: "5f".repeat(32),
        },
        rule_versions: ["rhythm-1", "growth-1", "findings-1"].map(str::to_owned),
    }
}

fn finding(rule: &str, level: &str, numbers: &[(&str, i64, &str)]) -> FindingRow {
    FindingRow {
        rule: rule.to_owned(),
        level: level.to_owned(),
        numbers: numbers
            .iter()
            .map(|(name, value, unit)| NumberRow {
                name: (*name).to_owned(),
                value: *value,
                unit: (*unit).to_owned(),
            })
            .collect(),
        source: "common-practice".to_owned(),
        tries: vec![Coded::Known(Adjustment::CloserIn)],
        plan: vec![Coded::Known(PlanWhat::WatchNextFeed)],
        call: "feeding_team".to_owned(),
    }
}

/// The least there can be: no entry, no feed.
pub fn smallest() -> Handed {
    let mut handed = ordinary(1, false);
    handed.visit.journal = Journal::new();
    handed.feeds.clear();
    handed.findings.clear();
    handed.unjudged.clear();
    handed
}

pub fn hex(bytes: &[u8]) -> String {
    bytes.iter().map(|byte| format!("{byte:02x}")).collect()
}

pub fn bytes(hex: &str) -> Vec<u8> {
    let digits: Vec<u8> = hex
        .chars()
        .filter(|c| !c.is_whitespace())
        .map(|c| c.to_digit(16).unwrap() as u8)
        .collect();
    digits
        .chunks(2)
        .map(|pair| pair[0] << 4 | pair[1])
        .collect()
}

pub fn fixed(hex: &str) -> [u8; 32] {
    bytes(hex).try_into().unwrap()
}
