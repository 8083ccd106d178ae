//! What a journal says, taken together. The rules are the project's own design; where it is common
//! practice at the bedside, the test says so.

use feedside::record::{
    At, BabyState, BoundaryMoved, BreastAfter, BreastBefore, BreastState, EndedBy, Folded, Hold,
    LastDay, NippleAfter, NippleBefore, Odd, Pain, Side, Sign, SignState, StoolColour, SuckPhase,
    TapWhat, What, fold,
};

use super::make::{feed_started, folded, journal_at, pain, sign, signed, struck};

fn taps(folded: &Folded) -> Vec<(u64, TapWhat)> {
    folded.feeds[0]
        .taps
        .iter()
        .map(|tap| (tap.at.as_ms(), tap.what))
        .collect()
}

#[test]
fn an_empty_journal_says_nothing_at_all() {
    assert_eq!(folded(Vec::new()), Folded::default());
}

#[test]
fn a_struck_tap_counts_as_never_made() {
    let folded = folded(vec![
        feed_started(),
        What::Suck,
        What::SuckSwallow,
        struck(2),
    ]);
    assert_eq!(
        taps(&folded),
        [(1000, TapWhat::On), (3000, TapWhat::SuckSwallow)]
    );
    assert!(folded.odd.is_empty());
}

#[test]
fn taking_back_a_taking_back_brings_the_entry_again() {
    let base = vec![feed_started(), What::Suck, struck(2), struck(3)];
    assert_eq!(taps(&folded(base.clone())).len(), 2);
    let mut thrice = base;
    thrice.push(struck(4));
    assert_eq!(taps(&folded(thrice)).len(), 1);
}

#[test]
fn striking_the_start_of_a_feed_leaves_its_taps_odd() {
    let folded = folded(vec![feed_started(), What::Suck, struck(1)]);
    assert!(folded.feeds.is_empty());
    assert_eq!(folded.odd, [Odd::NoFeed(2)]);
}

#[test]
fn unwatched_time_told_late_begins_when_it_began() {
    let unwatched = What::UnwatchedFrom { from: At::ms(2500) };
    let folded = fold(&journal_at(vec![
        (1000, feed_started()),
        (2000, What::Suck),
        (3000, What::Suck),
        (9000, unwatched),
        (12_000, What::UnwatchedTo),
    ]));
    assert_eq!(
        taps(&folded),
        [
            (1000, TapWhat::On),
            (2000, TapWhat::Suck),
            (2500, TapWhat::Unwatched),
            (3000, TapWhat::Suck),
            (12_000, TapWhat::Watched),
        ]
    );
    assert!(!folded.feeds[0].is_unwatched());
}

#[test]
fn unwatched_time_never_begins_before_its_feed_nor_after_it_was_told() {
    for (from, begins) in [(0, 1000), (99_000, 9000)] {
        let folded = fold(&journal_at(vec![
            (1000, feed_started()),
            (9000, What::UnwatchedFrom { from: At::ms(from) }),
        ]));
        assert_eq!(taps(&folded)[1], (begins, TapWhat::Unwatched));
        assert!(folded.feeds[0].is_unwatched());
    }
}

#[test]
fn a_feed_that_starts_ends_the_one_that_ran() {
    let other = What::FeedStarted {
        side: Side::Right,
        hold: Hold::Underarm,
    };
    let folded = folded(vec![feed_started(), What::Suck, other, What::Suck]);
    assert_eq!(folded.feeds.len(), 2);
    let ended = folded.feeds[0].ended.unwrap();
    assert_eq!((ended.at.as_ms(), ended.by), (3000, EndedBy::Specialist));
    assert_eq!(folded.feeds[0].taps.last().unwrap().what, TapWhat::End);
    assert_eq!(folded.running().unwrap().side, Side::Right);
    assert_eq!(folded.running().unwrap().taps.len(), 2);
}

