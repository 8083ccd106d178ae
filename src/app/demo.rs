//! An invented ward to try things out on. No real people; every id is derived from a name here, so
//! that filling it in twice changes nothing.

use uuid::Uuid;

use crate::record::{
    Coded, Gestation, Grams, Journal, Label, LastDay, Pair, PairId, Reason, RecordError, RiskNote,
    ScaleStep, Sex, StoolColour, Visit, VisitId, WallTime, WayOfBirth, Weighing, WeighingMoment,
    What,
};

/// Milliseconds in an hour.
const HOUR_MS: i64 = 3_600_000;

/// The bed whose last visit still waits for its receipt.
const WAITING: &str = "Bay 3 · Bed 1";

/// One invented pair.
struct Invented {
    bed: &'static str,
    initials: &'static str,
    hours_old: i64,
    sex: Sex,
    weeks: u16,
    days: u16,
    birth_weight: i64,
    way: WayOfBirth,
    risks: &'static [RiskNote],
    reasons: &'static [Reason],
    /// Hours ago and grams of each weight.
    weights: &'static [(i64, i64)],
    /// The last answers: feeds, wet, dirty.
    last_day: Option<(u8, u8, u8)>,
    stool: Option<StoolColour>,
    /// In how many hours the next look is due; negative for overdue.
    next_look_h: Option<i64>,
}

const INVENTED: [Invented; 6] = [
    Invented {
        bed: "Bay 1 · Bed 2",
        initials: "A. W.",
        hours_old: 76,
        sex: Sex::Female,
        weeks: 39,
        days: 4,
        birth_weight: 3410,
        way: WayOfBirth::Vaginal,
        risks: &[RiskNote::FirstBaby],
        reasons: &[Reason::Pain],
        weights: &[(28, 3205), (4, 3165)],
        last_day: Some((9, 3, 3)),
        stool: Some(StoolColour::Green),
        next_look_h: Some(-1),
    },
    Invented {
        bed: "Bay 1 · Bed 4",
        initials: "M. T.",
        hours_old: 31,
        sex: Sex::Male,
        weeks: 37,
        days: 2,
        birth_weight: 2890,
        way: WayOfBirth::Caesarean,
        risks: &[RiskNote::EarlyTerm, RiskNote::Separated],
        reasons: &[Reason::Sleepy, Reason::NotAttaching],
        weights: &[(6, 2745)],
        last_day: Some((5, 2, 1)),
        stool: Some(StoolColour::Black),
        next_look_h: Some(1),
    },
    Invented {
        bed: "Bay 2 · Bed 1",
        initials: "S. K.",
        hours_old: 112,
        sex: Sex::Male,
        weeks: 40,
        days: 1,
        birth_weight: 3620,
        way: WayOfBirth::Assisted,
        risks: &[],
        reasons: &[Reason::Weight],
        weights: &[(54, 3300), (30, 3262), (5, 3240)],
        last_day: Some((6, 2, 1)),
        stool: Some(StoolColour::Green),
        next_look_h: Some(3),
    },
    Invented {
        bed: "Bay 2 · Bed 3",
        initials: "J. L.",
        hours_old: 9,
        sex: Sex::Female,
        weeks: 41,
        days: 0,
        birth_weight: 3790,
        way: WayOfBirth::Vaginal,
        risks: &[],
        reasons: &[Reason::FirstLook, Reason::MotherAsked],
        weights: &[],
        last_day: None,
        stool: None,
        next_look_h: None,
    },
    Invented {
        bed: "Bay 3 · Bed 1",
        initials: "N. B.",
        hours_old: 52,
        sex: Sex::Female,
        weeks: 36,
        days: 5,
        birth_weight: 2510,
        way: WayOfBirth::Vaginal,
        risks: &[RiskNote::Preterm, RiskNote::SmallBaby],
        reasons: &[Reason::Twins],
        weights: &[(26, 2405), (3, 2380)],
        last_day: Some((8, 3, 2)),
        stool: Some(StoolColour::Green),
        next_look_h: Some(2),
    },
    Invented {
        bed: "Bay 3 · Bed 2",
        initials: "R. O.",
        hours_old: 140,
        sex: Sex::Male,
        weeks: 39,
        days: 0,
        birth_weight: 3300,
        way: WayOfBirth::Caesarean,
        risks: &[],
        reasons: &[Reason::BeforeHome],
        weights: &[(80, 3050), (52, 3065), (8, 3140)],
        last_day: Some((10, 6, 4)),
        stool: Some(StoolColour::Yellow),
        next_look_h: Some(12),
    },
];

