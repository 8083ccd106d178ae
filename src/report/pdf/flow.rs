//! Blocks to pieces, and pieces to sheets: what stands where on which sheet, and under which tag.

use std::num::NonZeroU16;
use std::rc::Rc;

use krilla::tagging::{ListNumbering, TableHeaderScope, Tag, TagKind};

use super::line::{Line, Lines, Style};
use crate::report::printed::{Block, Printed, Table, TextSize};

/// Width and height of A4, in points (ISO 216: 210 mm and 297 mm).
pub(super) const SHEET: (f32, f32) = (595.28, 841.89);
/// The empty edge at each side, in points: 20 mm.
pub(super) const EDGE: f32 = 56.7;
/// What the foot takes from the lower end of the text, in points.
const FOOT: f32 = 30.0;
/// Between a box's frame and its text, in points.
const PADDING: f32 = 10.0;
/// Between the columns of a table, in points.
const COLUMN_GAP: f32 = 8.0;

/// How a text is shown.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Ink {
    Plain,
    Quiet,
    Urgent,
}

/// Some lines that belong to one tag.
pub(super) struct Part {
    /// Which leaf of the tree of tags; `None` for what is only repeated, such as a table's head.
    pub leaf: Option<usize>,
    /// From the left edge of the text, in points.
    pub x: f32,
    pub ink: Ink,
    pub lines: Vec<Line>,
}

/// What is never broken: a line, a row of a table.
pub(super) struct Piece {
    /// Space above it, unless it is the first of a sheet, in points.
    before: f32,
    pub height: f32,
    pub parts: Vec<Part>,
    /// A thin line under it.
    pub ruled: bool,
    /// In which box it stands.
    pub framed: Option<usize>,
    /// Whether its text begins here and did not begin in a piece before.
    pub begins: bool,
    /// Whether it stays on the sheet of the next one.
    with_next: bool,
    /// What comes first on a new sheet if this piece does.
    head: Option<Rc<Piece>>,
}

/// The tree of tags; leaves are numbered in reading order.
pub(super) enum Tree {
    Leaf(usize),
    Group(TagKind, Vec<Tree>),
}

/// A piece on a sheet; `y` is its upper edge from the upper edge of the sheet, in points.
pub(super) struct Placed {
    pub y: f32,
    pub piece: Rc<Piece>,
    /// Whether it is only repeated here.
    pub repeated: bool,
}

/// Everything in its place.
pub(super) struct Flow {
    pub sheets: Vec<Vec<Placed>>,
    pub tags: Vec<Tree>,
    pub leaves: usize,
    /// The headings, each with its leaf.
    pub headings: Vec<(String, usize)>,
}

/// Sizes of letters, in points.
struct Sizes {
    title: f32,
    heading: f32,
    text: f32,
    quiet: f32,
}

/// A heading as the file names it: never empty.
pub(super) fn named(heading: &str) -> String {
    if heading.trim().is_empty() {
        "\u{2013}".to_owned()
    } else {
        heading.to_owned()
    }
}

/// Lays out a page.
pub(super) fn flow(printed: &Printed, lines: &mut Lines) -> Flow {
    let sizes = match printed.size {
        TextSize::Large => Sizes {
            title: 22.0,
            heading: 15.0,
            text: 12.5,
            quiet: 10.5,
        },
        TextSize::Small => Sizes {
            title: 18.0,
            heading: 13.0,
            text: 10.0,
            quiet: 9.0,
        },
    };
    let mut setter = Setter {
        lines,
        sizes,
        width: SHEET.0 - 2.0 * EDGE,
        right_to_left: printed.right_to_left,
        pieces: Vec::new(),
        tags: Vec::new(),
        leaves: 0,
        boxes: 0,
        headings: Vec::new(),
    };
    setter.heading(&printed.title, 1);
    for block in &printed.blocks {
        setter.block(block);
    }
    Flow {
        leaves: setter.leaves,
        sheets: onto_sheets(setter.pieces),
        tags: setter.tags,
        headings: setter.headings,
    }
}

