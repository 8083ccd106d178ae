//! Stored words are for ever: the list in `tests/data/record/words.txt` may only grow.

use feedside::record::{
    Adjustment, BabyDanger, BabyState, BreastAfter, BreastState, Coded, EndedBy, Hold, Jaundice,
    MotherDanger, NippleAfter, NippleBefore, PlanWhat, Reason, RiskNote, Sex, Side, Sign,
    SignState, StoolColour, StoredWord, SuckPhase, TapWhat, WayOfBirth, WeighingMoment, to_stored,
};

use super::make::{entry, one_of_each};

const GOLDEN: &str = include_str!("../../data/record/words.txt");

fn list<T: StoredWord + PartialEq + std::fmt::Debug>(thing: &str, all: &[T], to: &mut Vec<String>) {
    for value in all {
        assert_eq!(T::of_word(value.word()), Some(*value));
        to.push(format!("{thing} {}", value.word()));
    }
}

fn all_words() -> Vec<String> {
    let mut all = Vec::new();
    for (seq, what) in (1..).zip(one_of_each()) {
        all.push(format!(
            "kind {}",
            to_stored(&entry(seq, what)).unwrap().kind
        ));
    }
    list("adjustment", Adjustment::ALL, &mut all);
    list("baby_danger", BabyDanger::ALL, &mut all);
    list("baby_state", BabyState::ALL, &mut all);
    list("breast_after", BreastAfter::ALL, &mut all);
    list("breast_state", BreastState::ALL, &mut all);
    list("ended_by", EndedBy::ALL, &mut all);
    list("hold", Hold::ALL, &mut all);
    list("jaundice", Jaundice::ALL, &mut all);
    list("mother_danger", MotherDanger::ALL, &mut all);
    list("nipple_after", NippleAfter::ALL, &mut all);
    list("nipple_before", NippleBefore::ALL, &mut all);
    list("plan", PlanWhat::ALL, &mut all);
    list("reason", Reason::ALL, &mut all);
    list("risk", RiskNote::ALL, &mut all);
    list("sex", Sex::ALL, &mut all);
    list("side", Side::ALL, &mut all);
    list("sign", Sign::ALL, &mut all);
    list("sign_state", SignState::ALL, &mut all);
    list("stool", StoolColour::ALL, &mut all);
    list("suck_phase", SuckPhase::ALL, &mut all);
    list("tap", TapWhat::ALL, &mut all);
    list("way_of_birth", WayOfBirth::ALL, &mut all);
    list("weighing_moment", WeighingMoment::ALL, &mut all);
    all
}

#[test]
fn every_stored_word_is_the_one_that_was_stored_first() {
    let now = all_words();
    let golden: Vec<_> = GOLDEN
        .lines()
        .filter(|line| !line.starts_with('#') && !line.is_empty())
        .collect();
    let gone: Vec<_> = golden
        .iter()
        .filter(|it| !now.iter().any(|n| n == *it))
        .collect();
    let new: Vec<_> = now
        .iter()
        .filter(|it| !golden.contains(&it.as_str()))
        .collect();
    assert!(
        gone.is_empty(),
        "stored words that this version cannot read: {gone:?}"
    );
    assert!(
        new.is_empty(),
        "new words, to be added to the list: {new:?}"
    );
}

#[test]
fn stored_words_are_short_and_plain() {
    for line in all_words() {
        let word = line.split(' ').next_back().unwrap();
        assert!((1..=24).contains(&word.len()), "{line}");
        assert!(
            word.bytes().all(|b| b.is_ascii_lowercase() || b == b'_'),
            "{line}"
        );
    }
}

#[test]
fn a_word_of_a_newer_version_is_kept_and_handed_on_unchanged() {
    let read: Coded<Sign> = serde_json::from_str("\"tongue_forward\"").unwrap();
    assert_eq!(read, Coded::Unknown("tongue_forward".to_owned()));
    assert_eq!(read.known(), None);
    assert_eq!(serde_json::to_string(&read).unwrap(), "\"tongue_forward\"");
    assert_eq!(
        Coded::<Sign>::of_word("chin_in").known(),
        Some(Sign::ChinIn)
    );
}

#[test]
fn a_word_that_must_be_known_is_refused_when_it_is_not() {
    assert!(serde_json::from_str::<Sign>("\"tongue_forward\"").is_err());
    assert!(serde_json::from_str::<Sign>("\"Chin_in\"").is_err());
}
