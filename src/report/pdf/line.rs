//! Text to lines of placed letters, with the bundled fonts.

use std::borrow::Cow;
use std::collections::HashMap;
use std::ops::Range;
use std::sync::Arc;

use krilla::text::{Font, GlyphId, KrillaGlyph};
use parley::fontique::{Blob, Collection, CollectionOptions, SourceCache};
use parley::style::{FontFamily, FontFamilyName, FontWeight, LineHeight, StyleProperty};
use parley::{Alignment, AlignmentOptions, FontContext, Layout, LayoutContext};

use super::PdfError;

const REGULAR: &[u8] = include_bytes!("../../../assets/fonts/AtkinsonHyperlegibleNext-Regular.ttf");
const BOLD: &[u8] = include_bytes!("../../../assets/fonts/AtkinsonHyperlegibleNext-Bold.ttf");
const ARABIC: &[u8] = include_bytes!("../../../assets/fonts/NotoSansArabic-Regular.ttf");
const FAMILIES: &[FontFamilyName<'static>] = &[
    FontFamilyName::Named(Cow::Borrowed("Atkinson Hyperlegible Next")),
    FontFamilyName::Named(Cow::Borrowed("Noto Sans Arabic")),
];

/// The height of a line against the size of its letters.
const LINE_HEIGHT: f32 = 1.35;

/// How a text is set.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Style {
    /// The size of the letters, in points.
    pub size: f32,
    /// Whether they are bold.
    pub bold: bool,
}

/// Letters of one font that follow each other in a line.
pub(super) struct Letters {
    pub font: Font,
    pub size: f32,
    /// Where they begin, from the left edge of the text, in points.
    pub x: f32,
    /// The text that the letters' ranges point into.
    pub text: Arc<str>,
    pub glyphs: Vec<KrillaGlyph>,
}

/// One line of text.
pub(super) struct Line {
    /// Its height, in points.
    pub height: f32,
    /// Where its letters stand, from its upper edge, in points.
    pub baseline: f32,
    pub letters: Vec<Letters>,
}

/// The fonts, and what lays out text with them.
pub(super) struct Lines {
    fonts: FontContext,
    layouts: LayoutContext<[u8; 4]>,
    opened: HashMap<u64, Font>,
    /// Letters met so far, each as it is printed.
    letters: HashMap<char, char>,
}

impl Lines {
    pub fn new() -> Result<Self, PdfError> {
        let options = CollectionOptions {
            shared: false,
            system_fonts: false,
        };
        let mut collection = Collection::new(options);
        let mut opened = HashMap::new();
        for bytes in [REGULAR, BOLD, ARABIC] {
            let blob = Blob::new(Arc::new(bytes));
            let font = Font::new(bytes.into(), 0).ok_or(PdfError::Fonts)?;
            opened.insert(blob.id(), font);
            if collection.register_fonts(blob, None).is_empty() {
                return Err(PdfError::Fonts);
            }
        }
        Ok(Self {
            fonts: FontContext {
                collection,
                source_cache: SourceCache::default(),
            },
            layouts: LayoutContext::new(),
            opened,
            letters: HashMap::new(),
        })
    }

    /// Breaks a text into lines of at most `width` points.
    pub fn set(&mut self, text: &str, style: Style, width: f32, right_to_left: bool) -> Vec<Line> {
        // The mark decides the direction of the paragraph, whatever letter comes first.
        let mark = if right_to_left {
            RIGHT_TO_LEFT
        } else {
            LEFT_TO_RIGHT
        };
        let known: String = text.chars().map(|c| self.known(c)).collect();
        let mut text = format!("{mark}{known}");
        let mut layout = self.layout(&text, style, width);
        // Each round takes letters out, so it ends.
        while let Some(drawable) = without_the_unknown(&layout, &text) {
            text = drawable;
            layout = self.layout(&text, style, width);
        }
        let text: Arc<str> = text.into();
        layout.lines().map(|line| self.line(&line, &text)).collect()
    }

    /// The letter itself if a font has it, otherwise a question mark.
    fn known(&mut self, c: char) -> char {
        if c.is_ascii_graphic() || c.is_whitespace() || is_mark(c) {
            return c;
        }
        if let Some(known) = self.letters.get(&c) {
            return *known;
        }
        let style = Style {
            size: 10.0,
            bold: false,
        };
        let layout = self.layout(c.encode_utf8(&mut [0; 4]), style, f32::MAX);
        let mut glyphs: Vec<u32> = Vec::new();
        for line in layout.lines() {
            for run in line.runs() {
                let clusters = run.clusters();
                glyphs.extend(clusters.flat_map(|it| it.glyphs()).map(|it| it.id));
            }
        }
        let has = !glyphs.is_empty() && !glyphs.contains(&0);
        let known = if has { c } else { '?' };
        self.letters.insert(c, known);
        known
    }

