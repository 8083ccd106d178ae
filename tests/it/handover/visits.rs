//! Simulated visits, whole: a pair, answers, a watched feed from the simulator with what the
//! specialist does between the taps, words, a plan, and everything computed from them by the real
//! rules. Shared by the tests, the sizes and the vectors. People and places are invented.

#![allow(missing_docs, clippy::unwrap_used, dead_code)]

use feedside::findings::{self, Policy};
use feedside::growth;
use feedside::handover::{FeedTable, FindingRow, Handed, NumberRow, PhaseRow, RateRow, RunRow};
use feedside::practice::{Baby, HandLevel, simulate};
use feedside::record::{
    Adjustment, At, BabyDanger, BabyState, BreastAfter, BreastState, Coded, EndedBy, Entry, Feed,
    Gestation, Grams, Hold, Journal, Label, Language, LastDay, Millilitres, MotherDanger,
    NippleAfter, NippleBefore, Pain, Pair, PairId, PlanItem, PlanWhat, Reason, RiskNote, ScaleStep,
    Sex, Side, Sign, SignState, StoolColour, TapWhat, TenthsCelsius, Text, Visit, VisitId,
    WallTime, WayOfBirth, Weighing, WeighingMoment, What, fold,
};
use feedside::rhythm::{self, Rate, Rhythm, Summary};
use rand::{Rng, RngExt, SeedableRng};
use rand_chacha::ChaCha8Rng;

/// 1 February 2026, 00:00 UTC.
const FROM_UTC_MS: i64 = 1_769_904_000_000;
const DAY_MS: i64 = 86_400_000;

/// What a simulated visit is made of.
pub struct Kind {
    /// Characters of its notes, about.
    pub note_chars: usize,
    /// Minutes of its feed.
    pub minutes: u32,
    /// Things agreed.
    pub plan: usize,
    /// Sentences that its notes are made of.
    pub words: &'static [&'static str],
    /// Who may be at the bedside.
    pub names: &'static [&'static str],
    /// How unsteady the hand may be.
    pub hands: &'static [HandLevel],
}

/// The visit that one code is meant for: 20 minutes, notes of 200 characters, six things agreed.
pub const ORDINARY: Kind = Kind {
    note_chars: 200,
    minutes: 20,
    plan: 6,
    words: SENTENCES,
    names: &[
        "R. Lindqvist",
        "E. Hart",
        "M. Okafor-Lang",
        "S. Brandt",
        "Jo Penrose",
        "A. de Wit",
    ],
    hands: &[HandLevel::Careful, HandLevel::Usual, HandLevel::Tired],
};

/// Sentences of notes as a specialist might write them. None of them stands in the frozen words.
pub const SENTENCES: &[&str] = &[
    "Grandmother present, asks about bottles; explained supply and demand.",
    "First minutes were painful, eased once his chin was tucked in further.",
    "She leans forward over the baby, shoulders tense; footstool brought.",
    "Long pauses after ten minutes, started again with gentle compressions.",
    "Audible swallows from about minute four.",
    "Tearful at first, calmer at the end of the feed.",
    "Will ring the bell for the next feed, colleague on nights informed.",
    "Left side much easier than right.",
    "Hands kept in the way until unwrapped.",
    "Pump was the wrong flange size, changed to a smaller one.",
    "Scab on the right tip, not infected, breast milk applied.",
    "Hiccups and wind halfway, brought up twice and went back on.",
    "Wants to go home tomorrow if the weight holds.",
    "Partner shown how to help with the hold.",
    "Tongue lifts well and cups the finger.",
    "Slept in her arms afterwards with open hands.",
    "Milk seen dripping on the other side.",
    "Interpreter by phone, understood and repeated the plan back.",
    "Blood sugar taken by the neonatal nurse before the feed, normal.",
    "Discussed hand expression, she managed a few drops on her own.",
    "Wunde rechts, nach dem Wechsel der Haltung weniger Schmerzen.",
    "Vater hilft beim Anlegen, beide wirken sicherer.",
    "Kind anfangs sehr schläfrig, nach dem Wickeln wacher.",
    "Möchte heute Nacht im Liegen stillen, bitte einmal schauen.",
];

