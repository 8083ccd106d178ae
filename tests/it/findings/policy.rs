//! The ward policy file. Source: TOML 1.0; SHA-256 of FIPS 180-4 (test vector "abc").

use feedside::findings::{CallWhom, Limit, POLICY_BUILT_IN, Policy, PolicyError, PolicyWrong};
use proptest::prelude::*;

const HEAD: &str =
    "name = \"Ward seven\"\nversion = \"2\"\nauthor = \"Clinical lead\"\ndate = \"2026-02-03\"\n";

fn with(limits: &str) -> Result<Policy, PolicyError> {
    Policy::from_toml(&format!("{HEAD}[limits]\n{limits}\n"))
}

#[test]
fn the_built_in_file_is_the_built_in_policy() {
    assert_eq!(
        Policy::from_toml(POLICY_BUILT_IN).unwrap(),
        Policy::built_in()
    );
}

#[test]
fn a_file_with_no_limits_has_every_default() {
    let policy = Policy::from_toml(HEAD).unwrap();
    for limit in Limit::ALL {
        assert_eq!(policy.limit(*limit), limit.facts().default, "{limit:?}");
    }
    assert_eq!(policy.name, "Ward seven");
    assert_eq!(policy.date, "2026-02-03");
}

#[test]
fn every_limit_is_taken_at_its_bounds_and_refused_one_beyond() {
    let written = |limit: Limit, value: i64| {
        if limit.is_in_tenths() {
            format!("{} = {}.{}", limit.as_word(), value / 10, value % 10)
        } else {
            format!("{} = {value}", limit.as_word())
        }
    };
    for limit in Limit::ALL.iter().copied() {
        let facts = limit.facts();
        assert!(
            facts.low <= facts.default && facts.default <= facts.high,
            "{limit:?}"
        );
        for value in [facts.low, facts.high] {
            match with(&written(limit, value)) {
                Ok(policy) => assert_eq!(policy.limit(limit), value),
                // At a bound one limit may pass another that was left at its default.
                Err(refused) => {
                    assert!(
                        matches!(refused.wrong, PolicyWrong::Disordered { .. }),
                        "{refused}"
                    );
                }
            }
        }
        for value in [facts.low - 1, facts.high + 1] {
            let refused = with(&written(limit, value)).unwrap_err();
            assert_eq!(
                refused.wrong,
                PolicyWrong::OutOfBounds {
                    limit,
                    given: value,
                    low: facts.low,
                    high: facts.high
                },
            );
            assert_eq!(refused.line, 6);
        }
    }
}

#[test]
fn the_default_of_a_danger_is_never_looser_than_its_bounds_allow() {
    // NICE NG75 (2017): more than 10 % is the laxest; YICSS 2008: 37.5 and 35.5 are the laxest.
    assert!(with("weight_loss_act_percent = 10.1").is_err());
    assert!(with("temperature_high_celsius = 37.6").is_err());
    assert!(with("temperature_low_celsius = 35.4").is_err());
}

#[test]
fn what_is_wrong_is_told_with_line_and_column() {
    let cases = [
        (format!("{HEAD}nmae = \"x\"\n"), 5, 1),
        (format!("{HEAD}[limits]\n  feeds_leest = 9\n"), 6, 3),
        (format!("{HEAD}[limits]\nfeeds_least = 3\n"), 6, 15),
        (format!("{HEAD}[limits]\nfeeds_least = \"many\"\n"), 6, 15),
        (format!("{HEAD}[limits]\nfeeds_least = 8.5\n"), 6, 15),
        (
            format!("{HEAD}[limits]\nweight_loss_act_percent = 9.55\n"),
            6,
            27,
        ),
        (
            format!("{HEAD}[limits]\nweight_loss_act_percent = nan\n"),
            6,
            27,
        ),
        (
            format!("{HEAD}[limits]\nweight_loss_act_percent = 1e1\n"),
            6,
            27,
        ),
        (format!("{HEAD}limits = 3\n"), 5, 10),
        (format!("{HEAD}[call]\nsomebody = \"x\"\n"), 6, 1),
        (format!("{HEAD}[call]\nbaby_doctor = 5\n"), 6, 15),
        (
            format!("{HEAD}[limits]\nfeeds_least = 9\nfeeds_least = 10\n"),
            7,
            1,
        ),
        ("name = \"ä\" x".to_owned(), 1, 12),
        (
            "name = \"\"\nversion = \"1\"\nauthor = \"a\"\ndate = \"2026-01-01\"\n".to_owned(),
            1,
            8,
        ),
        (
            "name = \"n\"\nversion = \"1\"\nauthor = \"a\"\ndate = \"2026-02-30\"\n".to_owned(),
            4,
            8,
        ),
        ("name = \"n\"\n".to_owned(), 1, 1),
        (String::new(), 1, 1),
    ];
    for (text, line, column) in cases {
        let refused = Policy::from_toml(&text).unwrap_err();
        assert_eq!(
            (refused.line, refused.column),
            (line, column),
            "{refused}\n{text}"
        );
    }
}

