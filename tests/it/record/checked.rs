//! Values are checked where they come in. The ranges are the project's own: what the thing can
//! have, not what is likely.

use feedside::record::{
    Gestation, Grams, Label, Language, LastDay, Millilitres, Pain, RecordError, ScaleStep,
    TenthsCelsius, Text,
};

fn edges<T>(new: impl Fn(i64) -> Result<T, RecordError>, low: i64, high: i64) {
    assert!(new(low).is_ok() && new(high).is_ok());
    for outside in [low - 1, high + 1, i64::MIN, i64::MAX] {
        assert!(
            matches!(new(outside), Err(RecordError::OutOfRange { given, .. }) if given == outside)
        );
    }
}

#[test]
fn numbers_are_taken_up_to_their_edges_and_no_further() {
    edges(Grams::new, 1, 30_000);
    edges(Millilitres::new, 0, 5_000);
    edges(ScaleStep::new, 1, 200);
    edges(TenthsCelsius::new, 200, 450);
    edges(Pain::score, 0, 10);
    edges(Gestation::try_from, 22 * 7, 44 * 7 + 6);
}

#[test]
fn gestation_is_weeks_and_days() {
    assert_eq!(Gestation::weeks_days(36, 6).unwrap().days(), 258);
    assert_eq!(Gestation::weeks_days(40, 0).unwrap().in_weeks(), (40, 0));
    assert!(Gestation::weeks_days(39, 7).is_err());
    assert!(Gestation::weeks_days(21, 6).is_err());
}

#[test]
fn text_is_trimmed_counted_in_characters_and_printable() {
    assert_eq!(Label::new("  Bay 2 ").unwrap().as_str(), "Bay 2");
    assert_eq!(
        Label::new(" \n "),
        Err(RecordError::Empty { what: "label" })
    );
    assert!(Label::new(&"ä".repeat(40)).is_ok());
    assert!(Label::new(&"ä".repeat(41)).is_err());
    assert!(Text::new("one\ntwo").is_ok());
    assert_eq!(
        Text::new("one\u{7}"),
        Err(RecordError::NotPrintable { what: "note" })
    );
}

#[test]
fn a_language_is_a_tag() {
    for tag in ["de", "pt-BR", "zh-Hant-TW"] {
        assert_eq!(Language::new(tag).unwrap().tag(), tag);
    }
    for tag in ["", "d", "de_AT", "dé", &"a".repeat(36)] {
        assert!(Language::new(tag).is_err(), "{tag}");
    }
}

#[test]
fn counts_of_a_day_that_cannot_be_are_refused() {
    let day = |feeds, hours| {
        LastDay {
            feeds: Some(feeds),
            hours_since_wet: Some(hours),
            ..LastDay::default()
        }
        .checked()
    };
    assert!(day(40, 96).is_ok());
    assert!(day(41, 0).is_err());
    assert!(day(0, 97).is_err());
}
