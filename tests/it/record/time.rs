//! The two times. Instants and offsets as in RFC 3339; milliseconds since 1970 as computed by
//! GNU `date -u -d … +%s`.

use feedside::record::{At, RecordError, WallTime};

#[test]
fn the_same_instant_reads_differently_under_two_offsets() {
    let here = WallTime::new(1_773_021_600_000, 60).unwrap();
    let there = WallTime::new(1_773_021_600_000, -210).unwrap();
    assert_eq!(here.local().to_rfc3339(), "2026-03-09T03:00:00+01:00");
    assert_eq!(there.local().to_rfc3339(), "2026-03-08T22:30:00-03:30");
    assert_eq!(here.since_ms(there), 0);
    assert_ne!(here, there);
}

/// In central Europe clocks went from 02:00 to 03:00 on 29 March 2026 (EU directive 2000/84/EC:
/// last Sunday in March, 01:00 UTC).
#[test]
fn hours_that_the_clock_jumped_over_are_not_counted() {
    let read = |text: &str| -> WallTime { serde_json::from_str(&format!("\"{text}\"")).unwrap() };
    let before = read("2026-03-29T01:30:00+01:00");
    let after = read("2026-03-29T03:30:00+02:00");
    assert_eq!(after.since_ms(before), 3_600_000);
    assert_eq!(before.since_ms(after), -3_600_000);
}

#[test]
fn a_wall_time_is_written_as_rfc_3339_with_its_offset_and_read_back() {
    for (utc_ms, offset, text) in [
        (0, 0, "1970-01-01T00:00:00.000+00:00"),
        (1_773_021_600_001, 60, "2026-03-09T03:00:00.001+01:00"),
        (1_773_021_600_000, 345, "2026-03-09T07:45:00.000+05:45"),
        (1_773_021_600_000, -840, "2026-03-08T12:00:00.000-14:00"),
    ] {
        let time = WallTime::new(utc_ms, offset).unwrap();
        let written = serde_json::to_string(&time).unwrap();
        assert_eq!(written, format!("\"{text}\""));
        assert_eq!(serde_json::from_str::<WallTime>(&written).unwrap(), time);
    }
}

#[test]
fn a_wall_time_without_an_offset_or_outside_its_years_is_refused() {
    for text in [
        "2026-03-09T03:00:00",
        "2026-03-09",
        "2026-02-30T00:00:00Z",
        "1969-12-31T23:59:59Z",
        "2200-01-01T00:00:00Z",
        "yesterday",
    ] {
        let read = serde_json::from_str::<WallTime>(&format!("\"{text}\""));
        assert!(read.is_err(), "{text}");
    }
    assert!(matches!(
        WallTime::new(0, 841),
        Err(RecordError::OutOfRange { what: "offset", .. })
    ));
}

#[test]
fn time_within_a_visit_never_goes_below_its_beginning() {
    assert_eq!(At::ms(5).minus_ms(9), At::START);
    assert_eq!(At::ms(5).since_ms(At::ms(9)), 0);
    assert_eq!(At::ms(u64::MAX).plus_ms(1), At::ms(u64::MAX));
    let time = WallTime::new(5, 0).unwrap();
    assert_eq!(time.plus_ms(-9).utc_ms(), 0);
    assert_eq!(time.plus_ms(i64::MAX), time.plus_ms(i64::MAX).plus_ms(1));
}
