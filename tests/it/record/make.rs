//! Made-up people, fixed ids and a fixed clock for the tests of this room.

use feedside::record::{
    Adjustment, At, BabyState, BoundaryMoved, BreastAfter, BreastBefore, BreastState, Coded,
    EndedBy, Entry, Folded, Gestation, Grams, Hold, Journal, Label, Language, LastDay, Nappy,
    NippleAfter, Pain, Pair, PairId, PlanItem, PlanWhat, Reason, RiskNote, ScaleStep, Sex, Side,
    Sign, SignState, StoolColour, SuckPhase, TapWhat, Text, Visit, VisitId, WallTime, WayOfBirth,
    Weighing, WeighingMoment, What, fold,
};

/// 9 March 2026, 03:00 at the ward, one hour east of UTC.
pub const BEGAN_MS: i64 = 1_773_021_600_000;

pub fn wall(at_ms: u64) -> WallTime {
    WallTime::new(BEGAN_MS + i64::try_from(at_ms).unwrap(), 60).unwrap()
}

pub fn label(text: &str) -> Label {
    Label::new(text).unwrap()
}

/// Words that stand for a person; none may ever be printed.
pub const PERSONAL: &[&str] = &[
    "Zarquilla",
    "Bay Umber",
    "Q.Z.",
    "M-778899",
    "B-665544",
    "Whispered",
    "Thistlewood",
];

pub fn pair() -> Pair {
    Pair {
        id: PairId::from_random([1; 16]),
        mother_id: None,
        bed: label("Bay Umber, bed 3"),
        initials: label("Q.Z."),
        mother_number: Some(label("M-778899")),
        baby_number: Some(label("B-665544")),
        birth: wall(0).plus_ms(-60 * 3_600_000),
        sex: Sex::Female,
        gestation: Some(Gestation::weeks_days(39, 4).unwrap()),
        birth_weight: Some(Grams::new(3450).unwrap()),
        way_of_birth: Some(WayOfBirth::Caesarean),
        babies: 1,
        risk_notes: vec![Coded::Known(RiskNote::FirstBaby)],
        reasons: vec![
            Coded::Known(Reason::Pain),
            Coded::Unknown("newer".to_owned()),
        ],
        language: Some(Language::new("pt-BR").unwrap()),
    }
}

/// A visit with these entries, one a second from the first second on.
pub fn visit(whats: Vec<What>) -> Visit {
    let mut visit = Visit::new(
        VisitId::from_random([2; 16]),
        pair().id,
        wall(0),
        label("Thistlewood"),
    );
    visit.journal = journal(whats);
    visit
}

/// A journal of these entries, one a second from the first second on.
pub fn journal(whats: Vec<What>) -> Journal {
    let timed = whats.into_iter().zip((1..).map(|it| it * 1000));
    journal_at(timed.map(|(what, at_ms)| (at_ms, what)).collect())
}

/// A journal of entries with their times in milliseconds.
pub fn journal_at(timed: Vec<(u64, What)>) -> Journal {
    let mut journal = Journal::new();
    for (at_ms, what) in timed {
        let entry = journal.next(At::ms(at_ms), wall(at_ms), what);
        journal.push(entry).unwrap();
    }
    journal
}

pub fn folded(whats: Vec<What>) -> Folded {
    fold(&journal(whats))
}

pub fn entry(seq: u32, what: What) -> Entry {
    let at_ms = u64::from(seq) * 1000;
    Entry {
        seq,
        at: At::ms(at_ms),
        wall: wall(at_ms),
        what,
        newer: None,
    }
}

pub const fn feed_started() -> What {
    What::FeedStarted {
        side: Side::Left,
        hold: Hold::Cradle,
    }
}

pub const fn sign(sign: Sign, state: SignState) -> What {
    What::SignChanged {
        sign,
        state: Some(state),
    }
}

pub fn pain(score: i64) -> What {
    What::Pain {
        score: Pain::score(score).unwrap(),
        feed: None,
    }
}

pub const fn struck(entry: u32) -> What {
    What::Struck { entry }
}

pub fn signed() -> What {
    What::Signed {
        by: label("Thistlewood"),
    }
}

