//! Keys over the years: a key renewed, a tablet lost and found, a desk lost. Source: the project's
//! own design of the handover; the receipt is compared with the one of the packing side.

use feedside::desk::{Desk, DeskError, Said, tell};
use feedside::handover::{Fresh, HandoverError, TabletKey, VersionCap, pack};
use feedside::record::Label;
use feedside::words::{Lang, Words};

use super::{handed_of, now, packed, packed_as, set_up, tablet, take_all};
use crate::support;

fn refused(desk: &mut Desk, packed: &feedside::handover::Packed) -> DeskError {
    let mut last = None;
    for piece in &packed.pieces {
        last = desk.take(piece, now()).pop();
    }
    match last {
        Some(Said::Refused(error)) => error,
        other => panic!("{other:?}"),
    }
}

#[test]
fn a_retired_key_is_no_longer_given_out_and_still_opens_what_was_sealed_to_it() {
    let (mut desk, old) = set_up();
    let new = desk.new_key([9; 32], now()).unwrap();
    take_all(&mut desk, &packed(&old));
    let before = desk.inbox().heads().unwrap();

    let later = now().plus_ms(1_000);
    assert_eq!(desk.retire(&old.kid().to_string(), later).unwrap(), old);
    assert_eq!(desk.public(), Some(new.clone()));
    assert_eq!(desk.inbox().heads().unwrap(), before);
    assert_eq!(
        desk.inbox().record(1).unwrap().handed,
        handed_of(support::sample_visit())
    );

    // A tablet that has not been given the new key yet loses nothing.
    let waiting = packed_as(&handed_of(support::sample_visit()), &old, 8);
    let kept = take_all(&mut desk, &waiting);
    assert_eq!((kept.head.number, kept.key_retired), (2, Some(later)));
    let told = tell(&Said::Kept(kept), &Words::new(Lang::En));
    assert!(
        told.contains("was retired") && told.contains("Tablet 1"),
        "{told}"
    );

    let kept = take_all(
        &mut desk,
        &packed_as(&handed_of(support::sample_visit()), &new, 4),
    );
    assert_eq!(kept.key_retired, None);
}

#[test]
fn the_newest_key_can_be_retired_while_another_is_left_and_the_last_cannot() {
    let (mut desk, old) = set_up();
    let new = desk.new_key([9; 32], now()).unwrap();
    desk.retire(&new.kid().to_string()[..4].to_uppercase(), now())
        .unwrap();
    assert_eq!(desk.public(), Some(old.clone()));
    let told = desk.retire(&old.kid().to_string(), now());
    assert!(matches!(told, Err(DeskError::OnlyKey)), "{told:?}");
    assert_eq!(desk.public(), Some(old.clone()));
    for id in ["", "0", "zzzz", &old.kid().to_string()[..3]] {
        let told = desk.retire(id, now());
        assert!(
            matches!(told, Err(DeskError::NoSuchKey { .. })),
            "{id}: {told:?}"
        );
    }
}

#[test]
fn nothing_is_taken_from_a_tablet_that_was_struck_off_and_its_records_stay() {
    let (mut desk, public) = set_up();
    let first = packed(&public);
    let kept = take_all(&mut desk, &first);
    let heads = desk.inbox().heads().unwrap();
    let struck = desk.strike_off("Tablet 1", now()).unwrap();
    assert_eq!(struck.struck, Some(now()));

    let second = packed_as(&handed_of(support::bare_visit()), &public, 4);
    let error = refused(&mut desk, &second);
    assert!(
        matches!(&error, DeskError::TabletStruckOff { .. }),
        "{error:?}"
    );
    for lang in Lang::ALL {
        let told = error.explained(&Words::new(*lang)).happened;
        assert!(told.contains("Tablet 1"), "{told}");
    }
    assert_eq!(desk.inbox().heads().unwrap(), heads);
    assert_eq!(
        desk.inbox().record(1).unwrap().handed,
        handed_of(support::sample_visit())
    );
    // What was taken before has the same receipt still.
    let again = take_all(&mut desk, &first);
    assert_eq!((again.again, again.head), (true, kept.head));

    // Its key code is known, and said to be struck off; enrolled anew, it is taken from.
    let said = desk.take(&tablet().public().to_code_text(), now());
    assert!(
        matches!(said.as_slice(), [Said::TabletKnown(known)] if known.struck == Some(now())),
        "{said:?}"
    );
    let again = desk.strike_off("Tablet 1", now());
    assert!(matches!(again, Err(DeskError::NoSuchTablet { .. })));
    let name = Label::new("Tablet 1, found").unwrap();
    let later = now().plus_ms(60_000);
    desk.enrol(tablet().public(), &name, later).unwrap();
    let tablets = desk.inbox().tablets().unwrap();
    assert_eq!((tablets[0].struck, tablets[0].enrolled), (None, later));
    take_all(&mut desk, &second);
}

#[test]
fn a_tablet_is_meant_by_its_name_or_the_beginning_of_its_id_and_never_by_chance() {
    let (desk, _) = set_up();
    let other = TabletKey::from_random([8; 32]).public();
    let name = Label::new("Tablet 1").unwrap();
    desk.enrol(other, &name, now()).unwrap();
    // Two of one name: the id decides.
    for which in ["Tablet 1", "Tablet", "", "abc"] {
        let told = desk.strike_off(which, now());
        assert!(
            matches!(told, Err(DeskError::NoSuchTablet { .. })),
            "{which}"
        );
    }
    let struck = desk
        .strike_off(&other.kid().to_string()[..6], now())
        .unwrap();
    assert_eq!(struck.public, other);
    // Only one enrolled tablet has the name now.
    assert_eq!(
        desk.strike_off("Tablet 1", now()).unwrap().public,
        tablet().public()
    );
}

#[test]
fn a_new_desk_after_a_lost_one_refuses_the_old_codes_and_takes_what_is_sealed_to_it() {
    let (_, lost) = set_up();
    let mut desk = Desk::in_memory().unwrap();
    let public = desk.new_key([6; 32], now()).unwrap();
    let name = Label::new("Tablet 1").unwrap();
    desk.enrol(tablet().public(), &name, now()).unwrap();
    let handed = handed_of(support::sample_visit());
    let error = refused(&mut desk, &packed_as(&handed, &lost, 3));
    assert!(
        matches!(&error, DeskError::Handover(HandoverError::NotForThisDesk { desk }) if *desk == lost.kid()),
        "{error:?}"
    );
    // The tablet still has the visit: given the new desk's key, it shows other codes.
    take_all(&mut desk, &packed_as(&handed, &public, 4));
}

#[test]
fn a_stranger_with_a_struck_off_tablets_id_is_not_told_more_than_that() {
    // Signed by another key: whose it is cannot be told from the id alone.
    let (mut desk, public) = set_up();
    desk.strike_off("Tablet 1", now()).unwrap();
    let stranger = TabletKey::from_random([8; 32]);
    let packed = pack(
        &handed_of(support::sample_visit()),
        &stranger,
        &public,
        &Fresh::from_random([3; 64]),
        VersionCap::V15,
    )
    .unwrap();
    let error = refused(&mut desk, &packed);
    assert!(
        matches!(
            error,
            DeskError::Handover(HandoverError::TabletNotEnrolled { .. })
        ),
        "{error:?}"
    );
}