#[test]
fn what_needs_a_feed_is_odd_without_one_and_changes_nothing() {
    let folded = folded(vec![
        What::Suck,
        pain(3),
        What::FeedEnded { by: EndedBy::Baby },
        What::NippleAfter {
            nipple: NippleAfter::Creased,
            feed: None,
        },
        What::Unknown {
            kind: "newer".to_owned(),
            body: "null".to_owned(),
        },
    ]);
    assert_eq!(
        folded.odd,
        [
            Odd::NoFeed(1),
            Odd::NoFeed(2),
            Odd::NoFeed(3),
            Odd::NothingFed(4),
            Odd::Unknown(5),
        ]
    );
    assert!(folded.feeds.is_empty());
}

#[test]
fn a_tap_after_the_feed_has_ended_is_odd() {
    let end = What::FeedEnded { by: EndedBy::Baby };
    let folded = folded(vec![feed_started(), end, What::SuckSwallow]);
    assert_eq!(folded.odd, [Odd::NoFeed(3)]);
    assert_eq!(folded.running(), None);
    assert_eq!(folded.feeds[0].taps.len(), 2);
}

#[test]
fn what_is_found_after_a_feed_belongs_to_the_last_one() {
    let nipple = |nipple| What::NippleAfter { nipple, feed: None };
    let folded = folded(vec![
        feed_started(),
        What::FeedEnded { by: EndedBy::Baby },
        nipple(NippleAfter::Creased),
        feed_started(),
        What::FeedEnded {
            by: EndedBy::Mother,
        },
        nipple(NippleAfter::Rounded),
    ]);
    assert_eq!(folded.feeds[0].nipple_after, Some(NippleAfter::Creased));
    assert_eq!(folded.feeds[1].nipple_after, Some(NippleAfter::Rounded));
}

#[test]
fn a_sign_is_its_last_state_and_can_go_back_to_not_looked_yet() {
    let back = What::SignChanged {
        sign: Sign::ChinIn,
        state: None,
    };
    let folded = folded(vec![
        sign(Sign::Close, SignState::Seen),
        feed_started(),
        sign(Sign::ChinIn, SignState::NotSeen),
        sign(Sign::Close, SignState::Unclear),
        back,
    ]);
    let close = folded.sign(Sign::Close).unwrap();
    assert_eq!((close.state, close.at.as_ms()), (SignState::Unclear, 4000));
    assert_eq!(folded.sign(Sign::ChinIn), None);
    assert_eq!(folded.sign(Sign::Quiet), None);
    // What was told before the first feed is of it.
    assert_eq!(folded.feeds[0].signs.len(), 4);
    assert_eq!(folded.feeds[0].sign(Sign::Close), Some(close));
}

#[test]
fn with_each_feed_every_sign_is_not_looked_yet_again() {
    let other = What::FeedStarted {
        side: Side::Right,
        hold: Hold::Underarm,
    };
    let folded = folded(vec![
        feed_started(),
        sign(Sign::ChinIn, SignState::NotSeen),
        sign(Sign::Close, SignState::Seen),
        other,
        sign(Sign::Close, SignState::Unclear),
        What::FeedEnded { by: EndedBy::Baby },
        // Said late, and of the feed that ended.
        sign(Sign::Quiet, SignState::Seen),
    ]);
    let state = |feed: usize, sign| folded.feeds[feed].sign(sign).map(|now| now.state);
    assert_eq!(state(0, Sign::ChinIn), Some(SignState::NotSeen));
    assert_eq!(state(0, Sign::Quiet), None);
    assert_eq!(state(1, Sign::ChinIn), None);
    assert_eq!(state(1, Sign::Quiet), Some(SignState::Seen));
    for it in Sign::ALL {
        assert_eq!(folded.sign(*it), folded.feeds[1].sign(*it));
    }
    assert_eq!(
        folded.sign_in_each(Sign::Close),
        [Some(SignState::Seen), Some(SignState::Unclear)]
    );
    assert_eq!(folded.sign_at_worst(Sign::Close), Some(SignState::Unclear));
    assert_eq!(folded.sign_at_worst(Sign::ChinIn), Some(SignState::NotSeen));
    assert_eq!(folded.sign_at_worst(Sign::NoseClear), None);
}

