//! A storm of invented visits against what must always hold of the findings: no rule holds on
//! missing data, and none is silent on present danger. `storm COUNT [SEED]`; prints how many visits
//! were judged, and stops at the first that breaks a promise.

#![allow(clippy::unwrap_used)]

use feedside::findings::{Judged, Level, Policy, judge, rule};
use feedside::growth;
use feedside::record::{
    BabyDanger, Coded, Folded, Gestation, Grams, Jaundice, Label, LastDay, Millilitres,
    MotherDanger, Pair, PairId, Sex, StoolColour, TenthsCelsius, WallTime, WayOfBirth, Weighing,
    WeighingMoment,
};
use rand::{RngExt, SeedableRng};
use rand_chacha::ChaCha8Rng;

const HOUR_MS: i64 = 3_600_000;

fn maybe<T>(chance: &mut ChaCha8Rng, some: impl FnOnce(&mut ChaCha8Rng) -> T) -> Option<T> {
    chance.random_bool(0.7).then(|| some(chance))
}

fn one<T: Copy>(chance: &mut ChaCha8Rng, all: &[T]) -> T {
    all[chance.random_range(0..all.len())]
}

fn few<T: Copy>(chance: &mut ChaCha8Rng, all: &[T]) -> Vec<T> {
    let count = chance.random_range(0..3);
    (0..count).map(|_| one(chance, all)).collect()
}

struct Visit {
    pair: Pair,
    visit: Folded,
    weighings: Vec<(WallTime, Weighing)>,
    now: WallTime,
    age_h: i64,
}

fn invented(chance: &mut ChaCha8Rng) -> Visit {
    let birth = WallTime::new(1_772_366_400_000, 0).unwrap();
    let age_h = chance.random_range(0..1500);
    let weight = chance.random_range(2200..4600);
    let pair = Pair {
        id: PairId::from_random([3; 16]),
        mother_id: None,
        bed: Label::new("-").unwrap(),
        initials: Label::new("-").unwrap(),
        mother_number: None,
        baby_number: None,
        birth,
        sex: one(chance, Sex::ALL),
        gestation: maybe(chance, |it| {
            Gestation::try_from(it.random_range(230..295)).unwrap()
        }),
        birth_weight: maybe(chance, |_| Grams::new(weight).unwrap()),
        way_of_birth: maybe(chance, |it| one(it, WayOfBirth::ALL)),
        babies: chance.random_range(1..3),
        risk_notes: Vec::new(),
        reasons: Vec::new(),
        language: None,
    };
    let day = maybe(chance, |it| LastDay {
        feeds: maybe(it, |it| it.random_range(0..22)),
        wet: maybe(it, |it| it.random_range(0..9)),
        dirty: maybe(it, |it| it.random_range(0..7)),
        stool: maybe(it, |it| one(it, StoolColour::ALL)),
        urates: maybe(it, |it| it.random_bool(0.3)),
        meconium: maybe(it, |it| it.random_bool(0.3)),
        dark_urine: maybe(it, |it| it.random_bool(0.3)),
        hours_since_wet: maybe(it, |it| it.random_range(0..30)),
        expressed_ml: maybe(it, |it| Millilitres::new(it.random_range(0..300)).unwrap()),
        supplement_ml: maybe(it, |it| Millilitres::new(it.random_range(0..300)).unwrap()),
        sleepy: maybe(it, |it| it.random_bool(0.3)),
        jaundice: maybe(it, |it| one(it, Jaundice::ALL)),
        temperature: maybe(it, |it| {
            TenthsCelsius::new(it.random_range(345..390)).unwrap()
        }),
        baby_danger: maybe(it, |it| {
            few(it, BabyDanger::ALL)
                .into_iter()
                .map(Coded::Known)
                .collect()
        }),
        mother_danger: maybe(it, |it| {
            few(it, MotherDanger::ALL)
                .into_iter()
                .map(Coded::Known)
                .collect()
        }),
    });
    let count = chance.random_range(0..4);
    let mut weighings: Vec<_> = (0..count)
        .map(|_| {
            let at = birth.plus_ms(chance.random_range(0..=age_h) * HOUR_MS);
            let weighing = Weighing {
                grams: Grams::new(weight * chance.random_range(80..115) / 100).unwrap(),
                step: None,
                clothed: chance.random_bool(0.2),
                moment: WeighingMoment::Routine,
                taken: None,
            };
            (at, weighing)
        })
        .collect();
    weighings.sort_by_key(|it| it.0.utc_ms());
    weighings.dedup_by_key(|it| it.0.utc_ms());
    Visit {
        pair,
        visit: Folded {
            last_day: day,
            ..Folded::default()
        },
        weighings,
        now: birth.plus_ms(age_h * HOUR_MS),
        age_h,
    }
}

