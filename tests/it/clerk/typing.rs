//! Which key goes where. Times between keys: a scanner's 1 to 40 ms and a person's 60 ms and more
//! are common practice.

use feedside::clerk::connect::key_of;
use feedside::clerk::typing::{
    Key, LINE_CHARS_MOST, MACHINE_GAP_MS, MACHINE_KEYS, SCAN_ENDS_MS, Typed, Typing,
};
use feedside::handover::digits;
use proptest::prelude::*;
use slint::SharedString;
use slint::platform::Key as Named;

/// Types a text, a key every so many milliseconds from a time on; what went to the scanner's
/// listener.
fn typed(typing: &mut Typing, text: &str, from_ms: u64, every_ms: u64) -> (String, u64) {
    let mut scanned = String::new();
    let mut at_ms = from_ms;
    for c in text.chars() {
        let letter = c.to_string();
        let key = match c {
            '\n' => Key::Enter,
            '\t' => Key::Tab,
            _ => Key::Text(&letter),
        };
        if let Typed::Scanned(text) = typing.key(key, at_ms) {
            scanned += &text;
        }
        at_ms += every_ms;
    }
    (scanned, at_ms)
}

fn a_code() -> String {
    digits::wrap(1, &[7; 120])
}

#[test]
fn while_no_line_is_open_every_key_is_the_scanners() {
    let mut typing = Typing::default();
    let text = format!("]Q1{}\n", a_code());
    assert_eq!(typed(&mut typing, &text, 0, 3).0, text);
}

#[test]
fn what_a_person_types_stays_in_the_line() {
    let mut typing = Typing::default();
    typing.open();
    let (scanned, _) = typed(&mut typing, "Bay 2 bed 4", 1_000, 70);
    assert_eq!((scanned.as_str(), typing.line()), ("", Some("Bay 2 bed 4")));
}

#[test]
fn a_scan_while_a_line_is_open_is_the_scanners_and_leaves_the_line_as_it_was() {
    for every_ms in [1, 5, 20, MACHINE_GAP_MS] {
        for suffix in ["", "\n", "\t", "\n\n"] {
            let mut typing = Typing::default();
            typing.open();
            let (_, now_ms) = typed(&mut typing, "Bay 2", 0, 150);
            let text = a_code() + suffix;
            let (scanned, now_ms) = typed(&mut typing, &text, now_ms + 400, every_ms);
            assert_eq!(scanned, text, "{every_ms} ms, {suffix:?}");
            assert_eq!(typing.line(), Some("Bay 2"));
            // The person goes on.
            let (scanned, _) = typed(&mut typing, " bed 4", now_ms + SCAN_ENDS_MS, 150);
            assert_eq!((scanned.as_str(), typing.line()), ("", Some("Bay 2 bed 4")));
        }
    }
}

#[test]
fn a_scanner_as_slow_as_fingers_is_known_by_the_preamble() {
    let mut typing = Typing::default();
    typing.open();
    let (_, now_ms) = typed(&mut typing, "Q. Z.", 0, 150);
    let (scanned, _) = typed(&mut typing, &a_code(), now_ms, 90);
    assert_eq!(scanned, a_code());
    assert_eq!(typing.line(), Some("Q. Z."));
}

#[test]
fn a_scanned_bracelet_of_a_few_digits_is_something_to_search_for() {
    let mut typing = Typing::default();
    typing.open();
    let (scanned, _) = typed(&mut typing, "04711993", 0, 3);
    assert_eq!((scanned.as_str(), typing.line()), ("", Some("04711993")));
    assert!("04711993".len() < MACHINE_KEYS);
}

#[test]
fn enter_in_a_line_says_what_was_typed_and_escape_leaves_it() {
    let mut typing = Typing::default();
    typing.open();
    let (_, now_ms) = typed(&mut typing, "Bay", 0, 150);
    let accepted = Typed::Accepted("Bay".to_owned());
    assert_eq!(typing.key(Key::Enter, now_ms), accepted);
    assert_eq!(typing.key(Key::Backspace, now_ms + 200), Typed::Edited);
    assert_eq!(typing.line(), Some("Ba"));
    assert_eq!(typing.key(Key::Escape, now_ms + 400), Typed::Left);
    assert_eq!(typing.line(), None);
}

#[test]
fn the_toolkit_has_enter_and_tab_only_after_a_pause() {
    for key in [Key::Enter, Key::Tab] {
        let mut typing = Typing::default();
        let (_, now_ms) = typed(&mut typing, &a_code(), 0, 3);
        assert!(matches!(typing.key(key, now_ms), Typed::Scanned(_)));
        assert_eq!(typing.key(key, now_ms + SCAN_ENDS_MS), Typed::Toolkits);
    }
}

#[test]
fn a_line_keeps_its_last_characters_where_somebody_leans_on_the_keyboard() {
    let mut typing = Typing::default();
    typing.open();
    typed(&mut typing, &"ab".repeat(LINE_CHARS_MOST), 0, 100);
    let left = typing.line().map(|line| line.chars().count());
    assert_eq!(left, Some(LINE_CHARS_MOST));
}

#[test]
fn keys_are_told_apart_as_the_toolkit_names_them() {
    let named = |key: Named| SharedString::from(key);
    for (text, control, alt, key) in [
        ("7".into(), false, false, Key::Text("7")),
        ("é".into(), false, false, Key::Text("é")),
        // Right Alt writes on many layouts, and comes as both.
        ("@".into(), true, true, Key::Text("@")),
        // A group separator, as some scanners send it.
        ("]".into(), true, false, Key::Other),
        ("\u{1d}".into(), false, false, Key::Other),
        (named(Named::Return), false, false, Key::Enter),
        (named(Named::Tab), false, false, Key::Tab),
        (named(Named::Backtab), false, false, Key::Tab),
        (named(Named::Backspace), false, false, Key::Backspace),
        (named(Named::Escape), false, false, Key::Escape),
        (named(Named::Shift), false, false, Key::Other),
        (named(Named::CapsLock), false, false, Key::Other),
        (named(Named::AltGr), false, false, Key::Other),
        (named(Named::F5), false, false, Key::Other),
        (named(Named::LeftArrow), false, false, Key::Other),
        (named(Named::Home), false, false, Key::Other),
    ] {
        assert_eq!(key_of(&text, control, alt), key, "{text:?}");
    }
}

proptest! {
    #[test]
    fn no_digit_of_a_scan_is_lost_whatever_a_person_types_around_it(
        before in "[a-z0-9 ]{0,20}",
        after in "[a-z0-9 ]{0,20}",
        every_ms in 1_u64..40,
        person_ms in 60_u64..400,
        pause_ms in 60_u64..3_000,
        bytes in prop::collection::vec(any::<u8>(), 30..200),
    ) {
        let mut typing = Typing::default();
        typing.open();
        let (_, now_ms) = typed(&mut typing, &before, 0, person_ms);
        let code = digits::wrap(1, &bytes) + "\n";
        let (scanned, now_ms) = typed(&mut typing, &code, now_ms + pause_ms, every_ms);
        let (later, _) = typed(&mut typing, &after, now_ms + SCAN_ENDS_MS, person_ms);
        prop_assert_eq!(scanned, code);
        prop_assert_eq!(later, "");
        prop_assert_eq!(typing.line().unwrap(), before + &after);
    }
}
