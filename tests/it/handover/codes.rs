//! From a record to codes and back: sizes, pieces in any order, pictures.

use feedside::handover::{
    Collector, Handed, HandoverError, Offered, Packed, VersionCap, digits, open, pack, pieces, qr,
    read_back,
};
use proptest::prelude::*;

use super::sample;

pub fn packed(handed: &Handed, number: u8, cap: VersionCap) -> Packed {
    pack(
        handed,
        &sample::tablet(),
        &sample::desk().public(),
        &sample::fresh(number),
        cap,
    )
    .unwrap()
}

pub fn opened(sealed: &[u8]) -> Result<feedside::handover::Opened, HandoverError> {
    let tablet = sample::tablet().public();
    open(sealed, &[sample::desk()], &|kid| {
        (*kid == tablet.kid()).then_some(tablet)
    })
}

#[test]
fn a_record_goes_through_codes_and_comes_back_with_its_receipt() {
    let handed = sample::ordinary(4, true);
    for cap in VersionCap::ALL {
        let packed = packed(&handed, 1, cap);
        assert_eq!(packed.codes.len(), packed.pieces.len());
        let mut collector = Collector::new();
        let mut sealed = None;
        for code in &packed.codes {
            assert!(code.version() <= usize::from(cap.version()));
            let (side, pixels) = code.to_luma(4, qr::QUIET_MODULES);
            let texts = read_back::read_all(pixels, side, side);
            assert_eq!(texts.len(), 1);
            if let Offered::Complete { sealed: whole, .. } = collector.offer(&texts[0]) {
                sealed = Some(whole);
            }
        }
        let opened = opened(&sealed.unwrap()).unwrap();
        assert!(opened.handed == handed);
        assert_eq!(opened.receipt.digits(), packed.receipt.digits());
        assert_eq!(opened.tablet, sample::tablet().public().kid());
    }
}

#[test]
fn the_same_record_with_the_same_randomness_gives_the_same_codes() {
    let handed = sample::ordinary(4, false);
    let (one, two) = (
        packed(&handed, 1, VersionCap::V20),
        packed(&handed, 1, VersionCap::V20),
    );
    assert_eq!(one.pieces, two.pieces);
    assert_ne!(one.pieces, packed(&handed, 2, VersionCap::V20).pieces);
}

/// Source: ISO/IEC 18004, table 7, as widely reprinted; from memory.
#[test]
fn codes_hold_what_the_standard_says() {
    for (version, digits, bytes) in [
        (1, 34, 14),
        (9, 432, 180),
        (10, 513, 213),
        (15, 991, 412),
        (20, 1_600, 666),
        (25, 2_395, 997),
        (27, 2_701, 1_125),
        (40, 5_596, 2_331),
    ] {
        assert_eq!(qr::digits_most(version), digits, "version {version}");
        assert_eq!(qr::bytes_most(version), bytes, "version {version}");
    }
}

#[test]
fn the_smallest_version_is_taken_that_needs_no_more_codes() {
    let one = qr::payload_most(20);
    for sealed_bytes in [1, 100, one - 1, one, one + 1, 3 * one, 3 * one + 1, 9_000] {
        let version = qr::version_for(sealed_bytes, VersionCap::V20);
        let count = |version| sealed_bytes.div_ceil(qr::payload_most(version).max(1));
        assert_eq!(count(version), count(20), "{sealed_bytes}");
        assert!(version == 1 || count(20) < count(version - 1));
    }
}

#[test]
fn pieces_are_taken_in_any_order_and_any_number_of_times() {
    let packed = packed(&sample::ordinary(5, true), 3, VersionCap::V15);
    let count = packed.pieces.len() as u8;
    assert!(2 < count);
    let mut collector = Collector::new();
    let mut left: Vec<u8> = (1..=count).collect();
    for index in (2..=count).rev() {
        let text = &packed.pieces[usize::from(index) - 1];
        left.retain(|it| *it != index);
        let expected = Offered::Piece {
            transfer: packed.transfer,
            index,
            count,
            missing: left.clone(),
        };
        assert_eq!(collector.offer(text), expected);
        let again = collector.offer(text);
        assert!(matches!(again, Offered::Again { sealed: None, missing, .. } if missing == left));
    }
    assert_eq!(collector.waiting()[0].missing, [1]);
    assert_eq!(
        collector.offer(&packed.pieces[0]),
        Offered::Complete {
            transfer: packed.transfer,
            sealed: packed.sealed.clone()
        }
    );
    assert!(collector.waiting().is_empty());
    let again = collector.offer(&packed.pieces[1]);
    assert!(
        matches!(again, Offered::Again { sealed: Some(sealed), .. } if sealed == packed.sealed)
    );
}