struct Dice(ChaCha8Rng);

impl Dice {
    fn of<T: Copy>(&mut self, all: &[T]) -> T {
        all[self.0.random_range(0..all.len())]
    }

    fn roll(&mut self, low: u64, high: u64) -> u64 {
        self.0.random_range(low..=high)
    }

    fn chance(&mut self, percent: u64) -> bool {
        self.roll(1, 100) <= percent
    }

    fn id(&mut self) -> [u8; 16] {
        let mut bytes = [0; 16];
        self.0.fill_bytes(&mut bytes);
        bytes
    }

    fn some<T: Copy + PartialEq>(&mut self, all: &[T], most: u64) -> Vec<T> {
        let mut some = Vec::new();
        for _ in 0..self.roll(0, most) {
            let one = self.of(all);
            if !some.contains(&one) {
                some.push(one);
            }
        }
        some
    }
}

fn pair(dice: &mut Dice, began: WallTime) -> Pair {
    let bed = match dice.roll(0, 3) {
        0 => format!("Bay {} bed {}", dice.roll(1, 6), dice.roll(1, 6)),
        1 => format!("Room {}", dice.roll(1, 30)),
        2 => format!("{}{}", dice.roll(1, 24), dice.of(&["A", "B"])),
        _ => format!("Zimmer {} Bett {}", dice.roll(1, 20), dice.roll(1, 3)),
    };
    let letter = |dice: &mut Dice| char::from(b'A' + dice.roll(0, 25) as u8);
    let initials = format!("{}. {}.", letter(dice), letter(dice));
    let numbers = dice.chance(50);
    let mut number =
        || numbers.then(|| Label::new(&dice.roll(1_000_000, 99_999_999).to_string()).unwrap());
    let (mother_number, baby_number) = (number(), number());
    let twins = dice.chance(4);
    let hours_old = dice.roll(8, 140) as i64;
    Pair {
        id: PairId::from_random(dice.id()),
        mother_id: twins.then(|| uuid::Uuid::from_bytes(dice.id())),
        bed: Label::new(&bed).unwrap(),
        initials: Label::new(&initials).unwrap(),
        mother_number,
        baby_number,
        birth: began.plus_ms(-hours_old * 3_600_000 - dice.roll(0, 59) as i64 * 60_000),
        sex: dice.of(&[Sex::Female, Sex::Male]),
        gestation: dice.chance(90).then(|| {
            Gestation::weeks_days(dice.roll(35, 41) as u16, dice.roll(0, 6) as u16).unwrap()
        }),
        birth_weight: Some(Grams::new(dice.roll(2_300, 4_400) as i64 / 5 * 5).unwrap()),
        way_of_birth: dice.chance(90).then(|| dice.of(WayOfBirth::ALL)),
        babies: if twins { 2 } else { 1 },
        risk_notes: dice
            .some(RiskNote::ALL, 2)
            .into_iter()
            .map(Coded::Known)
            .collect(),
        reasons: dice
            .some(Reason::ALL, 2)
            .into_iter()
            .map(Coded::Known)
            .collect(),
        language: dice
            .chance(30)
            .then(|| Language::new(dice.of(&["tr", "ar", "pl", "uk", "fr"])).unwrap()),
    }
}

fn last_day(dice: &mut Dice) -> Vec<What> {
    let count = |dice: &mut Dice, most| Some(dice.roll(0, most) as u8);
    let mut all = vec![LastDay {
        feeds: count(dice, 12),
        wet: count(dice, 6),
        dirty: count(dice, 5),
        ..LastDay::default()
    }];
    let mut second = LastDay {
        hours_since_wet: count(dice, 9),
        temperature: dice
            .chance(70)
            .then(|| TenthsCelsius::new(dice.roll(364, 374) as i64).unwrap()),
        stool: Some(dice.of(&[StoolColour::Black, StoolColour::Green, StoolColour::Yellow])),
        urates: Some(dice.chance(15)),
        ..LastDay::default()
    };
    if dice.chance(30) {
        second.expressed_ml = Some(Millilitres::new(dice.roll(1, 12) as i64 * 5).unwrap());
    }
    if dice.chance(20) {
        second.supplement_ml = Some(Millilitres::new(dice.roll(1, 12) as i64 * 5).unwrap());
    }
    all.push(second);
    let danger = dice.chance(8);
    all.push(LastDay {
        sleepy: Some(dice.chance(30)),
        jaundice: Some(dice.of(feedside::record::Jaundice::ALL)),
        baby_danger: Some(if danger {
            vec![Coded::Known(dice.of(BabyDanger::ALL))]
        } else {
            Vec::new()
        }),
        mother_danger: Some(if dice.chance(8) {
            vec![Coded::Known(dice.of(MotherDanger::ALL))]
        } else {
            Vec::new()
        }),
        ..LastDay::default()
    });
    all.into_iter()
        .map(|day| What::LastDay(day.checked().unwrap()))
        .collect()
}

