//! The month in words: order, ties, and what is said where there is little or nothing to tell.

use feedside::record::{Adjustment, NippleAfter, Sign, SignState, Visit, What};
use feedside::report::month::{Card, Month, Quartiles, Share, Spread, cards};
use feedside::words::{Lang, Words};

use super::{cannot_say, fed, month, put, sign, visit};

/// Every text of the cards, and whether it may be empty.
pub fn texts(cards: &[Card]) -> Vec<(&str, bool)> {
    let mut all = Vec::new();
    for card in cards {
        all.push((card.heading.as_str(), false));
        for row in &card.rows {
            all.extend([
                (row.label.as_str(), false),
                (row.value.as_str(), false),
                (row.quiet.as_str(), true),
            ]);
        }
    }
    all
}

/// The cards as lines: headings alone, rows as `label | value | quiet`.
fn lines(month: &Month, lang: Lang) -> Vec<String> {
    let cards = cards(month, &Words::new(lang));
    let mut lines = Vec::new();
    for card in cards {
        lines.push(card.heading);
        let rows = card.rows.into_iter();
        lines.extend(rows.map(|it| format!("{} | {} | {}", it.label, it.value, it.quiet)));
    }
    lines
}

/// The rows under a heading.
fn under(month: &Month, heading: &str) -> Vec<String> {
    let cards = cards(month, &Words::new(Lang::En));
    let card = cards.into_iter().find(|it| it.heading == heading).unwrap();
    let rows = card.rows.into_iter();
    rows.map(|it| format!("{} | {}", it.label, it.value))
        .collect()
}

fn share(of: u32, out_of: u32) -> Share {
    Share { of, out_of }
}

fn spread(count: usize, [low, median, high]: [f64; 3]) -> Spread {
    let quartiles = Some(Quartiles { low, median, high });
    Spread { count, quartiles }
}

/// Made up, to be shown.
fn sample() -> Month {
    let mut month = Month {
        visits: 41,
        pairs: 33,
        feeds: 52,
        watched_ms: 45_059_999,
        review: share(2, 38),
        signed: share(40, 41),
        receipt: share(37, 40),
        waiting: share(3, 40),
        flow: share(31, 44),
        first_flow_ms: spread(31, [61_000.0, 95_500.0, 150_999.6]),
        flow_ms: spread(44, [0.0, 185_000.0, 3_700_000.0]),
        sucking_percent: spread(44, [38.5, 51.2, 60.0]),
        pain_told: share(45, 52),
        pain_first: share(12, 40),
        pain_last: share(1, 9),
        nipple_misshapen: share(9, 30),
        nipple_blanched: share(0, 30),
        nipple_damaged: share(1, 30),
        ..Month::default()
    };
    month.not_seen[Sign::ChinIn.index()] = share(10, 40);
    month.tried[Adjustment::ChinFirst as usize] = 12;
    month.tried[Adjustment::Wake as usize] = 1;
    month
}

#[test]
fn a_month_is_told_like_this() {
    assert_eq!(
        lines(&sample(), Lang::En),
        [
            "Visits",
            "Visits | 41 | ",
            "Pairs | 33 | ",
            "Feeds | 52 | ",
            "Time watched | 12 h 30 min | ",
            "Medical review now | 2 of 38 (5%) | of the visits that were judged",
            "Signed | 40 of 41 (98%) | of all visits",
            "With a receipt | 37 of 40 (92%) | of the signed visits",
            "Waiting for a receipt | 3 of 40 (8%) | of the signed visits",
            "Milk",
            "Milk flowing seen | 31 of 44 (70%) | of feeds watched for at least 3 minutes",
            "First flow after | 1:35 (1:01 to 2:31) | 31 feeds, half of them between these",
            "Milk flowing in a feed | 3:05 (0:00 to 1:01:40) | 44 feeds, half of them between these",
            "Share of time sucking | 51% (38% to 60%) | 44 feeds, half of them between these",
            "Pain",
            "Pain told | 45 of 52 (87%) | of all feeds",
            "At first 4 or more | 12 of 40 (30%) | of feeds in which a score was told then",
            "At last 4 or more | 1 of 9 | of feeds in which a score was told then",
            "Signs not seen at the end",
            "Chin in | 10 of 40 (25%) | of visits in which it was looked at",
            "Tried most often",
            "Bottom in, chin first | 12 times | ",
            "Skin to skin, wake | 1 time | ",
            "Nipple after the feed",
            "Shape not round | 9 of 30 (30%) | of feeds after which it was told",
            "White tip | 0 of 30 (0%) | of feeds after which it was told",
            "Wound | 1 of 30 (3%) | of feeds after which it was told",
        ]
    );
    let german = lines(&sample(), Lang::De);
    for line in [
        "Beobachtete Zeit | 12 Std. 30 Min. | ",
        "Sofort ärztlich beurteilen | 2 von 38 (5\u{a0}%) | der beurteilten Besuche",
        "Erster Milchfluss nach | 1:35 (1:01 bis 2:31) | 31 Mahlzeiten, die Hälfte liegt dazwischen",
        "Zuletzt 4 oder mehr | 1 von 9 | der Mahlzeiten, bei denen dann ein Wert genannt wurde",
        "Po heran, Kinn zuerst | 12-mal | ",
    ] {
        assert!(german.iter().any(|it| it == line), "{line}\n{german:#?}");
    }
}

#[test]
fn a_month_without_a_visit_has_no_cards() {
    for lang in Lang::ALL {
        assert!(cards(&Month::default(), &Words::new(*lang)).is_empty());
    }
}

