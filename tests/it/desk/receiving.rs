//! A record arrives, is kept, and the receipt is the tablet's. Source: the project's own design of
//! the handover; the receipt is compared with the one that the packing side computed on its own.

use feedside::desk::{DeskError, Said};
use feedside::handover::{HandoverError, ReceiptCheck};
use feedside::record::Label;

use super::place::{desk_of, new_desk};
use super::{handed_of, now, packed, packed_as, set_up, tablet, take_all};
use crate::store::Folder;
use crate::support;

fn refusal(said: &[Said]) -> &DeskError {
    match said {
        [Said::Refused(error)] => error,
        other => panic!("{other:?}"),
    }
}

#[test]
fn the_receipt_of_a_kept_record_is_the_one_that_the_tablet_waits_for() {
    let (mut desk, public) = set_up();
    let packed = packed(&public);
    assert!(
        1 < packed.pieces.len(),
        "several pieces are the harder case"
    );
    let kept = take_all(&mut desk, &packed);
    assert_eq!(kept.head.number, 1);
    assert!(!kept.again);
    assert_eq!(packed.receipt.check(&kept.head.receipt), ReceiptCheck::Fits);
    assert_eq!(kept.head.reviews_now, 1);
    assert!(kept.head.is_signed);
    assert_eq!(kept.head.arrived, now());
}

#[test]
fn pieces_may_come_in_any_order_and_tell_what_is_missing() {
    let (mut desk, public) = set_up();
    let packed = packed(&public);
    let count = u8::try_from(packed.pieces.len()).unwrap();
    for (at, piece) in packed.pieces.iter().enumerate().skip(1).rev() {
        match desk.take(piece, now()).as_slice() {
            [
                Said::Piece {
                    index,
                    count: of,
                    missing,
                    again: false,
                },
            ] => {
                assert_eq!((usize::from(*index), *of), (at + 1, count));
                assert_eq!(
                    *missing,
                    (1..=u8::try_from(at).unwrap()).collect::<Vec<_>>()
                );
            }
            other => panic!("{other:?}"),
        }
    }
    assert!(matches!(
        desk.take(&packed.pieces[count as usize - 1], now())
            .as_slice(),
        [Said::Piece { again: true, .. }]
    ));
    assert!(matches!(
        desk.take(&packed.pieces[0], now()).as_slice(),
        [Said::Kept(_)]
    ));
}

#[test]
fn a_second_scan_gives_the_same_receipt_and_stores_nothing() {
    let folder = Folder::new("desk-again");
    let path = folder.file("data");
    let mut desk = desk_of(&path);
    let public = desk.new_key([5; 32], now()).unwrap();
    let name = Label::new("Tablet 1").unwrap();
    desk.enrol(tablet().public(), &name, now()).unwrap();
    let packed = packed(&public);
    let first = take_all(&mut desk, &packed);
    let second = take_all(&mut desk, &packed);
    assert!(second.again);
    assert_eq!(second.head, first.head);
    drop(desk);

    let mut desk = desk_of(&path);
    let third = take_all(&mut desk, &packed);
    assert!(third.again);
    assert_eq!(third.head, first.head);
    assert_eq!(desk.inbox().heads().unwrap().len(), 1);
}

#[test]
fn a_tablet_that_is_not_enrolled_shows_no_record_and_is_taken_once_it_is() {
    let mut desk = new_desk();
    let public = desk.new_key([5; 32], now()).unwrap();
    let packed = packed(&public);
    let (last, before) = packed.pieces.split_last().unwrap();
    for piece in before {
        desk.take(piece, now());
    }
    assert!(matches!(
        refusal(&desk.take(last, now())),
        DeskError::Handover(HandoverError::TabletNotEnrolled { tablet: kid })
            if *kid == tablet().public().kid()
    ));
    assert!(desk.inbox().heads().unwrap().is_empty());

    let code = tablet().public().to_code_text();
    assert!(matches!(
        desk.take(&code, now()).as_slice(),
        [Said::TabletAsks(asks)] if *asks == tablet().public()
    ));
    assert!(
        desk.inbox().tablets().unwrap().is_empty(),
        "asking changes nothing"
    );
    let name = Label::new("Tablet 1").unwrap();
    desk.enrol(tablet().public(), &name, now()).unwrap();
    assert!(matches!(
        desk.take(&code, now()).as_slice(),
        [Said::TabletKnown(known)] if known.name == name
    ));
    assert!(matches!(desk.take(last, now()).as_slice(), [Said::Kept(_)]));
}

#[test]
fn a_desk_without_a_key_says_that_it_is_not_enrolled() {
    let (_, public) = set_up();
    let mut desk = new_desk();
    let packed = packed(&public);
    let (last, before) = packed.pieces.split_last().unwrap();
    for piece in before {
        desk.take(piece, now());
    }
    let said = desk.take(last, now());
    assert!(matches!(refusal(&said), DeskError::NotSetUp));
}

