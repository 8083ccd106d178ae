//! What keyboard scanners do to a code, and that it arrives all the same. Sources: rows of digits of
//! the French, Czech and Persian keyboard layouts as in xkeyboard-config (symbols/fr, cz, ir; from
//! memory); the prefix `]Q1` of ISO/IEC 15424 for QR codes (from memory).

use feedside::desk::listen::{Heard, Listener, ScannerReport, Suffix};
use feedside::handover::test_code::{self, Slips, slips};
use feedside::handover::{HandoverError, Offered, VersionCap};
use proptest::prelude::*;

use super::{packed, set_up};

fn pieces() -> Vec<String> {
    static PIECES: std::sync::OnceLock<Vec<String>> = std::sync::OnceLock::new();
    PIECES.get_or_init(|| packed(&set_up().1).pieces).clone()
}

/// The codes among what was heard; nothing else may be.
fn codes(heard: Vec<Heard>) -> Vec<Offered> {
    let code = |heard| match heard {
        Heard::Code(offered) => offered,
        Heard::Test(_) => panic!("no test code was typed"),
    };
    heard.into_iter().map(code).collect()
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
    let mut heard: Vec<Heard> = chars
        .chunks(chunk_chars)
        .flat_map(|chunk| listener.push(&chunk.iter().collect::<String>()))
        .collect();
    heard.extend(listener.finish());
    let heard = codes(heard);
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
        let heard = codes(heard);
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
    let heard = codes(listener.push("4006381333931\nsome words that somebody typed\n"));
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
    let heard = codes(listener.push(&(pieces()[0].clone() + "\n")));
    assert_eq!(refusals(&heard), 0);
}

#[test]
fn what_is_still_missing_can_be_asked() {
    let mut listener = Listener::new();
    listener.push(&(pieces()[1].clone() + "\n"));
    let waiting = listener.waiting();
    assert_eq!(waiting.len(), 1);
    let expected: Vec<u8> = (1..=waiting[0].count).filter(|index| *index != 2).collect();
    assert_eq!(waiting[0].missing, expected);
}

#[test]
fn a_code_with_a_slip_in_its_preamble_is_told_as_damaged_through_a_layout_that_was_seen() {
    let french: Vec<char> = "à&é\"'(-è_ç".chars().collect();
    let on_french = |text: &str| -> String {
        let key = |c: char| french[c.to_digit(10).unwrap() as usize];
        text.chars().map(key).collect()
    };
    let mut listener = Listener::new();
    let slipped = on_french(&pieces()[1][1..]) + "\n";
    let before = codes(listener.push(&slipped));
    assert_eq!(before, [Offered::Refused(HandoverError::NotOurs)]);
    listener.push(&(on_french(&pieces()[0]) + "\n"));
    let after = codes(listener.push(&slipped));
    assert_eq!(
        after,
        [Offered::Refused(HandoverError::PieceDamaged { piece: 2 })]
    );
}

#[test]
fn two_tablets_may_be_scanned_by_turns() {
    let (_, desk) = set_up();
    let other = super::packed_as(&super::handed_of(crate::support::bare_visit()), &desk, 4);
    let longest = pieces().len().max(other.pieces.len());
    let text: String = (0..longest)
        .flat_map(|at| [pieces().get(at).cloned(), other.pieces.get(at).cloned()])
        .flatten()
        .map(|piece| piece + "\n")
        .collect();
    assert_eq!(typed(&text, 200), (2, 0));
}

/// Types a text through keys, prefix and suffix; what is said of it, once.
fn tried(text: &str, keys: &str, before: &str, after: &str) -> ScannerReport {
    let keys: Vec<char> = keys.chars().collect();
    let typed: String = text
        .chars()
        .map(|c| keys[c.to_digit(10).unwrap() as usize])
        .collect();
    let mut listener = Listener::new();
    let mut heard = listener.push(&format!("{before}{typed}{after}"));
    heard.extend(listener.finish());
    match heard.as_slice() {
        [Heard::Test(report)] => (**report).clone(),
        other => panic!("{other:?}"),
    }
}

const PLAIN: &str = "0123456789";

#[test]
fn the_test_code_tells_layout_prefix_suffix_and_that_nothing_was_lost() {
    for cap in VersionCap::ALL {
        let text = test_code::text(cap);
        let few = cap != VersionCap::V15;
        for keys in [PLAIN, "à&é\"'(-è_ç", "É+ĚŠČŘŽÝÁÍ", "۰۱۲۳۴۵۶۷۸۹"] {
            for before in ["", "]Q1", "ward "].into_iter().skip(usize::from(few)) {
                for (after, suffix) in [
                    ("", Suffix::Nothing),
                    ("\r\n", Suffix::Enter),
                    ("\n", Suffix::Enter),
                    ("\t", Suffix::Tab),
                    (" end\n", Suffix::Other(" end\n".to_owned())),
                ] {
                    let report = tried(&text, keys, before, after);
                    assert_eq!(report.cap, cap);
                    assert_eq!(report.digits, text.len());
                    assert_eq!(report.slips, Slips::default());
                    assert_eq!(report.keys.iter().collect::<String>(), keys);
                    assert_eq!(report.is_plain(), keys == PLAIN);
                    assert_eq!((report.prefix.as_str(), &report.suffix), (before, &suffix));
                    assert_eq!(report.per_second, None, "all came at once");
                }
            }
        }
    }
}

