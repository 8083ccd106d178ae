//! Sentences: the right language, arguments in place, English and then the id where words are lacking.

use feedside::words::{Arg, IDS, Lang, Words};

#[test]
fn each_language_says_the_same_id_in_its_own_words() {
    assert_eq!(Words::new(Lang::En).say("month-5"), "May");
    assert_eq!(Words::new(Lang::De).say("month-5"), "Mai");
}

#[test]
fn the_language_can_be_changed_while_the_program_runs() {
    let mut words = Words::new(Lang::En);
    let before = words.clone();
    words.set(Lang::De);
    assert_eq!(words.lang(), Lang::De);
    assert_eq!(words.say("month-3"), "März");
    assert_eq!(before.say("month-3"), "Mar");
}

#[test]
fn an_id_that_nobody_has_comes_back_as_it_is() {
    let words = Words::new(Lang::De);
    assert!(!words.has("no-such-message"));
    assert_eq!(words.say("no-such-message"), "no-such-message");
    assert_eq!(
        words.say_with("no-such-message", &[("n", Arg::from(1_i64))]),
        "no-such-message"
    );
}

#[test]
fn every_listed_id_is_there_in_every_language() {
    assert!(IDS.contains(&"date-time"));
    for lang in Lang::ALL {
        let words = Words::new(*lang);
        let missing: Vec<_> = IDS.iter().filter(|id| !words.has(id)).collect();
        assert!(missing.is_empty(), "{}: {missing:?}", lang.tag());
    }
}

/// Fluent puts U+2068 and U+2069 around arguments unless told not to (Fluent's documentation,
/// "Directionality and isolation").
#[test]
fn arguments_stand_bare_in_left_to_right_languages() {
    let args = [
        ("day", Arg::from("9")),
        ("month", Arg::from("May")),
        ("year", Arg::from("2026")),
    ];
    for lang in Lang::ALL {
        let said = Words::new(*lang).say_with("date", &args);
        assert!(!said.contains(['\u{2068}', '\u{2069}']), "{said:?}");
        assert!(said.contains("May 2026"), "{said:?}");
    }
}

#[test]
fn whole_numbers_are_put_in_without_grouping() {
    let args = [
        ("day", Arg::from(7_usize)),
        ("month", Arg::from("X".to_owned())),
        ("year", Arg::from(12_345_u32)),
    ];
    assert_eq!(Words::new(Lang::En).say_with("date", &args), "7 X 12345");
}

#[test]
fn words_may_be_used_from_any_thread() {
    let words = Words::new(Lang::De);
    std::thread::scope(|scope| {
        for _ in 0..4 {
            scope.spawn(|| {
                for _ in 0..200 {
                    assert_eq!(words.say("month-12"), "Dez.");
                    assert_eq!(Words::new(Lang::En).say("month-12"), "Dec");
                }
            });
        }
    });
}

#[test]
fn a_tag_names_its_language_whatever_the_region() {
    for (tag, lang) in [
        ("en", Some(Lang::En)),
        ("en-GB", Some(Lang::En)),
        ("de_AT.UTF-8", Some(Lang::De)),
        ("DE", Some(Lang::De)),
        ("den", None),
        ("fr", None),
        ("", None),
    ] {
        assert_eq!(Lang::from_tag(tag), lang, "{tag:?}");
    }
    for lang in Lang::ALL {
        assert_eq!(Lang::from_tag(lang.tag()), Some(*lang));
        assert!(!lang.own_name().is_empty());
    }
}