struct Setter<'a> {
    lines: &'a mut Lines,
    sizes: Sizes,
    width: f32,
    right_to_left: bool,
    pieces: Vec<Rc<Piece>>,
    tags: Vec<Tree>,
    leaves: usize,
    boxes: usize,
    headings: Vec<(String, usize)>,
}

/// How the pieces of one text are set.
#[derive(Clone, Copy)]
struct How {
    style: Style,
    ink: Ink,
    /// Space above the first of them.
    before: f32,
    /// Left out at the side where lines begin, and at the other side.
    indent: (f32, f32),
    framed: Option<usize>,
    with_next: bool,
    /// Whether the last line stays with what follows as the others do.
    last_with_next: bool,
}

impl Setter<'_> {
    fn leaf(&mut self) -> usize {
        self.leaves += 1;
        self.leaves - 1
    }

    fn block(&mut self, block: &Block) {
        let text = self.how(self.sizes.text, Ink::Plain, 6.0);
        match block {
            Block::Heading(it) => self.heading(it, 2),
            Block::Text(it) => {
                let leaf = self.text(it, text, None);
                self.tags.push(Tree::Group(Tag::P.into(), vec![leaf]));
            }
            Block::Quiet(it) => {
                let how = self.how(self.sizes.quiet, Ink::Quiet, 6.0);
                let leaf = self.text(it, how, None);
                self.tags.push(Tree::Group(Tag::P.into(), vec![leaf]));
            }
            Block::List(points) => {
                let list = self.points(points, text);
                self.tags.push(list);
            }
            Block::Urgent {
                heading,
                points,
                after,
            } => self.urgent(heading, points, after),
            Block::Table(table) => self.table(table),
        }
    }

    fn how(&self, size: f32, ink: Ink, before: f32) -> How {
        How {
            style: Style { size, bold: false },
            ink,
            before,
            indent: (0.0, 0.0),
            framed: None,
            with_next: false,
            last_with_next: false,
        }
    }

    fn heading(&mut self, text: &str, level: u16) {
        let (size, before) = if level == 1 {
            (self.sizes.title, 0.0)
        } else {
            (self.sizes.heading, 14.0)
        };
        let mut how = self.how(size, Ink::Plain, before);
        how.style.bold = true;
        how.with_next = true;
        how.last_with_next = true;
        self.headings.push((named(text), self.leaves));
        let leaf = self.text(text, how, None);
        let tag = Tag::Hn(
            NonZeroU16::new(level).unwrap_or(NonZeroU16::MIN),
            Some(named(text)),
        );
        self.tags.push(Tree::Group(tag.into(), vec![leaf]));
    }

    /// Sets a text in lines, with a label beside the first of them, and gives its leaf.
    fn text(&mut self, text: &str, how: How, label: Option<(usize, &str)>) -> Tree {
        let leaf = self.leaf();
        let width = self.width - how.indent.0 - how.indent.1;
        let x = if self.right_to_left {
            how.indent.1
        } else {
            how.indent.0
        };
        let lines = self.lines.set(text, how.style, width, self.right_to_left);
        let last = lines.len().saturating_sub(1);
        for (index, line) in lines.into_iter().enumerate() {
            let mut parts = Vec::new();
            if let (0, Some((leaf, label))) = (index, label) {
                parts.push(self.label(leaf, label, how));
            }
            let height = line.height;
            parts.push(Part {
                leaf: Some(leaf),
                x,
                ink: how.ink,
                lines: vec![line],
            });
            self.pieces.push(Rc::new(Piece {
                before: if index == 0 { how.before } else { 0.0 },
                height,
                parts,
                ruled: false,
                framed: how.framed,
                begins: index == 0,
                with_next: if index == last {
                    how.last_with_next
                } else {
                    how.with_next
                },
                head: None,
            }));
        }
        Tree::Leaf(leaf)
    }

    /// The label of a point stands just before its text.
    fn label(&mut self, leaf: usize, label: &str, how: How) -> Part {
        let lines = self.lines.set(label, how.style, INDENT, self.right_to_left);
        let from = how.indent.0 - INDENT;
        let x = if self.right_to_left {
            self.width - from - INDENT
        } else {
            from
        };
        Part {
            leaf: Some(leaf),
            x,
            ink: how.ink,
            lines,
        }
    }

    fn points(&mut self, points: &[String], mut how: How) -> Tree {
        how.indent.0 += INDENT;
        let mut items = Vec::new();
        let last = points.len().saturating_sub(1);
        let last_with_next = how.last_with_next;
        for (index, point) in points.iter().enumerate() {
            how.before = 4.0;
            how.last_with_next = if index == last {
                last_with_next
            } else {
                how.with_next
            };
            let label = self.leaf();
            let body = self.text(point, how, Some((label, "\u{2022}")));
            items.push(Tree::Group(
                Tag::LI.into(),
                vec![
                    Tree::Group(Tag::Lbl.into(), vec![Tree::Leaf(label)]),
                    Tree::Group(Tag::LBody.into(), vec![body]),
                ],
            ));
        }
        Tree::Group(Tag::L(ListNumbering::Disc).into(), items)
    }

    fn urgent(&mut self, heading: &str, points: &[String], after: &str) {
        self.boxes += 1;
        let mut how = self.how(self.sizes.heading, Ink::Urgent, 16.0 + PADDING);
        how.style.bold = true;
        how.framed = Some(self.boxes);
        how.indent = (PADDING, PADDING);
        how.with_next = true;
        how.last_with_next = true;
        self.headings.push((named(heading), self.leaves));
        let leaf = self.text(heading, how, None);
        let tag = Tag::Hn(
            NonZeroU16::new(2).unwrap_or(NonZeroU16::MIN),
            Some(named(heading)),
        );
        self.tags.push(Tree::Group(tag.into(), vec![leaf]));
        how.style = Style {
            size: self.sizes.text,
            bold: false,
        };
        how.ink = Ink::Plain;
        how.last_with_next = !after.is_empty();
        let list = self.points(points, how);
        self.tags.push(list);
        if !after.is_empty() {
            how.before = 6.0;
            how.last_with_next = false;
            let leaf = self.text(after, how, None);
            self.tags.push(Tree::Group(Tag::P.into(), vec![leaf]));
        }
        // Room for the frame's lower edge.
        self.pieces.push(Rc::new(Piece {
            before: 0.0,
            height: PADDING,
            parts: Vec::new(),
            ruled: false,
            framed: None,
            begins: true,
            with_next: false,
            head: None,
        }));
    }

    fn table(&mut self, table: &Table) {
        let columns = self.columns(table);
        let head = Rc::new(self.row(&table.head, &columns, true, None));
        let first = self.leaves - columns.len();
        let scope = TableHeaderScope::Column;
        let cells = |from: usize, head: bool| {
            (from..from + columns.len())
                .map(|leaf| {
                    let tag: TagKind = if head {
                        Tag::TH(scope).into()
                    } else {
                        Tag::TD.into()
                    };
                    Tree::Group(tag, vec![Tree::Leaf(leaf)])
                })
                .collect()
        };
        let mut rows = vec![Tree::Group(Tag::TR.into(), cells(first, true))];
        self.pieces.push(head.clone());
        let is_short = table.rows.len() <= KEPT_TOGETHER_ROWS;
        for (index, row) in table.rows.iter().enumerate() {
            let first = self.leaves;
            let mut piece = self.row(row, &columns, false, Some(head.clone()));
            piece.with_next = is_short && index + 1 < table.rows.len();
            self.pieces.push(Rc::new(piece));
            rows.push(Tree::Group(Tag::TR.into(), cells(first, false)));
        }
        self.tags.push(Tree::Group(Tag::Table.into(), rows));
    }

    /// Left edge and width of each column, in points.
    fn columns(&self, table: &Table) -> Vec<(f32, f32)> {
        let count = table.head.len();
        let shares: Vec<f32> = (0..count)
            .map(|index| f32::from(table.shares.get(index).copied().unwrap_or(1).max(1)))
            .collect();
        let all: f32 = shares.iter().sum();
        let mut from = 0.0;
        shares
            .iter()
            .map(|share| {
                let width = self.width * share / all;
                let x = if self.right_to_left {
                    self.width - from - width
                } else {
                    from
                };
                from += width;
                (x, width)
            })
            .collect()
    }

    fn row(
        &mut self,
        cells: &[String],
        columns: &[(f32, f32)],
        bold: bool,
        head: Option<Rc<Piece>>,
    ) -> Piece {
        let style = Style {
            size: self.sizes.text,
            bold,
        };
        let mut parts = Vec::new();
        let mut height: f32 = 0.0;
        for (index, (x, width)) in columns.iter().enumerate() {
            let text = cells.get(index).map_or("", String::as_str);
            let set = self
                .lines
                .set(text, style, width - COLUMN_GAP, self.right_to_left);
            let shift = if self.right_to_left { COLUMN_GAP } else { 0.0 };
            height = height.max(set.iter().map(|line| line.height).sum());
            parts.push(Part {
                leaf: Some(self.leaf()),
                x: x + shift,
                ink: Ink::Plain,
                lines: set,
            });
        }
        Piece {
            before: if bold { 10.0 } else { 3.0 },
            height: height + 3.0,
            parts,
            ruled: true,
            framed: None,
            begins: true,
            with_next: bold,
            head,
        }
    }
}