/// One of each kind that this version writes.
pub fn one_of_each() -> Vec<What> {
    let all = vec![
        What::LastDay(LastDay {
            feeds: Some(9),
            wet: Some(4),
            stool: Some(StoolColour::Green),
            baby_danger: Some(Vec::new()),
            ..LastDay::default()
        }),
        What::Weighed(Weighing {
            grams: Grams::new(3210).unwrap(),
            step: Some(ScaleStep::new(5).unwrap()),
            clothed: false,
            moment: WeighingMoment::BeforeFeed,
            taken: None,
        }),
        What::Nappy(Nappy {
            wet: true,
            heavy: true,
            stool: Some(StoolColour::Yellow),
            urates: false,
        }),
        What::BreastBefore(BreastBefore {
            side: Side::Right,
            breast: Some(BreastState::Filling),
            nipple: None,
        }),
        feed_started(),
        What::Suck,
        What::SuckSwallow,
        What::Swallow,
        What::UnwatchedFrom { from: At::ms(4000) },
        What::UnwatchedTo,
        What::BabyOff,
        What::BabyOn,
        What::HoldChanged {
            hold: Hold::Underarm,
        },
        sign(Sign::ChinIn, SignState::NotSeen),
        pain(4),
        What::AdjustmentTried {
            what: Adjustment::ChinFirst,
        },
        What::Note {
            text: Text::new("Whispered to Zarquilla").unwrap(),
        },
        What::FeedEnded { by: EndedBy::Baby },
        What::NippleAfter {
            nipple: NippleAfter::Rounded,
            feed: None,
        },
        What::BreastAfter {
            breast: BreastAfter::Softer,
            feed: None,
        },
        What::BabyState {
            state: BabyState::Content,
            feed: None,
        },
        What::TouchUnresolved,
        What::TapAdded {
            at: At::ms(60_200),
            what: TapWhat::SuckSwallow,
        },
        What::BoundaryMoved(BoundaryMoved {
            was: At::ms(61_000),
            now: At::ms(58_500),
            before: SuckPhase::Quick,
            after: SuckPhase::Flow,
        }),
        What::FindingAcknowledged {
            rule: "weight-loss-over-ten".to_owned(),
            by: label("Thistlewood"),
        },
        What::PlanItem(PlanItem {
            what: Some(Coded::Known(PlanWhat::FeedOften)),
            words: Some(Text::new("Zarquilla will ring").unwrap()),
        }),
        What::NextLook {
            due: wall(7_200_000),
        },
        struck(1),
        signed(),
        What::ShownAsCode {
            transfer: 7,
            pieces: 1,
        },
        What::ReceiptTaken {
            receipt: "123456".to_owned(),
        },
    ];
    for (index, what) in all.iter().enumerate() {
        assert_eq!(place(what), Some(index));
    }
    all
}

/// The place of each kind in [`one_of_each`]. No arm catches all: a new kind must be put in both.
const fn place(what: &What) -> Option<usize> {
    Some(match what {
        What::LastDay(_) => 0,
        What::Weighed(_) => 1,
        What::Nappy(_) => 2,
        What::BreastBefore(_) => 3,
        What::FeedStarted { .. } => 4,
        What::Suck => 5,
        What::SuckSwallow => 6,
        What::Swallow => 7,
        What::UnwatchedFrom { .. } => 8,
        What::UnwatchedTo => 9,
        What::BabyOff => 10,
        What::BabyOn => 11,
        What::HoldChanged { .. } => 12,
        What::SignChanged { .. } => 13,
        What::Pain { .. } => 14,
        What::AdjustmentTried { .. } => 15,
        What::Note { .. } => 16,
        What::FeedEnded { .. } => 17,
        What::NippleAfter { .. } => 18,
        What::BreastAfter { .. } => 19,
        What::BabyState { .. } => 20,
        What::TouchUnresolved => 21,
        What::TapAdded { .. } => 22,
        What::BoundaryMoved(_) => 23,
        What::FindingAcknowledged { .. } => 24,
        What::PlanItem(_) => 25,
        What::NextLook { .. } => 26,
        What::Struck { .. } => 27,
        What::Signed { .. } => 28,
        What::ShownAsCode { .. } => 29,
        What::ReceiptTaken { .. } => 30,
        What::Unknown { .. } => return None,
    })
}
