//! What is refused, each with its own error, and nothing taken before is touched.

use feedside::handover::cbor::{Item, to_bytes};
use feedside::handover::{
    Collector, DeskKeyPair, HandoverError, Offered, TabletKey, VersionCap, cbor, coding, deflate,
    open, seal, sign, wire,
};

use super::codes::{opened, packed};
use super::sample;

/// A content sealed and signed as it should be.
fn sealed(content: &[u8]) -> Vec<u8> {
    let deflated = deflate::deflate(content).unwrap();
    packed_sealed([&[coding::DEFLATED], deflated.as_slice()].concat())
}

/// Packed bytes, signed and sealed as they should be.
pub fn packed_sealed(packed: Vec<u8>) -> Vec<u8> {
    let desk = sample::desk().public();
    let signed = sign::sign(packed, &sample::tablet(), &desk.kid()).unwrap();
    sealed_signed(&signed)
}

fn sealed_signed(signed: &[u8]) -> Vec<u8> {
    let short = sign::shorten(signed).unwrap();
    seal::seal(&short, &sample::desk().public(), &[3; 32])
        .unwrap()
        .0
}

#[test]
fn every_bit_of_a_sealed_record_turned_over_is_refused() {
    let sealed = packed(&sample::smallest(), 1, VersionCap::V20).sealed;
    assert!(opened(&sealed).is_ok());
    for bit in 0..sealed.len() * 8 {
        let mut turned = sealed.clone();
        turned[bit / 8] ^= 1 << (bit % 8);
        assert!(opened(&turned).is_err(), "bit {bit}");
    }
}

#[test]
fn a_sealed_record_cut_or_lengthened_anywhere_is_refused() {
    let mut sealed = packed(&sample::smallest(), 1, VersionCap::V20).sealed;
    for length in 0..sealed.len() {
        assert!(opened(&sealed[..length]).is_err(), "{length} bytes");
    }
    sealed.push(0);
    assert_eq!(opened(&sealed).unwrap_err(), HandoverError::Altered);
}

#[test]
fn a_changed_ciphertext_is_told_as_altered() {
    let mut sealed = packed(&sample::smallest(), 1, VersionCap::V20).sealed;
    let last = sealed.len() - 1;
    sealed[last] ^= 1;
    assert_eq!(opened(&sealed).unwrap_err(), HandoverError::Altered);
}

#[test]
fn a_record_for_another_desk_names_the_key_it_is_for() {
    let sealed = packed(&sample::smallest(), 1, VersionCap::V20).sealed;
    let other = DeskKeyPair::from_random([44; 32]).unwrap();
    assert_eq!(
        open(&sealed, &[other], &|_| None).unwrap_err(),
        HandoverError::NotForThisDesk {
            desk: sample::desk().public().kid()
        }
    );
}

#[test]
fn an_old_key_of_the_desk_still_opens_an_old_record() {
    let sealed = packed(&sample::smallest(), 1, VersionCap::V20).sealed;
    let tablet = sample::tablet().public();
    let desks = [DeskKeyPair::from_random([44; 32]).unwrap(), sample::desk()];
    let opened = open(&sealed, &desks, &|_| Some(tablet)).unwrap();
    assert_eq!(opened.desk, sample::desk().public().kid());
}

#[test]
fn a_tablet_that_is_not_enrolled_is_named() {
    let sealed = packed(&sample::smallest(), 1, VersionCap::V20).sealed;
    assert_eq!(
        open(&sealed, &[sample::desk()], &|_| None).unwrap_err(),
        HandoverError::TabletNotEnrolled {
            tablet: sample::tablet().public().kid()
        }
    );
}

#[test]
fn a_signature_of_another_tablet_is_wrong() {
    let sealed = packed(&sample::smallest(), 1, VersionCap::V20).sealed;
    let other = TabletKey::from_random([45; 32]).public();
    assert_eq!(
        open(&sealed, &[sample::desk()], &|_| Some(other)).unwrap_err(),
        HandoverError::SignatureWrong
    );
}

#[test]
fn a_desk_cannot_hand_a_signed_record_on_to_another_desk() {
    let record = packed(&sample::smallest(), 1, VersionCap::V20).sealed;
    let signed = opened(&record).unwrap().signed;
    let other = DeskKeyPair::from_random([44; 32]).unwrap();
    let short = sign::shorten(&signed).unwrap();
    let resealed = seal::seal(&short, &other.public(), &[8; 32]).unwrap().0;
    let tablet = sample::tablet().public();
    assert_eq!(
        open(&resealed, &[other], &|_| Some(tablet)).unwrap_err(),
        HandoverError::SignatureWrong
    );
}

#[test]
fn another_format_version_has_its_own_error() {
    let mut sealed = packed(&sample::smallest(), 1, VersionCap::V20).sealed;
    for found in [0, 1, 3, 255] {
        sealed[0] = found;
        assert_eq!(
            opened(&sealed).unwrap_err(),
            HandoverError::UnknownVersion { found }
        );
    }
}

#[test]
fn another_coding_has_its_own_error() {
    for found in [0, 3, 255] {
        assert_eq!(
            opened(&packed_sealed(vec![found, 1, 2])).unwrap_err(),
            HandoverError::UnknownVersion { found }
        );
    }
}

#[test]
fn a_newer_wire_version_has_its_own_error() {
    let content = to_bytes(&Item::Map(vec![(Item::Int(0), Item::Int(9))])).unwrap();
    assert_eq!(
        opened(&sealed(&content)).unwrap_err(),
        HandoverError::UnknownVersion { found: 9 }
    );
}

