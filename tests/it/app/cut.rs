//! Text that does not fit where it stands: more of it than its own box holds, a box that sticks out
//! of the card or key it stands on, two texts written over each other, or a page that ends too early.
//! What the toolkit itself needs for a text is what it measures to lay the text out.

use std::ops::ControlFlow;

use i_slint_core::item_tree::{ItemRc, ParentItemTraversalMode};
use i_slint_core::items::{
    BasicBorderRectangle, BorderRectangle, Clip, ComplexText, Flickable, Orientation, Rectangle,
    SimpleText, TextHorizontalAlignment, TextOverflow, TextVerticalAlignment, TextWrap,
};
use i_slint_core::layout::LayoutInfo;
use i_slint_core::lengths::{LogicalPoint, LogicalRect, LogicalSize};
use i_slint_core::window::WindowInner;

/// Less than this is rounding.
const ROUNDING_PX: f32 = 1.5;

/// What is told of each text on the window that is cut.
pub(crate) fn cut_texts(window: &slint::Window) -> Vec<String> {
    let root = ItemRc::new_root(WindowInner::from_pub(window).component());
    let mut cut = Vec::new();
    let _ = root.visit_descendants(|item| {
        if let Some((text, may_be_narrow)) = text_of(item) {
            cut.extend(cut_text(item, &text, may_be_narrow));
        }
        ControlFlow::<()>::Continue(())
    });
    cut
}

/// What is told of each page that ends before what is on it.
pub(crate) fn short_pages(window: &slint::Window) -> Vec<String> {
    let root = ItemRc::new_root(WindowInner::from_pub(window).component());
    let mut short = Vec::new();
    let _ = root.visit_descendants(|item| {
        if let Some(page) = item.downcast::<Flickable>() {
            let page = page.as_pin_ref();
            let ends =
                absolute(item).min_y() + page.content_y().get() + page.content_height().get();
            let _ = item.visit_descendants(|inner| {
                let below = absolute(inner).max_y() - ends;
                if ROUNDING_PX < below && text_of(inner).is_some() && !is_hidden(inner) {
                    let text = text_of(inner).map(|it| it.0);
                    short.push(format!("the page ends {below} above the end of {text:?}"));
                }
                ControlFlow::<()>::Continue(())
            });
        }
        ControlFlow::<()>::Continue(())
    });
    short
}

/// Texts that stand in each other's way by this much in both directions are told.
const OVERLAP_PX: f32 = 3.0;

/// What is told of each two texts that are written over each other.
pub(crate) fn overlapping_texts(window: &slint::Window) -> Vec<String> {
    let root = ItemRc::new_root(WindowInner::from_pub(window).component());
    let mut written: Vec<(String, LogicalRect)> = Vec::new();
    let mut told = Vec::new();
    let _ = root.visit_descendants(|item| {
        if let Some((text, place)) = written_of(item) {
            for (other, other_place) in &written {
                let both = place.intersection(other_place).unwrap_or_default();
                if OVERLAP_PX < both.width().min(both.height()) {
                    told.push(format!("“{text}” and “{other}” overlap at {both:?}"));
                }
            }
            written.push((text, place));
        }
        ControlFlow::<()>::Continue(())
    });
    told
}

/// A text that can be seen, and where its letters are.
fn written_of(item: &ItemRc) -> Option<(String, LogicalRect)> {
    let (text, _) = text_of(item)?;
    if text.trim().is_empty() || is_hidden(item) {
        return None;
    }
    let place = absolute(item);
    let (across, down) = alignment_of(item)?;
    let wide = needs(item, Orientation::Horizontal, -1.0)?.preferred;
    let high = needs(item, Orientation::Vertical, place.width())?.preferred;
    let (width, height) = (wide.min(place.width()), high.min(place.height()));
    let left = match across {
        TextHorizontalAlignment::Center => (place.width() - width) / 2.0,
        TextHorizontalAlignment::Right | TextHorizontalAlignment::End => place.width() - width,
        _ => 0.0,
    };
    let top = match down {
        TextVerticalAlignment::Center => (place.height() - height) / 2.0,
        TextVerticalAlignment::Bottom => place.height() - height,
        _ => 0.0,
    };
    let corner = LogicalPoint::new(place.min_x() + left, place.min_y() + top);
    let seen = LogicalRect::new(corner, LogicalSize::new(width, height));
    shown(item, seen).map(|seen| (text, seen))
}

