//! Sheets with everything in its place to the bytes of a tagged PDF.

use chrono::{Datelike, Timelike};
use krilla::color::rgb;
use krilla::configure::{Accessibility, ConfigurationBuilder};
use krilla::destination::XyzDestination;
use krilla::geom::{PathBuilder, Point, Rect};
use krilla::metadata::{DateTime, Metadata, TextDirection};
use krilla::outline::{Outline, OutlineNode};
use krilla::page::PageSettings;
use krilla::paint::{Fill, Stroke};
use krilla::surface::Surface;
use krilla::tagging::{
    Artifact, ArtifactType, ContentTag, Identifier, Node, SpanTag, TagGroup, TagTree,
};
use krilla::{Document, SerializeSettings};

use super::PdfError;
use super::flow::{EDGE, Flow, Ink, Part, Placed, SHEET, Tree, named};
use super::line::{Line, Lines, Style};
use crate::report::printed::Printed;

/// The size of the foot's letters, in points.
const FOOT_SIZE: f32 = 9.0;

/// Draws all sheets and puts the file together.
pub(super) fn draw(printed: &Printed, flow: &Flow, lines: &mut Lines) -> Result<Vec<u8>, PdfError> {
    let configuration = ConfigurationBuilder::new()
        .with_accessibility_validator(Accessibility::UA1)
        .finish()
        .map_err(|_| PdfError::NotWritten)?;
    let mut document = Document::new_with(SerializeSettings {
        configuration,
        enable_tagging: true,
        ..SerializeSettings::default()
    });
    document.set_metadata(metadata(printed));
    let mut identifiers: Vec<Vec<Identifier>> = vec![Vec::new(); flow.leaves];
    for (index, sheet) in flow.sheets.iter().enumerate() {
        let size = PageSettings::from_wh(SHEET.0, SHEET.1).ok_or(PdfError::NotWritten)?;
        let mut page = document.start_page_with(size);
        let mut surface = page.surface();
        frames(&mut surface, sheet);
        for placed in sheet {
            piece(&mut surface, placed, &mut identifiers);
        }
        let number = format!("{} / {}", index + 1, flow.sheets.len());
        foot(&mut surface, printed, &number, lines);
        surface.finish();
        page.finish();
    }
    let mut tree = TagTree::new().with_lang(Some(printed.lang.tag().to_owned()));
    for tag in &flow.tags {
        if let Some(node) = node(tag, &mut identifiers) {
            tree.push(node);
        }
    }
    document.set_tag_tree(tree);
    document.set_outline(outline_of(flow));
    document.finish().map_err(|_| PdfError::NotWritten)
}

fn metadata(printed: &Printed) -> Metadata {
    let made = printed.made.local();
    let in_month = |it: u32| u8::try_from(it).unwrap_or_default();
    let date = DateTime::new(u16::try_from(made.year()).unwrap_or_default())
        .month(in_month(made.month()))
        .day(in_month(made.day()))
        .hour(in_month(made.hour()))
        .minute(in_month(made.minute()));
    let direction = if printed.right_to_left {
        TextDirection::RightToLeft
    } else {
        TextDirection::LeftToRight
    };
    Metadata::new()
        .title(named(&printed.title))
        .language(printed.lang.tag().to_owned())
        .creator(concat!("feedside ", env!("CARGO_PKG_VERSION")).to_owned())
        .creation_date(date)
        .text_direction(direction)
}

/// The headings with the places where they stand.
fn outline_of(flow: &Flow) -> Outline {
    let mut outline = Outline::new();
    for (sheet, placed) in flow.sheets.iter().enumerate() {
        for placed in placed {
            let leaves = placed.piece.parts.iter().filter_map(|part| part.leaf);
            for leaf in leaves {
                let heading = flow.headings.iter().find(|it| it.1 == leaf);
                // Its first line only: the outline leads to where it begins.
                if let Some((text, _)) = heading.filter(|_| placed.piece.begins) {
                    let at = XyzDestination::new(sheet, Point::from_xy(EDGE, placed.y));
                    outline.push_child(OutlineNode::new(text.clone(), at));
                }
            }
        }
    }
    outline
}

/// One node of the tree of tags with what was drawn for it.
fn node(tree: &Tree, identifiers: &mut [Vec<Identifier>]) -> Option<Node> {
    let Tree::Group(tag, children) = tree else {
        return None;
    };
    let mut group = TagGroup::new(tag.clone());
    for child in children {
        match child {
            Tree::Leaf(leaf) => {
                for identifier in std::mem::take(&mut identifiers[*leaf]) {
                    group.push(identifier);
                }
            }
            Tree::Group(..) => {
                if let Some(node) = node(child, identifiers) {
                    group.push(node);
                }
            }
        }
    }
    Some(Node::Group(group))
}

