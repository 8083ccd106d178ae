//! The note code.

use feedside::handover::{HandoverError, NOTE_CHARS_IN_V20, NOTE_CHARS_MOST, Note, read_back};

fn check(text: &str, expected: &str) {
    assert_eq!(Note::new(text).unwrap().as_str(), expected);
}

#[test]
fn accents_and_signs_are_written_out_and_lines_joined() {
    check("Müde,\nsüß — 37,2 °C", "Muede, suess - 37,2 deg C");
    check("  a\t\t b\r\n", "a b");
    check("mother's \"own\" words", "mothers own words");
    check("½ × 2 & more…", "1/2 x 2 + more.");
    check("Ünal şiş ğ İ Łódź", "Uenal sis g I Lodz");
    check("\u{2066}2.95\u{a0}kg\u{2069}", "2.95 kg");
    check(
        "plain: (10/10) 50%, ok; a+b=c?",
        "plain: (10/10) 50%, ok; a+b=c?",
    );
}

#[test]
fn what_has_no_plain_form_is_refused_with_its_place() {
    for (text, place) in [
        ("ab|c", 3),
        ("^", 1),
        ("a\\", 2),
        ("x 水", 3),
        ("a~", 2),
        ("<b>", 1),
        ("\u{7}", 1),
    ] {
        assert_eq!(
            Note::new(text).unwrap_err(),
            HandoverError::NoteNotPlain { place },
            "{text}"
        );
    }
}

#[test]
fn an_empty_note_and_a_note_too_long_are_refused() {
    assert_eq!(Note::new(" \n ").unwrap_err(), HandoverError::NoteEmpty);
    assert_eq!(Note::new("''").unwrap_err(), HandoverError::NoteEmpty);
    assert!(Note::new(&"a".repeat(NOTE_CHARS_MOST)).is_ok());
    assert_eq!(
        Note::new(&"ß".repeat(451)).unwrap_err(),
        HandoverError::NoteTooLong { given: 902 }
    );
}

#[test]
fn a_note_reads_back_from_its_code() {
    for (length, version) in [(1, 1), (NOTE_CHARS_IN_V20, 20), (NOTE_CHARS_MOST, 24)] {
        let text: String = "Seen at the breast, 12 min. "
            .chars()
            .cycle()
            .take(length)
            .collect();
        let note = Note::new(text.trim_end()).unwrap();
        let code = note.to_code().unwrap();
        assert!(code.version() <= version);
        let (side, pixels) = code.to_luma(5, 4);
        assert_eq!(
            read_back::read_one(pixels, side, side).unwrap(),
            note.as_str()
        );
    }
}

#[test]
fn a_note_is_not_shown_by_debug() {
    assert_eq!(format!("{:?}", Note::new("secret").unwrap()), "Note(…)");
}
