//! A page for people, before it is paper or a screen: headings, paragraphs, lists, tables and one
//! framed box, in reading order.
//!
//! Whoever shows it decides how it looks. Knows nothing of fonts, colours or what it is about.

use crate::record::WallTime;
use crate::words::Lang;

/// How large the plain text is.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum TextSize {
    /// For someone who reads it tired, at arm's length.
    Large,
    /// For tables and many lines.
    Small,
}

/// One part of the page.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Block {
    /// The heading of what follows; stays on the page of what follows.
    Heading(String),
    /// A paragraph.
    Text(String),
    /// A paragraph of lesser weight.
    Quiet(String),
    /// Points without an order.
    List(Vec<String>),
    /// A box that stands out: its heading, its points, and what follows them. Not broken over pages if it fits on one.
    Urgent {
        /// The heading.
        heading: String,
        /// The points.
        points: Vec<String>,
        /// What is said after them; nothing if empty.
        after: String,
    },
    /// A table with a head that comes again on every page.
    Table(Table),
}

/// A table: every row has as many cells as the head.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Table {
    /// What each column holds.
    pub head: Vec<String>,
    /// The rows; missing cells are empty, surplus ones are left out.
    pub rows: Vec<Vec<String>>,
    /// How wide each column is, as shares of the whole; equal ones where there are too few.
    pub shares: Vec<u16>,
}

/// A whole page, or as many as its text needs.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Printed {
    /// The first heading; also the document's title, so it must not tell who it is about.
    pub title: String,
    /// The language of the words.
    pub lang: Lang,
    /// Whether lines begin at the right.
    pub right_to_left: bool,
    /// When what it tells was known; a page knows no clock.
    pub made: WallTime,
    /// How large its text is.
    pub size: TextSize,
    /// A line at the foot of every sheet of paper.
    pub foot: String,
    /// What it says, in reading order.
    pub blocks: Vec<Block>,
}

impl Printed {
    /// An empty page in a language, with large text.
    pub fn new(title: String, lang: Lang, made: WallTime) -> Self {
        Self {
            title,
            lang,
            right_to_left: lang.is_right_to_left(),
            made,
            size: TextSize::Large,
            foot: String::new(),
            blocks: Vec::new(),
        }
    }

    /// Every sentence in reading order, a line each; table rows with a tab between the cells.
    pub fn plain(&self) -> String {
        let mut lines = vec![self.title.clone()];
        for block in &self.blocks {
            match block {
                Block::Heading(it) | Block::Text(it) | Block::Quiet(it) => lines.push(it.clone()),
                Block::List(points) => lines.extend(points.iter().cloned()),
                Block::Urgent {
                    heading,
                    points,
                    after,
                } => {
                    lines.push(heading.clone());
                    lines.extend(points.iter().cloned());
                    lines.push(after.clone());
                }
                Block::Table(table) => {
                    lines.push(table.head.join("\t"));
                    lines.extend(table.rows.iter().map(|row| row.join("\t")));
                }
            }
        }
        lines.push(self.foot.clone());
        lines.retain(|line| !line.is_empty());
        lines.join("\n")
    }
}

/// A number with its unit, or any other piece whose order must not change in a line of the other
/// direction: between the marks for a left-to-right isolate (Unicode 6.3, UAX 9: U+2066, U+2069).
pub fn isolated(text: &str) -> String {
    format!("\u{2066}{text}\u{2069}")
}
