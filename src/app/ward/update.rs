//! What each event on the Ward screen leads to, and the order of the list.

use crate::app::around::Around;
use crate::app::keeper::WardLine;
use crate::app::open_visit::summary_of;
use crate::findings::{self, Judged, Level};
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

/// Review first, then what is open, what is due (gravest level first, then by time), what waits for
/// a receipt, what was never seen, what is due later (by time, then by level), and the rest.
fn order(line: &Line, now: WallTime) -> (u8, Option<Level>, i64, Option<Level>) {
    let due = line.next_look.map_or(i64::MAX, WallTime::utc_ms);
    let is_due = due <= now.utc_ms();
    let rank = if line.review {
        0
    } else if line.open.is_some() {
        1
    } else if is_due {
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
    // Levels are declared gravest first; nothing found comes after the least of them.
    let level = line.level.or(Level::ALL.last().copied());
    (rank, level.filter(|_| rank == 2), due, level)
}

fn line(row: WardLine, around: &Around<'_>) -> Line {
    let now = around.now.wall;
    let growth = growth::of(&row.row.pair, &row.weighings, now);
    let head = row.row.last.as_ref();
    let judged: Vec<Judged> = row
        .recent
        .iter()
        .map(|visit| open_findings(&row, visit, around))
        .collect();
    let review = judged.iter().any(|it| {
        let first = it.findings.first();
        first.is_some_and(|it| it.level == Level::MedicalReviewNow)
    });
    let last = judged.last().and_then(|it| it.findings.first());
    let level = last.map(|it| it.level);
    Line {
        growth,
        review,
        level,
        open: head.filter(|head| !head.signed).map(|head| head.id),
        waiting: row.row.is_waiting(),
        seen: head.is_some(),
        next_look: row.row.next_look,
        pair: row.row.pair,
    }
}

/// What was found in a visit, as of its last entry, without what was acknowledged; gravest first.
fn open_findings(row: &WardLine, visit: &Visit, around: &Around<'_>) -> Judged {
    let as_of = visit
        .journal
        .entries()
        .last()
        .map_or(visit.began, |entry| entry.wall);
    let growth = growth::of(&row.row.pair, &row.weighings, as_of);
    let folded = fold(&visit.journal);
    let rhythms: Vec<_> = folded.feeds.iter().map(summary_of).collect();
    let mut judged = findings::judge(
        &row.row.pair,
        &folded,
        &rhythms,
        &growth,
        around.policy,
        as_of,
    );
    judged
        .findings
        .retain(|finding| !folded.acknowledged.iter().any(|it| it.rule == finding.rule));
    judged
}
