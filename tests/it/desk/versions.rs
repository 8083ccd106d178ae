//! Which record of a visit stands, and what a place is sent, in every order of arrival.

use std::rc::Rc;

use feedside::desk::inbox::{Problem, Trouble};
use feedside::desk::send::{Failed, HOLD_MS, LiesWith, Place, Sender, WAIT_MOST_MS};
use feedside::desk::{Desk, DeskError, Kept};
use feedside::handover::{DeskKeyPair, DeskPublic, Opened, Packed, open};
use feedside::record::{Journal, Label, Visit, VisitId, What};
use feedside::report::Facts;
use feedside::report::codes::Codes;
use uuid::Uuid;

use super::place::{bare, desk_of};
use super::{handed_of, now, packed_as, set_up, tablet, take_all};
use crate::store::Folder;
use crate::support;

/// An amendment of a visit, signed so many minutes into it.
fn amended(visit: &Visit, number: u128, minute: u64) -> Visit {
    let by = Label::new("kb").unwrap();
    let id = VisitId::of(Uuid::from_u128(number));
    let mut amended = visit.amendment(id, by.clone()).unwrap();
    support::add(&mut amended, minute * 60_000, What::Signed { by });
    amended
}

/// A visit, its amendment, and the amendment of that.
fn chain() -> [Visit; 3] {
    let first = support::sample_visit();
    // The later an amendment, the smaller its id: ids tell nothing of the order.
    let second = amended(&first, 0xb, 60);
    let third = amended(&second, 0xa, 70);
    [first, second, third]
}

/// Every order of things.
fn orders<T: Clone>(things: &[T]) -> Vec<Vec<T>> {
    if things.is_empty() {
        return vec![vec![]];
    }
    let mut all = Vec::new();
    for at in 0..things.len() {
        let mut rest = things.to_vec();
        let one = rest.remove(at);
        for mut order in orders(&rest) {
            order.push(one.clone());
            all.push(order);
        }
    }
    all
}

/// A record as it arrives, opened once for every desk that it comes to.
#[derive(Clone)]
struct Arriving {
    /// The place of its version in the chain.
    version: usize,
    packed: Rc<Packed>,
    opened: Rc<Opened>,
}

impl Arriving {
    fn of(version: usize, visit: &Visit, public: &DeskPublic, seed: u8) -> Self {
        let packed = packed_as(&handed_of(visit.clone()), public, seed);
        let keys = [DeskKeyPair::from_random([5; 32]).unwrap()];
        let opened = open(&packed.sealed, &keys, &|_| Some(tablet().public())).unwrap();
        Self {
            version,
            packed: Rc::new(packed),
            opened: Rc::new(opened),
        }
    }

    fn keep(&self, desk: &Desk) -> Kept {
        let Packed {
            transfer, sealed, ..
        } = &*self.packed;
        let kept = desk.inbox().keep(*transfer, sealed, &self.opened, now());
        kept.unwrap()
    }
}

/// Records of the chain, each of a showing of its own.
fn records(public: &DeskPublic, versions: &[usize]) -> Vec<Arriving> {
    let chain = chain();
    (20..)
        .zip(versions)
        .map(|(seed, version)| Arriving::of(*version, &chain[*version], public, seed))
        .collect()
}

/// What stands for each record, by number.
fn replaced(desk: &Desk) -> Vec<Option<i64>> {
    let heads = desk.inbox().heads().unwrap();
    heads.iter().map(|head| head.replaced_by).collect()
}

#[test]
fn the_last_version_stands_whatever_the_order_of_arrival() {
    for versions in [&[0, 0, 1, 1, 2][..], &[0, 2], &[0, 0, 2, 2], &[1, 2, 2]] {
        let (_, public) = set_up();
        for order in orders(&records(&public, versions)) {
            let (desk, _) = set_up();
            let mut arrived = Vec::new();
            for record in &order {
                let kept = record.keep(&desk);
                arrived.push(record.version);
                // Of the last version, the record that came last.
                let newest = *arrived.iter().max().unwrap();
                let at = arrived.iter().rposition(|it| *it == newest).unwrap();
                let stands = i64::try_from(at).unwrap() + 1;
                let expected: Vec<Option<i64>> = (1..)
                    .zip(&arrived)
                    .map(|(number, _)| (number != stands).then_some(stands))
                    .collect();
                assert_eq!(replaced(&desk), expected, "{arrived:?}");
                assert_eq!(kept.head.replaced_by, expected[arrived.len() - 1]);
                let found = desk.inbox().search("", 10).unwrap();
                let found: Vec<_> = found.iter().rev().map(|it| it.replaced_by).collect();
                assert_eq!(found, expected, "{arrived:?}");
            }
        }
    }
}

