//! Tests of the room `fault`: what a refused file is answered with, in each language.

use feedside::fault::{pair_file, policy};
use feedside::findings::Policy;
use feedside::growth::pair_file::read;
use feedside::record::WallTime;
use feedside::words::{Lang, Words};

fn now() -> WallTime {
    WallTime::new(1_772_366_400_000 + 8_640_000_000, 0).unwrap()
}

#[test]
fn a_refused_pair_file_is_answered_with_the_path_and_what_to_do_in_each_language() {
    let birth = r#""birth": "2026-03-01T12:00:00+00:00""#;
    let weighing = format!(
        r#"{{ "pair": {{ {birth}, "sex": "male" }}, "weighings": [ {{ "at": "2026-03-02T12:00:00+00:00", "grams": -5 }} ] }}"#
    );
    let cases = [
        (
            weighing.as_str(),
            "weighings[0].grams",
            "from 1 to 30000",
            "von 1 bis 30000",
        ),
        (
            r#"{ "pair": { "sex": 7 } }"#,
            "pair.sex",
            "one of female, male",
            "eines von female, male",
        ),
        (r#"{ "pair": {}, "pair": {} }"#, "pair", "twice", "zweimal"),
        (r#"{ "pair": "#, "", "In line 1", "In Zeile 1"),
        ("{}", "pair", "missing", "fehlt"),
        (
            r#"{ "colour": 1 }"#,
            "colour",
            "no such field",
            "nicht bekannt",
        ),
    ];
    for (text, path, english, german) in cases {
        let error = read(text.as_bytes(), now()).unwrap_err();
        for (lang, part) in [(Lang::En, english), (Lang::De, german)] {
            let it = pair_file(&error, &Words::new(lang));
            assert!(it.happened.starts_with(path), "{}", it.happened);
            assert!(it.happened.contains(part), "{part} in {}", it.happened);
            assert!(it.now_do.ends_with('.'), "{}", it.now_do);
            for foreign in ["serde", "invalid type", "expected", "EOF"] {
                assert!(!it.to_string().contains(foreign), "{it}");
            }
        }
    }
}

#[test]
fn a_birth_in_the_future_is_told_of_the_field() {
    let text = r#"{ "pair": { "birth": "2031-03-01T12:00:00+00:00", "sex": "male" } }"#;
    let error = read(text.as_bytes(), now()).unwrap_err();
    let it = pair_file(&error, &Words::new(Lang::En));
    assert_eq!(it.happened, "pair.birth: the birth lies in the future.");
}

#[test]
fn a_refused_policy_is_answered_with_line_and_column_in_each_language() {
    let head = "name = \"W\"\nversion = \"1\"\nauthor = \"L\"\ndate = \"2026-01-01\"\n";
    let limits = |line: &str| format!("{head}[limits]\n{line}\n");
    for (text, english, german) in [
        (
            limits("weight_loss_act_percent = 10.1"),
            "In line 6, column 27: weight_loss_act_percent is 10.1; the published bounds are 7.0 to 10.0.",
            "In Zeile 6, Spalte 27: weight_loss_act_percent ist 10,1; die veröffentlichte Spanne ist 7,0 bis 10,0.",
        ),
        (
            limits("feeds_least = 7"),
            "In line 6, column 15: feeds_least is 7; the published bounds are 8 to 12.",
            "In Zeile 6, Spalte 15: feeds_least ist 7; die veröffentlichte Spanne ist 8 bis 12.",
        ),
        (
            limits("feeds_least = \"x\""),
            "In line 6, column 15: feeds_least needs a whole number.",
            "In Zeile 6, Spalte 15: für feeds_least ist eine ganze Zahl nötig.",
        ),
        (
            limits("feeds_lest = 8"),
            "In line 6, column 1: feeds_lest is not known.",
            "In Zeile 6, Spalte 1: feeds_lest ist nicht bekannt.",
        ),
        (
            "name = \"W\"\n".to_owned(),
            "In line 1, column 1: version is missing.",
            "In Zeile 1, Spalte 1: version fehlt.",
        ),
    ] {
        let error = Policy::from_toml(&text).unwrap_err();
        assert_eq!(policy(&error, &Words::new(Lang::En)).happened, english);
        assert_eq!(policy(&error, &Words::new(Lang::De)).happened, german);
    }
}
