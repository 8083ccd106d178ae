//! The specialist's own boundary wins and is kept beside the computed one.

use feedside::record::{At, BoundaryMoved, SuckPhase, Tap};
use feedside::rhythm::{Phase, Rhythm, Summary, of};

use super::{holds, phase_at, sucks};

/// Quick sucks, then milk flowing from 33.6 s on (107 and 90 sucks a minute, Hartmann and others 2011).
fn feed() -> Vec<Tap> {
    let mut taps = sucks(0, 560, 60, 7);
    taps.extend(sucks(33_600, 667, 120, 2));
    taps
}

fn told(moves: &[(u64, u64)]) -> Summary {
    let mut rhythm = Rhythm::new();
    for tap in feed() {
        rhythm.push(tap);
    }
    for (was, now) in moves {
        rhythm.note_boundary(BoundaryMoved {
            was: At::ms(*was),
            now: At::ms(*now),
            before: SuckPhase::Quick,
            after: SuckPhase::Flow,
        });
    }
    let summary = rhythm.so_far();
    holds(&feed(), &summary);
    summary
}

#[test]
fn nothing_moved_is_what_was_computed() {
    assert_eq!(told(&[]), of(&feed()));
    assert_eq!(told(&[]).computed, None);
}

#[test]
fn a_moved_boundary_wins_and_the_computed_one_is_kept() {
    let computed = of(&feed());
    let was = computed.first_flow.unwrap();
    for now_ms in [20_000, 50_000] {
        let summary = told(&[(was.as_ms(), now_ms)]);
        let first_flow = summary.first_flow.unwrap();
        // The first suck at or after where she puts it.
        let late_ms = first_flow.as_ms() - now_ms;
        assert!(late_ms < 700, "{late_ms}");
        assert_eq!(phase_at(&summary, At::ms(now_ms - 700)), Some(Phase::Quick));
        let kept = summary.computed.unwrap();
        assert_eq!(kept.first_flow, computed.first_flow);
        assert_eq!(kept.phases, computed.phases);
        // Counts, runs and time are as they were; the rates follow her word.
        assert_eq!(summary.runs, computed.runs);
        assert_ne!(summary.rates[0], computed.rates[0]);
    }
}

#[test]
fn a_boundary_moved_twice_lies_where_it_was_put_last() {
    let was = of(&feed()).first_flow.unwrap().as_ms();
    let twice = told(&[(was, 20_000), (20_000, 50_000)]);
    assert_eq!(twice.first_flow, told(&[(was, 50_000)]).first_flow);
}

#[test]
fn her_word_holds_where_another_rule_computes_the_boundary_elsewhere() {
    let was = of(&feed()).first_flow.unwrap().as_ms();
    for off_ms in [-20_000, -3_000, 3_000, 20_000] {
        let taken = was.saturating_add_signed(off_ms);
        let summary = told(&[(taken, 45_000)]);
        assert_eq!(summary.first_flow, told(&[(was, 45_000)]).first_flow);
    }
}

#[test]
fn moved_out_of_the_feed_there_is_no_flow() {
    let was = of(&feed()).first_flow.unwrap().as_ms();
    let summary = told(&[(was, 10_000_000)]);
    assert_eq!((summary.first_flow, summary.flow_episodes), (None, 0));
    assert!(summary.rates.iter().all(|it| it.phase != Some(Phase::Flow)));
}
