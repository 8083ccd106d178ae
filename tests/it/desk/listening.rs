//! What keyboard scanners do to a code, and that it arrives all the same. Sources: rows of digits of
//! the French, Czech and Persian keyboard layouts as in xkeyboard-config (symbols/fr, cz, ir; from
//! memory); the prefix `]Q1` of ISO/IEC 15424 for QR codes (from memory).

use feedside::desk::listen::Listener;
use feedside::handover::{HandoverError, Offered};
use proptest::prelude::*;

use super::{packed, set_up};

fn pieces() -> Vec<String> {
    static PIECES: std::sync::OnceLock<Vec<String>> = std::sync::OnceLock::new();
    PIECES.get_or_init(|| packed(&set_up().1).pieces).clone()
}

fn is_complete(offered: &Offered) -> bool {
    matches!(
        offered,
        Offered::Complete { .. }
            | Offered::Again {
                sealed: Some(_),
                ..
            }
    )
}

fn refusals(heard: &[Offered]) -> usize {
    heard
        .iter()
        .filter(|it| matches!(it, Offered::Refused(_)))
        .count()
}

/// Types all of it in chunks; how many records became whole, and how many refusals there were.
fn typed(text: &str, chunk_chars: usize) -> (usize, usize) {
    let mut listener = Listener::new();
    let chars: Vec<char> = text.chars().collect();
    let mut heard: Vec<Offered> = chars
        .chunks(chunk_chars)
        .flat_map(|chunk| listener.push(&chunk.iter().collect::<String>()))
        .collect();
    heard.extend(listener.finish());
    let whole = heard.iter().filter(|it| is_complete(it)).count();
    (whole, refusals(&heard))
}

#[test]
fn every_prefix_and_suffix_is_passed_over() {
    for (before, after) in [
        ("", "\n"),
        ("", "\r\n"),
        ("", "\t"),
        ("", ""),
        ("]Q1", "\n"),
        ("]Q1", ""),
        ("ward 7 ", " end\n"),
        ("", "\u{1d}\u{4}"),
        ("é", "§\n"),
    ] {
        let text: String = pieces()
            .iter()
            .map(|piece| format!("{before}{piece}{after}"))
            .collect();
        assert_eq!(typed(&text, 64), (1, 0), "{before:?} {after:?}");
    }
}

#[test]
fn every_keyboard_layout_is_learned_from_the_code() {
    for (layout, digits) in [
        ("French", "à&é\"'(-è_ç"),
        ("French with Caps Lock", "0123456789"),
        ("Czech", "é+ěščřžýáí"),
        ("Persian", "۰۱۲۳۴۵۶۷۸۹"),
        ("shifted", ")!@#$%^&*("),
    ] {
        let keys: Vec<char> = digits.chars().collect();
        let text: String = pieces().join("\n");
        let text: String = text
            .chars()
            .map(|c| c.to_digit(10).map_or(c, |digit| keys[digit as usize]))
            .collect();
        for suffix in ["", "\n"] {
            assert_eq!(typed(&format!("{text}{suffix}"), 100), (1, 0), "{layout}");
        }
    }
}

#[test]
fn a_doubled_scan_is_known() {
    for between in ["", "\n"] {
        let pieces = pieces();
        let doubled: Vec<_> = pieces
            .iter()
            .flat_map(|piece| [piece.as_str(); 2])
            .collect();
        let (whole, refused) = typed(&doubled.join(between), 1_000);
        assert_eq!((whole, refused), (2, 0), "{between:?}");
    }
}

#[test]
fn a_cut_scan_is_named_and_the_whole_one_behind_it_is_taken() {
    for between in ["\n", ""] {
        let pieces = pieces();
        let half = &pieces[0][..pieces[0].len() / 2];
        let mut listener = Listener::new();
        let mut heard = listener.push(&format!("{half}{between}{}\n", pieces[0]));
        heard.extend(listener.finish());
        assert!(
            matches!(
                heard[0],
                Offered::Refused(HandoverError::PieceCut { piece: 1 })
                    | Offered::Refused(HandoverError::PieceDamaged { piece: 1 })
            ),
            "{:?}",
            heard[0]
        );
        assert!(
            matches!(heard[1], Offered::Piece { index: 1, .. }),
            "{:?}",
            heard[1]
        );
        assert_eq!(heard.len(), 2);
    }
}

#[test]
fn text_that_is_no_code_is_told_once_and_empty_lines_are_not() {
    let mut listener = Listener::new();
    assert!(listener.push("\n\r\n\t\n").is_empty());
    let heard = listener.push("4006381333931\nsome words that somebody typed\n");
    assert_eq!(refusals(&heard), 2);
    assert_eq!(heard.len(), 2);
}

#[test]
fn a_flood_of_nothing_is_taken_within_bounds() {
    let mut listener = Listener::new();
    for filler in ["0", "é", " "] {
        for _ in 0..50 {
            let heard = listener.push(&filler.repeat(4_096));
            assert!(heard.len() <= 2);
        }
    }
    listener.finish();
    assert_eq!(refusals(&listener.push(&(pieces()[0].clone() + "\n"))), 0);
}

#[test]
fn what_is_still_missing_can_be_asked() {
    let mut listener = Listener::new();
    listener.push(&(pieces()[1].clone() + "\n"));
    let missing = listener.missing();
    assert_eq!(missing.len(), 1);
    let (_, count, missing) = &missing[0];
    let expected: Vec<u8> = (1..=*count).filter(|index| *index != 2).collect();
    assert_eq!(*missing, expected);
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 48, failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn chunks_of_any_size_make_no_difference(chunk in 1_usize..400, suffix in "[\n\t]?") {
        let text: String = pieces().iter().map(|piece| format!("{piece}{suffix}")).collect();
        prop_assert_eq!(typed(&text, chunk), (1, 0));
    }

    #[test]
    fn a_scan_cut_in_two_anywhere_is_put_together(cut in 1_usize..2_000, which in 0_usize..2) {
        let mut pieces = pieces();
        let cut = cut % (pieces[which].len() - 1) + 1;
        pieces[which].insert(cut, '\n');
        let (whole, refused) = typed(&(pieces.join("\n") + "\n"), 512);
        prop_assert_eq!(whole, 1);
        prop_assert!(refused <= 1, "the cut may be told, once");
    }

    #[test]
    fn whatever_is_typed_there_is_no_panic(text in "\\PC{0,300}") {
        let mut listener = Listener::new();
        listener.push(&text);
        listener.finish();
    }

    #[test]
    fn digits_of_any_kind_are_no_panic(text in "[0-9\n]{0,600}") {
        let mut listener = Listener::new();
        listener.push(&format!("01234567899876543210{text}"));
        listener.finish();
    }
}
