//! Where the labels of the weight chart stand: checked by trying points, not by the same geometry.

use feedside::app::pair::chart::{Place, WeightChart, weight_chart};
use feedside::app::pair::labels::{LABEL, MARK, Size, labels};
use feedside::record::{Grams, WallTime, WayOfBirth, Weighing, WeighingMoment};

use crate::support::sample_pair;

const HOUR_MS: i64 = 3_600_000;

/// A chart of changes in tenths of a per cent of 3400 g at hours of age, and its track.
fn chart(changes: &[(i64, i64)]) -> (WeightChart, Vec<Place>) {
    let mut pair = sample_pair();
    pair.way_of_birth = Some(WayOfBirth::Assisted);
    pair.birth_weight = Some(Grams::new(3400).unwrap());
    let at = |hours: i64| pair.birth.plus_ms(hours * HOUR_MS);
    let weighings: Vec<(WallTime, Weighing)> = changes
        .iter()
        .map(|(hours, tenths)| {
            let weighing = Weighing {
                grams: Grams::new(3400 + 34 * tenths / 10).unwrap(),
                step: None,
                clothed: false,
                moment: WeighingMoment::Routine,
                taken: None,
            };
            (at(*hours), weighing)
        })
        .collect();
    let chart = weight_chart(&pair, &weighings, at(changes.last().unwrap().0)).unwrap();
    let zero = chart.across.iter().find(|it| it.1 == 0).unwrap().0;
    let mut track = vec![Place { x: 0.0, y: zero }];
    track.extend(chart.weights.iter().map(|it| it.place));
    (chart, track)
}

fn covers(middle: Place, size: Size, point: Place) -> bool {
    (point.x - middle.x).abs() < size.wide / 2.0 - 1e-4
        && (point.y - middle.y).abs() < size.high / 2.0 - 1e-4
}

/// Points along a line, close together.
fn along(line: &[Place]) -> Vec<Place> {
    let part = |ends: &[Place]| {
        let (from, to) = (ends[0], ends[1]);
        (0..=1000_u16).map(move |step| {
            let share = f32::from(step) / 1000.0;
            Place {
                x: from.x + (to.x - from.x) * share,
                y: from.y + (to.y - from.y) * share,
            }
        })
    };
    line.windows(2).flat_map(part).collect()
}

/// The places of a mark's edge and middle.
fn mark(at: Place) -> Vec<Place> {
    let shares = [-0.5, -0.25, 0.0, 0.25, 0.5];
    let places = shares.map(|x| shares.map(|y| (x, y)));
    let place = |(x, y): (f32, f32)| Place {
        x: at.x + x * MARK.wide,
        y: at.y + y * MARK.high,
    };
    places.into_iter().flatten().map(place).collect()
}

/// Checks a chart; tells how many of its weights have a label.
fn checked(changes: &[(i64, i64)], grown: f32) -> usize {
    let (chart, track) = chart(changes);
    let size = Size {
        wide: LABEL.wide * grown,
        high: LABEL.high * grown,
    };
    let middles = labels(&chart, &track, size, MARK);
    assert_eq!(middles.len(), changes.len());
    let stand: Vec<Place> = middles.iter().copied().flatten().collect();
    let marks = chart.weights.iter().map(|it| it.place);
    let points: Vec<Place> = marks
        .chain(chart.medians.iter().copied())
        .flat_map(mark)
        .chain(along(&track))
        .chain(along(&chart.line))
        .collect();
    for middle in &stand {
        let covered = points.iter().find(|it| covers(*middle, size, **it));
        assert_eq!(covered, None, "{changes:?}: label about {middle:?}");
        assert!(middle.x - size.wide / 2.0 >= 0.0 && middle.x + size.wide / 2.0 <= 1.0);
        assert!(middle.y - size.high / 2.0 >= 0.0 && middle.y + size.high / 2.0 <= 1.0);
    }
    for (index, one) in stand.iter().enumerate() {
        for other in &stand[index + 1..] {
            let apart = size.wide <= (one.x - other.x).abs() + 1e-4
                || size.high <= (one.y - other.y).abs() + 1e-4;
            assert!(apart, "{changes:?}: {one:?} and {other:?}");
        }
    }
    stand.len()
}

#[test]
fn labels_cover_neither_marks_nor_lines_nor_each_other() {
    // Medians at 24, 48 and 72 hours (Flaherman and others 2015) and the line of van Dommelen and
    // others (2007) are drawn in each. The first is the ward's own case of a baby losing 10.5 %.
    let cases: [&[(i64, i64)]; 5] = [
        &[(58, -88), (82, -99), (107, -105)],
        &[(24, -42), (48, -71), (72, -64)],
        &[(30, -50), (31, -51), (32, -52), (33, -53)],
        &[(12, 10), (40, -120), (70, -119), (95, -118), (119, -60)],
        &[(119, 30)],
    ];
    for case in cases {
        for grown in [1.0, 1.4] {
            checked(case, grown);
        }
    }
}

#[test]
fn a_weight_with_room_about_it_has_its_label() {
    assert_eq!(checked(&[(58, -88), (82, -99), (107, -105)], 1.0), 3);
    assert_eq!(checked(&[(119, 30)], 1.0), 1);
    assert_eq!(checked(&[(24, -42), (48, -71), (72, -64)], 1.0), 3);
}

#[test]
fn where_weights_crowd_the_latest_keeps_its_label() {
    let (chart, track) = chart(&[(50, -70), (51, -71), (52, -71), (53, -72), (54, -72)]);
    let middles = labels(&chart, &track, LABEL, MARK);
    assert!(middles.last().unwrap().is_some());
    assert!(middles.iter().any(Option::is_none));
}

#[test]
fn forceps_or_vacuum_are_drawn_with_the_vaginal_curve() {
    // Flaherman and others 2015 tell vaginal birth and caesarean apart, and no instruments.
    assert_eq!(chart(&[(48, -71)]).0.medians_caesarean, Some(false));
    let mut pair = sample_pair();
    pair.way_of_birth = Some(WayOfBirth::Caesarean);
    let chart = weight_chart(&pair, &[], pair.birth).unwrap();
    assert_eq!(chart.medians_caesarean, Some(true));
    pair.way_of_birth = None;
    let chart = weight_chart(&pair, &[], pair.birth).unwrap();
    assert_eq!((chart.medians_caesarean, chart.medians.len()), (None, 0));
}