#[test]
fn the_test_code_tells_what_was_lost_doubled_or_wrong_and_where() {
    let text = test_code::text(VersionCap::V20);
    for at in [0, 7, 19, 20, 21, 22, 25, 26, 700, text.len() - 1] {
        let digit = text.as_bytes()[at] - b'0';
        let other = char::from(b'0' + (digit + 5) % 10);
        let (begin, rest) = (&text[..at], &text[at + 1..]);
        for (slipped, lost, doubled, wrong) in [
            (format!("{begin}{rest}"), 1, 0, 0),
            (format!("{begin}{digit}{digit}{rest}"), 0, 1, 0),
            (format!("{begin}{other}{rest}"), 0, 0, 1),
        ] {
            let report = tried(&slipped, PLAIN, "", "\n");
            if at == 0 && doubled == 1 {
                // The same as with a nought before the code.
                assert_eq!(report.prefix, "0");
                continue;
            }
            let slips = report.slips;
            let found = (slips.lost, slips.doubled, slips.wrong);
            assert_eq!(found, (lost, doubled, wrong), "at {at}");
            let first = slips.first.unwrap();
            // Equal digits beside each other: which of them was lost cannot be told.
            assert!(at.abs_diff(first - 1) <= 2, "at {at}, not {first}");
        }
    }
    // Every fortieth digit lost, and the end cut off.
    let thinned: String = text
        .char_indices()
        .filter(|(at, _)| at % 40 != 39)
        .map(|(_, c)| c)
        .collect();
    let cut = &thinned[..1_400];
    let slips = tried(cut, PLAIN, "", "\n").slips;
    assert_eq!((slips.lost, slips.count()), (1_600 - 1_400, 1_600 - 1_400));
}

#[test]
fn no_preamble_hides_within_a_test_code_and_all_digits_are_in_every_block() {
    for cap in VersionCap::ALL {
        let text = test_code::text(cap);
        // ISO/IEC 18004, table 7: digits at error correction M; from memory.
        let digits = [(15, 991), (20, 1_600), (25, 2_395)];
        assert!(
            digits.contains(&(cap.version(), text.len())),
            "{}",
            text.len()
        );
        assert_eq!(tried(&text, PLAIN, "", "\n").prefix, "");
        for block in text.as_bytes()[26..].chunks_exact(10) {
            let mut sorted = block.to_vec();
            sorted.sort_unstable();
            assert_eq!(sorted, PLAIN.as_bytes());
        }
    }
}

#[test]
fn the_speed_is_that_of_the_characters_after_the_first_chunk() {
    let text = test_code::text(VersionCap::V20) + "\n";
    let mut listener = Listener::new();
    let mut heard = Vec::new();
    // Ten characters every 40 ms.
    for (chunk, at) in text.as_bytes().chunks(10).zip(0..) {
        let typed = std::str::from_utf8(chunk).unwrap();
        heard.extend(listener.push_at(typed, Some(1_000_000 + at * 40)));
    }
    match heard.as_slice() {
        [Heard::Test(report)] => assert_eq!(report.per_second, Some(250)),
        other => panic!("{other:?}"),
    }
}

#[test]
fn a_test_code_between_pieces_disturbs_none_of_them() {
    for between in ["", "\n"] {
        let mut texts = pieces();
        texts.insert(1, test_code::text(VersionCap::V15));
        let mut listener = Listener::new();
        let mut heard = listener.push(&texts.join(between));
        heard.extend(listener.finish());
        let tests = heard.iter().filter(|it| matches!(it, Heard::Test(_)));
        assert_eq!(tests.count(), 1, "{between:?}");
        heard.retain(|it| matches!(it, Heard::Code(_)));
        let heard = codes(heard);
        assert_eq!(refusals(&heard), 0, "{heard:?}");
        assert_eq!(heard.iter().filter(|it| is_complete(it)).count(), 1);
    }
}

#[test]
fn the_slips_are_counted_as_by_hand() {
    for (sent, heard, lost, doubled, wrong, first) in [
        (&b"123"[..], &b"123"[..], 0, 0, 0, None),
        (b"123", b"13", 1, 0, 0, Some(2)),
        (b"123", b"1223", 0, 1, 0, Some(3)),
        (b"123", b"1x3", 0, 0, 1, Some(2)),
        (b"123", b"", 3, 0, 0, Some(1)),
        (b"", b"12", 0, 2, 0, Some(1)),
        // The classic pair of words: three slips.
        (b"kitten", b"sitting", 0, 1, 2, Some(1)),
    ] {
        let slips = slips(sent, heard);
        assert_eq!(
            (slips.lost, slips.doubled, slips.wrong),
            (lost, doubled, wrong)
        );
        assert_eq!(slips.first, first);
    }
}

/// Types the pieces with one of them cut in two; how many records became whole, and how many
/// refusals there were.
fn typed_with_a_cut(which: usize, cut: usize) -> (usize, usize) {
    let mut pieces = pieces();
    pieces[which].insert(cut, '\n');
    typed(&(pieces.join("\n") + "\n"), 512)
}

/// A cut behind the very first digit left a rest that was taken for a damaged code of its own.
#[test]
fn a_scan_cut_in_its_preamble_or_header_is_put_together() {
    for which in 0..2 {
        for cut in 1..60 {
            let (whole, refused) = typed_with_a_cut(which, cut);
            assert_eq!(whole, 1, "{which} {cut}");
            assert!(refused <= 1, "the cut may be told, once: {which} {cut}");
        }
    }
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
        let cut = cut % (pieces()[which].len() - 1) + 1;
        let (whole, refused) = typed_with_a_cut(which, cut);
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
