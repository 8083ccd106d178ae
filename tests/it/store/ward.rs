//! The Ward list: pairs by what is due. Source: the project's own design of the list.

use feedside::record::What;
use feedside::store::Store;

use super::{entry, label, pair, visit, wall};

const HOUR_MS: i64 = 3_600_000;

fn sign(store: &Store, number: u128, seq: u32) {
    let signed = What::Signed {
        by: label("feeding lead"),
    };
    store
        .append(visit(number, 1, 0).id, &entry(seq, signed))
        .unwrap();
}

#[test]
fn the_look_that_is_due_first_leads_and_pairs_without_one_follow_by_bed() {
    let store = Store::in_memory().unwrap();
    for number in 1..=4 {
        store.save_pair(&pair(number)).unwrap();
    }
    for (number, of, due) in [(1, 3, 5), (2, 4, 2)] {
        let visit = visit(number, of, 0);
        store.begin_visit(&visit).unwrap();
        let look = What::NextLook {
            due: wall(due * HOUR_MS),
        };
        store.append(visit.id, &entry(1, look)).unwrap();
    }
    let ward = store.ward().unwrap();
    let order: Vec<_> = ward.iter().map(|row| row.pair.id).collect();
    assert_eq!(order, [pair(4).id, pair(3).id, pair(1).id, pair(2).id]);
    assert_eq!(ward[0].next_look, Some(wall(2 * HOUR_MS)));
    assert_eq!(ward[2].last, None);
    assert_eq!(ward[0].pair, pair(4));
}

#[test]
fn the_visit_begun_last_counts() {
    let store = Store::in_memory().unwrap();
    store.save_pair(&pair(1)).unwrap();
    let (early, late) = (visit(1, 1, 0), visit(2, 1, 4 * HOUR_MS));
    store.begin_visit(&late).unwrap();
    store.begin_visit(&early).unwrap();
    let look = What::NextLook {
        due: wall(3 * HOUR_MS),
    };
    store.append(early.id, &entry(1, look)).unwrap();
    store.append(late.id, &entry(1, What::Suck)).unwrap();
    let ward = store.ward().unwrap();
    let last = ward[0].last.clone().unwrap();
    assert_eq!((last.id, last.next_look), (late.id, None));
    assert_eq!(last.last_wall, wall(700));
    assert_eq!(ward[0].next_look, None);
}

#[test]
fn a_signed_visit_waits_until_its_receipt_or_a_signed_amendment() {
    let store = Store::in_memory().unwrap();
    store.save_pair(&pair(1)).unwrap();
    let waiting = || store.ward().unwrap()[0].waiting;
    let first = visit(1, 1, 0);
    store.begin_visit(&first).unwrap();
    assert_eq!(waiting(), 0);
    sign(&store, 1, 1);
    assert_eq!(waiting(), 1);

    let signed = store.visit(first.id).unwrap().unwrap();
    let amended = signed
        .amendment(visit(2, 1, 0).id, label("night lead"))
        .unwrap();
    store.begin_visit(&amended).unwrap();
    assert_eq!(waiting(), 1, "the amendment is not signed yet");
    assert_eq!(
        store.ward().unwrap()[0].last.as_ref().unwrap().id,
        amended.id
    );
    sign(&store, 2, 1);
    assert_eq!(waiting(), 1, "only the amendment waits now");
    let receipt = What::ReceiptTaken {
        receipt: "1234567890".to_owned(),
    };
    store.append(amended.id, &entry(2, receipt)).unwrap();
    assert_eq!(waiting(), 0);
}
