//! The month: what counts, out of what, and how it is told. Here: visits made for it, by hand.

mod always;
mod counted;
mod kept;
mod quartiles;
mod told;
mod whole;

use feedside::record::{
    At, EndedBy, Hold, Label, Pain, PairId, Side, Sign, SignState, Visit, VisitId, WallTime, What,
    fold,
};
use feedside::report::month::{Month, VisitSum};
use feedside::rhythm::{Summary, TotalsMs};
use uuid::Uuid;

use crate::support::add;

/// Now: 30 November 2026, 12:00 at UTC+1.
fn now() -> WallTime {
    WallTime::new(1_796_036_400_000, 60).unwrap()
}

/// A visit to one of several pairs, an hour before now.
fn visit(pair: u128) -> Visit {
    let began = now().plus_ms(-3_600_000);
    let specialist = Label::new("kb").unwrap();
    let id = VisitId::of(Uuid::from_u128(pair + 1000));
    Visit::new(id, PairId::of(Uuid::from_u128(pair)), began, specialist)
}

/// Where the next entry goes: a second after the last.
fn next_ms(visit: &Visit) -> u64 {
    let last = visit.journal.entries().last();
    last.map_or(0, |it| it.at.as_ms() + 1000)
}

fn put(visit: &mut Visit, all: impl IntoIterator<Item = What>) {
    for what in all {
        add(visit, next_ms(visit), what);
    }
}

/// A feed with what was told in it and after it.
fn put_feed(visit: &mut Visit, within: Vec<What>, after: Vec<What>) {
    let (side, hold) = (Side::Left, Hold::Cradle);
    put(visit, [What::FeedStarted { side, hold }]);
    put(visit, within);
    put(visit, [What::FeedEnded { by: EndedBy::Baby }]);
    put(visit, after);
}

/// One visit with one feed.
fn fed(within: Vec<What>, after: Vec<What>) -> Visit {
    let mut visit = visit(1);
    put_feed(&mut visit, within, after);
    visit
}

/// What it adds, its rhythm not worked out and its findings not judged.
fn sum(visit: &Visit) -> VisitSum {
    VisitSum::of(visit.pair, visit, &fold(&visit.journal), &[], None)
}

fn month(visits: &[Visit]) -> Month {
    let sums: Vec<VisitSum> = visits.iter().map(sum).collect();
    Month::of(&sums, now())
}

/// What an analysis might say of a feed that starts with its visit.
fn rhythm(
    watched_ms: u64,
    first_flow_ms: Option<u64>,
    flow_ms: u64,
    share: Option<f64>,
) -> Summary {
    Summary {
        watched_ms,
        first_flow: first_flow_ms.map(At::ms),
        totals_ms: TotalsMs {
            flow: flow_ms,
            ..TotalsMs::default()
        },
        share_sucking: share,
        ..Summary::default()
    }
}

/// The month of feeds of which only the rhythm is known.
fn of_rhythms(rhythms: &[Summary]) -> Month {
    let visit = fed(Vec::new(), Vec::new());
    let folded = fold(&visit.journal);
    let sums: Vec<VisitSum> = rhythms
        .iter()
        .map(|it| VisitSum::of(visit.pair, &visit, &folded, std::slice::from_ref(it), None))
        .collect();
    Month::of(&sums, now())
}

fn score(value: i64) -> What {
    let score = Pain::score(value).unwrap();
    What::Pain { score, feed: None }
}

fn cannot_say() -> What {
    let score = Pain::CannotSay;
    What::Pain { score, feed: None }
}

fn sign(sign: Sign, state: Option<SignState>) -> What {
    What::SignChanged { sign, state }
}

fn signed() -> What {
    let by = Label::new("kb").unwrap();
    What::Signed { by }
}

fn receipt() -> What {
    let receipt = "12345678".to_owned();
    What::ReceiptTaken { receipt }
}
