//! The whole job walked through with an eye on every screen: an audit of what can be touched, and
//! pictures compared with those that were looked at and found good.
//!
//! Sizes: 9 and 10 mm are 57 and 63 pixels at 160 dots an inch, of which a tablet's logical pixel
//! is one. That fingers need about so much is common practice.

use std::sync::LazyLock;

use feedside::app::event::Event;
use feedside::app::picture::Canvas;
use feedside::app::route::Route;
use feedside::app::settings;
use feedside::app::ui;
use feedside::rehearse::{Eye, RehearseError, Tablet, walk};
use feedside::words::Lang;
use i_slint_backend_testing::{AccessibleRole, ElementHandle, ElementQuery, ElementRoot};
use image::{Rgb, RgbImage};
use slint::ComponentHandle;

use super::cut::{cut_texts, overlapping_texts, short_pages};
use super::golden::Golden;
use crate::store::Folder;

/// A ten-inch tablet lying and standing.
const SIZES: [(u32, u32); 2] = [(1280, 800), (800, 1280)];
/// The usual text and the largest: their place among the settings, and per cent.
const TEXTS: [(usize, u32); 2] = [(0, 100), (4, 200)];
/// The shortest side of what can be touched on the bedside screen, and elsewhere.
const TARGET_PX: (f32, f32) = (57.0, 63.0);
/// Less than this is no overlap and no overhang: layouts round.
const ROUNDING_PX: f32 = 1.0;

fn hear(tablet: &mut Tablet, event: settings::Event) {
    tablet.shell.hear(Event::Settings(event));
}

/// Something on the screen: what it is, and where.
#[derive(Debug, Clone, PartialEq)]
struct Thing {
    label: String,
    role: AccessibleRole,
    left: f32,
    top: f32,
    width: f32,
    height: f32,
    /// Whether it lies on a page that scrolls.
    scrolls: bool,
}

impl Thing {
    fn of(element: &ElementHandle, scrolls: bool) -> Option<Self> {
        let role = element
            .accessible_role()
            .filter(|role| *role != AccessibleRole::None)?;
        let (at, size) = (element.absolute_position(), element.size());
        Some(Self {
            label: element.accessible_label().unwrap_or_default().into(),
            role,
            left: at.x,
            top: at.y,
            width: size.width,
            height: size.height,
            scrolls,
        })
    }

    fn is_touchable(&self) -> bool {
        matches!(
            self.role,
            AccessibleRole::Button
                | AccessibleRole::Checkbox
                | AccessibleRole::RadioButton
                | AccessibleRole::Switch
                | AccessibleRole::Slider
                | AccessibleRole::Spinbox
                | AccessibleRole::Combobox
                | AccessibleRole::Tab
                | AccessibleRole::TextInput
        )
    }

    fn overlaps(&self, other: &Self) -> bool {
        let apart = |from: f32, length: f32, other_from: f32, other_length: f32| {
            from + length <= other_from + ROUNDING_PX
                || other_from + other_length <= from + ROUNDING_PX
        };
        !(apart(self.left, self.width, other.left, other.width)
            || apart(self.top, self.height, other.top, other.height))
    }

    fn told(&self) -> String {
        format!(
            "{:?} “{}” at {:.0},{:.0}, {:.0} by {:.0}",
            self.role, self.label, self.left, self.top, self.width, self.height
        )
    }
}

/// All that is on the screen.
fn things(window: &ui::AppWindow) -> Vec<Thing> {
    let root = window.root_element();
    let mut on_pages = Vec::new();
    for page in ElementQuery::from_root(window)
        .match_inherits("Flickable")
        .find_all()
    {
        let inner = page.query_descendants().find_all();
        on_pages.extend(inner.iter().filter_map(|it| Thing::of(it, true)));
    }
    let fixed = root.query_descendants().find_all();
    let fixed = fixed.iter().filter_map(|it| Thing::of(it, false));
    let fixed: Vec<_> = fixed
        .filter(|it| {
            !on_pages.contains(&Thing {
                scrolls: true,
                ..it.clone()
            })
        })
        .collect();
    on_pages.extend(fixed);
    on_pages
}

/// What is wrong with a screen of this size.
fn faults(things: &[Thing], bedside: bool, width: u32, height: u32) -> Vec<String> {
    let (width, height) = (width as f32, height as f32);
    let least = if bedside { TARGET_PX.0 } else { TARGET_PX.1 };
    let mut faults = Vec::new();
    for (place, it) in things.iter().enumerate() {
        let right = it.left + it.width;
        let below = it.top + it.height;
        if it.left < -ROUNDING_PX || width + ROUNDING_PX < right {
            faults.push(format!("leaves the window sideways: {}", it.told()));
        }
        if !it.scrolls && (it.top < -ROUNDING_PX || height + ROUNDING_PX < below) {
            faults.push(format!("leaves the window: {}", it.told()));
        }
        if !it.is_touchable() {
            continue;
        }
        if it.label.trim().is_empty() {
            faults.push(format!("has no label: {}", it.told()));
        }
        if it.width.min(it.height) + 0.5 < least {
            faults.push(format!("is too small to touch: {}", it.told()));
        }
        for other in things[place + 1..].iter().filter(|it| it.is_touchable()) {
            if it.scrolls == other.scrolls && it.overlaps(other) {
                faults.push(format!("overlap: {} and {}", it.told(), other.told()));
            }
        }
    }
    faults
}