#[test]
fn signs_told_before_any_feed_are_never_lost() {
    let told = vec![
        sign(Sign::NoseToNipple, SignState::Seen),
        sign(Sign::Close, SignState::NotSeen),
    ];
    let unfed = folded(told.clone());
    assert_eq!(unfed.sign_in_each(Sign::Close), [Some(SignState::NotSeen)]);
    // A start at the wrong breast that is taken back: the next start is the first.
    let mut again = told;
    again.extend([feed_started(), struck(3), feed_started()]);
    let again = folded(again);
    assert_eq!(again.feeds.len(), 1);
    for it in [Sign::NoseToNipple, Sign::Close] {
        assert_eq!(again.feeds[0].sign(it), unfed.sign(it));
        assert!(again.feeds[0].sign(it).is_some());
    }
}

/// A look stays a look: its time tells which latch it is of. Seven touches for every time that the
/// baby goes on would not be made.
#[test]
fn signs_stay_with_their_time_when_the_baby_goes_on_again() {
    let folded = folded(vec![
        feed_started(),
        sign(Sign::ChinIn, SignState::NotSeen),
        What::BabyOff,
        What::BabyOn,
    ]);
    let chin = folded.sign(Sign::ChinIn).unwrap();
    assert_eq!((chin.state, chin.at.as_ms()), (SignState::NotSeen, 2000));
}

#[test]
fn later_answers_lie_over_earlier_ones_and_what_was_not_asked_stays_unknown() {
    let day = |feeds, stool| {
        What::LastDay(LastDay {
            feeds,
            stool,
            ..LastDay::default()
        })
    };
    let folded = folded(vec![
        day(Some(6), Some(StoolColour::Black)),
        day(Some(8), None),
    ]);
    let day = folded.last_day.unwrap();
    assert_eq!(day.feeds, Some(8));
    assert_eq!(day.stool, Some(StoolColour::Black));
    assert_eq!(day.wet, None);
    assert_eq!(day.baby_danger, None);
}

#[test]
fn an_answer_that_is_taken_back_by_striking_is_not_asked() {
    let day = |feeds, stool| {
        What::LastDay(LastDay {
            feeds,
            stool,
            ..LastDay::default()
        })
    };
    // As the screen does it: what stays is told anew, then what told the answer is struck.
    let folded = folded(vec![
        day(Some(8), Some(StoolColour::Yellow)),
        day(Some(8), None),
        struck(1),
    ]);
    let told = folded.last_day.unwrap();
    assert_eq!((told.feeds, told.stool), (Some(8), None));
}

#[test]
fn a_weight_told_later_stands_at_the_time_at_which_it_was_taken() {
    use feedside::record::{Grams, Weighing, WeighingMoment};
    let journal = journal_at([1_000, 2_000, 3_000].map(|at| (at, What::Suck)).to_vec());
    let walls: Vec<_> = journal.entries().iter().map(|it| it.wall).collect();
    let weighed = |grams, taken| {
        What::Weighed(Weighing {
            grams: Grams::new(grams).unwrap(),
            step: None,
            clothed: false,
            moment: WeighingMoment::Routine,
            taken,
        })
    };
    let yesterday = walls[0].plus_ms(-86_400_000);
    let folded = fold(&journal_at(vec![
        (1_000, weighed(3_300, None)),
        (2_000, weighed(3_400, Some(yesterday))),
        (3_000, weighed(3_310, None)),
    ]));
    let told: Vec<_> = folded
        .weighings
        .iter()
        .map(|(wall, it)| (*wall, it.grams.value()))
        .collect();
    assert_eq!(
        told,
        [(yesterday, 3_400), (walls[0], 3_300), (walls[2], 3_310)]
    );
}