fn note(dice: &mut Dice, kind: &Kind) -> String {
    let mut text = String::new();
    while text.chars().count() < kind.note_chars {
        if !text.is_empty() {
            text.push(' ');
        }
        text += dice.of(kind.words);
    }
    let mut text: String = text.chars().take(kind.note_chars).collect();
    text.truncate(text.trim_end().len());
    text
}

/// Everything that happens, by its time in milliseconds.
fn story(dice: &mut Dice, kind: &Kind, seed: u64) -> Vec<(u64, What)> {
    let mut all = Vec::new();
    let mut at_ms = dice.roll(20_000, 90_000);
    for what in last_day(dice) {
        all.push((at_ms, what));
        at_ms += dice.roll(5_000, 40_000);
    }
    if dice.chance(80) {
        let clothed = dice.chance(10);
        all.push((
            at_ms,
            What::Weighed(Weighing {
                grams: Grams::new(dice.roll(440, 860) as i64 * 5).unwrap(),
                step: dice.chance(50).then(|| ScaleStep::new(5).unwrap()),
                clothed,
                moment: WeighingMoment::Routine,
                taken: None,
            }),
        ));
        at_ms += dice.roll(10_000, 60_000);
    }
    let side = dice.of(Side::ALL);
    for part in 0..2 {
        let body = if part == 0 {
            serde_json::json!({"side": side, "breast": dice.of(BreastState::ALL)})
        } else {
            serde_json::json!({"side": side, "nipple": dice.of(NippleBefore::ALL)})
        };
        all.push((
            at_ms,
            What::BreastBefore(serde_json::from_value(body).unwrap()),
        ));
        at_ms += dice.roll(1_500, 9_000);
    }
    let start_ms = at_ms + dice.roll(20_000, 120_000);
    all.push((
        start_ms,
        What::FeedStarted {
            side,
            hold: dice.of(Hold::ALL),
        },
    ));
    let hand = dice.of(kind.hands).hand();
    let feed = simulate(dice.of(Baby::ALL), hand, seed, kind.minutes);
    let end_ms = feed.taps.last().map_or(0, |tap| tap.at.as_ms());
    for tap in &feed.taps {
        let what = match tap.what {
            TapWhat::Suck => What::Suck,
            TapWhat::SuckSwallow => What::SuckSwallow,
            TapWhat::Swallow => What::Swallow,
            TapWhat::Unwatched => What::UnwatchedFrom {
                from: At::ms(start_ms + tap.at.as_ms()),
            },
            TapWhat::Watched => What::UnwatchedTo,
            TapWhat::Off => What::BabyOff,
            TapWhat::On if 0 < tap.at.as_ms() => What::BabyOn,
            TapWhat::On | TapWhat::End => continue,
        };
        all.push((start_ms + tap.at.as_ms(), what));
    }
    let mut missing = Vec::new();
    let mut at_ms = start_ms + dice.roll(6_000, 30_000);
    for sign in Sign::ALL {
        if dice.chance(10) {
            continue;
        }
        let state = match dice.roll(1, 10) {
            1..=7 => SignState::Seen,
            8 | 9 => SignState::NotSeen,
            _ => SignState::Unclear,
        };
        if state != SignState::Seen {
            missing.push(*sign);
        }
        all.push((
            at_ms,
            What::SignChanged {
                sign: *sign,
                state: Some(state),
            },
        ));
        at_ms += dice.roll(900, 16_000);
    }
    let pain = |dice: &mut Dice, most| What::Pain {
        score: Pain::score(dice.roll(0, most) as i64).unwrap(),
        feed: None,
    };
    let first_pain = pain(dice, 8);
    all.push((start_ms + dice.roll(20_000, 40_000), first_pain));
    for _ in 0..2 {
        let mut at_ms = start_ms + dice.roll(120_000, end_ms.max(240_000) - 100_000);
        all.push((
            at_ms,
            What::AdjustmentTried {
                what: dice.of(Adjustment::ALL),
            },
        ));
        for sign in missing.iter().take(2) {
            at_ms += dice.roll(3_000, 30_000);
            all.push((
                at_ms,
                What::SignChanged {
                    sign: *sign,
                    state: Some(SignState::Seen),
                },
            ));
        }
        at_ms += dice.roll(4_000, 40_000);
        let later_pain = pain(dice, 4);
        all.push((at_ms, later_pain));
    }
    let mut at_ms = start_ms + end_ms + dice.roll(500, 5_000);
    all.push((
        at_ms,
        What::FeedEnded {
            by: dice.of(&EndedBy::ALL[..3]),
        },
    ));
    for after in [
        What::NippleAfter {
            nipple: dice.of(NippleAfter::ALL),
            feed: None,
        },
        What::BreastAfter {
            breast: dice.of(BreastAfter::ALL),
            feed: None,
        },
        What::BabyState {
            state: dice.of(BabyState::ALL),
            feed: None,
        },
    ] {
        at_ms += dice.roll(1_500, 15_000);
        all.push((at_ms, after));
    }
    if 0 < kind.note_chars {
        at_ms += dice.roll(30_000, 120_000);
        all.push((
            at_ms,
            What::Note {
                text: Text::new(&note(dice, kind)).unwrap(),
            },
        ));
    }
    let mut agreed = Vec::new();
    let usual: Vec<PlanWhat> = PlanWhat::ALL
        .iter()
        .copied()
        .filter(|it| !it.is_call())
        .collect();
    while agreed.len() < kind.plan {
        let what = dice.of(&usual);
        if !agreed.contains(&what) {
            agreed.push(what);
        }
    }
    for what in agreed {
        at_ms += dice.roll(900, 9_000);
        all.push((
            at_ms,
            What::PlanItem(PlanItem {
                what: Some(Coded::Known(what)),
                words: None,
            }),
        ));
    }
    all
}

