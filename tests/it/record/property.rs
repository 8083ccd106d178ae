//! What must hold for any journal whatsoever.

use feedside::record::{
    Adjustment, At, EndedBy, Entry, Folded, Hold, Journal, Pain, Side, Sign, SignState, TapWhat,
    Text, WallTime, What, fold, fold_on, from_stored, to_stored,
};
use proptest::prelude::*;
use proptest::sample::select;

fn what() -> impl Strategy<Value = What> {
    prop_oneof![
        8 => select(vec![What::Suck, What::SuckSwallow, What::Swallow]),
        2 => (select(Side::ALL), select(Hold::ALL))
            .prop_map(|(side, hold)| What::FeedStarted { side, hold }),
        1 => select(EndedBy::ALL).prop_map(|by| What::FeedEnded { by }),
        3 => select(vec![
            What::UnwatchedTo,
            What::BabyOff,
            What::BabyOn,
            What::TouchUnresolved,
        ]),
        1 => (0_u64..200_000).prop_map(|ms| What::UnwatchedFrom { from: At::ms(ms) }),
        2 => (select(Sign::ALL), prop::option::of(select(SignState::ALL)))
            .prop_map(|(sign, state)| What::SignChanged { sign, state }),
        1 => prop::option::of(0_i64..=10)
            .prop_map(|score| What::Pain { score: Pain::try_from(score).unwrap(), feed: None }),
        1 => select(Adjustment::ALL).prop_map(|what| What::AdjustmentTried { what }),
        1 => "[a-zé \n]{1,20}x".prop_map(|text| What::Note { text: Text::new(&text).unwrap() }),
        2 => (0_u32..60).prop_map(|entry| What::Struck { entry }),
        1 => (0_i64..7_000_000_000_000, -840_i16..=840)
            .prop_map(|(ms, min)| What::NextLook { due: WallTime::new(ms, min).unwrap() }),
        1 => "[a-z_]{3,12}".prop_map(|kind| What::Unknown {
            kind: format!("newer_{kind}"),
            body: "{\"a\":[1]}".to_owned(),
        }),
    ]
}

/// Entries whose times may even go back; those that a journal refuses are left out.
fn journal() -> impl Strategy<Value = Journal> {
    prop::collection::vec((what(), 0_u64..200_000), 0..60).prop_map(|all| {
        let mut journal = Journal::new();
        for (what, at_ms) in all {
            let wall = WallTime::new(1_773_021_600_000, 60).unwrap();
            let entry = journal.next(At::ms(at_ms), wall, what);
            let refused = journal.push(entry.clone()).is_err();
            assert_eq!(
                refused,
                matches!(entry.what, What::Struck { entry: it } if it == 0 || entry.seq <= it)
            );
        }
        journal
    })
}

proptest! {
    #[test]
    fn folding_never_fails_and_its_feeds_are_in_order(journal in journal()) {
        let folded = fold(&journal);
        for (index, feed) in folded.feeds.iter().enumerate() {
            prop_assert!(feed.taps.windows(2).all(|two| two[0].at <= two[1].at));
            prop_assert!(feed.taps.iter().all(|tap| feed.started <= tap.at));
            prop_assert!(!feed.is_running() || index + 1 == folded.feeds.len());
            prop_assert_eq!(feed.taps.first().map(|tap| tap.what), Some(TapWhat::On));
            let ends = feed.taps.iter().filter(|tap| tap.what == TapWhat::End).count();
            prop_assert_eq!(ends, usize::from(!feed.is_running()));
        }
    }

    #[test]
    fn folding_on_entry_by_entry_gives_what_folding_gives(journal in journal()) {
        let unstruck = |entry: &&Entry| !matches!(entry.what, What::Struck { .. });
        let kept = Journal::picked(journal.entries().iter().filter(unstruck).cloned()).unwrap();
        let mut folded = Folded::default();
        for entry in kept.entries() {
            fold_on(&mut folded, entry);
        }
        prop_assert_eq!(folded, fold(&kept));
    }

    #[test]
    fn each_standing_tap_is_in_a_feed_or_odd(journal in journal()) {
        let standing = journal.standing();
        let made = journal.entries().iter().zip(&standing)
            .filter(|(entry, stands)| **stands && entry.what.is_tap()).count();
        let folded = fold(&journal);
        let fed: usize = folded.feeds.iter()
            .map(|feed| feed.taps.iter().filter(|t| t.what.is_suck() || t.what.is_swallow()).count())
            .sum();
        let odd = folded.odd.iter().filter(|it| matches!(it,
            feedside::record::Odd::NoFeed(seq) if journal.entries()[*seq as usize - 1].what.is_tap()
        )).count();
        prop_assert_eq!(fed + odd, made);
    }

    #[test]
    fn taking_back_the_last_entry_gives_the_journal_before_it(journal in journal()) {
        let mut longer = journal.clone();
        let wall = WallTime::new(1_773_021_600_000, 60).unwrap();
        let seq = longer.next_seq();
        longer.push(longer.next(At::ms(1), wall, What::Suck)).unwrap();
        longer.push(longer.next(At::ms(2), wall, What::Struck { entry: seq })).unwrap();
        prop_assert_eq!(fold(&longer), fold(&journal));
    }

    #[test]
    fn what_is_stored_comes_back_as_it_was(journal in journal()) {
        let back: Vec<Entry> = journal.entries().iter()
            .map(|entry| from_stored(&to_stored(entry).unwrap()).unwrap())
            .collect();
        prop_assert_eq!(Journal::of(back).unwrap(), journal);
    }

    #[test]
    fn any_stored_kind_and_body_is_read_or_refused_without_a_panic(
        kind in "[a-z_]{0,14}", body in "[\\[\\]{}\":,a-z0-9. ]{0,40}",
    ) {
        let stored = feedside::record::StoredEntry {
            seq: 1, at_ms: 0, utc_ms: 0, offset_min: 0, kind, body,
        };
        if let Ok(entry) = from_stored(&stored) {
            let again = to_stored(&entry).unwrap();
            prop_assert_eq!(from_stored(&again).unwrap(), entry);
        }
    }
}
