//! What is kept comes back as it was. Source: design of the project ("a visit reopens exactly
//! where it was"); round trips need no outside value.

use feedside::record::{At, Coded, Journal, Pain, PlanItem, Sign, SignState, WallTime, What};
use feedside::store::{Store, StoreError};

use super::{Folder, begun, entry, label, pair, visit, wall};

#[test]
fn a_pair_comes_back_as_it_was_with_unknown_words() {
    let store = Store::in_memory().unwrap();
    let bare = feedside::record::Pair {
        mother_id: None,
        mother_number: None,
        gestation: None,
        birth_weight: None,
        way_of_birth: None,
        risk_notes: vec![],
        reasons: vec![],
        language: None,
        ..pair(2)
    };
    for pair in [pair(1), bare] {
        store.save_pair(&pair).unwrap();
        assert_eq!(store.pair(pair.id).unwrap(), Some(pair));
    }
    assert_eq!(store.pairs().unwrap().len(), 2);
}

#[test]
fn a_pair_saved_again_is_brought_up_to_date_and_keeps_its_visits() {
    let store = Store::in_memory().unwrap();
    begun(&store);
    let moved = feedside::record::Pair {
        bed: label("Bay 9 bed 1"),
        ..pair(1)
    };
    store.save_pair(&moved).unwrap();
    assert_eq!(store.pairs().unwrap(), [moved]);
    assert_eq!(store.visits_of(pair(1).id).unwrap().len(), 1);
}

#[test]
fn a_visit_comes_back_with_every_entry_after_the_file_was_closed() {
    let folder = Folder::new("kept-visit");
    let path = folder.file("data.sqlite");
    let what = [
        What::SignChanged {
            sign: Sign::ChinIn,
            state: Some(SignState::NotSeen),
        },
        What::Suck,
        What::UnwatchedFrom { from: At::ms(900) },
        What::Pain {
            score: Pain::CannotSay,
            feed: None,
        },
        What::PlanItem(PlanItem {
            what: Some(Coded::Unknown("of_a_later_version".to_owned())),
            words: None,
        }),
        What::Struck { entry: 2 },
    ];
    let mut expected = visit(1, 1, 0);
    {
        let store = Store::open(&path).unwrap();
        let id = begun(&store);
        for (seq, what) in (1..).zip(what) {
            let entry = entry(seq, what);
            store.append(id, &entry).unwrap();
            expected.journal.push(entry).unwrap();
        }
    }
    let store = Store::open(&path).unwrap();
    assert_eq!(store.open_visit().unwrap(), Some(expected.id));
    assert_eq!(store.visit(expected.id).unwrap(), Some(expected));
}

#[test]
fn an_entry_of_an_unknown_kind_is_kept_as_it_was_written() {
    let store = Store::in_memory().unwrap();
    let id = begun(&store);
    let unknown = entry(
        1,
        What::Unknown {
            kind: "latch_photographed".to_owned(),
            body: r#"{"frames": [1, 2]}"#.to_owned(),
        },
    );
    store.append(id, &unknown).unwrap();
    store.append(id, &entry(2, What::Suck)).unwrap();
    let journal = store.visit(id).unwrap().unwrap().journal;
    assert_eq!(journal.entries()[0], unknown);
    assert_eq!(journal.entries().len(), 2);
}

#[test]
fn an_amendment_begins_with_what_was_seen_and_names_what_it_replaces() {
    let store = Store::in_memory().unwrap();
    let id = begun(&store);
    store.append(id, &entry(1, What::Suck)).unwrap();
    let signed = What::Signed {
        by: label("feeding lead"),
    };
    store.append(id, &entry(2, signed)).unwrap();
    assert_eq!(store.open_visit().unwrap(), None);

    let first = store.visit(id).unwrap().unwrap();
    let amended = first
        .amendment(visit(2, 1, 0).id, label("night lead"))
        .unwrap();
    store.begin_visit(&amended).unwrap();
    assert_eq!(store.visit(amended.id).unwrap(), Some(amended.clone()));
    assert_eq!(store.open_visit().unwrap(), Some(amended.id));
    let heads = store.visits_of(pair(1).id).unwrap();
    assert_eq!(heads.len(), 2);
    assert_eq!((heads[0].id, heads[0].signed), (id, true));
    assert_eq!((heads[1].replaces, heads[1].signed), (Some(id), false));
}