#[test]
fn two_records_scanned_in_turn_do_not_mix() {
    let one = packed(&sample::ordinary(5, true), 3, VersionCap::V20);
    let two = packed(&sample::ordinary(6, true), 4, VersionCap::V20);
    let mut collector = Collector::new();
    let mut whole = Vec::new();
    for at in 0..one.pieces.len().max(two.pieces.len()) {
        for packed in [&one, &two] {
            if let Some(text) = packed.pieces.get(at)
                && let Offered::Complete { sealed, .. } = collector.offer(text)
            {
                whole.push(sealed);
            }
        }
    }
    assert!(whole == [one.sealed, two.sealed]);
}

#[test]
fn a_piece_of_another_record_under_the_same_number_is_refused_and_changes_nothing() {
    let one = packed(&sample::ordinary(5, true), 3, VersionCap::V20);
    let two = packed(&sample::ordinary(6, true), 3, VersionCap::V20);
    assert_eq!(one.transfer, two.transfer);
    let mut collector = Collector::new();
    collector.offer(&one.pieces[0]);
    assert_eq!(
        collector.offer(&two.pieces[0]),
        Offered::Refused(HandoverError::PieceMixed { piece: 1 })
    );
    let fewer = packed(&sample::smallest(), 3, VersionCap::V20);
    assert_eq!(
        collector.offer(&fewer.pieces[0]),
        Offered::Refused(HandoverError::PieceMixed { piece: 1 })
    );
    let last = one.pieces[1..]
        .iter()
        .map(|text| collector.offer(text))
        .last();
    assert!(matches!(last, Some(Offered::Complete { sealed, .. }) if sealed == one.sealed));
}

#[test]
fn one_scan_may_hold_several_codes() {
    let packed = packed(&sample::ordinary(5, true), 3, VersionCap::V20);
    let mut collector = Collector::new();
    let all = collector.offer_all(&packed.pieces.concat());
    assert_eq!(all.len(), packed.pieces.len());
    assert!(matches!(all.last(), Some(Offered::Complete { .. })));
    assert_eq!(
        collector.offer_all("nothing"),
        [Offered::Refused(HandoverError::NotOurs)]
    );
}

#[test]
fn more_bytes_than_a_transfer_may_have_are_refused_before_they_are_cut() {
    assert_eq!(
        pieces::cut(&vec![0; 60_001], 1, 600).unwrap_err(),
        HandoverError::TooLarge
    );
    assert_eq!(
        pieces::cut(&[0; 61], 1, 1).unwrap_err(),
        HandoverError::TooLarge
    );
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(200))]

    #[test]
    fn any_bytes_come_back_from_their_digits(bytes in prop::collection::vec(any::<u8>(), 0..60), name in 0u8..100) {
        let text = digits::wrap(name, &bytes);
        prop_assert!(bytes.len() <= digits::bytes_in(text.len()));
        let scanned = digits::unwrap(&text).unwrap();
        prop_assert_eq!(scanned.name, name);
        prop_assert_eq!(scanned.bytes(bytes.len()), Some(bytes));
    }

    #[test]
    fn pieces_differ_by_one_byte_at_most_and_join_again(bytes in prop::collection::vec(any::<u8>(), 1..900), most in 20usize..300) {
        let cut = pieces::cut(&bytes, 7, most).unwrap();
        let lengths: Vec<usize> = cut.iter().map(|piece| piece.payload.len()).collect();
        prop_assert!(lengths.iter().all(|length| *length <= most));
        prop_assert!(lengths.iter().max().unwrap() - lengths.iter().min().unwrap() <= 1);
        for piece in &cut {
            let read = pieces::Piece::of_bytes(&piece.to_bytes(), piece.index).unwrap();
            prop_assert_eq!(&read, piece);
        }
        let joined: Vec<u8> = cut.into_iter().flat_map(|piece| piece.payload).collect();
        prop_assert_eq!(joined, bytes);
    }

    #[test]
    fn any_text_is_answered(text in "\\PC{0,80}") {
        Collector::new().offer_all(&text);
        Collector::new().offer_all(&format!("{}{text}", digits::PREAMBLE));
    }
}