/// A simulated visit, with its single taps.
pub fn visit(seed: u64, kind: &Kind) -> Handed {
    let mut dice = Dice(ChaCha8Rng::seed_from_u64(seed ^ 0x5eed_c0de));
    let offset_min = dice.of(&[0, 60, 120]);
    let began = WallTime::new(
        FROM_UTC_MS + dice.roll(0, 300) as i64 * DAY_MS + dice.roll(0, DAY_MS as u64 - 1) as i64,
        offset_min,
    )
    .unwrap();
    let pair = pair(&mut dice, began);
    let mut story = story(&mut dice, kind, seed);
    story.sort_by_key(|(at_ms, _)| *at_ms);
    let mut journal = Journal::new();
    let put = |journal: &mut Journal, dice: &mut Dice, at_ms: u64, what: What| {
        // The two clocks are read one after the other, each cut to milliseconds.
        let wall = began.plus_ms(at_ms as i64 + i64::from(dice.chance(40)));
        let entry: Entry = journal.next(At::ms(at_ms), wall, what);
        journal.push(entry).unwrap();
    };
    let mut last_ms = 0;
    for (at_ms, what) in story {
        last_ms = at_ms;
        put(&mut journal, &mut dice, at_ms, what);
    }
    let policy = Policy::built_in();
    let specialist = Label::new(dice.of(kind.names)).unwrap();
    let judged_at = began.plus_ms(last_ms as i64 + 60_000);
    let (_, judged) = computed(&pair, &journal, &policy, judged_at);
    for finding in &judged.findings {
        if finding.level == findings::Level::MedicalReviewNow {
            last_ms += dice.roll(1_500, 9_000);
            let what = What::FindingAcknowledged {
                rule: finding.rule.clone(),
                by: specialist.clone(),
            };
            put(&mut journal, &mut dice, last_ms, what);
        }
    }
    last_ms += dice.roll(2_000, 20_000);
    let due = began.plus_ms(last_ms as i64 + dice.roll(2, 24) as i64 * 3_600_000);
    put(&mut journal, &mut dice, last_ms, What::NextLook { due });
    last_ms += dice.roll(2_000, 20_000);
    put(
        &mut journal,
        &mut dice,
        last_ms,
        What::Signed {
            by: specialist.clone(),
        },
    );
    let signed_at = began.plus_ms(last_ms as i64);
    let (summaries, judged) = computed(&pair, &journal, &policy, signed_at);
    Handed {
        visit: Visit {
            id: VisitId::from_random(dice.id()),
            pair: pair.id,
            began,
            specialist,
            replaces: None,
            journal,
        },
        pair,
        taps: true,
        feeds: summaries.iter().map(feed_table).collect(),
        findings: judged.findings.iter().map(finding_row).collect(),
        unjudged: judged
            .unjudged
            .iter()
            .map(|it| (it.rule.clone(), it.missing.clone()))
            .collect(),
        policy: policy.mark(),
        rule_versions: [
            rhythm::RULE_VERSION,
            growth::RULE_VERSION,
            findings::RULE_VERSION,
        ]
        .map(str::to_owned),
    }
}

