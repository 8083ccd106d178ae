//! From the model to the month's screen.

use slint::Global;

use crate::app::lists::list;
use crate::app::ui;
use crate::report::month::{Card, DAYS, cards};
use crate::words::Words;

use super::Model;

/// Draws the screen.
pub fn render(model: &Model, words: &Words, window: &ui::AppWindow) {
    let screen = ui::MonthAdapter::get(window);
    screen.set_title(
        words
            .say_with("month-title", &[("days", DAYS.into())])
            .into(),
    );
    screen.set_working(if 0 < model.left {
        words
            .say_with("month-working", &[("left", i64::from(model.left).into())])
            .into()
    } else {
        "".into()
    });
    let all = model
        .month
        .as_ref()
        .map_or_else(Vec::new, |month| cards(month, words));
    let all_are_none = all.is_empty() && model.left == 0;
    // Two columns where there is room: the first half of the rows on the left.
    let rows: usize = all.iter().map(|card| card.rows.len()).sum();
    let mut before = 0;
    let (first, second): (Vec<_>, Vec<_>) = all.into_iter().partition(|card| {
        let is_first = 2 * before < rows;
        before += card.rows.len();
        is_first
    });
    screen.set_none(model.month.is_some() && all_are_none);
    screen.set_first(list(first.into_iter().map(card)));
    screen.set_second(list(second.into_iter().map(card)));
}

fn card(card: Card) -> ui::MonthCard {
    ui::MonthCard {
        heading: card.heading.into(),
        rows: list(card.rows.into_iter().map(|row| ui::FactRow {
            label: row.label.into(),
            value: row.value.into(),
            quiet: row.quiet.into(),
        })),
    }
}