fn judged(it: &Visit, policy: &Policy) -> Judged {
    let growth = growth::of(&it.pair, &it.weighings, it.now);
    judge(&it.pair, &it.visit, &[], &growth, policy, it.now)
}

/// The first promise that a visit breaks.
fn broken(it: &Visit, policy: &Policy) -> Option<String> {
    let said = judged(it, policy);
    let holds = |id: &str| said.findings.iter().any(|it| it.rule == id);
    let day = it.visit.last_day.clone().unwrap_or_default();
    let dangers = day
        .baby_danger
        .iter()
        .flatten()
        .map(|it| ("baby", it.word()));
    let dangers = dangers.chain(
        day.mother_danger
            .iter()
            .flatten()
            .map(|it| ("mother", it.word())),
    );
    for (whose, word) in dangers {
        let id = format!("{whose}-{}", word.replace('_', "-"));
        if !holds(&id) {
            return Some(format!("{id} is silent"));
        }
    }
    if let Some(tenths) = day.temperature.map(i64::from) {
        let now = said.findings.iter().any(|it| {
            it.rule.starts_with("baby-temperature-") && it.level == Level::MedicalReviewNow
        });
        // Young Infants Clinical Signs Study Group 2008: above 37.5 or below 35.5 degrees.
        if now == (355..=375).contains(&tenths) {
            return Some(format!("temperature {tenths}"));
        }
    }
    if day.wet == Some(0) && 24 <= it.age_h && !holds("output-no-wet") {
        return Some("no wet nappy is silent".to_owned());
    }
    for (colour, id) in [
        (StoolColour::Pale, "baby-stool-pale"),
        (StoolColour::Bloody, "baby-stool-bloody"),
    ] {
        if holds(id) != (day.stool == Some(colour)) {
            return Some(id.to_owned());
        }
    }
    // NICE NG75 (2017): more than 10 %, by the last weight without clothes.
    let bare = it.weighings.iter().rfind(|weight| !weight.1.clothed);
    if let (Some(birth), Some((_, last))) = (it.pair.birth_weight.map(i64::from), bare) {
        let lost = birth - i64::from(last.grams);
        if birth < lost * 10 && !holds("weight-loss-over-ten") {
            return Some("a loss above ten per cent is silent".to_owned());
        }
    }
    // Without the answers, and without the weights, nothing new may hold.
    let mut less = Visit {
        pair: it.pair.clone(),
        visit: Folded::default(),
        weighings: it.weighings.clone(),
        ..*it
    };
    for round in 0..2 {
        for finding in judged(&less, policy).findings {
            if !holds(&finding.rule) {
                return Some(format!("{} holds on missing data ({round})", finding.rule));
            }
        }
        less.visit = it.visit.clone();
        less.weighings.clear();
    }
    for finding in &said.findings {
        if said.unjudged.iter().any(|it| it.rule == finding.rule) || rule(&finding.rule).is_none() {
            return Some(format!("{} is held and not judged", finding.rule));
        }
    }
    None
}

fn main() {
    let mut arguments = std::env::args().skip(1);
    let count: u64 = arguments
        .next()
        .and_then(|it| it.parse().ok())
        .unwrap_or(10_000);
    let seed: u64 = arguments.next().and_then(|it| it.parse().ok()).unwrap_or(1);
    let mut chance = ChaCha8Rng::seed_from_u64(seed);
    let policy = Policy::built_in();
    let mut reviews = 0_u64;
    for number in 0..count {
        let visit = invented(&mut chance);
        if let Some(why) = broken(&visit, &policy) {
            println!("visit {number} of seed {seed}: {why}");
            std::process::exit(1);
        }
        let said = judged(&visit, &policy);
        reviews += u64::from(
            said.findings
                .iter()
                .any(|it| it.level == Level::MedicalReviewNow),
        );
    }
    println!(
        "{count} visits of seed {seed}: every promise held; {reviews} had something for a doctor now"
    );
}
