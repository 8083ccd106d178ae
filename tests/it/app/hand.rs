//! A hand that finds things on the window as assistive technology does, by what they are called, and
//! touches them as a finger does, where they are drawn. Knows no screen.

use std::time::Duration;

use feedside::app::event::Event;
use feedside::app::route::Route;
use feedside::words::{Arg, Lang, Words};
use i_slint_backend_testing::{AccessibleRole, ElementHandle, ElementQuery};
use slint::platform::{PointerEventButton, WindowEvent};
use slint::{ComponentHandle, LogicalPosition};

use super::tablet::{CANVAS, Tablet};

/// How long a finger stays down, in milliseconds.
const DOWN_MS: u64 = 40;
/// Less than this is not out of the window.
const MARGIN_PX: f32 = 4.0;
/// The toolkit takes 180 ms to scroll.
const SCROLLED: Duration = Duration::from_millis(400);
/// How often a page is turned in search of something, and by how much of the window's height.
const TURNS: usize = 20;
const TURN_SHARE: f32 = 0.4;

/// The hand, before a tablet of this size.
pub struct Hand<'a> {
    pub tablet: &'a Tablet,
    pub words: Words,
    width: f32,
    height: f32,
}

impl<'a> Hand<'a> {
    pub fn new(tablet: &'a Tablet, lang: Lang, (width, height): (u32, u32)) -> Self {
        Self {
            tablet,
            words: Words::new(lang),
            width: width as f32,
            height: height as f32,
        }
    }

    /// What a message says in the hand's language.
    pub fn say(&self, id: &str) -> String {
        self.words.say(id)
    }

    pub fn say_with(&self, id: &str, args: &[(&str, Arg)]) -> String {
        self.words.say_with(id, args)
    }

    /// The screen that is seen.
    pub fn route(&self) -> Route {
        self.tablet.shell.borrow().route()
    }

    /// Touches the one thing of this name.
    pub fn touch(&self, label: &str) {
        let found = self.found(label, |all| all);
        self.touch_at(&found, label);
    }

    /// Touches what has a name within the group of a name.
    pub fn touch_in(&self, group: &str, label: &str) {
        let found = self.found(label, |all| {
            all.iter()
                .filter(|it| it.accessible_label().is_some_and(|it| it == group))
                .flat_map(|it| it.query_descendants().find_all())
                .collect()
        });
        self.touch_at(&found, label);
    }

    /// Touches a line to type in, and types.
    pub fn write(&self, label: &str, text: &str) {
        self.touch(label);
        let window = self.tablet.window.window();
        for letter in text.chars() {
            let text = slint::SharedString::from(letter);
            window.dispatch_event(WindowEvent::KeyPressed { text: text.clone() });
            window.dispatch_event(WindowEvent::KeyReleased { text });
        }
        self.settle();
    }

    /// Whether something of this name is on the window.
    pub fn sees(&self, label: &str) -> bool {
        self.labels().iter().any(|it| it == label)
    }

    /// What is called so that it begins with this.
    pub fn starting_with(&self, start: &str) -> String {
        let labels = self.labels();
        let found = labels.iter().find(|it| it.starts_with(start));
        found
            .unwrap_or_else(|| panic!("nothing begins with “{start}” among {labels:#?}"))
            .clone()
    }

    /// Lets time pass.
    pub fn wait_ms(&self, ms: u64) {
        self.tablet.clock.forward_ms(ms);
        (self.tablet.hear)(Event::Ticked);
        self.settle();
    }

    /// The names of all that can be touched.
    fn labels(&self) -> Vec<String> {
        let all = ElementQuery::from_root(&self.tablet.window).find_all();
        all.iter()
            .filter(|it| is_touchable(it))
            .filter_map(|it| it.accessible_label())
            .map(String::from)
            .collect()
    }

    /// Looks for the one thing of a name; scrolls down for it, and then from the top.
    fn found(
        &self,
        label: &str,
        among: impl Fn(Vec<ElementHandle>) -> Vec<ElementHandle>,
    ) -> ElementHandle {
        for turn in 0..=2 * TURNS {
            let mut found: Vec<_> = among(ElementQuery::from_root(&self.tablet.window).find_all())
                .into_iter()
                .filter(is_touchable)
                .filter(|it| it.accessible_label().is_some_and(|it| it == label))
                .collect();
            // A component and its outermost element are one thing.
            found.dedup_by(|one, other| place_of(one) == place_of(other));
            assert!(found.len() <= 1, "“{label}” is there more than once");
            if let Some(found) = found.pop() {
                return found;
            }
            let by = if turn == TURNS { 1_000.0 } else { -TURN_SHARE };
            self.scroll(by * self.height);
        }
        panic!("“{label}” is not among {:#?}", self.labels());
    }

    /// Scrolls every page, down if below 0.
    fn scroll(&self, by: f32) {
        for page in ElementQuery::from_root(&self.tablet.window)
            .match_inherits("Flickable")
            .find_all()
        {
            self.scroll_page(&page, by);
        }
    }

    fn scroll_page(&self, page: &ElementHandle, delta_y: f32) {
        let window = self.tablet.window.window();
        window.dispatch_event(WindowEvent::PointerScrolled {
            position: place_of(page),
            delta_x: 0.0,
            delta_y,
        });
        CANVAS.with(|canvas| canvas.pass(SCROLLED));
    }

    fn touch_at(&self, it: &ElementHandle, label: &str) {
        assert_ne!(
            it.accessible_enabled(),
            Some(false),
            "“{label}” is not enabled"
        );
        self.bring_into_view(it);
        let position = place_of(it);
        let seen = (MARGIN_PX..self.width - MARGIN_PX).contains(&position.x)
            && (MARGIN_PX..self.height - MARGIN_PX).contains(&position.y);
        assert!(seen, "“{label}” cannot be seen: {position:?}");
        let window = self.tablet.window.window();
        let button = PointerEventButton::Left;
        window.dispatch_event(WindowEvent::PointerMoved { position });
        window.dispatch_event(WindowEvent::PointerPressed { position, button });
        self.tablet.clock.forward_ms(DOWN_MS);
        window.dispatch_event(WindowEvent::PointerReleased { position, button });
        window.dispatch_event(WindowEvent::PointerExited);
        self.settle();
    }

    /// Scrolls the page that holds it so that it stands in the middle.
    fn bring_into_view(&self, it: &ElementHandle) {
        for page in ElementQuery::from_root(&self.tablet.window)
            .match_inherits("Flickable")
            .find_all()
        {
            let holds = page.query_descendants().find_all().iter().any(|inner| {
                inner.accessible_label() == it.accessible_label() && place_of(inner) == place_of(it)
            });
            if holds {
                self.scroll_page(&page, place_of(&page).y - place_of(it).y);
            }
        }
    }

    fn settle(&self) {
        slint::platform::update_timers_and_animations();
    }
}

/// The middle of a thing on the window.
fn place_of(it: &ElementHandle) -> LogicalPosition {
    let (corner, size) = (it.absolute_position(), it.size());
    LogicalPosition::new(corner.x + size.width / 2.0, corner.y + size.height / 2.0)
}

fn is_touchable(it: &ElementHandle) -> bool {
    matches!(
        it.accessible_role(),
        Some(AccessibleRole::Button | AccessibleRole::RadioButton | AccessibleRole::TextInput)
    )
}
