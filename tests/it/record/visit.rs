//! Amendments: a new version that names the one it replaces.

use feedside::record::{EndedBy, VisitId, What, fold};

use super::make::{feed_started, label, pain, signed, struck, visit};

#[test]
fn an_amendment_carries_over_what_was_seen_and_leaves_signature_code_and_receipt() {
    let old = visit(vec![
        feed_started(),
        What::Suck,
        pain(3),
        struck(3),
        What::FeedEnded { by: EndedBy::Baby },
        signed(),
        What::ShownAsCode {
            transfer: 1,
            pieces: 1,
        },
        What::ReceiptTaken {
            receipt: "1".to_owned(),
        },
    ]);
    let id = VisitId::from_random([9; 16]);
    let mut new = old.amendment(id, label("Marrowick")).unwrap();
    assert_eq!((new.id, new.replaces), (id, Some(old.id)));
    assert_eq!((new.pair, new.began), (old.pair, old.began));
    assert_eq!(new.journal.entries(), &old.journal.entries()[..5]);
    assert!(!new.journal.is_signed());

    let (before, after) = (fold(&old.journal), fold(&new.journal));
    assert_eq!(before.feeds, after.feeds);
    assert_eq!(
        (after.signed, after.shown, after.receipt),
        (None, None, None)
    );

    let more = new.journal.next(
        old.journal.entries()[7].at.plus_ms(1),
        old.journal.entries()[7].wall,
        pain(5),
    );
    new.journal.push(more).unwrap();
}

#[test]
fn an_amendment_can_itself_be_amended() {
    let first = visit(vec![feed_started(), What::Suck, signed()]);
    let second = first
        .amendment(VisitId::from_random([3; 16]), label("Marrowick"))
        .unwrap();
    let third = second
        .amendment(VisitId::from_random([4; 16]), label("Marrowick"))
        .unwrap();
    assert_eq!(third.replaces, Some(second.id));
    assert_eq!(third.journal, second.journal);
}