/// What is wrong with what a window of this size shows.
pub(super) fn faults_on(
    window: &ui::AppWindow,
    bedside: bool,
    (width, height): (u32, u32),
) -> Vec<String> {
    let mut found = faults(&things(window), bedside, width, height);
    found.extend(cut_texts(window.window()));
    found.extend(short_pages(window.window()));
    found.extend(overlapping_texts(window.window()));
    found
}

/// Looks for what is wrong, in every language and both ways of holding the tablet.
#[derive(Default)]
struct Auditor {
    faults: Vec<String>,
    touchables: usize,
}

impl Auditor {
    fn look(&mut self, canvas: &Canvas, tablet: &mut Tablet, name: &str) {
        for (text, percent) in TEXTS {
            hear(tablet, settings::Event::TextChosen(text));
            for (place, lang) in Lang::ALL.iter().enumerate() {
                hear(tablet, settings::Event::LanguageChosen(place));
                for (width, height) in SIZES {
                    canvas.resize(width, height);
                    let _ = canvas.draw();
                    self.touchables += things(tablet.window())
                        .iter()
                        .filter(|it| it.is_touchable())
                        .count();
                    let bedside = tablet.shell.route() == Route::Bedside;
                    let tag = lang.tag();
                    let found = faults_on(tablet.window(), bedside, (width, height));
                    self.faults.extend(
                        found
                            .into_iter()
                            .map(|it| format!("{name} {tag} {percent} % {width}x{height}: {it}")),
                    );
                }
            }
        }
        hear(tablet, settings::Event::TextChosen(0));
        hear(tablet, settings::Event::LanguageChosen(0));
    }
}

/// Takes away the record's code, which changes with everything that is in the record.
fn blank_pictures(tablet: &Tablet, drawn: &mut RgbImage) {
    for picture in ElementQuery::from_root(tablet.window())
        .match_accessible_role(AccessibleRole::Image)
        .find_all()
    {
        let (at, size) = (picture.absolute_position(), picture.size());
        for y in at.y as u32..((at.y + size.height) as u32).min(drawn.height()) {
            for x in at.x as u32..((at.x + size.width) as u32).min(drawn.width()) {
                drawn.put_pixel(x, y, Rgb([255; 3]));
            }
        }
    }
}

/// Compares each screen with its picture.
struct Comparer(Golden);

impl Comparer {
    fn compare(&mut self, canvas: &Canvas, tablet: &Tablet, file: &str) {
        let mut drawn = canvas.draw();
        if tablet.shell.route() == Route::Handover {
            blank_pictures(tablet, &mut drawn);
        }
        self.0.compare(&drawn, file);
    }

    fn look(&mut self, canvas: &Canvas, tablet: &mut Tablet, name: &str) {
        for night in [false, true] {
            hear(tablet, settings::Event::NightChosen(night));
            for (width, height) in SIZES {
                canvas.resize(width, height);
                let light = if night { "night" } else { "day" };
                let way = if height < width { "lying" } else { "standing" };
                self.compare(canvas, tablet, &format!("{name}-{way}-{light}.png"));
            }
        }
        hear(tablet, settings::Event::NightChosen(false));
    }
}

/// Both eyes, so that the job is walked through once.
struct Both {
    canvas: Canvas,
    auditor: Auditor,
    comparer: Comparer,
}

impl Eye for Both {
    fn look(&mut self, tablet: &mut Tablet, name: &str) -> Result<(), RehearseError> {
        self.auditor.look(&self.canvas, tablet, name);
        self.comparer.look(&self.canvas, tablet, name);
        Ok(())
    }
}

/// What both eyes saw.
static SEEN: LazyLock<(Auditor, Comparer)> = LazyLock::new(|| {
    let folder = Folder::new("eyes");
    let mut both = Both {
        canvas: Canvas::set_up().unwrap(),
        auditor: Auditor::default(),
        comparer: Comparer(Golden::of("tablet")),
    };
    walk(&folder.file("out"), 3, &mut both).unwrap();
    (both.auditor, both.comparer)
});

#[test]
fn everything_that_can_be_touched_is_named_large_enough_and_apart() {
    let auditor = &SEEN.0;
    // Each of the screens has several things to touch, in two languages, sizes and ways.
    assert!(800 < auditor.touchables, "{} seen", auditor.touchables);
    assert!(auditor.faults.is_empty(), "{}", auditor.faults.join("\n"));
}

#[test]
fn every_screen_looks_as_it_did_when_it_was_looked_at() {
    SEEN.1.0.stand();
}

/// A key of 70 by 70 at this place.
fn key(label: &str, left: f32, top: f32) -> Thing {
    Thing {
        label: label.to_owned(),
        role: AccessibleRole::Button,
        left,
        top,
        width: 70.0,
        height: 70.0,
        scrolls: false,
    }
}

#[test]
fn the_audit_sees_what_is_wrong() {
    // Common practice; each fault alone, and a screen without any.
    let good = key("one", 10.0, 10.0);
    let small = Thing {
        width: 60.0,
        ..good.clone()
    };
    let cases = [
        (vec![good.clone(), key("two", 80.0, 10.0)], ""),
        (vec![key(" ", 10.0, 10.0)], "has no label"),
        (vec![small], "is too small"),
        (vec![key("out", 1250.0, 10.0)], "leaves the window sideways"),
        (vec![key("low", 10.0, 760.0)], "leaves the window:"),
        (vec![good, key("two", 60.0, 60.0)], "overlap"),
    ];
    for (things, told) in cases {
        let found = faults(&things, false, 1280, 800);
        assert_eq!(found.len(), usize::from(!told.is_empty()), "{found:?}");
        assert!(found.iter().all(|it| it.starts_with(told)), "{found:?}");
    }
}
