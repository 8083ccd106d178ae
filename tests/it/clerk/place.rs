//! A desk's window for tests: the real window as pixels, a clock set by hand, a desk in memory, and
//! a printer that only notes what it was given.

use std::cell::{Cell, RefCell};
use std::collections::VecDeque;
use std::path::PathBuf;
use std::rc::Rc;
use std::sync::atomic::{AtomicU32, Ordering};
use std::sync::{Arc, Mutex};

use feedside::clerk::connect::{Parts, Shell};
use feedside::clerk::event::Event;
use feedside::clerk::sound::Tone;
use feedside::clerk::ui::{ClerkAdapter, ClerkWindow};
use feedside::clerk::worker::{Around, Ask, answer};
use feedside::desk::Desk;
use feedside::words::{Lang, Words};
use i_slint_backend_testing::ElementHandle;
use slint::platform::{Key, WindowEvent};
use slint::{ComponentHandle, Global, SharedString};

use crate::app::tablet::CANVAS;
use crate::desk::now;
use crate::store::Folder;

/// Milliseconds from key to key of the scanner that types here.
const SCANNER_MS: u64 = 4;
/// Of the person.
const PERSON_MS: u64 = 120;

/// The window with what is behind it.
pub struct Clerk {
    pub window: ClerkWindow,
    pub words: Words,
    pub desk: RefCell<Desk>,
    pub sounds: Rc<RefCell<Vec<Tone>>>,
    pub printed: Arc<Mutex<Vec<PathBuf>>>,
    pub folder: Folder,
    shell: Rc<Shell>,
    asked: Rc<RefCell<VecDeque<Ask>>>,
    now_ms: Rc<Cell<u64>>,
    around: Around,
}

/// A window over a desk, in front. Whether a printer is there.
pub fn clerk_over(desk: Desk, lang: Lang, has_printer: bool) -> Clerk {
    let window = CANVAS.with(|canvas| {
        let window = ClerkWindow::new().unwrap();
        window.show().unwrap();
        canvas.resize(1180, 760);
        window
    });
    let (asked, now_ms) = (
        Rc::<RefCell<VecDeque<Ask>>>::default(),
        Rc::new(Cell::new(0)),
    );
    let sounds = Rc::<RefCell<Vec<Tone>>>::default();
    static CLERKS: AtomicU32 = AtomicU32::new(0);
    let folder = Folder::new(&format!("clerk-{}", CLERKS.fetch_add(1, Ordering::Relaxed)));
    let printed = Arc::<Mutex<Vec<PathBuf>>>::default();
    let parts = Parts {
        words: Words::new(lang),
        ask: {
            let asked = Rc::clone(&asked);
            Box::new(move |ask| asked.borrow_mut().push_back(ask))
        },
        sound: {
            let sounds = Rc::clone(&sounds);
            Box::new(move |tone| sounds.borrow_mut().push(tone))
        },
        now_ms: {
            let now_ms = Rc::clone(&now_ms);
            Box::new(move || now_ms.get())
        },
    };
    let noted = Arc::clone(&printed);
    let clerk = Clerk {
        shell: Shell::over(&window, parts),
        window,
        words: Words::new(lang),
        desk: RefCell::new(desk),
        sounds,
        printed,
        asked,
        now_ms,
        around: Around {
            folder: folder.file("exports"),
            words: Words::new(lang),
            now: Box::new(|| Some(now())),
            printer: Box::new(move |file| {
                // Read as the printer would: it must be there while it is printed.
                if has_printer && std::fs::read(file).unwrap().starts_with(b"%PDF-") {
                    noted.lock().unwrap().push(file.to_owned());
                }
                has_printer
            }),
        },
        folder,
    };
    clerk.hear(Event::InFront(true));
    clerk
}

impl Clerk {
    pub fn hear(&self, event: Event) {
        self.shell.hear(event);
        self.settle();
    }

    /// What stands in the window.
    pub fn shows(&self) -> ClerkAdapter<'_> {
        ClerkAdapter::get(&self.window)
    }

    /// Lets the desk do all that it was asked.
    fn settle(&self) {
        loop {
            let ask = self.asked.borrow_mut().pop_front();
            let Some(ask) = ask else {
                return;
            };
            let told = answer(&mut self.desk.borrow_mut(), &self.around, ask);
            self.shell.hear(Event::Told(told));
        }
    }

    /// A key of the keyboard, or of the scanner.
    pub fn press(&self, text: impl Into<SharedString>) {
        let text = text.into();
        let window = self.window.window();
        window.dispatch_event(WindowEvent::KeyPressed { text: text.clone() });
        window.dispatch_event(WindowEvent::KeyReleased { text });
    }

    fn keys(&self, text: &str, every_ms: u64) {
        for c in text.chars() {
            if c == '\n' {
                // The desk is done before a scanner presses Enter.
                self.settle();
            }
            self.now_ms.set(self.now_ms.get() + every_ms);
            match c {
                '\n' => self.press(Key::Return),
                '\t' => self.press(Key::Tab),
                c => self.press(SharedString::from(c)),
            }
        }
        self.settle();
    }

    /// The scanner types a code, and Enter.
    pub fn scan(&self, code: &str) {
        self.wait_ms(600);
        self.keys(&format!("{code}\n"), SCANNER_MS);
    }

    /// The person types.
    pub fn write(&self, text: &str) {
        self.wait_ms(600);
        self.keys(text, PERSON_MS);
    }

    /// Lets time pass.
    pub fn wait_ms(&self, ms: u64) {
        self.now_ms.set(self.now_ms.get() + ms);
        self.shell.tick();
        self.settle();
    }

    /// Touches the first thing of this name.
    pub fn touch(&self, label: &str) {
        let found = ElementHandle::find_by_accessible_label(&self.window, label).next();
        let found = found.unwrap_or_else(|| panic!("nothing is called “{label}”"));
        found.invoke_accessible_default_action();
        self.settle();
    }

    pub fn say(&self, id: &str) -> String {
        self.words.say(id)
    }
}
