//! The page as parts, before it is characters or paper.

use crate::findings::Level;
use crate::report::Facts;
use crate::report::phrase;
use crate::report::printed::{Block, Printed, TextSize};
use crate::words::Words;

/// A part of the page, in reading order.
pub(super) enum Part {
    /// What stands on top, with a double rule under it.
    Title(String),
    /// What follows is about this.
    Heading(String),
    /// A line; one that begins with a star is a point, one that is indented belongs to the line
    /// before it.
    Line(String),
}

/// The page as plain characters; lines end in a line feed.
pub(super) fn characters(parts: &[Part]) -> String {
    let mut text = String::new();
    let mut line = |line: &str| {
        text.push_str(line.trim_end());
        text.push('\n');
    };
    let rule = |sign: &str, of: &str| sign.repeat(of.chars().count());
    for part in parts {
        match part {
            Part::Title(it) => {
                line(it);
                line(&rule("=", it));
            }
            Part::Heading(it) => {
                line("");
                line(it);
                line(&rule("-", it));
            }
            Part::Line(it) => line(it),
        }
    }
    text
}

/// The page as it is printed: what asks for a medical review now stands in the frame.
pub(super) fn printed(parts: Vec<Part>, facts: &Facts, words: &Words) -> Printed {
    let title = words.say("report-title");
    let mut page = Printed::new(title, words.lang(), facts.until);
    page.size = TextSize::Small;
    page.foot = words.say("report-caution");
    let urgent = phrase::of(words, "level", Level::MedicalReviewNow).to_uppercase();
    let mut is_urgent = false;
    for part in parts {
        match part {
            Part::Title(_) => {}
            Part::Heading(heading) => {
                is_urgent = heading == urgent;
                page.blocks.push(if is_urgent {
                    Block::Urgent {
                        heading,
                        points: Vec::new(),
                        after: String::new(),
                    }
                } else {
                    Block::Heading(heading)
                });
            }
            Part::Line(line) if line.trim().is_empty() => is_urgent = false,
            Part::Line(line) => add(&mut page.blocks, &line, is_urgent),
        }
    }
    page
}

/// Puts a line where it belongs: a point into its list, an indented line to what it belongs to.
fn add(blocks: &mut Vec<Block>, line: &str, is_urgent: bool) {
    let point = line.strip_prefix("* ");
    let text = point.unwrap_or(line).trim().to_owned();
    let belongs = line.starts_with(' ');
    match blocks.last_mut() {
        Some(Block::Urgent { points, .. }) if is_urgent => match points.last_mut() {
            Some(last) if belongs => last.push_str(&format!(" {text}")),
            _ => points.push(text),
        },
        Some(Block::List(points)) if belongs => {
            if let Some(last) = points.last_mut() {
                last.push_str(&format!(" {text}"));
            }
        }
        Some(Block::List(points)) if point.is_some() => points.push(text),
        Some(Block::Text(last)) if belongs => last.push_str(&format!(" {text}")),
        _ if point.is_some() => blocks.push(Block::List(vec![text])),
        _ => blocks.push(Block::Text(text)),
    }
}
