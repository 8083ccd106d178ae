//! The desk's window looked at: nothing cut, nothing over another, and as it was when it was found
//! good.

use feedside::clerk::event::Event;

use feedside::words::Lang;
use slint::{ComponentHandle, Model};

use super::place::{Clerk, clerk_over};
use crate::app::cut::{cut_texts, overlapping_texts, short_pages};
use crate::app::golden::Golden;
use crate::app::tablet::CANVAS;
use crate::desk::{packed, set_up, tablet};

/// The usual size and the least.
const SIZES: [(u32, u32); 2] = [(1180, 760), (900, 640)];

/// A state that tells a file's name, which is another each time.
const UNPRINTED: &str = "unprinted";

/// Each state of the window, one after the other.
fn walk(lang: Lang, mut look: impl FnMut(&Clerk, &str)) {
    let (desk, public) = set_up();
    let clerk = clerk_over(desk, lang, false);
    look(&clerk, "ready");
    clerk.hear(Event::InFront(false));
    look(&clerk, "deaf");
    clerk.hear(Event::InFront(true));
    let packed = packed(&public);
    for (at, piece) in packed.pieces.iter().enumerate() {
        clerk.scan(piece);
        if at == 0 {
            look(&clerk, "piece");
        }
    }
    look(&clerk, "kept");
    clerk.scan("hello");
    look(&clerk, "refused");
    clerk.scan(&tablet().public().to_code_text());
    look(&clerk, "known");
    clerk.touch(&clerk.say("clerk-search"));
    look(&clerk, "search");
    let record = clerk.shows().get_heads().row_data(0).unwrap().record;
    clerk.touch(&record);
    look(&clerk, "record");
    clerk.touch(&clerk.say("clerk-print"));
    look(&clerk, UNPRINTED);
}

#[test]
fn nothing_in_the_window_is_cut_or_written_over_another() {
    let mut faults = Vec::new();
    for lang in Lang::ALL {
        walk(*lang, |clerk, name| {
            for (width, height) in SIZES {
                CANVAS.with(|canvas| {
                    canvas.resize(width, height);
                    let _ = canvas.draw();
                });
                let window = clerk.window.window();
                let found = cut_texts(window)
                    .into_iter()
                    .chain(short_pages(window))
                    .chain(overlapping_texts(window));
                let tag = lang.tag();
                faults.extend(found.map(|it| format!("{name} {tag} {width}x{height}: {it}")));
            }
        });
    }
    assert!(faults.is_empty(), "{}", faults.join("\n"));
}

#[test]
fn the_window_looks_as_it_did_when_it_was_looked_at() {
    let mut golden = Golden::of("desk");
    walk(Lang::En, |_, name| {
        if name == UNPRINTED {
            return;
        }
        let drawn = CANVAS.with(|canvas| {
            canvas.resize(1180, 760);
            canvas.draw()
        });
        golden.compare(&drawn, &format!("{name}.png"));
    });
    golden.stand();
}
