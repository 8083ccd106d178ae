//! Each primitive against published vectors, through this room's own functions where it has one.

use feedside::handover::cbor::{Item, from_bytes, to_bytes};
use feedside::handover::pieces::crc;
use feedside::handover::{DeskKeyPair, DeskPublic, TabletKey, deflate, seal};
use hmac::{Hmac, KeyInit, Mac};
use sha2::Sha256;

use super::sample::{bytes, fixed, hex};

fn list(items: &[i64]) -> Item {
    Item::List(items.iter().map(|item| Item::Int(*item)).collect())
}

fn text(text: &str) -> Item {
    Item::Text(text.to_owned())
}

/// Source: RFC 8949, appendix A, the rows of the kinds that are used here.
#[test]
fn cbor_is_written_and_read_as_in_rfc_8949_appendix_a() {
    let cases: Vec<(Item, &str)> = vec![
        (Item::Int(0), "00"),
        (Item::Int(1), "01"),
        (Item::Int(10), "0a"),
        (Item::Int(23), "17"),
        (Item::Int(24), "1818"),
        (Item::Int(25), "1819"),
        (Item::Int(100), "1864"),
        (Item::Int(1_000), "1903e8"),
        (Item::Int(1_000_000), "1a000f4240"),
        (Item::Int(1_000_000_000_000), "1b000000e8d4a51000"),
        (Item::Int(-1), "20"),
        (Item::Int(-10), "29"),
        (Item::Int(-100), "3863"),
        (Item::Int(-1_000), "3903e7"),
        (Item::Bool(false), "f4"),
        (Item::Bool(true), "f5"),
        (Item::Null, "f6"),
        (Item::Bytes(vec![]), "40"),
        (Item::Bytes(vec![1, 2, 3, 4]), "4401020304"),
        (text(""), "60"),
        (text("a"), "6161"),
        (text("IETF"), "6449455446"),
        (text("\"\\"), "62225c"),
        (text("\u{fc}"), "62c3bc"),
        (text("\u{6c34}"), "63e6b0b4"),
        (list(&[]), "80"),
        (list(&[1, 2, 3]), "83010203"),
        (
            Item::List(vec![Item::Int(1), list(&[2, 3]), list(&[4, 5])]),
            "8301820203820405",
        ),
        (
            list(&(1..=25).collect::<Vec<_>>()),
            "98190102030405060708090a0b0c0d0e0f101112131415161718181819",
        ),
        (Item::Map(vec![]), "a0"),
        (
            Item::Map(vec![
                (Item::Int(1), Item::Int(2)),
                (Item::Int(3), Item::Int(4)),
            ]),
            "a201020304",
        ),
        (
            Item::Map(vec![(text("a"), Item::Int(1)), (text("b"), list(&[2, 3]))]),
            "a26161016162820203",
        ),
    ];
    for (item, expected) in cases {
        assert_eq!(hex(&to_bytes(&item).unwrap()), expected);
        assert!(from_bytes(&bytes(expected)).unwrap() == item, "{expected}");
    }
}

/// Source: RFC 8949, 4.2.1: shortest numbers, definite lengths, keys in the order of their bytes.
#[test]
fn cbor_in_any_but_the_deterministic_form_is_refused() {
    for other in [
        "1800",
        "190001",
        "1b0000000000000001",
        "5800",
        "9f01ff",
        "5f4101ff",
        "bf0102ff",
        "a203040102",
        "a2010201",
        "0100",
        "f7",
        "c101",
        "f93c00",
        "",
        "9bffffffffffffffff",
        "818181818181818181818180",
    ] {
        assert!(from_bytes(&bytes(other)).is_err(), "{other}");
    }
}

/// Source: RFC 8032, section 7.1, tests 1 to 3. The signature comes out of this room's COSE layer
/// only over its own bytes, so the library is asked as this room asks it.
#[test]
fn ed25519_signs_as_in_rfc_8032_section_7_1() {
    use ed25519_dalek::{Signature, Signer, SigningKey};
    for (secret, public, message, signature) in [
        (
            "9d61b19deffd5a60ba844af492ec2cc44449c5697b326919703bac031cae7f60",
            "d75a980182b10ab7d54bfed3c964073a0ee172f3daa62325af021a68f707511a",
            "",
            "e5564300c360ac729086e2cc806e828a84877f1eb8e5d974d873e065224901555fb8821590a33bacc61e39701cf9b46bd25bf5f0595bbe24655141438e7a100b",
        ),
        (
            "4ccd089b28ff96da9db6c346ec114e0f5b8a319f35aba624da8cf6ed4fb8a6fb",
            "3d4017c3e843895a92b70aa74d1b7ebc9c982ccf2ec4968cc0cd55f12af4660c",
            "72",
            "92a009a9f0d4cab8720e820b5f642540a2b27b5416503f8fb3762223ebdb69da085ac1e43e15996e458f3613d0f11d8c387b2eaeb4302aeeb00d291612bb0c00",
        ),
        (
            "c5aa8df43f9f837bedb7442f31dcb7b166d38535076f094b85ce3a2e0b4458f7",
            "fc51cd8e6218a1a38da47ed00230f0580816ed13ba3303ac5deb911548908025",
            "af82",
            "6291d657deec24024827e69c3abe01a30ce548a284743a445e3680d7db5ac3ac18ff9b538d16f290ae67f760984dc6594a7c15e9716ed28dc027beceea1ec40a",
        ),
    ] {
        let (message, signature) = (bytes(message), bytes(signature));
        let key = SigningKey::from_bytes(&fixed(secret));
        assert_eq!(
            TabletKey::from_random(fixed(secret)).public().to_bytes(),
            fixed(public)
        );
        assert_eq!(key.sign(&message).to_bytes().to_vec(), signature);
        let parsed = Signature::from_slice(&signature).unwrap();
        assert!(key.verifying_key().verify_strict(&message, &parsed).is_ok());
    }
}