    fn layout(&mut self, text: &str, style: Style, width: f32) -> Layout<[u8; 4]> {
        let mut builder = self
            .layouts
            .ranged_builder(&mut self.fonts, text, 1.0, false);
        builder.push_default(StyleProperty::FontFamily(FontFamily::List(FAMILIES.into())));
        builder.push_default(StyleProperty::FontSize(style.size));
        builder.push_default(LineHeight::FontSizeRelative(LINE_HEIGHT));
        if style.bold {
            builder.push_default(StyleProperty::FontWeight(FontWeight::BOLD));
        }
        let mut layout = builder.build(text);
        layout.break_all_lines(Some(width));
        layout.align(Alignment::Start, AlignmentOptions::default());
        layout
    }

    fn line(&self, line: &parley::Line<'_, [u8; 4]>, text: &Arc<str>) -> Line {
        let metrics = line.metrics();
        let mut x = metrics.offset;
        let mut letters = Vec::new();
        for run in line.runs() {
            // Every font of the layout was opened with it.
            let Some(font) = self.opened.get(&run.font().data.id()) else {
                continue;
            };
            let size = run.font_size();
            let begins = x;
            let mut glyphs: Vec<KrillaGlyph> = Vec::new();
            for cluster in run.visual_clusters() {
                if cluster.is_ligature_continuation() {
                    if let Some(glyph) = glyphs.last_mut() {
                        glyph.text_range.start =
                            glyph.text_range.start.min(cluster.text_range().start);
                        glyph.text_range.end = glyph.text_range.end.max(cluster.text_range().end);
                    }
                    continue;
                }
                if cluster.text_range().is_empty() || is_mark(cluster.source_char()) {
                    x += cluster.advance();
                    continue;
                }
                for glyph in cluster.glyphs() {
                    glyphs.push(KrillaGlyph::new(
                        GlyphId::new(glyph.id),
                        glyph.advance / size,
                        glyph.x / size,
                        // The layout counts downwards, the file upwards.
                        -glyph.y / size,
                        0.0,
                        cluster.text_range(),
                        None,
                    ));
                    x += glyph.advance;
                }
            }
            if !glyphs.is_empty() {
                letters.push(Letters {
                    font: font.clone(),
                    size,
                    x: begins,
                    text: text.clone(),
                    glyphs,
                });
            }
        }
        Line {
            height: metrics.line_height,
            baseline: metrics.baseline - metrics.block_min_coord,
            letters,
        }
    }
}

/// The text with a question mark for each letter that cannot be drawn where it stands, as a mark of
/// another script on a letter: each alone is known, together they are in no font. Nothing if all can.
fn without_the_unknown(layout: &Layout<[u8; 4]>, text: &str) -> Option<String> {
    let mut unknown = Vec::new();
    for line in layout.lines() {
        for run in line.runs() {
            let clusters = run.clusters();
            let lacking = clusters.filter(|it| it.glyphs().any(|glyph| glyph.id == 0));
            unknown.extend(lacking.map(|it| with_what_clings(text, it.text_range())));
        }
    }
    let stands_for = |(at, c): (usize, char)| {
        let is_unknown = unknown.iter().any(|it| it.contains(&at));
        if is_unknown && !c.is_ascii() && !is_mark(c) {
            '?'
        } else {
            c
        }
    };
    let drawable: String = text.char_indices().map(stands_for).collect();
    (drawable != text).then_some(drawable)
}

/// A letter's place with all that may cling to it: what follows up to the next ASCII letter.
fn with_what_clings(text: &str, place: Range<usize>) -> Range<usize> {
    let after = &text[place.end..];
    let end = after.find(|c: char| c.is_ascii()).unwrap_or(after.len());
    place.start..place.end + end
}

const LEFT_TO_RIGHT: char = '\u{200e}';
const RIGHT_TO_LEFT: char = '\u{200f}';

/// Marks that steer direction, joining and breaks and have no picture of their own (of Unicode's
/// default ignorables, those that people's text holds).
fn is_mark(c: char) -> bool {
    matches!(
        c,
        '\u{ad}' | '\u{61c}' | '\u{200b}'..='\u{200f}' | '\u{202a}'..='\u{202e}'
            | '\u{2060}'..='\u{2064}' | '\u{2066}'..='\u{2069}' | '\u{feff}'
    )
}
