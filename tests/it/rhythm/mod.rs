//! Tests of the room `rhythm`.

mod always;
mod beat;
mod boundaries;
mod edges;
mod files;
mod gaps;
mod intervals;
mod known;
mod live;
mod outside;
mod printed;

use feedside::record::{At, Tap, TapWhat};
use feedside::rhythm::{Phase, Summary};

/// Taps from times and words.
fn taps(rows: &[(u64, TapWhat)]) -> Vec<Tap> {
    rows.iter().map(|(ms, what)| Tap::new(*ms, *what)).collect()
}

/// So many sucks from a time on, so far apart, every `nth` with a swallow (none for 0).
fn sucks(from_ms: u64, gap_ms: u64, count: u64, nth: u64) -> Vec<Tap> {
    (0..count)
        .map(|it| {
            let swallow = nth != 0 && it % nth == nth - 1;
            let what = if swallow {
                TapWhat::SuckSwallow
            } else {
                TapWhat::Suck
            };
            Tap::new(from_ms + it * gap_ms, what)
        })
        .collect()
}

/// The phase told for a time.
fn phase_at(summary: &Summary, at: At) -> Option<Phase> {
    summary
        .phases
        .iter()
        .find(|it| it.from <= at && at < it.to)
        .map(|it| it.phase)
}

/// What must hold of every summary, whatever the taps.
fn holds(taps: &[Tap], summary: &Summary) {
    let mut sorted = taps.to_vec();
    sorted.sort_by_key(|tap| tap.at);
    let (Some(first), Some(last)) = (sorted.first(), sorted.last()) else {
        assert_eq!(summary.phases, []);
        return;
    };
    if let (Some(head), Some(tail)) = (summary.phases.first(), summary.phases.last()) {
        assert_eq!(
            head.from, first.at,
            "the first phase starts with the first tap"
        );
        // A suck fills its own millisecond, also at the very end.
        let suck_last = sorted
            .iter()
            .any(|tap| tap.at == last.at && tap.what.is_suck());
        assert_eq!(tail.to, last.at.plus_ms(u64::from(suck_last)));
    } else {
        assert_eq!(first.at, last.at, "time without phases");
    }
    for pair in summary.phases.windows(2) {
        assert_eq!(pair[0].to, pair[1].from, "gap or overlap");
        assert_ne!(pair[0].phase, pair[1].phase, "one phase told as two");
    }
    for span in &summary.phases {
        assert!(span.from < span.to);
        assert!((0.0..=1.0).contains(&span.probability), "{span:?}");
        if span.phase == Phase::Rest {
            let after_suck = sorted
                .iter()
                .any(|tap| tap.what.is_suck() && tap.at.plus_ms(1) == span.from);
            let after_mark = sorted
                .iter()
                .any(|tap| !tap.what.is_suck() && tap.at == span.from);
            assert!(after_suck || after_mark, "a rest from nowhere: {span:?}");
        }
    }
    for tap in sorted.iter().filter(|tap| tap.what.is_suck()) {
        assert!(
            phase_at(summary, tap.at).is_some_and(Phase::is_sucking),
            "a suck in no sucking phase"
        );
    }
    let total: u64 = Phase::ALL.iter().map(|it| summary.totals_ms.of(*it)).sum();
    let told: u64 = summary
        .phases
        .iter()
        .map(|it| it.to.since_ms(it.from))
        .sum();
    assert_eq!(total, told);
    assert_eq!(summary.watched_ms, total - summary.totals_ms.unwatched);
    assert_eq!(
        summary.sucks as usize,
        taps.iter().filter(|tap| tap.what.is_suck()).count()
    );
    assert_eq!(
        summary.swallows as usize,
        taps.iter().filter(|tap| tap.what.is_swallow()).count()
    );
    assert_eq!(
        summary.runs.iter().map(|run| run.sucks).sum::<u32>(),
        summary.sucks
    );
    assert_eq!(
        summary.first_flow,
        summary
            .phases
            .iter()
            .find(|it| it.phase == Phase::Flow)
            .map(|it| it.from)
    );
    for rates in &summary.rates {
        for rate in [rates.sucks_per_min, rates.sucks_per_swallow]
            .into_iter()
            .flatten()
        {
            assert!(
                0.0 < rate.low && rate.low <= rate.value && rate.value <= rate.high,
                "{rate:?}"
            );
            assert!(rate.high.is_finite());
        }
    }
    assert!(summary.doubts.is_sorted(), "doubts in their order");
}