/// The tablet's clock was put back in between: what a version names counts before when it was signed.
#[test]
fn a_clock_that_was_put_back_changes_no_order() {
    let first = support::sample_visit();
    let second = amended(&first, 0xb, 60);
    let third = amended(&second, 0xa, 50);
    let (_, public) = set_up();
    let records: Vec<Arriving> = (0..)
        .zip([&first, &second, &third])
        .zip(60..)
        .map(|((version, visit), seed)| Arriving::of(version, visit, &public, seed))
        .collect();
    for order in orders(&records) {
        let (desk, _) = set_up();
        for record in &order {
            record.keep(&desk);
        }
        let stands = order.iter().position(|it| it.version == 2).unwrap();
        let unmarked = replaced(&desk).iter().position(Option::is_none);
        assert_eq!(unmarked, Some(stands));
    }
}

/// A visit may be shown before it is signed; that record is older, whenever it is scanned.
#[test]
fn a_showing_from_before_the_signature_never_stands_for_the_signed_one() {
    let signed = support::sample_visit();
    let entries = signed.journal.entries().iter();
    let before = entries.take_while(|it| !matches!(it.what, What::Signed { .. }));
    let mut unsigned = signed.clone();
    unsigned.journal = Journal::of(before.cloned().collect::<Vec<_>>()).unwrap();
    let mut shorter = signed.clone();
    let entries = unsigned.journal.entries();
    shorter.journal = Journal::of(entries[..entries.len() - 3].to_vec()).unwrap();
    let (_, public) = set_up();
    let records: Vec<Arriving> = (0..)
        .zip([&shorter, &unsigned, &signed])
        .zip(80..)
        .map(|((version, visit), seed)| Arriving::of(version, visit, &public, seed))
        .collect();
    for order in orders(&records) {
        let (desk, _) = set_up();
        for (at, record) in order.iter().enumerate() {
            record.keep(&desk);
            let arrived = &order[..=at];
            let newest = arrived.iter().map(|it| it.version).max().unwrap();
            let stands = arrived.iter().position(|it| it.version == newest).unwrap();
            let unmarked: Vec<usize> = (0..)
                .zip(replaced(&desk))
                .filter_map(|(place, by)| by.is_none().then_some(place))
                .collect();
            assert_eq!(unmarked, [stands]);
        }
    }
}

/// Two people amended the same visit: the one who signed last is followed, in either order.
#[test]
fn of_two_amendments_of_one_visit_the_one_signed_last_stands() {
    let first = support::sample_visit();
    let (earlier, later) = (amended(&first, 0xb, 60), amended(&first, 0xa, 70));
    let (_, public) = set_up();
    let packed: Vec<Packed> = (30..)
        .zip([&first, &earlier, &later])
        .map(|(seed, visit)| packed_as(&handed_of(visit.clone()), &public, seed))
        .collect();
    for order in orders(&[0, 1, 2]) {
        let (mut desk, _) = set_up();
        for at in &order {
            take_all(&mut desk, &packed[*at]);
        }
        let stands = order.iter().position(|at| *at == 2).unwrap();
        let stands = i64::try_from(stands).unwrap() + 1;
        let unmarked: Vec<i64> = (1..)
            .zip(replaced(&desk))
            .filter_map(|(number, by)| by.is_none().then_some(number))
            .collect();
        assert_eq!(unmarked, [stands], "{order:?}");
    }
}

#[test]
fn an_amendment_that_is_not_signed_stands_for_nothing_that_was() {
    let first = support::sample_visit();
    let id = VisitId::of(Uuid::from_u128(0xd));
    let draft = first.amendment(id, Label::new("kb").unwrap()).unwrap();
    let (mut desk, public) = set_up();
    take_all(
        &mut desk,
        &packed_as(&handed_of(draft.clone()), &public, 31),
    );
    take_all(&mut desk, &packed_as(&handed_of(first), &public, 32));
    take_all(&mut desk, &packed_as(&handed_of(draft), &public, 33));
    assert_eq!(replaced(&desk), [Some(3), None, None]);
}