#[test]
fn breast_and_nipple_before_are_told_side_by_side_and_one_by_one() {
    let before = |side, breast, nipple| {
        What::BreastBefore(BreastBefore {
            side,
            breast,
            nipple,
        })
    };
    let (soft, full) = (Some(BreastState::Soft), Some(BreastState::Engorged));
    let sore = Some(NippleBefore::Sore);
    let folded = folded(vec![
        before(Side::Left, soft, None),
        before(Side::Right, full, None),
        before(Side::Left, None, sore),
        before(Side::Right, soft, None),
    ]);
    let told: Vec<_> = folded
        .breasts_before
        .iter()
        .map(|it| (it.side, it.breast, it.nipple))
        .collect();
    assert_eq!(told, [(Side::Left, soft, sore), (Side::Right, soft, None)]);
}

#[test]
fn a_feed_knows_whether_the_baby_is_off_and_a_suck_means_it_is_on() {
    let off = |more: Vec<What>| {
        let mut whats = vec![feed_started(), What::BabyOff];
        whats.extend(more);
        folded(whats).feeds[0].is_off()
    };
    assert!(off(vec![]));
    assert!(!off(vec![What::BabyOn]));
    assert!(!off(vec![What::Suck]));
    assert!(off(vec![What::Swallow]));
}

#[test]
fn pain_signature_code_and_receipt_are_the_last_ones_told() {
    let cannot_say = What::Pain {
        score: Pain::CannotSay,
        feed: None,
    };
    let folded = folded(vec![
        feed_started(),
        pain(6),
        cannot_say,
        What::FeedEnded { by: EndedBy::Baby },
        signed(),
        What::ShownAsCode {
            transfer: 4,
            pieces: 1,
        },
        What::ShownAsCode {
            transfer: 5,
            pieces: 2,
        },
        What::ReceiptTaken {
            receipt: "778899".to_owned(),
        },
    ]);
    assert_eq!(folded.last_pain().unwrap().pain, Pain::CannotSay);
    assert_eq!(folded.feeds[0].pains.len(), 2);
    assert!(folded.signed.is_some());
    assert_eq!(folded.shown.unwrap().1, 5);
    assert_eq!(folded.receipt.as_deref(), Some("778899"));
}

#[test]
fn a_moved_boundary_belongs_to_the_feed_that_it_lies_in() {
    let moved = |was, now| {
        What::BoundaryMoved(BoundaryMoved {
            was: At::ms(was),
            now: At::ms(now),
            before: SuckPhase::Quick,
            after: SuckPhase::Flow,
        })
    };
    let folded = fold(&journal_at(vec![
        (1_000, moved(500, 700)),
        (2_000, feed_started()),
        (90_000, What::FeedEnded { by: EndedBy::Baby }),
        (95_000, moved(93_000, 94_000)),
        (100_000, feed_started()),
        (160_000, moved(120_000, 115_000)),
        // Afterwards, in the feed before; once more; and one that is taken back.
        (170_000, moved(61_000, 58_000)),
        (171_000, moved(58_000, 59_000)),
        (172_000, moved(59_000, 70_000)),
        (173_000, struck(9)),
    ]));
    let was = |feed: usize| -> Vec<u64> {
        let boundaries = &folded.feeds[feed].boundaries;
        boundaries.iter().map(|it| it.was.as_ms()).collect()
    };
    assert_eq!((was(0), was(1)), (vec![61_000, 58_000], vec![120_000]));
    assert_eq!(folded.odd, [Odd::NothingFed(1), Odd::NothingFed(4)]);
}

#[test]
fn pain_told_after_the_end_belongs_to_the_feed_that_ended() {
    let folded = folded(vec![
        pain(2),
        feed_started(),
        pain(6),
        What::FeedEnded { by: EndedBy::Baby },
        pain(3),
        feed_started(),
        pain(1),
    ]);
    let scores = |pains: &[feedside::record::PainAt]| -> Vec<_> {
        pains.iter().map(|it| it.pain.value().unwrap()).collect()
    };
    assert_eq!(scores(&folded.feeds[0].pains), [6]);
    assert_eq!(scores(&folded.feeds[0].pains_after), [3]);
    assert_eq!(folded.feeds[0].all_pains().count(), 2);
    assert_eq!(scores(&folded.feeds[1].pains), [1]);
    assert_eq!(folded.odd, [Odd::NoFeed(1)]);
}