#[test]
fn a_record_for_another_desk_is_refused() {
    let (_, public) = set_up();
    let mut desk = new_desk();
    desk.new_key([6; 32], now()).unwrap();
    let name = Label::new("Tablet 1").unwrap();
    desk.enrol(tablet().public(), &name, now()).unwrap();
    let packed = packed(&public);
    let (last, before) = packed.pieces.split_last().unwrap();
    for piece in before {
        desk.take(piece, now());
    }
    assert!(matches!(
        refusal(&desk.take(last, now())),
        DeskError::Handover(HandoverError::NotForThisDesk { desk }) if *desk == public.kid()
    ));
    assert!(desk.inbox().heads().unwrap().is_empty());
}

#[test]
fn any_one_digit_altered_is_refused_by_the_name_of_its_piece_and_a_new_scan_heals_it() {
    let (mut desk, public) = set_up();
    let packed = packed(&public);
    let piece = &packed.pieces[1];
    let everywhere = (0..60).chain((60..piece.len()).step_by(197));
    for at in everywhere {
        let mut digits = piece.clone().into_bytes();
        let right = digits[at] - b'0';
        for more in if at < 60 { vec![1, 4, 9] } else { vec![1] } {
            digits[at] = b'0' + (right + more) % 10;
            let altered = std::str::from_utf8(&digits).unwrap();
            let said = desk.take(altered, now());
            let named = match refusal(&said) {
                DeskError::Handover(error) => error.piece(),
                other => panic!("{other:?}"),
            };
            assert_eq!(named, Some(2), "digit {at}, {more} more");
        }
    }
    take_all(&mut desk, &packed);
}

#[test]
fn a_digit_lost_or_doubled_anywhere_never_names_another_piece() {
    let (mut desk, public) = set_up();
    let packed = packed(&public);
    let piece = &packed.pieces[1];
    let everywhere = (0..60).chain((60..piece.len()).step_by(197));
    let mut named_right = 0;
    for at in everywhere {
        let lost = format!("{}{}", &piece[..at], &piece[at + 1..]);
        let doubled = format!("{}{}", &piece[..=at], &piece[at..]);
        for slipped in [lost, doubled] {
            let said = desk.take(&slipped, now());
            // Two equal digits in the preamble, or one behind the last: nothing is lost.
            if let [Said::Piece { index: 2, .. }] = said.as_slice() {
                continue;
            }
            match refusal(&said) {
                DeskError::Handover(HandoverError::CodeDamaged) => {}
                DeskError::Handover(error) => {
                    assert_eq!(error.piece(), Some(2), "digit {at}: {error:?}");
                    named_right += 1;
                }
                other => panic!("{other:?}"),
            }
        }
    }
    assert!(100 < named_right, "{named_right}");
    take_all(&mut desk, &packed);
}

#[test]
fn records_sealed_to_an_older_key_are_still_taken_after_a_new_one_is_made() {
    let (mut desk, old) = set_up();
    let new = desk.new_key([9; 32], now()).unwrap();
    assert_eq!(desk.public(), Some(new.clone()));
    assert_ne!(old.kid(), new.kid());
    take_all(&mut desk, &packed(&old));
    let kept = take_all(
        &mut desk,
        &packed_as(&handed_of(support::sample_visit()), &new, 4),
    );
    assert_eq!(kept.head.number, 2);
}

#[test]
fn a_key_made_by_another_program_meanwhile_is_found() {
    let folder = Folder::new("desk-two");
    let path = folder.file("data");
    let mut listening = desk_of(&path);
    let mut other = desk_of(&path);
    let public = other.new_key([5; 32], now()).unwrap();
    let name = Label::new("Tablet 1").unwrap();
    other.enrol(tablet().public(), &name, now()).unwrap();
    take_all(&mut listening, &packed(&public));
    assert_eq!(other.inbox().heads().unwrap().len(), 1);
}

#[test]
fn two_records_mixed_are_told_apart() {
    let (mut desk, public) = set_up();
    let first = packed(&public);
    let second = packed_as(&handed_of(support::bare_visit()), &public, 4);
    let mut texts: Vec<_> = first.pieces.iter().chain(&second.pieces).collect();
    texts.sort_by_key(|text| text[40..60].to_owned());
    let kept = texts
        .into_iter()
        .flat_map(|text| desk.take(text, now()))
        .filter(|said| matches!(said, Said::Kept(_)))
        .count();
    assert_eq!(kept, 2);
}

#[test]
fn an_amendment_and_a_second_showing_stand_for_the_earlier_record() {
    let (mut desk, public) = set_up();
    take_all(&mut desk, &packed(&public));
    let shown_again = packed_as(&handed_of(support::sample_visit()), &public, 4);
    let second = take_all(&mut desk, &shown_again);
    assert!(!second.again, "other sealed bytes are another transfer");
    assert_eq!(
        shown_again.receipt.check(&second.head.receipt),
        ReceiptCheck::Fits
    );
    let amended = packed_as(&handed_of(support::sample_amendment()), &public, 5);
    take_all(&mut desk, &amended);
    let replaced: Vec<_> = desk
        .inbox()
        .heads()
        .unwrap()
        .iter()
        .map(|head| head.replaced_by)
        .collect();
    assert_eq!(replaced, [Some(3), Some(3), None]);
}