/// The invented ward as of now: each pair with its earlier visits. Empty if the clock stands before
/// 1970 plus a week, where births could not be told.
pub fn ward(now: WallTime) -> Vec<(Pair, Vec<Visit>)> {
    INVENTED
        .iter()
        .filter_map(|invented| of(invented, now).ok())
        .collect()
}

fn id(bed: &str, what: &str) -> Uuid {
    Uuid::new_v5(
        &Uuid::NAMESPACE_OID,
        format!("feedside invented ward {bed} {what}").as_bytes(),
    )
}

fn of(it: &Invented, now: WallTime) -> Result<(Pair, Vec<Visit>), RecordError> {
    let birth = now.plus_ms(-it.hours_old * HOUR_MS);
    let pair = Pair {
        id: PairId::of(id(it.bed, "pair")),
        mother_id: None,
        bed: Label::new(it.bed)?,
        initials: Label::new(it.initials)?,
        mother_number: None,
        baby_number: None,
        birth,
        sex: it.sex,
        gestation: Some(Gestation::weeks_days(it.weeks, it.days)?),
        birth_weight: Some(Grams::new(it.birth_weight)?),
        way_of_birth: Some(it.way),
        babies: if it.reasons.contains(&Reason::Twins) {
            2
        } else {
            1
        },
        risk_notes: it.risks.iter().copied().map(Coded::Known).collect(),
        reasons: it.reasons.iter().copied().map(Coded::Known).collect(),
        language: None,
    };
    let mut visits = Vec::new();
    for (index, (hours_ago, grams)) in it.weights.iter().enumerate() {
        let last = index + 1 == it.weights.len();
        visits.push(visit(it, &pair, now, index, *hours_ago, *grams, last)?);
    }
    Ok((pair, visits))
}

fn visit(
    it: &Invented,
    pair: &Pair,
    now: WallTime,
    index: usize,
    hours_ago: i64,
    grams: i64,
    last: bool,
) -> Result<Visit, RecordError> {
    let began = now.plus_ms(-hours_ago * HOUR_MS);
    let by = Label::new("E. Hart")?;
    let mut visit = Visit::new(
        VisitId::of(id(it.bed, &format!("visit {index}"))),
        pair.id,
        began,
        by.clone(),
    );
    let mut journal = Journal::new();
    let mut add = |what: What| {
        let entry = journal.next(crate::record::At::ms(60_000), began.plus_ms(60_000), what);
        journal.push(entry)
    };
    add(What::Weighed(Weighing {
        grams: Grams::new(grams)?,
        step: Some(ScaleStep::new(5)?),
        clothed: false,
        moment: WeighingMoment::Routine,
        taken: None,
    }))?;
    if last {
        if let Some((feeds, wet, dirty)) = it.last_day {
            add(What::LastDay(LastDay {
                feeds: Some(feeds),
                wet: Some(wet),
                dirty: Some(dirty),
                stool: it.stool,
                baby_danger: Some(vec![]),
                mother_danger: Some(vec![]),
                ..LastDay::default()
            }))?;
        }
        if let Some(hours) = it.next_look_h {
            add(What::NextLook {
                due: now.plus_ms(hours * HOUR_MS),
            })?;
        }
    }
    add(What::Signed { by })?;
    // All but one were handed over.
    if !last || it.bed != WAITING {
        add(What::ReceiptTaken {
            receipt: "0000000000".to_owned(),
        })?;
    }
    visit.journal = journal;
    Ok(visit)
}