#[test]
fn what_names_its_feed_is_of_that_feed_whichever_runs() {
    let feed = Some(0);
    let folded = folded(vec![
        feed_started(),
        feed_started(),
        What::NippleAfter {
            nipple: NippleAfter::Creased,
            feed,
        },
        What::BreastAfter {
            breast: BreastAfter::Unchanged,
            feed,
        },
        What::BabyState {
            state: BabyState::Hungry,
            feed,
        },
        What::Pain {
            score: Pain::score(5).unwrap(),
            feed,
        },
        pain(2),
    ]);
    let [first, second] = &folded.feeds[..] else {
        panic!("two feeds");
    };
    assert_eq!(first.nipple_after, Some(NippleAfter::Creased));
    assert_eq!(first.breast_after, Some(BreastAfter::Unchanged));
    assert_eq!(first.baby_state, Some(BabyState::Hungry));
    assert_eq!(first.pains_after.len(), 1);
    assert_eq!(
        (second.nipple_after, second.breast_after, second.baby_state),
        (None, None, None)
    );
    // Pain that names no feed is of the one that runs.
    assert_eq!((second.pains.len(), second.pains_after.len()), (1, 0));
    assert!(folded.odd.is_empty());
}

#[test]
fn what_names_a_feed_that_is_not_there_is_odd_and_changes_nothing() {
    let feed = Some(1);
    let score = Pain::score(9).unwrap();
    let nipple = NippleAfter::Creased;
    let folded = folded(vec![
        feed_started(),
        feed_started(),
        struck(2),
        What::NippleAfter { nipple, feed },
        What::Pain { score, feed },
        What::NippleAfter {
            nipple,
            feed: Some(u32::MAX),
        },
    ]);
    assert_eq!(
        folded.odd,
        [Odd::NothingFed(4), Odd::NothingFed(5), Odd::NothingFed(6)]
    );
    assert_eq!(folded.feeds[0].nipple_after, None);
    assert_eq!(folded.feeds[0].all_pains().count(), 0);
}

#[test]
fn an_entry_that_holds_more_than_is_known_is_read_and_told() {
    let mut it = super::make::entry(1, What::LastDay(LastDay::default()));
    let stored = feedside::record::StoredEntry {
        body: r#"{"feeds":7,"cup_feeds":2}"#.to_owned(),
        ..feedside::record::to_stored(&it).unwrap()
    };
    it = feedside::record::from_stored(&stored).unwrap();
    let folded = fold(&feedside::record::Journal::of([it]).unwrap());
    assert_eq!(folded.last_day.unwrap().feeds, Some(7));
    assert_eq!(folded.odd, [Odd::Newer(1)]);
}

#[test]
fn a_tap_that_is_added_later_stands_at_its_own_time_in_the_feed_that_it_lies_in() {
    let added = |at, what| What::TapAdded {
        at: At::ms(at),
        what,
    };
    let folded = fold(&journal_at(vec![
        (2_000, feed_started()),
        (5_000, What::Suck),
        (90_000, What::FeedEnded { by: EndedBy::Baby }),
        (95_000, added(4_000, TapWhat::SuckSwallow)),
        (96_000, added(91_000, TapWhat::Suck)),
        (97_000, added(6_000, TapWhat::Off)),
        (98_000, added(7_000, TapWhat::Suck)),
        (99_000, struck(7)),
    ]));
    let taps = &folded.feeds[0].taps;
    let told: Vec<_> = taps.iter().map(|tap| (tap.at.as_ms(), tap.what)).collect();
    assert_eq!(
        told,
        [
            (2_000, TapWhat::On),
            (4_000, TapWhat::SuckSwallow),
            (5_000, TapWhat::Suck),
            (90_000, TapWhat::End),
        ]
    );
    // After the feed's end, and what is no tap of a pad, it fits nowhere.
    assert_eq!(folded.odd, [Odd::NothingFed(5), Odd::NoFeed(6)]);
}