/// What of a place is not cut off by what the item stands in.
fn shown(item: &ItemRc, place: LogicalRect) -> Option<LogicalRect> {
    let mut seen = place;
    let mut at = item.parent_item(ParentItemTraversalMode::StopAtPopups);
    while let Some(it) = at {
        let clips = it.downcast::<Flickable>().is_some()
            || it
                .downcast::<Clip>()
                .is_some_and(|it| it.as_pin_ref().clip());
        if clips {
            seen = seen.intersection(&absolute(&it))?;
        }
        at = it.parent_item(ParentItemTraversalMode::StopAtPopups);
    }
    Some(seen)
}

fn alignment_of(item: &ItemRc) -> Option<(TextHorizontalAlignment, TextVerticalAlignment)> {
    if let Some(text) = item.downcast::<ComplexText>() {
        let text = text.as_pin_ref();
        return Some((text.horizontal_alignment(), text.vertical_alignment()));
    }
    let text = item.downcast::<SimpleText>()?;
    let text = text.as_pin_ref();
    Some((text.horizontal_alignment(), text.vertical_alignment()))
}

/// How much room an item needs in one direction, given what it has in the other.
fn needs(item: &ItemRc, orientation: Orientation, across: f32) -> Option<LayoutInfo> {
    let adapter = item.window_adapter()?;
    let item_ref = item.borrow();
    Some(
        item_ref
            .as_ref()
            .layout_info(orientation, across, &adapter, item),
    )
}

/// The text of an item that shows one, and whether it may be as narrow as its longest word.
fn text_of(item: &ItemRc) -> Option<(String, bool)> {
    if let Some(text) = item.downcast::<ComplexText>() {
        let text = text.as_pin_ref();
        let wraps = text.wrap() != TextWrap::NoWrap && text.overflow() == TextOverflow::Clip;
        return Some((text.text().into(), wraps));
    }
    let text = item.downcast::<SimpleText>()?;
    Some((text.as_pin_ref().text().into(), false))
}

fn cut_text(item: &ItemRc, text: &str, may_be_narrow: bool) -> Option<String> {
    if text.trim().is_empty() || is_hidden(item) {
        return None;
    }
    let place = absolute(item);
    let wide = needs(item, Orientation::Horizontal, -1.0)?;
    let width = if may_be_narrow {
        wide.min
    } else {
        wide.preferred
    };
    let height = needs(item, Orientation::Vertical, place.width())?.preferred;
    let said = |why: &str| Some(format!("{why}: “{text}” at {place:?}"));
    if place.width() + ROUNDING_PX < width {
        return said(&format!("is cut, needs a width of {width}"));
    }
    if place.height() + ROUNDING_PX < height {
        return said(&format!("is cut, needs a height of {height}"));
    }
    let ground = ground(item)?;
    let room = ground.inflate(ROUNDING_PX, ROUNDING_PX);
    (!room.contains_rect(&place))
        .then(|| said(&format!("sticks out of {ground:?}")))
        .flatten()
}

/// Whether it, or what it stands on, is told not to be shown.
fn is_hidden(item: &ItemRc) -> bool {
    let parent = item.parent_item(ParentItemTraversalMode::StopAtPopups);
    let clip = item.downcast::<Clip>();
    clip.is_some_and(|it| it.as_pin_ref().is_visibility_clip() && it.as_pin_ref().clip())
        || parent.is_some_and(|it| is_hidden(&it))
}

/// The nearest drawn rectangle that the item stands on.
fn ground(item: &ItemRc) -> Option<LogicalRect> {
    let mut at = item.parent_item(ParentItemTraversalMode::StopAtPopups)?;
    loop {
        let drawn = at.downcast::<BasicBorderRectangle>().is_some()
            || at.downcast::<BorderRectangle>().is_some()
            || at.downcast::<Rectangle>().is_some();
        if drawn {
            return Some(absolute(&at));
        }
        at = at.parent_item(ParentItemTraversalMode::StopAtPopups)?;
    }
}

/// Where an item is on the window.
fn absolute(item: &ItemRc) -> LogicalRect {
    let it = item.geometry();
    LogicalRect::new(item.map_to_window(it.origin), it.size)
}