fn piece(surface: &mut Surface<'_>, placed: &Placed, identifiers: &mut [Vec<Identifier>]) {
    for part in &placed.piece.parts {
        if part.lines.iter().all(|line| line.letters.is_empty()) {
            continue;
        }
        match part.leaf.filter(|_| !placed.repeated) {
            Some(leaf) => {
                let tag = ContentTag::Span(SpanTag::empty());
                identifiers[leaf].push(surface.start_tagged(tag));
            }
            None => artifact(surface, ArtifactType::PaginationOther),
        }
        text(surface, part, placed.y);
        surface.end_tagged();
    }
    if placed.piece.ruled {
        let y = placed.y + placed.piece.height;
        artifact(surface, ArtifactType::Layout);
        let mut path = PathBuilder::new();
        path.move_to(EDGE, y);
        path.line_to(SHEET.0 - EDGE, y);
        outline(surface, path, rgb::Color::new(0xc9, 0xc2, 0xb4), 0.6);
        surface.end_tagged();
    }
}

fn artifact(surface: &mut Surface<'_>, kind: ArtifactType) {
    let artifact = Artifact::new(kind, None);
    surface.start_tagged(ContentTag::Artifact(artifact));
}

fn text(surface: &mut Surface<'_>, part: &Part, y: f32) {
    let color = match part.ink {
        Ink::Plain => rgb::Color::new(0x17, 0x22, 0x2b),
        Ink::Quiet => rgb::Color::new(0x44, 0x50, 0x5a),
        Ink::Urgent => rgb::Color::new(0x8a, 0x34, 0x10),
    };
    surface.set_stroke(None);
    surface.set_fill(Some(Fill {
        paint: color.into(),
        ..Fill::default()
    }));
    let mut top = y;
    for line in &part.lines {
        letters(surface, line, EDGE + part.x, top);
        top += line.height;
    }
}

fn letters(surface: &mut Surface<'_>, line: &Line, x: f32, top: f32) {
    for it in &line.letters {
        let at = Point::from_xy(x + it.x, top + line.baseline);
        surface.draw_glyphs(at, &it.glyphs, it.font.clone(), &it.text, it.size, false);
    }
}

/// The frames of boxes, around the pieces that stand in them on this sheet.
fn frames(surface: &mut Surface<'_>, sheet: &[Placed]) {
    let mut from = 0;
    while from < sheet.len() {
        let framed = sheet[from].piece.framed;
        let count = sheet[from..]
            .iter()
            .take_while(|it| it.piece.framed == framed)
            .count();
        let last = &sheet[from + count - 1];
        if framed.is_some() {
            let (top, bottom) = (sheet[from].y - 10.0, last.y + last.piece.height + 10.0);
            let frame = Rect::from_ltrb(EDGE, top, SHEET.0 - EDGE, bottom);
            if let Some(frame) = frame {
                artifact(surface, ArtifactType::Layout);
                let mut path = PathBuilder::new();
                path.push_rect(frame);
                outline(surface, path, rgb::Color::new(0x8a, 0x34, 0x10), 1.6);
                surface.end_tagged();
            }
        }
        from += count;
    }
}

fn outline(surface: &mut Surface<'_>, path: PathBuilder, color: rgb::Color, width: f32) {
    surface.set_fill(None);
    surface.set_stroke(Some(Stroke {
        paint: color.into(),
        width,
        ..Stroke::default()
    }));
    if let Some(path) = path.finish() {
        surface.draw_path(&path);
    }
    surface.set_stroke(None);
}

/// The foot: its line where lines begin, the number of the sheet at the other side.
fn foot(surface: &mut Surface<'_>, printed: &Printed, number: &str, lines: &mut Lines) {
    let style = Style {
        size: FOOT_SIZE,
        bold: false,
    };
    let width = SHEET.0 - 2.0 * EDGE;
    let mut at = |text: &str, width: f32, right_to_left: bool| Part {
        leaf: None,
        x: 0.0,
        ink: Ink::Quiet,
        lines: lines.set(text, style, width, right_to_left),
    };
    let said = at(&printed.foot, width - 50.0, printed.right_to_left);
    let mut number = at(number, 40.0, false);
    number.x = if printed.right_to_left {
        0.0
    } else {
        width - 24.0
    };
    for (mut part, kind) in [
        (said, ArtifactType::Footer),
        (number, ArtifactType::PageNumber),
    ] {
        if printed.right_to_left && kind == ArtifactType::Footer {
            part.x = 50.0;
        }
        artifact(surface, kind);
        text(surface, &part, SHEET.1 - EDGE - 12.0);
        surface.end_tagged();
    }
}
