//! Numbers and dates. The forms are those of Unicode CLDR (decimal marks, space before the German
//! per cent sign, short month names), from memory; the minus sign is U+2212 of the Unicode charts.

use chrono::DateTime;
use feedside::words::{Lang, Words};

fn both() -> (Words, Words) {
    (Words::new(Lang::En), Words::new(Lang::De))
}

#[test]
fn numbers_have_the_decimal_mark_of_the_language() {
    let (en, de) = both();
    for (value, decimals, english, german) in [
        (7.06, 1, "7.1", "7,1"),
        (3450.0, 0, "3450", "3450"),
        (-10.0, 1, "\u{2212}10.0", "\u{2212}10,0"),
        (-0.04, 1, "0.0", "0,0"),
        (0.0, 2, "0.00", "0,00"),
        (f64::NAN, 1, "–", "–"),
        (f64::INFINITY, 1, "–", "–"),
    ] {
        assert_eq!(en.number(value, decimals), english);
        assert_eq!(de.number(value, decimals), german);
    }
}

#[test]
fn signed_numbers_always_show_the_sign_but_zero_has_none() {
    let (en, de) = both();
    assert_eq!(en.signed(120.0, 0), "+120");
    assert_eq!(en.signed(-35.0, 0), "\u{2212}35");
    assert_eq!(de.signed(-0.26, 1), "\u{2212}0,3");
    assert_eq!(de.signed(0.0, 1), "0,0");
    assert_eq!(en.signed(0.04, 1), "0.0");
}

#[test]
fn per_cent_has_a_space_that_does_not_break_in_german_and_none_in_english() {
    let (en, de) = both();
    assert_eq!(en.percent(7.1, 1), "7.1%");
    assert_eq!(de.percent(7.1, 1), "7,1\u{a0}%");
    assert_eq!(en.signed_percent(-10.0, 1), "\u{2212}10.0%");
    assert_eq!(de.signed_percent(2.5, 1), "+2,5\u{a0}%");
}

#[test]
fn a_stretch_of_time_reads_as_a_clock_of_minutes_and_seconds() {
    let words = Words::new(Lang::En);
    for (ms, shown) in [
        (0, "0:00"),
        (999, "0:00"),
        (1000, "0:01"),
        (402_000, "6:42"),
        (3_599_999, "59:59"),
        (3_600_000, "1:00:00"),
        (4_002_500, "1:06:42"),
    ] {
        assert_eq!(words.duration_clock(ms), shown);
    }
}

#[test]
fn dates_are_shown_in_the_offset_that_the_wall_clock_had() {
    let (en, de) = both();
    let time = DateTime::parse_from_rfc3339("2026-03-09T23:04:59+01:00").unwrap();
    assert_eq!(en.date_time(time), "9 Mar 2026, 23:04");
    assert_eq!(de.date_time(time), "9. März 2026, 23:04");
    assert_eq!(en.day_time(time), "9 Mar, 23:04");
    assert_eq!(de.date(time), "9. März 2026");
    assert_eq!(en.time(time), "23:04");
}
