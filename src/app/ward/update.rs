//! What each event on the Ward screen leads to, and the order of the list.

use crate::app::around::Around;
use crate::app::keeper::WardLine;
use crate::findings::{WardFound, WardPlace};
use crate::growth;
use crate::record::WallTime;

use super::{Effect, Event, Line, Model};

/// Takes an event; changes the model; says what is to be done.
pub fn update(model: &mut Model, event: Event, around: &Around<'_>) -> Vec<Effect> {
    match event {
        Event::Came(rows) => {
            let now = around.now.wall;
            let mut lines: Vec<Line> = rows.into_iter().map(|row| line(row, now)).collect();
            // Equal ones stay as they came.
            lines.sort_by_key(|line| line.place);
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
        Event::MonthWanted => vec![Effect::Month],
        Event::DemoWanted if model.lines.is_empty() => vec![Effect::Demo],
        Event::DemoWanted => vec![],
    }
}

fn line(row: WardLine, now: WallTime) -> Line {
    let waiting = row.row.is_waiting();
    Line {
        growth: growth::of(&row.row.pair, &row.weighings, now),
        place: WardPlace::of(&row.marks, waiting, now),
        found: WardFound::of(&row.marks),
        waiting,
        next_look: row.row.next_look,
        pair: row.row.pair,
    }
}
