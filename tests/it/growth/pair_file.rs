//! The pair file. Source: the command's own contract; JSON as RFC 8259.

use feedside::growth::json_of_file;
use feedside::growth::pair_file::{
    BYTES_MOST, DEPTH_MOST, PairFileError, VALUES_MOST, Wrong, read,
};
use proptest::prelude::*;

use super::hours;

fn refused(text: &str) -> PairFileError {
    read(text.as_bytes(), hours(100)).unwrap_err()
}

const GOOD: &str = r#"{
  "pair": { "birth": "2026-03-01T12:00:00+00:00", "sex": "male", "birth_weight": 3500 },
  "weighings": [ { "at": "2026-03-04T12:00:00+00:00", "grams": 3149 } ],
  "last_day": { "wet": 2, "dirty": 2, "stool": "green" },
  "at": "2026-03-04T13:00:00+00:00"
}"#;

#[test]
fn a_small_file_is_enough() {
    let file = read(GOOD.as_bytes(), hours(9_999)).unwrap();
    let it = json_of_file(&file, hours(9_999));
    assert_eq!(it["age"]["hours"], 73);
    assert_eq!(it["weight"]["change"]["more_than_ten_percent_lost"], true);
    assert_eq!(it["output"]["wet_enough"], false);
    assert_eq!(it["output"]["dirty_enough"], true);
    assert_eq!(it["output"]["colour_fits"], true);
}

/// The output of a pair born on 1 March at 12:00, as of 6 March 13:00: 121 hours, so that the last
/// 24 hours are held against days 5 and 6 (5 wet, 2 dirty, yellow, no urates; UNICEF UK Baby Friendly
/// Initiative's assessment tool).
fn told(rest: &str) -> serde_json::Value {
    let text = format!(
        r#"{{ "pair": {{ "birth": "2026-03-01T12:00:00+00:00", "sex": "male" }}, {rest}
             "at": "2026-03-06T13:00:00+00:00" }}"#
    );
    let file = read(text.as_bytes(), hours(9_999)).unwrap();
    json_of_file(&file, hours(9_999))
}

fn output(rest: &str) -> serde_json::Value {
    told(rest)["output"].clone()
}

/// What is missing for the output: behind what is missing for the weight, of which nothing is told.
fn missing(rest: &str) -> Vec<String> {
    let of_weight = ["birth_weight", "weight", "way_of_birth", "second_weight"];
    let told = told(rest);
    let missing = told["missing"].as_array().unwrap().iter();
    let missing = missing.map(|it| it.as_str().unwrap().to_owned());
    missing
        .filter(|it| !of_weight.contains(&it.as_str()))
        .collect()
}