#[test]
fn what_nobody_told_is_nothing_to_count_and_never_none() {
    let month = month(&[fed(vec![cannot_say()], vec![])]);
    let lines = lines(&month, Lang::En);
    for start in [
        "Medical review now | nothing to count",
        "With a receipt | nothing to count",
        "Milk flowing seen | nothing to count",
        "First flow after | too few to tell | 0 feeds",
        "Pain told | 1 of 1 |",
        "At first 4 or more | nothing to count",
        "At last 4 or more | nothing to count",
        "Signs | nothing to count",
        "Adjustments tried | none written down",
        "Shape not round | nothing to count",
    ] {
        assert!(
            lines.iter().any(|it| it.starts_with(start)),
            "{start}\n{lines:#?}"
        );
    }
}

#[test]
fn a_visit_without_a_feed_tells_nothing_of_adjustments() {
    let rows = under(&month(&[visit(1)]), "Tried most often");
    assert_eq!(rows, ["Adjustments tried | nothing to count"]);
}

#[test]
fn signs_that_were_all_seen_are_none_written_down() {
    let mut visit = visit(1);
    put(&mut visit, [sign(Sign::Close, Some(SignState::Seen))]);
    let rows = under(&month(&[visit]), "Signs not seen at the end");
    assert_eq!(rows, ["Signs | none written down"]);
}

#[test]
fn per_cent_are_told_out_of_ten_and_not_out_of_nine() {
    for (out_of, told) in [(9, "3 of 9"), (10, "3 of 10 (30%)")] {
        let month = Month {
            nipple_damaged: share(3, out_of),
            ..sample()
        };
        let rows = under(&month, "Nipple after the feed");
        assert_eq!(rows[2], format!("Wound | {told}"));
    }
}

#[test]
fn a_spread_of_four_is_too_few_and_one_of_five_is_told() {
    for (count, value) in [
        (1, "too few to tell | 1 feed"),
        (4, "too few to tell | 4 feeds"),
    ] {
        let month = Month {
            flow_ms: Spread {
                count,
                quartiles: None,
            },
            ..sample()
        };
        let line = format!("Milk flowing in a feed | {value}");
        assert!(lines(&month, Lang::En).contains(&line));
    }
}

#[test]
fn the_five_largest_shares_of_signs_are_shown_and_equal_ones_in_the_usual_order() {
    let mut month = Month {
        visits: 40,
        ..Month::default()
    };
    for (sign, share) in [
        (Sign::Close, share(2, 20)),
        (Sign::HeadFree, share(1, 2)),
        (Sign::InLine, share(0, 40)),
        (Sign::MouthWide, share(1, 3)),
        (Sign::ChinIn, share(10, 20)),
        (Sign::NoseClear, share(3, 9)),
        (Sign::Quiet, share(2, 2)),
        (Sign::LowerLipOut, share(1, 40)),
    ] {
        month.not_seen[sign.index()] = share;
    }
    assert_eq!(
        under(&month, "Signs not seen at the end"),
        [
            "Quiet, no click | 2 of 2",
            "Head free | 1 of 2",
            "Chin in | 10 of 20 (50%)",
            "Mouth wide | 1 of 3",
            "Nose clear | 3 of 9",
        ]
    );
}

#[test]
fn signs_that_were_always_seen_are_not_shown() {
    let mut month = sample();
    month.not_seen[Sign::Close.index()] = share(0, 40);
    assert_eq!(
        under(&month, "Signs not seen at the end"),
        ["Chin in | 10 of 40 (25%)"]
    );
}

#[test]
fn the_five_most_frequent_adjustments_are_shown_and_equal_ones_in_the_usual_order() {
    let mut month = Month {
        visits: 40,
        ..Month::default()
    };
    for (index, times) in [2, 0, 7, 2, 9, 2, 2].into_iter().enumerate() {
        month.tried[index] = times;
    }
    assert_eq!(
        under(&month, "Tried most often"),
        [
            "Bottom in, chin first | 9 times",
            "Free the head | 7 times",
            "Bring closer in | 2 times",
            "Slide until nose meets nipple | 2 times",
            "Attach again, mouth wider | 2 times",
        ]
    );
}

/// The screen has two columns: what does not fit there is cut off.
#[test]
fn headings_labels_and_values_are_short_in_both_languages() {
    let mut month = sample();
    month.not_seen = [share(100, 200); Sign::ALL.len()];
    month.tried = [100; Adjustment::ALL.len()];
    for lang in Lang::ALL {
        for card in cards(&month, &Words::new(*lang)) {
            assert!(card.heading.chars().count() <= 30, "{}", card.heading);
            for row in card.rows {
                assert!(row.label.chars().count() <= 30, "{}", row.label);
                assert!(row.value.chars().count() <= 30, "{}", row.value);
                assert!(row.quiet.chars().count() <= 66, "{}", row.quiet);
            }
        }
    }
}

#[test]
fn the_nipple_is_told_by_shape_tip_and_wound() {
    let after = |nipple: &NippleAfter| {
        fed(
            vec![],
            vec![What::NippleAfter {
                nipple: *nipple,
                feed: None,
            }],
        )
    };
    let visits: Vec<Visit> = NippleAfter::ALL.iter().map(after).collect();
    assert_eq!(
        under(&month(&visits), "Nipple after the feed"),
        [
            "Shape not round | 2 of 5",
            "White tip | 1 of 5",
            "Wound | 1 of 5"
        ]
    );
}
