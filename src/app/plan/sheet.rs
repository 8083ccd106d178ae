//! The mother's sheet on the screen: the same page as on paper, line by line, in her language.

use crate::app::around::Around;
use crate::app::handover::pack;
use crate::app::lists::list;
use crate::app::open_visit::OpenVisit;
use crate::app::ui;
use crate::report::printed::{Block, Table};
use crate::report::sheet::{lang_of, page};
use crate::words::Words;

/// Kinds of lines, as the screen knows them.
const TEXT: i32 = 0;
const HEADING: i32 = 1;
const POINT: i32 = 2;
const QUIET: i32 = 3;
const URGENT: i32 = 4;

/// Draws the sheet.
pub(super) fn render(
    open: &OpenVisit,
    around: &Around<'_>,
    words: &Words,
    screen: &ui::PlanAdapter<'_>,
) {
    let now = around.now.wall;
    let judged = open.judged(around.policy, now);
    let facts = pack::facts(open, &judged, around, now);
    let hers = Words::new(lang_of(&open.pair, words.lang()));
    let page = page(&facts, &hers);
    let mut lines = Vec::new();
    for block in &page.blocks {
        lines_of(block, &mut lines);
    }
    lines.push((QUIET, page.foot.clone()));
    screen.set_sheet_title(page.title.as_str().into());
    screen.set_sheet(list(lines.into_iter().map(|(kind, text)| ui::SheetLine {
        kind,
        text: text.into(),
    })));
}

fn lines_of(block: &Block, lines: &mut Vec<(i32, String)>) {
    match block {
        Block::Heading(it) => lines.push((HEADING, it.clone())),
        Block::Text(it) => lines.push((TEXT, it.clone())),
        Block::Quiet(it) => lines.push((QUIET, it.clone())),
        Block::List(points) => lines.extend(points.iter().map(|it| (POINT, it.clone()))),
        Block::Urgent {
            heading,
            points,
            after,
        } => {
            lines.push((URGENT, heading.clone()));
            lines.extend(points.iter().map(|it| (POINT, it.clone())));
            if !after.is_empty() {
                lines.push((TEXT, after.clone()));
            }
        }
        Block::Table(table) => lines.extend(rows_of(table)),
    }
}

/// A table row by row, each cell with what its column holds.
fn rows_of(table: &Table) -> impl Iterator<Item = (i32, String)> + '_ {
    table.rows.iter().map(|row| {
        let cells = table.head.iter().zip(row);
        let cells = cells.map(|(head, cell)| format!("{head} {cell}"));
        (POINT, cells.collect::<Vec<_>>().join(" \u{b7} "))
    })
}
