//! The receipt.

use feedside::handover::{Receipt, ReceiptCheck, check_digit};

fn receipt() -> Receipt {
    Receipt::of(&[5; 16], b"sealed bytes")
}

/// Source: python-stdnum 2, module `stdnum.iso7064.mod_11_10`, `calc_check_digit`; the first is
/// also the example of ISO 7064 itself (from memory).
#[test]
fn the_check_digit_is_that_of_iso_7064_mod_11_10() {
    for (digits, check) in [
        ("0794", 5),
        ("000000000", 6),
        ("123456789", 7),
        ("987654321", 3),
        ("100000000", 5),
        ("002006030", 7),
        ("555555555", 1),
    ] {
        let values: Vec<u8> = digits.bytes().map(|digit| digit - b'0').collect();
        assert_eq!(check_digit(&values), check, "{digits}");
    }
}

/// Source: Python 3, `hmac.new(b"\x05"*16, b"stored"+sha256(b"sealed bytes").digest(), "sha256")`,
/// the digest as one number modulo 10^9.
#[test]
fn the_receipt_is_the_one_that_python_computes() {
    assert_eq!(receipt().digits(), "0207291876");
}

#[test]
fn a_receipt_is_ten_digits_in_three_groups() {
    let receipt = receipt();
    assert_eq!(receipt.digits().len(), 10);
    assert_eq!(receipt.grouped().replace(' ', ""), receipt.digits());
    let lengths: Vec<usize> = receipt.grouped().split(' ').map(str::len).collect();
    assert_eq!(lengths, [3, 3, 4]);
}

#[test]
fn it_fits_however_it_is_spaced() {
    let receipt = receipt();
    for typed in [
        receipt.digits(),
        receipt.grouped(),
        format!(" {} ", receipt.grouped().replace(' ', "-")),
    ] {
        assert_eq!(receipt.check(&typed), ReceiptCheck::Fits);
    }
}

#[test]
fn any_one_wrong_digit_is_told_as_mistyped() {
    let receipt = receipt();
    for at in 0..10 {
        for step in 1..10 {
            let mut typed = receipt.digits().into_bytes();
            typed[at] = b'0' + (typed[at] - b'0' + step) % 10;
            let typed = String::from_utf8(typed).unwrap();
            assert_eq!(receipt.check(&typed), ReceiptCheck::Mistyped, "{typed}");
        }
    }
}

#[test]
fn too_few_too_many_and_other_characters_are_told_as_mistyped() {
    let receipt = receipt();
    let digits = receipt.digits();
    for typed in [
        "",
        &digits[1..],
        &format!("{digits}0"),
        &format!("x{}", &digits[1..]),
        "١٢٣",
    ] {
        assert_eq!(receipt.check(typed), ReceiptCheck::Mistyped, "{typed}");
    }
}

#[test]
fn the_receipt_of_other_bytes_or_another_secret_is_of_another_record() {
    let receipt = receipt();
    for other in [
        Receipt::of(&[5; 16], b"sealed byteS"),
        Receipt::of(&[6; 16], b"sealed bytes"),
    ] {
        assert_eq!(
            receipt.check(&other.digits()),
            ReceiptCheck::OfAnotherRecord
        );
    }
}

#[test]
fn a_receipt_is_not_shown_by_debug() {
    assert_eq!(format!("{:?}", receipt()), "Receipt(…)");
}