#[test]
fn limits_that_pass_each_other_are_refused() {
    let refused =
        with("weight_loss_watch_percent = 9.0\nweight_loss_act_percent = 8.5").unwrap_err();
    assert_eq!(
        refused.wrong,
        PolicyWrong::Disordered {
            lower: Limit::WeightLossWatch,
            higher: Limit::WeightLossAct
        }
    );
    assert_eq!(refused.line, 6);
    assert!(with("weight_loss_watch_percent = 8.5\nweight_loss_act_percent = 8.5").is_ok());
}

#[test]
fn whom_to_call_is_in_the_ward_s_own_words() {
    let policy = Policy::from_toml(&format!("{HEAD}[call]\nbaby_doctor = \"bleep 42\"\n")).unwrap();
    assert_eq!(policy.call(CallWhom::BabyDoctor), Some("bleep 42"));
    assert_eq!(policy.call(CallWhom::MotherDoctor), None);
}

#[test]
fn the_mark_has_name_version_and_the_hash_of_the_very_text() {
    let mark = Policy::from_toml(HEAD).unwrap().mark();
    assert_eq!(
        (mark.name.as_str(), mark.version.as_str()),
        ("Ward seven", "2")
    );
    assert_eq!(mark.hash.len(), 64);
    let other = Policy::from_toml(&format!("{HEAD}# a comment\n"))
        .unwrap()
        .mark();
    assert_ne!(mark.hash, other.hash);
}

#[test]
fn a_file_of_more_than_64_kib_is_refused_unread() {
    let long = format!("{HEAD}#{}\n", "x".repeat(64 * 1024));
    let refused = Policy::from_toml(&long).unwrap_err();
    assert!(matches!(refused.wrong, PolicyWrong::TooLarge { .. }));
}

proptest! {
    #[test]
    fn no_text_brings_it_down(text in ".{0,200}") {
        let _ = Policy::from_toml(&text);
    }

    #[test]
    fn a_policy_that_is_taken_has_every_limit_within_its_bounds(
        values in proptest::collection::vec(0i64..700, Limit::ALL.len()),
    ) {
        let lines: String = Limit::ALL
            .iter()
            .zip(&values)
            .map(|(limit, value)| format!("{} = {value}\n", limit.as_word()))
            .collect();
        if let Ok(policy) = with(&lines) {
            for limit in Limit::ALL {
                let facts = limit.facts();
                prop_assert!((facts.low..=facts.high).contains(&policy.limit(*limit)));
            }
        }
    }
}

#[test]
fn a_file_of_64_kib_is_read_and_one_byte_more_is_not() {
    let long = |bytes: usize| {
        let text = format!("{HEAD}#");
        format!("{text}{}", "x".repeat(bytes - text.len()))
    };
    assert!(Policy::from_toml(&long(64 * 1024)).is_ok());
    let refused = Policy::from_toml(&long(64 * 1024 + 1)).unwrap_err();
    assert!(matches!(refused.wrong, PolicyWrong::TooLarge { .. }));
}

#[test]
fn a_whole_number_is_not_written_with_a_decimal() {
    let refused = with("feeds_least = 8.0").unwrap_err();
    assert!(matches!(refused.wrong, PolicyWrong::WrongKind { .. }));
}

#[test]
fn a_date_may_be_a_date_of_toml_and_a_negative_number_is_out_of_bounds() {
    let dated = HEAD.replace("\"2026-02-03\"", "2026-02-03");
    assert_eq!(Policy::from_toml(&dated).unwrap().date, "2026-02-03");
    let refused = with("temperature_high_celsius = -37.5").unwrap_err();
    assert!(matches!(
        refused.wrong,
        PolicyWrong::OutOfBounds { given: -375, .. }
    ));
}

#[test]
fn a_number_is_written_in_tens() {
    let refused = with("feeds_least = 0x9").unwrap_err();
    assert!(matches!(refused.wrong, PolicyWrong::WrongKind { .. }));
}
