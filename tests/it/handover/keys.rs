//! Keys: typed text, words to compare, enrolment by code, and nothing secret in `Debug`.

use feedside::handover::{
    Collector, DeskKeyPair, DeskPublic, FINGERPRINT_WORDS, HandoverError, KEY_GROUP_CHARS,
    KEY_GROUPS, Offered, TabletKey, TabletPublic, read_back,
};
use proptest::prelude::*;

use super::sample;

fn desk(number: u8) -> DeskPublic {
    DeskKeyPair::from_random([number; 32]).unwrap().public()
}

#[test]
fn a_typed_key_has_thirteen_groups_of_five() {
    let typed = desk(9).to_typed();
    let groups: Vec<&str> = typed.split(' ').collect();
    assert_eq!(groups.len(), KEY_GROUPS);
    assert!(groups.iter().all(|group| group.len() == KEY_GROUP_CHARS));
}

#[test]
fn a_key_is_read_however_it_is_spaced_and_cased() {
    let typed = desk(9).to_typed();
    for text in [
        typed.clone(),
        typed.replace(' ', ""),
        typed.replace(' ', " - "),
        typed.replace(' ', "\n"),
        typed.to_lowercase(),
        typed.replace('1', "l").replace('0', "o"),
        format!("\n{typed}\r\n"),
    ] {
        assert_eq!(DeskPublic::from_typed(&text).unwrap(), desk(9), "{text}");
    }
}

#[test]
fn any_one_wrong_character_names_its_group() {
    let typed: Vec<char> = desk(9).to_typed().replace(' ', "").chars().collect();
    for at in 0..typed.len() {
        for other in "0123456789ABCDEFGHJKMNPQRSTVWXYZU!ß".chars() {
            if other == typed[at] {
                continue;
            }
            let mut wrong = typed.clone();
            wrong[at] = other;
            assert_eq!(
                DeskPublic::from_typed(&wrong.iter().collect::<String>()).unwrap_err(),
                HandoverError::KeyGroupWrong {
                    group: (at / KEY_GROUP_CHARS) as u8 + 1
                },
                "{other} at {at}"
            );
        }
    }
}

#[test]
fn any_two_characters_of_a_group_swapped_are_noticed() {
    let typed: Vec<char> = desk(9).to_typed().replace(' ', "").chars().collect();
    for group in 0..KEY_GROUPS {
        for (a, b) in (0..KEY_GROUP_CHARS).flat_map(|a| (0..a).map(move |b| (a, b))) {
            let (a, b) = (group * KEY_GROUP_CHARS + a, group * KEY_GROUP_CHARS + b);
            let mut swapped = typed.clone();
            swapped.swap(a, b);
            if swapped != typed {
                let text: String = swapped.iter().collect();
                assert!(DeskPublic::from_typed(&text).is_err(), "{a} and {b}");
            }
        }
    }
}

#[test]
fn two_groups_swapped_are_noticed() {
    let typed = desk(9).to_typed();
    let groups: Vec<&str> = typed.split(' ').collect();
    for (a, b) in (0..KEY_GROUPS).flat_map(|a| (0..a).map(move |b| (a, b))) {
        let mut swapped = groups.clone();
        swapped.swap(a, b);
        assert!(matches!(
            DeskPublic::from_typed(&swapped.join(" ")),
            Err(HandoverError::KeyGroupWrong { group }) if usize::from(group) == b + 1
        ));
    }
}

#[test]
fn too_few_and_too_many_characters_are_counted() {
    let typed = desk(9).to_typed();
    assert_eq!(
        DeskPublic::from_typed(&typed[1..]).unwrap_err(),
        HandoverError::KeyLengthWrong { given: 64 }
    );
    assert_eq!(
        DeskPublic::from_typed(&format!("{typed}A")).unwrap_err(),
        HandoverError::KeyLengthWrong { given: 66 }
    );
}

#[test]
fn the_words_are_the_same_on_both_sides_and_others_for_other_keys() {
    let pair = DeskKeyPair::from_random([9; 32]).unwrap();
    let typed = DeskPublic::from_typed(&pair.public().to_typed()).unwrap();
    assert_eq!(pair.public().fingerprint(), typed.fingerprint());
    assert_eq!(typed.fingerprint().len(), FINGERPRINT_WORDS);
    for other in 10..60 {
        assert_ne!(desk(other).fingerprint(), typed.fingerprint());
        assert_ne!(desk(other).kid(), typed.kid());
    }
    let tablet = TabletPublic::of(&sample::tablet().public().to_bytes()).unwrap();
    assert_eq!(
        tablet.fingerprint(),
        sample::tablet().public().fingerprint()
    );
}

#[test]
fn a_tablet_is_enrolled_by_its_code() {
    let public = sample::tablet().public();
    let (side, pixels) = public.to_code().unwrap().to_luma(3, 4);
    let text = read_back::read_one(pixels, side, side).unwrap();
    assert_eq!(text, public.to_code_text());
    assert_eq!(
        Collector::new().offer(&format!("]Q1{text}\r")),
        Offered::TabletEnrolment(public)
    );
}

#[test]
fn an_altered_enrolment_is_never_taken() {
    let text = sample::tablet().public().to_code_text();
    for at in 0..text.len() {
        let mut altered = text.clone().into_bytes();
        altered[at] = b'0' + (altered[at] - b'0' + 1) % 10;
        let altered = String::from_utf8(altered).unwrap();
        assert!(matches!(
            Collector::new().offer(&altered),
            Offered::Refused(_)
        ));
    }
}

#[test]
fn a_weak_tablet_key_cannot_be_enrolled() {
    // The neutral point (RFC 8032, 5.1.2: y = 1), of order 1.
    let mut neutral = [0; 32];
    neutral[0] = 1;
    assert_eq!(
        TabletPublic::of(&neutral).unwrap_err(),
        HandoverError::KeyUnusable
    );
}

#[test]
fn secrets_come_back_from_their_bytes_and_are_not_shown() {
    let tablet = TabletKey::from_random([7; 32]);
    assert_eq!(*tablet.secret_bytes(), [7; 32]);
    assert_eq!(format!("{tablet:?}"), "TabletKey(…)");
    let desk = DeskKeyPair::from_random([9; 32]).unwrap();
    let again = DeskKeyPair::from_random(*desk.secret_bytes()).unwrap();
    assert_eq!(again.public(), desk.public());
    assert_eq!(format!("{desk:?}"), "DeskKeyPair(…)");
    assert_eq!(format!("{:?}", sample::fresh(1)), "Fresh(…)");
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(24))]

    #[test]
    fn any_key_is_read_back_from_its_text(bytes in any::<[u8; 32]>()) {
        let public = DeskKeyPair::from_random(bytes).unwrap().public();
        prop_assert_eq!(DeskPublic::from_typed(&public.to_typed()).unwrap(), public);
    }

    #[test]
    fn any_typed_text_is_answered(text in "\\PC{0,90}") {
        let _ = DeskPublic::from_typed(&text);
    }
}