#[test]
fn a_head_follows_the_journal() {
    let store = Store::in_memory().unwrap();
    let id = begun(&store);
    let head = || store.visits_of(pair(1).id).unwrap().remove(0);
    assert_eq!(head().last_wall, wall(0));

    let look = |hours: i64| What::NextLook {
        due: wall(hours * 3_600_000),
    };
    let due = |hours: i64| -> Option<WallTime> { Some(wall(hours * 3_600_000)) };
    store.append(id, &entry(1, look(3))).unwrap();
    assert_eq!(head().next_look, due(3));
    store.append(id, &entry(2, look(6))).unwrap();
    assert_eq!(head().next_look, due(6));
    store
        .append(id, &entry(3, What::Struck { entry: 2 }))
        .unwrap();
    assert_eq!(head().next_look, due(3), "the look before stands again");
    store.append(id, &entry(4, What::Suck)).unwrap();
    assert_eq!(head().last_wall, wall(2_800));

    store
        .append(id, &entry(5, What::Signed { by: label("x") }))
        .unwrap();
    assert!(head().signed && !head().receipt);
    store
        .append(
            id,
            &entry(
                6,
                What::ReceiptTaken {
                    receipt: "1234567890".to_owned(),
                },
            ),
        )
        .unwrap();
    assert!(head().receipt);
}

#[test]
fn what_is_not_kept_is_named() {
    let store = Store::in_memory().unwrap();
    let stray = visit(1, 1, 0);
    assert!(matches!(
        store.begin_visit(&stray),
        Err(StoreError::NotKept { what: "pair" })
    ));
    assert!(matches!(
        store.append(stray.id, &entry(1, What::Suck)),
        Err(StoreError::NotKept { what: "visit" })
    ));
    store.save_pair(&pair(1)).unwrap();
    let amends_nothing = feedside::record::Visit {
        replaces: Some(visit(9, 1, 0).id),
        journal: Journal::new(),
        ..stray.clone()
    };
    assert!(matches!(
        store.begin_visit(&amends_nothing),
        Err(StoreError::NotKept { what: "visit" })
    ));
    assert_eq!(store.visit(stray.id).unwrap(), None);
    assert_eq!(store.open_visit().unwrap(), None);
}

#[test]
fn settings_and_keys_come_back_and_are_overwritten() {
    let store = Store::in_memory().unwrap();
    assert_eq!(store.setting("language").unwrap(), None);
    store.set_setting("language", "de").unwrap();
    store.set_setting("language", "en").unwrap();
    assert_eq!(store.setting("language").unwrap().as_deref(), Some("en"));

    assert_eq!(store.secret("tablet").unwrap(), None);
    for (name, bytes) in [
        ("desk-b", [2; 32]),
        ("desk-a", [1; 32]),
        ("tablet", [3; 32]),
    ] {
        store.set_secret(name, &bytes).unwrap();
    }
    store.set_secret("tablet", &[4; 32]).unwrap();
    assert_eq!(store.secret("tablet").unwrap(), Some(vec![4; 32]));
    assert_eq!(store.secret_names("desk-").unwrap(), ["desk-a", "desk-b"]);
}

#[test]
fn debug_shows_nothing_of_what_is_kept() {
    let store = Store::in_memory().unwrap();
    begun(&store);
    assert_eq!(format!("{store:?}"), "Store");
    let heads = format!("{:?}", store.ward().unwrap());
    assert!(
        !heads.contains("Q. Z.") && !heads.contains("Bay 2"),
        "{heads}"
    );
}