/// Source: RFC 9180, appendix A.2.1 (base mode, X25519, HKDF-SHA256, ChaCha20-Poly1305), sequence
/// number 0: our seed is the RFC's `ikmE`.
#[test]
fn hpke_seals_and_opens_as_in_rfc_9180_appendix_a_2_1() {
    let desk = DeskKeyPair::from_random(fixed(
        "8057991eef8f1f1af18f4a9491d16a1ce333f695d4db8e38da75975c4478e0fb",
    ))
    .unwrap();
    let public = fixed("4310ee97d88cc1f088a5576c77ab0cf5c3ac797f3d95139c6c84b5429c59662a");
    assert_eq!(desk.public().to_bytes(), public);
    let seed = fixed("909a9b35d3dc4713a5e72a4da274b55d3d3821a37e5d099e74a647db583a904b");
    let info = bytes("4f6465206f6e2061204772656369616e2055726e");
    let aad = bytes("436f756e742d30");
    let plain = bytes("4265617574792069732074727574682c20747275746820626561757479");
    let (encapsulated, ciphertext) = seal::seal_with(
        &DeskPublic::of(&public).unwrap(),
        &seed,
        &info,
        &aad,
        &plain,
    )
    .unwrap();
    assert_eq!(
        hex(&encapsulated),
        "1afa08d3dec047a643885163f1180476fa7ddb54c6a8029ea33f95796bf2ac4a"
    );
    assert_eq!(
        hex(&ciphertext),
        "1c5250d8034ec2b784ba2cfd69dbdb8af406cfe3ff938e131f0def8c8b60b4db21993c62ce81883d2dd1b51a28"
    );
    assert_eq!(
        seal::open_with(&desk, &encapsulated, &info, &aad, &ciphertext).unwrap(),
        plain
    );
}

/// Source: RFC 7748, section 6.1: a point of small order gives an all-zero secret, to be refused.
#[test]
fn a_desk_key_of_small_order_cannot_be_used() {
    assert!(DeskPublic::of(&[0; 32]).is_err());
    let mut one = [0; 32];
    one[0] = 1;
    assert!(DeskPublic::of(&one).is_err());
}

/// Source: RFC 4231, test cases 1 and 2 (HMAC-SHA-256, which the receipt uses).
#[test]
fn hmac_is_as_in_rfc_4231() {
    for (key, data, expected) in [
        (
            "0b0b0b0b0b0b0b0b0b0b0b0b0b0b0b0b0b0b0b0b",
            "4869205468657265",
            "b0344c61d8db38535ca8afceaf0bf12b881dc200c9833da726e9376c2e32cff7",
        ),
        (
            "4a656665",
            "7768617420646f2079612077616e7420666f72206e6f7468696e673f",
            "5bdcc146bf60754e6a042426089575c75a003f089d2739839dec58b964ec3843",
        ),
    ] {
        let mut mac = Hmac::<Sha256>::new_from_slice(&bytes(key)).unwrap();
        mac.update(&bytes(data));
        assert_eq!(hex(&mac.finalize().into_bytes()), expected);
    }
}

/// Source: the check value of this CRC-32 (IEEE 802.3, as zlib computes it) over "123456789".
#[test]
fn crc_32_has_its_check_value() {
    assert_eq!(crc(&[b"1234", b"56789"]), 0xCBF4_3926);
}

/// Source: Python 3 zlib, `zlib.compressobj(9, zlib.DEFLATED, -15)` over b"suck swallow " * 8.
#[test]
fn what_zlib_squeezed_is_unpacked() {
    let plain = "suck swallow ".repeat(8);
    let squeezed = bytes("2b2e4dce56282e4fccc9c92f5728a61d0700");
    assert_eq!(
        deflate::inflate(&squeezed).unwrap_or_default(),
        plain.as_bytes()
    );
}

/// Source: RFC 1951, 3.2.4: a stored block is its length, the length inverted, and the bytes.
#[test]
fn a_stored_block_is_unpacked_and_nothing_may_follow_it() {
    let mut block = bytes("010300fcff616263");
    assert_eq!(deflate::inflate(&block).unwrap(), b"abc");
    block.push(0);
    assert!(deflate::inflate(&block).is_err());
}