fn computed(
    pair: &Pair,
    journal: &Journal,
    policy: &Policy,
    wall: WallTime,
) -> (Vec<Summary>, findings::Judged) {
    let folded = fold(journal);
    let summaries: Vec<Summary> = folded.feeds.iter().map(summary_of).collect();
    let growth = growth::of(pair, &folded.weighings, wall);
    let judged = findings::judge(pair, &folded, &summaries, &growth, policy, wall);
    (summaries, judged)
}

fn summary_of(feed: &Feed) -> Summary {
    let mut rhythm = Rhythm::new();
    for tap in &feed.taps {
        rhythm.push(*tap);
    }
    rhythm.so_far()
}

fn feed_table(summary: &Summary) -> FeedTable {
    let row = |rate: Rate, per_min: bool, phase: Option<rhythm::Phase>| RateRow {
        phase: phase.map(|phase| phase.as_word().to_owned()),
        per_min,
        hundredths: [rate.value, rate.low, rate.high].map(hundredths),
    };
    FeedTable {
        watched_ms: summary.watched_ms,
        sucks: summary.sucks,
        swallows: summary.swallows,
        first_flow: summary.first_flow,
        phases: summary
            .phases
            .iter()
            .map(|span| PhaseRow {
                from: span.from,
                to: span.to,
                phase: span.phase.as_word().to_owned(),
                percent: hundredths(span.probability).min(100) as u8,
            })
            .collect(),
        runs: summary
            .runs
            .iter()
            .map(|run| RunRow {
                from: run.from,
                to: run.to,
                sucks: run.sucks,
                swallows: run.swallows,
            })
            .collect(),
        rates: summary
            .rates
            .iter()
            .flat_map(|rates| {
                let per_min = rates.sucks_per_min.map(|rate| row(rate, true, rates.phase));
                let per_swallow = rates
                    .sucks_per_swallow
                    .map(|rate| row(rate, false, rates.phase));
                per_min.into_iter().chain(per_swallow)
            })
            .collect(),
        doubts: summary
            .doubts
            .iter()
            .map(|doubt| doubt.as_word().to_owned())
            .collect(),
    }
}

fn hundredths(value: f64) -> u32 {
    (value * 100.0).round().clamp(0.0, f64::from(u32::MAX)) as u32
}

fn finding_row(finding: &findings::Finding) -> FindingRow {
    FindingRow {
        rule: finding.rule.clone(),
        level: finding.level.as_word().to_owned(),
        numbers: finding
            .numbers
            .iter()
            .map(|number| NumberRow {
                name: number.name.clone(),
                value: number.value,
                unit: number.unit.as_word().to_owned(),
            })
            .collect(),
        source: finding.source.clone(),
        tries: finding.tries.clone(),
        plan: finding.plan.clone(),
        call: finding.call.as_word().to_owned(),
    }
}
