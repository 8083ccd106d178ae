//! What a journal takes, and what it refuses.

use feedside::record::{Journal, RecordError, What};

use super::make::{entry, feed_started, journal, signed, struck};

#[test]
fn entries_are_numbered_from_one_without_a_gap() {
    let mut journal = Journal::new();
    assert_eq!(journal.next_seq(), 1);
    assert_eq!(
        journal.push(entry(2, What::Suck)),
        Err(RecordError::OutOfOrder { given: 2, last: 0 })
    );
    journal.push(entry(1, What::Suck)).unwrap();
    assert_eq!(
        journal.push(entry(1, What::Suck)),
        Err(RecordError::OutOfOrder { given: 1, last: 1 })
    );
    assert_eq!(journal.entries().len(), 1);
}

#[test]
fn a_journal_picked_from_another_may_have_gaps_but_goes_up() {
    let picked = Journal::picked([entry(2, What::Suck), entry(5, What::Suck)]).unwrap();
    assert_eq!(picked.next_seq(), 6);
    assert_eq!(
        Journal::picked([entry(5, What::Suck), entry(5, What::Suck)]),
        Err(RecordError::OutOfOrder { given: 5, last: 5 })
    );
    assert!(Journal::of([entry(2, What::Suck)]).is_err());
}

#[test]
fn only_what_is_there_and_earlier_can_be_taken_back() {
    let mut journal = journal(vec![feed_started(), What::Suck]);
    for missing in [0, 3, 9] {
        assert_eq!(
            journal.push(entry(3, struck(missing))),
            Err(RecordError::NothingToStrike(missing))
        );
    }
    journal.push(entry(3, struck(2))).unwrap();
    assert_eq!(journal.standing(), [true, false, true]);
}

#[test]
fn a_signed_journal_takes_only_that_it_was_shown_and_that_a_receipt_came() {
    let mut journal = journal(vec![feed_started(), What::Suck, signed()]);
    assert!(journal.is_signed());
    for refused in [What::Suck, struck(2), signed(), feed_started()] {
        assert_eq!(
            journal.push(entry(4, refused)),
            Err(RecordError::AlreadySigned)
        );
    }
    let shown = What::ShownAsCode {
        transfer: 1,
        pieces: 1,
    };
    journal.push(entry(4, shown)).unwrap();
    let receipt = What::ReceiptTaken {
        receipt: "1".to_owned(),
    };
    journal.push(entry(5, receipt)).unwrap();
    assert!(journal.is_signed());
    assert_eq!(
        journal.push(entry(6, What::Suck)),
        Err(RecordError::AlreadySigned)
    );
}

#[test]
fn take_back_goes_back_one_entry_at_a_time() {
    let mut journal = journal(vec![feed_started(), What::Suck, What::SuckSwallow]);
    for expected in [3, 2, 1] {
        let last = journal.to_take_back().next().unwrap().seq;
        assert_eq!(last, expected);
        journal
            .push(entry(journal.next_seq(), struck(last)))
            .unwrap();
    }
    assert_eq!(journal.to_take_back().next(), None);
}