/// A table of no more rows is not broken over sheets if it fits on one.
const KEPT_TOGETHER_ROWS: usize = 8;

/// How far the text of a point stands in, in points.
const INDENT: f32 = 14.0;

/// Puts the pieces on sheets: a piece that does not fit begins a new one, with those before it that
/// stay with it.
fn onto_sheets(pieces: Vec<Rc<Piece>>) -> Vec<Vec<Placed>> {
    let (top, bottom) = (EDGE, SHEET.1 - EDGE - FOOT);
    let mut sheets: Vec<Vec<Placed>> = vec![Vec::new()];
    let mut y = top;
    let mut rest = pieces.as_slice();
    while !rest.is_empty() {
        let (group, after) = rest.split_at(group_of(rest, bottom - top));
        rest = after;
        let mut is_first = true;
        for piece in group {
            let sheet_is_empty = sheets.last().is_none_or(Vec::is_empty);
            let needed = if is_first {
                height_of(group)
            } else {
                piece.before + piece.height
            };
            if !sheet_is_empty && bottom < y + needed {
                sheets.push(Vec::new());
                y = top;
                if let Some(head) = &piece.head {
                    place(&mut sheets, &mut y, head.clone(), true);
                }
            }
            place(&mut sheets, &mut y, piece.clone(), false);
            is_first = false;
        }
    }
    sheets
}

fn place(sheets: &mut [Vec<Placed>], y: &mut f32, piece: Rc<Piece>, repeated: bool) {
    let Some(sheet) = sheets.last_mut() else {
        return;
    };
    let before = match (sheet.is_empty(), piece.framed) {
        (true, Some(_)) => PADDING,
        (true, None) => 0.0,
        (false, _) => piece.before,
    };
    let at = *y + before;
    *y = at + piece.height;
    sheet.push(Placed {
        y: at,
        piece,
        repeated,
    });
}

/// How many of the pieces stay together: up to the first that lets go, but no more than a sheet
/// takes.
fn group_of(pieces: &[Rc<Piece>], sheet: f32) -> usize {
    let together = pieces.iter().take_while(|piece| piece.with_next).count() + 1;
    let together = together.min(pieces.len());
    if sheet < height_of(&pieces[..together]) {
        1
    } else {
        together
    }
}

fn height_of(pieces: &[Rc<Piece>]) -> f32 {
    pieces.iter().map(|piece| piece.before + piece.height).sum()
}
