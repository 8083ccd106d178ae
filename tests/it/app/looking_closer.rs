//! Looking closer at a whole feed: what part is shown, what a touch picks out, where a boundary may go.

use feedside::app::looking_back::{Model, Picked, strip};
use feedside::record::{At, BoundaryMoved, EndedBy, Hold, Side, SuckPhase, TapWhat, Visit, What};
use feedside::rhythm::{Phase, PhaseSpan, Summary};

use crate::support::{add, empty_visit};

/// A feed from second 10 to second 610, with a suck each second from 20 to 29.
fn visit() -> Visit {
    let mut visit = empty_visit();
    let started = What::FeedStarted {
        side: Side::Right,
        hold: Hold::Cradle,
    };
    add(&mut visit, 10_000, started);
    for second in 20..30 {
        add(&mut visit, second * 1_000, What::Suck);
    }
    add(&mut visit, 610_000, What::FeedEnded { by: EndedBy::Baby });
    visit
}

const NOW: At = At::ms(900_000);

fn seconds(part: Option<(At, At)>) -> Option<(u64, u64)> {
    part.map(|(from, to)| (from.as_ms() / 1000, to.as_ms() / 1000))
}

#[test]
fn zooming_keeps_the_time_under_the_finger_where_it_is() {
    let feed = &feedside::record::fold(&visit().journal).feeds[0];
    let mut model = Model::default();
    assert_eq!(
        strip::part(&model, feed, NOW),
        (At::ms(10_000), At::ms(610_000))
    );
    // A quarter into the strip at twice the size, then at the feed's ends.
    for (factor, about, expected) in [
        (2.0, 160.0, (85, 385)),
        (2.0, 85.0, (85, 235)),
        (0.5, 85.0, (85, 385)),
    ] {
        model.part = strip::zoomed(&model, feed, NOW, factor, about);
        assert_eq!(seconds(model.part), Some(expected));
    }
    model.part = strip::zoomed(&model, feed, NOW, 1000.0, 85.0);
    let (from, to) = strip::part(&model, feed, NOW);
    assert_eq!(to.since_ms(from), 15_000);
    model.part = strip::zoomed(&model, feed, NOW, 0.001, 85.0);
    assert_eq!(model.part, None);
}

#[test]
fn moving_along_stops_at_the_feeds_ends() {
    let feed = &feedside::record::fold(&visit().journal).feeds[0];
    let mut model = Model {
        part: Some((At::ms(100_000), At::ms(200_000))),
        ..Model::default()
    };
    for (share, expected) in [(0.5, (150, 250)), (-9.0, (10, 110)), (9.0, (510, 610))] {
        model.part = strip::panned(&model, feed, NOW, share);
        assert_eq!(seconds(model.part), Some(expected));
    }
}

#[test]
fn a_touch_picks_the_nearest_tap_or_the_moment() {
    let visit = visit();
    let feed = &feedside::record::fold(&visit.journal).feeds[0];
    let part = (At::ms(15_000), At::ms(65_000));
    for (at_s, expected) in [
        (22.3, Picked::Tap(4, At::ms(22_000))),
        (19.1, Picked::Tap(2, At::ms(20_000))),
        (18.9, Picked::Moment(At::ms(18_900))),
        (500.0, Picked::Moment(At::ms(65_000))),
    ] {
        assert_eq!(strip::pick(&visit.journal, feed, part, at_s), expected);
    }
    assert_eq!(strip::what(&visit.journal, feed, 4), Some(TapWhat::Suck));
    assert_eq!(strip::what(&visit.journal, feed, 1), None);
}

fn phases(rows: &[(u64, Phase)]) -> Summary {
    Summary {
        phases: rows
            .windows(2)
            .map(|pair| PhaseSpan {
                from: At::ms(pair[0].0 * 1000),
                to: At::ms(pair[1].0 * 1000),
                phase: pair[0].1,
                probability: 1.0,
            })
            .collect(),
        ..Summary::default()
    }
}

#[test]
fn a_boundary_lies_between_two_phases_of_sucking_whatever_rests_between() {
    let summary = phases(&[
        (10, Phase::Quick),
        (40, Phase::Rest),
        (45, Phase::Quick),
        (80, Phase::Rest),
        (90, Phase::Flow),
        (200, Phase::Flutter),
        (300, Phase::Off),
    ]);
    let all = strip::movable(&summary);
    let told: Vec<_> = all
        .iter()
        .map(|it| (it.at.as_ms() / 1000, it.before, it.after))
        .collect();
    assert_eq!(
        told,
        [
            (90, SuckPhase::Quick, SuckPhase::Flow),
            (200, SuckPhase::Flow, SuckPhase::Flutter),
        ]
    );
    let whole = (At::ms(10_000), At::ms(610_000));
    // Never past the boundary beside it, nor out of the feed; and no entry if it stays.
    for (index, at_s, expected) in [
        (0, 70.0, Some(70)),
        (0, 250.0, Some(200)),
        (0, -5.0, Some(10)),
        (1, 20.0, Some(90)),
        (1, 999.0, Some(610)),
        (1, 200.0, None),
        (2, 200.0, None),
    ] {
        let moved = strip::moved(&all, index, at_s, whole);
        assert_eq!(
            moved.map(|it| it.now.as_ms() / 1000),
            expected,
            "{index} {at_s}"
        );
    }
    assert_eq!(
        strip::moved(&all, 0, 70.0, whole),
        Some(BoundaryMoved {
            was: At::ms(90_000),
            now: At::ms(70_000),
            before: SuckPhase::Quick,
            after: SuckPhase::Flow,
        })
    );
}
