//! The catalogue holds together.

use std::collections::BTreeSet;

use feedside::findings::{CallWhom, FAMILIES, Level, RULE_VERSION, catalogue, rule};

#[test]
fn every_id_is_there_once_and_is_small_letters_digits_and_hyphens() {
    let mut ids = BTreeSet::new();
    for it in catalogue() {
        assert!(ids.insert(it.id), "{} twice", it.id);
        assert!(
            it.id
                .bytes()
                .all(|b| b.is_ascii_lowercase() || b.is_ascii_digit() || b == b'-')
        );
        assert_eq!(rule(it.id).unwrap().id, it.id);
    }
    assert!(30 <= ids.len());
    assert!(rule("nothing").is_none());
}

#[test]
fn what_is_for_the_doctor_now_names_a_doctor() {
    for it in catalogue().filter(|it| it.level == Level::MedicalReviewNow) {
        assert!(
            matches!(it.call, CallWhom::BabyDoctor | CallWhom::MotherDoctor),
            "{}",
            it.id
        );
    }
}

#[test]
fn what_goes_well_calls_nobody() {
    for it in catalogue().filter(|it| it.level == Level::GoingWell) {
        assert_eq!(it.call, CallWhom::Nobody, "{}", it.id);
    }
}

#[test]
fn families_list_the_gravest_first_and_all_rules_say_when_they_changed() {
    for (family, rules) in FAMILIES {
        let levels: Vec<_> = rules.iter().map(|it| it.level).collect();
        assert!(levels.is_sorted(), "{family}");
        assert!(rules.iter().all(|it| it.changed.starts_with("findings-")));
    }
    assert!(RULE_VERSION.starts_with("findings-"));
}

#[test]
fn no_rule_shows_two_numbers_of_one_name() {
    for it in catalogue() {
        let names: BTreeSet<_> = it.numbers.iter().map(|(name, _)| name).collect();
        assert_eq!(names.len(), it.numbers.len(), "{}", it.id);
    }
}

#[test]
fn every_rule_last_changed_in_a_version_with_a_date() {
    use feedside::findings::{VERSIONS, version_date};
    assert_eq!(version_date("findings-1"), Some("2026-11-25"));
    assert_eq!(version_date("findings-0"), None);
    assert_eq!(VERSIONS.last().map(|it| it.0), Some(RULE_VERSION));
    assert!(catalogue().all(|it| version_date(it.changed).is_some()));
}