#[test]
fn two_visits_of_one_pair_stand_each_for_itself() {
    let mut other = support::sample_visit();
    other.id = VisitId::of(Uuid::from_u128(0xe));
    other.began = other.began.plus_ms(3_600_000);
    let (mut desk, public) = set_up();
    take_all(&mut desk, &packed_as(&handed_of(other), &public, 34));
    let first = handed_of(support::sample_visit());
    take_all(&mut desk, &packed_as(&first, &public, 35));
    assert_eq!(replaced(&desk), [None, None]);
}

/// A place that keeps the versions it was sent, and behaves as told: takes it, takes it and loses
/// its answer, or refuses.
struct Far {
    got: Vec<VisitId>,
    does: Vec<u8>,
}

impl Sender for Far {
    fn send(&mut self, facts: &Facts, _: &Codes) -> Result<(), Failed> {
        let does = self.does.pop().unwrap_or(0);
        if does < 2 {
            self.got.push(facts.visit);
        }
        match does {
            0 => Ok(()),
            _ => Err(Failed {
                problem: Problem {
                    trouble: Trouble::Silent,
                    given: None,
                },
                lies_with: LiesWith::Place,
            }),
        }
    }
}

/// One pass at an hour after the first.
fn pass(desk: &Desk, far: &mut Far, hour: i64) -> u64 {
    let place = Place::mllp("far.invalid:2575").unwrap();
    let clock = || Ok::<_, DeskError>(now().plus_ms(hour * (WAIT_MOST_MS + HOLD_MS)));
    let told = &mut |_| Ok(());
    let counts = desk.send(&place, far, &Codes::built_in(), &clock, told);
    counts.unwrap().waiting
}

#[test]
fn a_place_never_gets_an_older_version_behind_a_later_one() {
    let chain = chain().map(|visit| visit.id);
    let (_, public) = set_up();
    let mut went_out_of_step = 0;
    for (round, order) in (0..).zip(orders(&records(&public, &[0, 1, 2, 0]))) {
        for trouble in 0..4_usize {
            let (desk, _) = set_up();
            // Troubles in turn, other ones in each round.
            let does = (0..6).map(|at| [0, 1, 2][(at + round + trouble) % 3]);
            let mut far = Far {
                got: vec![],
                does: if trouble == 0 { vec![] } else { does.collect() },
            };
            let mut hour = 0;
            for (at, record) in order.iter().enumerate() {
                record.keep(&desk);
                // Now a pass after each, now one after two.
                if trouble < 3 || at % 2 == 1 {
                    hour += 1;
                    pass(&desk, &mut far, hour);
                }
            }
            while 0 < pass(&desk, &mut far, hour) {
                hour += 1;
                assert!(hour < 50, "it never ends");
            }
            let ranks: Vec<usize> = far
                .got
                .iter()
                .map(|id| chain.iter().position(|it| it == id).unwrap())
                .collect();
            assert!(ranks.is_sorted(), "{ranks:?} {:?}", replaced(&desk));
            assert_eq!(ranks.last(), Some(&2), "the last version is there");
            went_out_of_step += usize::from(order[0].version != 0);
        }
    }
    assert!(0 < went_out_of_step);
}

/// A file of an older version has records without what tells their versions: it is read out of them.
#[test]
fn records_kept_before_versions_were_told_are_put_in_order_at_the_next_start() {
    let folder = Folder::new("desk-versions");
    let path = folder.file("data");
    let mut desk = desk_of(&path);
    let public = desk.new_key([5; 32], now()).unwrap();
    let name = Label::new("Tablet 1").unwrap();
    desk.enrol(tablet().public(), &name, now()).unwrap();
    for record in records(&public, &[2, 0]) {
        record.keep(&desk);
    }
    assert_eq!(replaced(&desk), [None, Some(1)]);
    drop(desk);
    bare(&path, "DELETE FROM record_version").unwrap();
    assert_eq!(replaced(&desk_of(&path)), [None, Some(1)]);
}
