//! What each event on the Ward screen leads to, and the order of the list.

use crate::app::around::Around;
use crate::app::keeper::WardLine;
use crate::app::open_visit::summary_of;
use crate::findings::{self, Level};
use crate::growth;
use crate::record::{Visit, WallTime, fold};

use super::{Effect, Event, Line, Model};

/// Takes an event; changes the model; says what is to be done.
pub fn update(model: &mut Model, event: Event, around: &Around<'_>) -> Vec<Effect> {
    match event {
        Event::Came(rows) => {
            let mut lines: Vec<Line> = rows.into_iter().map(|row| line(row, around)).collect();
            lines.sort_by_key(|line| order(line, around.now.wall));
            *model = Model {
                lines,
                loaded: true,
            };
            vec![]
        }
        Event::Opened(index) => model
            .lines
            .get(index)
            .map(|line| Effect::Show(line.pair.id))
            .into_iter()
            .collect(),
        Event::NewWanted => vec![Effect::Form],
        Event::PracticeWanted => vec![Effect::Practice],
        Event::SettingsWanted => vec![Effect::Settings],
        Event::DemoWanted if model.lines.is_empty() => vec![Effect::Demo],
        Event::DemoWanted => vec![],
    }
}

/// Review first, then what waits for a receipt, what is open, what is due by time, what was never
/// seen, and the rest.
fn order(line: &Line, now: WallTime) -> (u8, i64) {
    let due = line.next_look.map_or(i64::MAX, WallTime::utc_ms);
    let rank = if line.review {
        0
    } else if line.open.is_some() {
        1
    } else if line
        .next_look
        .is_some_and(|due| due.utc_ms() <= now.utc_ms())
    {
        2
    } else if line.waiting {
        3
    } else if !line.seen {
        4
    } else if line.next_look.is_some() {
        5
    } else {
        6
    };
    (rank, due)
}

fn line(row: WardLine, around: &Around<'_>) -> Line {
    let now = around.now.wall;
    let growth = growth::of(&row.row.pair, &row.weighings, now);
    let head = row.row.last.as_ref();
    let review = row
        .recent
        .iter()
        .any(|visit| needs_review(&row, visit, around));
    Line {
        growth,
        review,
        open: head.filter(|head| !head.signed).map(|head| head.id),
        waiting: row.row.is_waiting(),
        seen: head.is_some(),
        next_look: row.row.next_look,
        pair: row.row.pair,
    }
}

/// Whether medical review now was found in a visit, as of its last entry, and not acknowledged.
fn needs_review(row: &WardLine, visit: &Visit, around: &Around<'_>) -> bool {
    let as_of = visit
        .journal
        .entries()
        .last()
        .map_or(visit.began, |entry| entry.wall);
    let growth = growth::of(&row.row.pair, &row.weighings, as_of);
    let folded = fold(&visit.journal);
    let rhythms: Vec<_> = folded.feeds.iter().map(summary_of).collect();
    findings::judge(
        &row.row.pair,
        &folded,
        &rhythms,
        &growth,
        around.policy,
        as_of,
    )
    .findings
    .iter()
    .filter(|finding| finding.level == Level::MedicalReviewNow)
    .any(|finding| !folded.acknowledged.iter().any(|it| it.rule == finding.rule))
}