#[test]
fn a_record_that_inflates_without_end_is_too_large() {
    let sealed = sealed(&vec![0; 8_000_000]);
    assert!(sealed.len() < 20_000);
    assert_eq!(opened(&sealed).unwrap_err(), HandoverError::TooLarge);
    assert_eq!(
        opened(&vec![1; 60_001]).unwrap_err(),
        HandoverError::TooLarge
    );
}

#[test]
fn signed_bytes_that_are_no_record_are_told_by_the_step_that_fails() {
    let unpacked = packed_sealed(b"\x01\xff\xff".to_vec());
    assert_eq!(opened(&unpacked).unwrap_err(), HandoverError::CannotUnpack);
    let empty = packed_sealed(Vec::new());
    assert_eq!(opened(&empty).unwrap_err(), HandoverError::CannotUnpack);
    assert_eq!(
        opened(&sealed(b"no CBOR")).unwrap_err(),
        HandoverError::NotReadable
    );
}

#[test]
fn a_value_that_the_record_refuses_is_told_as_not_possible() {
    let mut handed = sample::smallest();
    handed.pair.sex = feedside::record::Sex::Male;
    let item = wire::to_wire(&handed).unwrap();
    let bytes = to_bytes(&item).unwrap();
    // The birth weight, 3240 = 0x0ca8, becomes 0 (in its shortest form) by taking the item apart.
    let Item::Map(mut fields) = cbor::from_bytes(&bytes).unwrap() else {
        panic!("a record is a map");
    };
    for (_, value) in &mut fields {
        if let Item::Map(pair) = value {
            for (_, value) in pair
                .iter_mut()
                .filter(|(_, value)| *value == Item::Int(3_240))
            {
                *value = Item::Int(0);
            }
        }
    }
    let sealed = sealed(&to_bytes(&Item::Map(fields)).unwrap());
    assert!(matches!(
        opened(&sealed).unwrap_err(),
        HandoverError::NotPossible(_)
    ));
}

#[test]
fn one_altered_digit_anywhere_is_refused_naming_the_piece() {
    let packed = packed(&sample::ordinary(5, true), 3, VersionCap::V15);
    let text = &packed.pieces[1];
    let mut collector = Collector::new();
    collector.offer(&packed.pieces[0]);
    for at in 0..text.len() {
        let mut altered = text.clone().into_bytes();
        altered[at] = b'0' + (altered[at] - b'0' + 1 + (at % 9) as u8) % 10;
        let altered = String::from_utf8(altered).unwrap();
        let Offered::Refused(error) = collector.offer(&altered) else {
            panic!("digit {at} of {altered} was taken");
        };
        // The two digits that name the piece stand behind the preamble; with one of them altered
        // the piece that they name is named, or none.
        if (20..22).contains(&at) {
            assert!(matches!(
                error,
                HandoverError::PieceDamaged { .. } | HandoverError::CodeDamaged
            ));
        } else {
            assert_eq!(error.piece(), Some(2), "digit {at}: {error:?}");
        }
    }
    assert!(matches!(
        collector.offer(text),
        Offered::Piece { index: 2, .. } | Offered::Complete { .. }
    ));
}

#[test]
fn a_scan_that_was_cut_or_lost_or_doubled_a_character_is_refused_naming_the_piece() {
    let packed = packed(&sample::ordinary(5, true), 3, VersionCap::V15);
    let text = &packed.pieces[0];
    let mut collector = Collector::new();
    for length in 22..text.len() {
        assert_eq!(
            collector.offer(&text[..length]),
            Offered::Refused(HandoverError::PieceCut { piece: 1 }),
            "{length} characters"
        );
    }
    for at in (22..text.len()).step_by(13) {
        let lost = format!("{}{}", &text[..at], &text[at + 1..]);
        let doubled = format!("{}{}", &text[..=at], &text[at..]);
        for scan in [lost, doubled] {
            match collector.offer(&scan) {
                Offered::Refused(error) => assert_eq!(error.piece(), Some(1), "character {at}"),
                // A lost or doubled character among equal ones at the very end is not seen.
                other => panic!("character {at}: {other:?}"),
            }
        }
    }
    assert!(collector.waiting().is_empty());
}

#[test]
fn texts_that_are_no_codes_of_ours_are_told_so() {
    let mut collector = Collector::new();
    for text in [
        "",
        "\r\n",
        "4006381333931",
        "https://example.org/0123456789",
        "0123456789",
    ] {
        assert_eq!(
            collector.offer(text),
            Offered::Refused(HandoverError::NotOurs),
            "{text}"
        );
    }
    assert_eq!(
        collector.offer("01234567899876543210"),
        Offered::Refused(HandoverError::CodeDamaged)
    );
    assert_eq!(
        collector.offer(&"7".repeat(20_000)),
        Offered::Refused(HandoverError::TooLarge)
    );
}

#[test]
fn a_piece_of_a_later_version_is_told_as_such() {
    let mut piece = feedside::handover::pieces::cut(&[1, 2, 3], 9, 600)
        .unwrap()
        .remove(0);
    piece.version = 0x12;
    let text = feedside::handover::digits::wrap(1, &piece.to_bytes());
    assert_eq!(
        Collector::new().offer(&text),
        Offered::Refused(HandoverError::UnknownVersion { found: 2 })
    );
}
