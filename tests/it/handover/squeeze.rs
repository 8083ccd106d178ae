//! The range coder: the one form of each value, and its limits.

use feedside::handover::cbor::Item;
use feedside::handover::{HandoverError, squeeze};
use proptest::prelude::*;
use sha2::{Digest, Sha256};

/// What is learned first is part of the format. Source: the file as it was frozen.
#[test]
fn what_is_learned_first_is_what_it_was() {
    let prior = include_bytes!("../../../src/handover/squeeze/prior.bin");
    let digest: Vec<String> = Sha256::digest(prior)
        .iter()
        .map(|byte| format!("{byte:02x}"))
        .collect();
    assert_eq!(
        digest.concat(),
        "65b54e1560b206bd7f565682e43506da8a15948d2218f90a2a629daba4cb79c3"
    );
}

fn check(item: &Item) -> Vec<u8> {
    let bytes = squeeze::squeeze(item).unwrap();
    assert!(squeeze::unsqueeze(&bytes).unwrap() == *item);
    bytes
}

#[test]
fn the_widest_and_the_smallest_values_come_back() {
    for value in [
        0,
        1,
        -1,
        23,
        1_023,
        1_024,
        -1_024,
        i64::MAX,
        i64::MIN,
        i64::MIN + 1,
    ] {
        check(&Item::Int(value));
        check(&Item::List(vec![Item::Int(value); 12]));
    }
    for item in [
        Item::Null,
        Item::Bool(true),
        Item::Bool(false),
        Item::Text(String::new()),
        Item::Text("\0 ü 水 \u{7f}".to_owned()),
        Item::Bytes(Vec::new()),
        Item::Bytes((0..=255).collect()),
        Item::List(Vec::new()),
        Item::Map(Vec::new()),
    ] {
        check(&item);
    }
}

/// That a whole record was cut is what the seal is for; here a cut gives another value or none.
#[test]
fn a_byte_less_is_never_the_same_value_and_a_byte_more_is_refused() {
    let item = Item::List((0..40).map(|it| Item::Int(it * it * 7_919)).collect());
    let mut bytes = check(&item);
    for length in 0..bytes.len() {
        assert!(
            squeeze::unsqueeze(&bytes[..length]) != Ok(item.clone()),
            "{length} bytes"
        );
    }
    bytes.push(0);
    assert_eq!(squeeze::unsqueeze(&bytes), Err(HandoverError::CannotUnpack));
    bytes.push(1);
    assert!(squeeze::unsqueeze(&bytes).is_err());
}

#[test]
fn more_than_a_record_may_hold_is_refused_on_both_ways() {
    let more = Item::List(vec![Item::Int(0); 200_000]);
    assert_eq!(squeeze::squeeze(&more), Err(HandoverError::TooLarge));
    let text = Item::Text("a".repeat(400_001));
    assert_eq!(squeeze::squeeze(&text), Err(HandoverError::TooLarge));
    let deep = (0..10).fold(Item::Null, |inner, _| Item::List(vec![inner]));
    assert_eq!(squeeze::squeeze(&deep), Err(HandoverError::NotReadable));
}

/// A few bytes that stood for a list of endless zeros kept a reader busy for seconds. A list of
/// so many zeros takes ten decisions each and hardly any bytes; a reader takes 100,000 decisions
/// and 200 a byte.
#[test]
fn what_a_few_bytes_may_stand_for_is_bounded_on_both_ways() {
    let zeros = |count| squeeze::squeeze(&Item::List(vec![Item::Int(0); count]));
    let many = check(&Item::List(vec![Item::Int(0); 9_000]));
    assert!(many.len() < 60, "{} bytes", many.len());
    assert_eq!(zeros(40_000), Err(HandoverError::TooLarge));
    // What eight bytes stood for before they were bounded: those 40,000 zeros, 400,025 decisions.
    // A reader that walked them all would find only at the end that no writer writes them.
    let bytes = [255, 255, 111, 200, 16, 56, 127, 250];
    assert_eq!(squeeze::unsqueeze(&bytes), Err(HandoverError::TooLarge));
}

#[test]
fn a_map_out_of_order_or_with_a_key_twice_is_no_value() {
    for keys in [[2, 1], [1, 1]] {
        let map = Item::Map(keys.map(|key| (Item::Int(key), Item::Null)).to_vec());
        assert_eq!(squeeze::squeeze(&map), Err(HandoverError::NotReadable));
    }
}

fn any_item() -> impl Strategy<Value = Item> {
    let leaf = prop_oneof![
        Just(Item::Null),
        any::<bool>().prop_map(Item::Bool),
        any::<i64>().prop_map(Item::Int),
        (0i64..40).prop_map(Item::Int),
        prop::collection::vec(any::<u8>(), 0..9).prop_map(Item::Bytes),
        "\\PC{0,12}".prop_map(Item::Text),
    ];
    leaf.prop_recursive(4, 60, 12, |inner| {
        prop_oneof![
            prop::collection::vec(inner.clone(), 0..12).prop_map(Item::List),
            prop::collection::btree_map(0i64..20, inner, 0..6).prop_map(|map| Item::Map(
                map.into_iter()
                    .map(|(key, value)| (Item::Int(key), value))
                    .collect()
            )),
        ]
    })
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(64))]

    #[test]
    fn any_value_comes_back(item in any_item()) {
        check(&item);
    }
}