/// Nappies at hours of 6 March, or of the days before where the hour is negative.
fn nappies(hours: &[i64], more: &str) -> String {
    let begin = crate::growth::hours(108);
    let one = |hour: &i64| {
        let at = begin.plus_ms(hour * 3_600_000).local().to_rfc3339();
        format!(r#"{{ "at": "{at}", "wet": true {more} }}"#)
    };
    let all: Vec<String> = hours.iter().map(one).collect();
    format!(r#""nappies": [ {} ],"#, all.join(","))
}

#[test]
fn a_file_that_tells_nothing_of_the_last_day_says_all_that_is_missing() {
    let it = output("");
    assert_eq!(it["feeds_least"], 8);
    let all = ["feeds", "wet", "dirty", "stool_colour", "urates"];
    assert_eq!(missing(""), all);
    for name in ["feeds", "wet", "wet_enough", "dirty_enough", "colour_fits"] {
        assert!(it[name].is_null(), "{name}");
    }
}

#[test]
fn feeds_and_urates_of_the_last_day_are_held_against_what_is_expected() {
    let it = output(r#""last_day": { "feeds": 7, "urates": true },"#);
    assert_eq!(
        (&it["feeds_least"], &it["feeds_enough"]),
        (&8.into(), &false.into())
    );
    assert_eq!(it["urates_fit"], false);
    let it = output(r#""last_day": { "feeds": 8, "urates": false },"#);
    assert_eq!(
        (&it["feeds_enough"], &it["urates_fit"]),
        (&true.into(), &true.into())
    );
}

#[test]
fn listed_nappies_of_the_last_24_hours_are_counted() {
    // At 13:00 the day before: that is 24 hours ago, and no longer within the last day.
    let kept = nappies(&[-11, 1, 2, 3, 4], r#", "stool": "yellow""#);
    let it = output(&kept);
    assert_eq!((&it["wet"], &it["dirty"]), (&4.into(), &4.into()));
    // The list began before the day, so that what it lacks was not there.
    assert_eq!(
        (&it["wet_enough"], &it["dirty_enough"]),
        (&false.into(), &true.into())
    );
    assert_eq!(
        (&it["stool"], &it["colour_fits"]),
        (&"yellow".into(), &true.into())
    );
    assert_eq!(it["urates"], false);
    assert_eq!(missing(&kept), ["feeds"]);
}

#[test]
fn a_short_list_of_nappies_shows_enough_and_never_too_few() {
    let few = output(&nappies(&[1, 2, 3, 4], ""));
    assert_eq!(
        (&few["wet"], &few["wet_enough"]),
        (&4.into(), &serde_json::Value::Null)
    );
    let all = ["feeds", "wet", "dirty", "stool_colour", "urates"];
    assert_eq!(missing(&nappies(&[1, 2, 3, 4], "")), all);
    let enough = output(&nappies(&[1, 2, 3, 4, 5], r#", "urates": true"#));
    assert_eq!(
        (&enough["wet"], &enough["wet_enough"]),
        (&5.into(), &true.into())
    );
    assert_eq!(
        (&enough["urates"], &enough["urates_fit"]),
        (&true.into(), &false.into())
    );
}

#[test]
fn of_what_was_told_and_what_was_listed_the_larger_counts_and_the_later_colour() {
    let told = r#""last_day": { "wet": 3, "dirty": 6, "stool": "black" },"#;
    let it = output(&(nappies(&[1, 2, 3, 4], r#", "stool": "green""#) + told));
    assert_eq!((&it["wet"], &it["wet_enough"]), (&4.into(), &false.into()));
    assert_eq!((&it["dirty"], &it["stool"]), (&6.into(), &"green".into()));
    assert_eq!(it["colour_fits"], false);
}

#[test]
fn before_a_whole_day_of_life_and_past_the_table_it_is_said_that_nothing_is_held_against() {
    for (day, lacks) in [("01T20", "whole_day"), ("30T20", "expected_output")] {
        let text = format!(
            r#"{{ "pair": {{ "birth": "2026-03-01T12:00:00+00:00", "sex": "male" }},
                 "last_day": {{ "wet": 9, "dirty": 9, "feeds": 1, "stool": "yellow", "urates": false }},
                 "at": "2026-03-{day}:00:00+00:00" }}"#
        );
        let it = json_of_file(&read(text.as_bytes(), hours(0)).unwrap(), hours(0));
        let missing = it["missing"].as_array().unwrap();
        assert_eq!(missing.last().unwrap(), lacks);
        assert!(!missing.contains(&"wet".into()), "it was told");
        assert!(it["output"]["wet_enough"].is_null());
        let is_late = lacks == "expected_output";
        assert_eq!(
            it["output"]["feeds_enough"] == false,
            is_late,
            "feeds count on"
        );
    }
}

/// RFC 8259, 8.1: a reader may pass over a mark of byte order. Lines and columns count from 1.
#[test]
fn a_mark_of_byte_order_is_passed_over_and_an_empty_file_is_wrong_at_its_first_column() {
    let marked = format!("\u{feff}{GOOD}");
    let plain = read(GOOD.as_bytes(), hours(9_999));
    assert_eq!(read(marked.as_bytes(), hours(9_999)), plain);
    assert_eq!(refused("").wrong, Wrong::NotJson { line: 1, column: 1 });
}

#[test]
fn each_wrong_field_is_named_by_its_path() {
    let birth = r#""birth": "2026-03-01T12:00:00+00:00""#;
    let at = r#""at": "2026-03-02T12:00:00+00:00""#;
    let pair = format!(r#""pair": {{ {birth}, "sex": "male" }}"#);
    let cases = [
        (
            format!(r#"{{ {pair}, "weighings": [ {{ {at}, "grams": -5 }} ] }}"#),
            "weighings[0].grams",
        ),
        (
            format!(r#"{{ {pair}, "weighings": [ {{ {at}, "grams": "x" }} ] }}"#),
            "weighings[0].grams",
        ),
        (
            format!(r#"{{ {pair}, "weighings": [ {{ {at} }} ] }}"#),
            "weighings[0].grams",
        ),
        (
            format!(r#"{{ {pair}, "weighings": [ {{ "grams": 3000 }} ] }}"#),
            "weighings[0].at",
        ),
        (
            format!(r#"{{ {pair}, "weighings": [ {{ "at": "yesterday", "grams": 3000 }} ] }}"#),
            "weighings[0].at",
        ),
        (
            format!(
                r#"{{ {pair}, "weighings": [ {{ {at}, "grams": 3000, "moment": "noon" }} ] }}"#
            ),
            "weighings[0].moment",
        ),
        (format!(r#"{{ {pair}, "weighings": 3 }}"#), "weighings"),
        (
            format!(r#"{{ {pair}, "weighings": [ 3 ] }}"#),
            "weighings[0]",
        ),
        (
            format!(r#"{{ "pair": {{ {birth}, "sex": "other" }} }}"#),
            "pair.sex",
        ),
        (format!(r#"{{ "pair": {{ {birth} }} }}"#), "pair.sex"),
        (r#"{ "pair": { "sex": "male" } }"#.to_owned(), "pair.birth"),
        (
            format!(r#"{{ "pair": {{ {birth}, "sex": "male", "birth_weight": -1 }} }}"#),
            "pair.birth_weight",
        ),
        (
            format!(r#"{{ "pair": {{ {birth}, "sex": "male", "birth_weigth": 1 }} }}"#),
            "pair.birth_weigth",
        ),
        (
            format!(r#"{{ {pair}, "last_day": {{ "wet": "many" }} }}"#),
            "last_day.wet",
        ),
        (
            format!(r#"{{ {pair}, "last_day": {{ "wet": 41 }} }}"#),
            "last_day.wet",
        ),
        (format!(r#"{{ {pair}, "at": 5 }}"#), "at"),
        ("{}".to_owned(), "pair"),
        ("[]".to_owned(), "file"),
    ];
    for (text, path) in cases {
        assert_eq!(refused(&text).path, path, "{text}");
    }
}

#[test]
fn what_belongs_in_a_field_is_said_in_our_own_words() {
    let pair = r#""pair": { "birth": "2026-03-01T12:00:00+00:00", "sex": "male" }"#;
    let weighing = |rest: &str| {
        format!(r#"{{ {pair}, "weighings": [ {{ "at": "2026-03-02T12:00:00+00:00", {rest} }} ] }}"#)
    };
    let day = |rest: &str| format!(r#"{{ {pair}, "last_day": {{ {rest} }} }}"#);
    let of_pair =
        |rest: &str| format!(r#"{{ "pair": {{ "birth": "2026-03-01T12:00:00+00:00", {rest} }} }}"#);
    for (text, said) in [
        (
            weighing(r#""grams": -5"#),
            "weighings[0].grams: a whole number from 1 to 30000 is needed",
        ),
        (
            weighing(r#""grams": 3.5"#),
            "weighings[0].grams: a whole number from 1 to 30000 is needed",
        ),
        (weighing(r#""grams": null"#), "weighings[0].grams: missing"),
        (
            weighing(r#""grams": 3000, "step": 0"#),
            "weighings[0].step: a whole number from 1 to 200 is needed",
        ),
        (
            weighing(r#""grams": 3000, "clothed": 1"#),
            "weighings[0].clothed: true or false is needed",
        ),
        (
            weighing(r#""grams": 3000, "moment": 7"#),
            "weighings[0].moment: one of routine, before_feed, after_feed is needed",
        ),
        (
            day(r#""temperature": 46.1"#),
            "last_day.temperature: a whole number from 200 to 450 is needed",
        ),
        (
            day(r#""hours_since_wet": 97"#),
            "last_day.hours_since_wet: a whole number from 0 to 96 is needed",
        ),
        (
            day(r#""feeds": 41"#),
            "last_day.feeds: a whole number from 0 to 40 is needed",
        ),
        (
            day(r#""supplement_ml": 5001"#),
            "last_day.supplement_ml: a whole number from 0 to 5000 is needed",
        ),
        (
            day(r#""baby_danger": ["fit", 3]"#),
            "last_day.baby_danger: a list of words is needed",
        ),
        (
            day(r#""stool": "blue""#),
            "last_day.stool: one of black, green, yellow, pale, bloody is needed",
        ),
        (
            of_pair(r#""sex": "unknown""#),
            "pair.sex: one of female, male, not_stated is needed",
        ),
        (of_pair(r#""sex": null"#), "pair.sex: missing"),
        (
            of_pair(r#""sex": "male", "gestation": 315"#),
            "pair.gestation: a whole number from 154 to 314 is needed",
        ),
        (
            of_pair(r#""sex": "male", "babies": 0"#),
            "pair.babies: a whole number from 1 to 8 is needed",
        ),
        (
            of_pair(r#""sex": "male", "bed": """#),
            "pair.bed: a short text is needed",
        ),
        (
            of_pair(r#""sex": "male", "language": "x y""#),
            "pair.language: a language tag as de is needed",
        ),
        (
            of_pair(r#""sex": "male", "id": "7""#),
            "pair.id: an id of 32 hexadecimal digits is needed",
        ),
        (
            format!(r#"{{ {pair}, "at": "noon" }}"#),
            "at: a time as 2026-11-25T18:30:00+00:00 is needed",
        ),
        (
            format!(r#"{{ {pair}, "nappies": {{}} }}"#),
            "nappies: a list is needed",
        ),
    ] {
        assert_eq!(refused(&text).to_string(), said, "{text}");
    }
}

#[test]
fn the_ends_of_each_range_are_taken_by_the_record() {
    for (low, high, field) in [
        (1, 30_000, "birth_weight"),
        (154, 314, "gestation"),
        (1, 8, "babies"),
    ] {
        for value in [low, high] {
            let text = format!(
                r#"{{ "pair": {{ "birth": "2026-03-01T12:00:00+00:00", "sex": "male", "{field}": {value} }} }}"#
            );
            assert!(read(text.as_bytes(), hours(100)).is_ok(), "{field} {value}");
        }
    }
    for (low, high, field) in [
        (0, 40, "feeds"),
        (0, 40, "wet"),
        (0, 40, "dirty"),
        (0, 96, "hours_since_wet"),
        (0, 5_000, "expressed_ml"),
        (0, 5_000, "supplement_ml"),
        (200, 450, "temperature"),
    ] {
        for value in [low, high] {
            let text = format!(
                r#"{{ "pair": {{ "birth": "2026-03-01T12:00:00+00:00", "sex": "male" }},
                    "last_day": {{ "{field}": {value} }} }}"#
            );
            assert!(read(text.as_bytes(), hours(100)).is_ok(), "{field} {value}");
        }
    }
}

#[test]
fn nothing_given_for_what_may_be_left_out_is_the_same_as_left_out() {
    let text = r#"{ "pair": { "birth": "2026-03-01T12:00:00+00:00", "sex": "male",
        "birth_weight": null, "bed": null }, "weighings": null, "last_day": null, "at": null }"#;
    let file = read(text.as_bytes(), hours(100)).unwrap();
    assert_eq!(file.pair.birth_weight, None);
    assert_eq!(
        (file.weighings.len(), file.last_day, file.at),
        (0, None, None)
    );
}

#[test]
fn two_birth_weights_are_refused_and_not_the_last_one_taken() {
    let it = refused(
        r#"{ "pair": { "birth": "2026-03-01T12:00:00+00:00", "sex": "male",
            "birth_weight": 3500, "birth_weight": 3400 } }"#,
    );
    assert_eq!(
        (it.path.as_str(), it.wrong),
        ("pair.birth_weight", Wrong::Twice)
    );
}

#[test]
fn a_birth_in_the_future_is_refused() {
    let text = r#"{ "pair": { "birth": "2026-03-01T12:00:00+00:00", "sex": "male" } }"#;
    assert!(read(text.as_bytes(), hours(0)).is_ok());
    let it = read(text.as_bytes(), hours(0).plus_ms(-1)).unwrap_err();
    assert_eq!(
        (it.path.as_str(), it.wrong),
        ("pair.birth", Wrong::BirthInFuture)
    );
}

#[test]
fn a_weighing_before_birth_or_after_the_time_asked_for_is_refused() {
    let with = |at: &str| {
        refused(&format!(
            r#"{{ "pair": {{ "birth": "2026-03-01T12:00:00+00:00", "sex": "male" }},
                "weighings": [ {{ "at": "{at}", "grams": 3000 }} ] }}"#
        ))
    };
    let before = with("2026-03-01T11:59:59+00:00");
    assert_eq!(
        (before.path.as_str(), before.wrong),
        ("weighings[0].at", Wrong::BeforeBirth)
    );
    let after = with("2026-04-01T00:00:00+00:00");
    assert_eq!(
        (after.path.as_str(), after.wrong),
        ("weighings[0].at", Wrong::InFuture)
    );
}

#[test]
fn deep_nesting_is_refused_where_it_gets_too_deep() {
    let text = format!(
        r#"{{ "pair": {}{} }}"#,
        "[".repeat(200_000),
        "]".repeat(200_000)
    );
    assert!(matches!(refused(&text).wrong, Wrong::TooDeep { .. }));
    assert!(refused(&text).path.starts_with("pair[0][0]"));
    let objects = r#"{"a":"#.repeat(100_000);
    assert!(matches!(refused(&objects).wrong, Wrong::TooDeep { .. }));
}

#[test]
fn ten_megabytes_of_nesting_are_refused_where_they_get_too_deep() {
    let it = read(&vec![b'['; 10 << 20], hours(0)).unwrap_err();
    assert_eq!(it.wrong, Wrong::TooDeep { most: DEPTH_MOST });
    assert_eq!(it.path, "[0]".repeat(DEPTH_MOST));
    let within = format!(r#"{{ "pair": {}"#, r#"{"bed":"#.repeat(2 << 20));
    let it = refused(&within);
    assert_eq!(it.wrong, Wrong::TooDeep { most: DEPTH_MOST });
    assert_eq!(it.path, format!("pair{}", ".bed".repeat(DEPTH_MOST - 1)));
}

#[test]
fn ten_megabytes_of_anything_else_are_refused_as_a_whole() {
    for byte in [b' ', b'0', 0, 0xff] {
        let it = read(&vec![byte; 10 << 20], hours(0)).unwrap_err();
        assert_eq!(it.wrong, Wrong::TooLarge { most: BYTES_MOST });
        assert_eq!(it.path, "file");
    }
}

#[test]
fn as_many_values_as_are_allowed_are_read_and_one_more_is_named() {
    // The file and its list are two of them.
    let with = |values: usize| {
        let text = format!("{{\"nappies\":[{}0]}}", "0,".repeat(values - 3));
        refused(&text)
    };
    assert_eq!(with(VALUES_MOST).wrong, Wrong::Missing);
    let it = with(VALUES_MOST + 1);
    assert_eq!(it.wrong, Wrong::TooMany { most: VALUES_MOST });
    assert_eq!(it.path, format!("nappies[{}]", VALUES_MOST - 2));
}

#[test]
fn a_file_of_exactly_the_most_bytes_is_read_and_one_byte_more_is_not() {
    // The command's own contract.
    let padded = |bytes: usize| format!("{GOOD}{}", " ".repeat(bytes - GOOD.len()));
    assert!(read(padded(BYTES_MOST).as_bytes(), hours(100)).is_ok());
    let it = refused(&padded(BYTES_MOST + 1));
    assert_eq!(it.wrong, Wrong::TooLarge { most: BYTES_MOST });
}

#[test]
fn what_is_not_json_is_named_by_line_and_column() {
    let it = refused("{\n  \"pair\": nonsense\n}");
    assert_eq!(it.path, "file");
    assert!(matches!(it.wrong, Wrong::NotJson { line: 2, .. }), "{it:?}");
    assert!(matches!(refused("").wrong, Wrong::NotJson { .. }));
    assert!(matches!(
        refused(&format!("{GOOD} x")).wrong,
        Wrong::NotJson { .. }
    ));
}

#[test]
fn a_name_in_an_error_keeps_to_one_line_and_its_direction() {
    for (name, shown) in [
        (r"bed\n2", "bed2"),
        (r"bed\u2028\u202e2", "bed2"),
        (r"bed\ufeff", "bed"),
        ("Bett-\u{e4}", "Bett-\u{e4}"),
    ] {
        let it = refused(&format!(r#"{{ "pair": {{ "{name}": 1 }} }}"#));
        assert_eq!(it.path, format!("pair.{shown}"));
    }
}

proptest! {
    #[test]
    fn no_bytes_bring_it_down(bytes in proptest::collection::vec(any::<u8>(), 0..300)) {
        let _ = read(&bytes, hours(0));
    }

    #[test]
    fn a_file_cut_anywhere_is_refused(cut in 0usize..300) {
        if let Some(part) = GOOD.get(..cut.min(GOOD.len() - 1)) {
            prop_assert!(read(part.as_bytes(), hours(200)).is_err());
        }
    }
}

#[test]
fn sixteen_levels_are_read_and_seventeen_are_not() {
    // The file is no level; what stands in "pair" is the first.
    let nested = |levels: usize| {
        let text = format!(
            r#"{{ "pair": {}{} }}"#,
            "[".repeat(levels),
            "]".repeat(levels)
        );
        matches!(refused(&text).wrong, Wrong::TooDeep { .. })
    };
    assert!(!nested(15) && nested(17));
}

#[test]
fn the_figures_have_z_and_test_weighings_as_plain_numbers() {
    let text = r#"{
      "pair": { "birth": "2026-03-01T12:00:00+00:00", "sex": "male", "birth_weight": 3500 },
      "weighings": [
        { "at": "2026-03-08T12:00:00+00:00", "grams": 3200, "step": 5, "moment": "before_feed" },
        { "at": "2026-03-08T12:30:00+00:00", "grams": 3261, "step": 5, "moment": "after_feed" }
      ],
      "at": "2026-03-08T13:00:00+00:00"
    }"#;
    let file = read(text.as_bytes(), hours(0)).unwrap();
    let it = json_of_file(&file, hours(0));
    // WHO 2006: 3.2 kg on day 7 of a boy is -0.59.
    assert_eq!(it["who"]["z"], -0.59);
    // 61 g are 59.2 ml; 14.53 g of spread.
    let test = &it["test_weighings"][0];
    assert_eq!((&test["grams"], &test["ml"]), (&61.into(), &59.2.into()));
    assert_eq!(
        (&test["low_ml"], &test["high_ml"]),
        (&45.into(), &74.into())
    );
    assert_eq!(test["below_resolution"], false);
}

#[test]
fn a_weight_at_birth_or_just_now_is_taken_and_yes_is_yes() {
    let text = r#"{
      "pair": { "birth": "2026-03-01T12:00:00+00:00", "sex": "male" },
      "weighings": [
        { "at": "2026-03-01T12:00:00+00:00", "grams": 3500, "clothed": true },
        { "at": "2026-03-04T12:00:00+00:00", "grams": 3300 }
      ],
      "last_day": { "sleepy": true },
      "at": "2026-03-04T12:00:00+00:00"
    }"#;
    let file = read(text.as_bytes(), hours(0)).unwrap();
    let clothed: Vec<bool> = file.weighings.iter().map(|it| it.1.clothed).collect();
    assert_eq!(clothed, [true, false]);
    assert_eq!(file.last_day.unwrap().sleepy, Some(true));
}
