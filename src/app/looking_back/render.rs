//! From the visit to Looking back. Numbers come with their interval and the reasons to doubt them.

use slint::Global;

use crate::app::around::Around;
use crate::app::bedside::flag::flag_rows;
use crate::app::bedside::strip::{band_rows, kind_of, mark_rows, seconds};
use crate::app::entry_line;
use crate::app::lists::list;
use crate::app::open_visit::OpenVisit;
use crate::app::{compared, say, ui};
use crate::findings::compare;
use crate::record::{At, BabyState, BreastAfter, Feed, NippleAfter, StoredWord};
use crate::rhythm::{Phase, Rate, Summary};
use crate::words::Words;

use super::cards::{finding_rows, unjudged};
use super::model::SHOWN_LEAST_MS;
use super::{Model, Picked, entries, strip};

/// Draws the screen.
pub fn render(model: &Model, around: &Around<'_>, words: &Words, window: &ui::AppWindow) {
    let Some(open) = around.open else {
        return;
    };
    let screen = ui::LookingBackAdapter::get(window);
    screen.set_title(say::title(&open.pair).into());
    screen.set_quiet(words.say("looking-back-title").into());
    let signed = open.folded.signed.is_some();
    screen.set_locked(signed);
    screen.set_can_watch_more(!signed && open.folded.running().is_none());
    let feeds = &open.folded.feeds;
    screen.set_has_feed(!feeds.is_empty());
    let shown = model.shown(feeds.len());
    screen.set_feeds(list(feeds.iter().enumerate().map(|(index, feed)| {
        ui::Choice {
            label: words
                .say_with(
                    "looking-back-feed",
                    &[
                        ("number", i64::try_from(index + 1).unwrap_or(0).into()),
                        ("side", say::stored(words, "side", feed.side).into()),
                    ],
                )
                .into(),
            chosen: index == shown,
        }
    })));
    if let (Some(feed), Some(summary)) = (feeds.get(shown), open.summary(shown)) {
        draw_strip(
            model,
            open,
            feed,
            &summary,
            open.at(around.now),
            words,
            &screen,
        );
        screen.set_tried(list(tried(feeds, shown, open.at(around.now), words)));
        screen.set_phases(list(phase_rows(&summary, words)));
        screen.set_numbers(list(number_rows(feed, &summary, words)));
        screen.set_doubts(list(
            summary
                .doubts
                .iter()
                .map(|doubt| say::stored(words, "doubt", *doubt).into()),
        ));
        screen.set_after(list(after(feed, words)));
        screen.set_after_pain(say::pain_key(feed.pains_after.last()));
        screen.set_asks_pain(!feed.is_running());
    }
    screen.set_entries_open(model.entries);
    screen.set_entries(list(if model.entries {
        entry_rows(open, around, words)
    } else {
        vec![]
    }));
    let judged = open.judged(around.policy, around.now.wall);
    screen.set_findings(list(finding_rows(&judged, open, around, words)));
    screen.set_unjudged(unjudged(&judged, words).into());
    screen.set_caution(words.say("frame-caution").into());
}

/// What was told, the newest first.
fn entry_rows(open: &OpenVisit, around: &Around<'_>, words: &Words) -> Vec<ui::EntryRow> {
    let now = around.now.wall;
    let told = entries::told(open).into_iter();
    told.map(|entry| ui::EntryRow {
        time: say::time(words, entry.wall, now).into(),
        what: entry_line::line(&entry.what, now, words).into(),
    })
    .collect()
}

fn draw_strip(
    model: &Model,
    open: &OpenVisit,
    feed: &Feed,
    summary: &Summary,
    now: At,
    words: &Words,
    screen: &ui::LookingBackAdapter<'_>,
) {
    let (start, end) = strip::whole(feed, now);
    let (from, to) = strip::part(model, feed, now);
    let clock = |at: At| words.duration_clock(at.since_ms(feed.started));
    screen.set_bands(list(band_rows(&summary.phases, from, to, None, words)));
    screen.set_legend(list(legend(summary, words)));
    let shown_s = seconds(At::ms(to.since_ms(from)));
    let to_s = seconds(to);
    let marks = mark_rows(feed, from).into_iter();
    screen.set_marks(list(marks.filter(|mark| mark.at_s <= to_s)));
    let flags = flag_rows(feed, from, shown_s).into_iter();
    screen.set_flags(list(flags.filter(|flag| flag.at_s <= to_s)));
    screen.set_end_s(to_s);
    screen.set_shown_s(shown_s);
    screen.set_from_label(clock(from).into());
    screen.set_to_label(clock(to).into());
    screen.set_can_zoom_out((from, to) != (start, end));
    screen.set_can_zoom_in(SHOWN_LEAST_MS < to.since_ms(from));
    screen.set_strip_label(
        words
            .say_with("looking-back-strip", &[("time", clock(end).into())])
            .into(),
    );
    let movable = strip::movable(summary);
    screen.set_closest_share(strip::closest_share(&movable, start, end));
    screen.set_boundaries(list(movable.into_iter().map(|it| {
        ui::Boundary {
            at_s: seconds(it.at),
            label: words
                .say_with(
                    "looking-back-boundary",
                    &[
                        ("before", say::stored(words, "phase", it.before).into()),
                        ("after", say::stored(words, "phase", it.after).into()),
                    ],
                )
                .into(),
            clock: clock(it.at).into(),
        }
    })));
    picked(model, open, feed, words, screen);
}

/// The phases that there are, in the order of their kinds.
fn legend(summary: &Summary, words: &Words) -> Vec<ui::StripPhase> {
    let there = |phase: &&Phase| 0 < summary.totals_ms.of(**phase);
    let phases = Phase::ALL.iter().filter(there);
    let row = |phase: &Phase| ui::StripPhase {
        kind: kind_of(*phase),
        label: say::stored(words, "phase", *phase).into(),
    };
    phases.map(row).collect()
}

fn picked(
    model: &Model,
    open: &OpenVisit,
    feed: &Feed,
    words: &Words,
    screen: &ui::LookingBackAdapter<'_>,
) {
    let clock = |at: At| words.duration_clock(at.since_ms(feed.started));
    let (at_s, label) = match model.picked {
        Some(Picked::Tap(seq, at)) => {
            let what = strip::what(&open.visit.journal, feed, seq)
                .map_or_else(String::new, |what| say::stored(words, "tap", what));
            let told = [("what", what.into()), ("time", clock(at).into())];
            (
                seconds(at),
                words.say_with("looking-back-picked-tap", &told),
            )
        }
        Some(Picked::Moment(at)) => (
            seconds(at),
            words.say_with("looking-back-picked-moment", &[("time", clock(at).into())]),
        ),
        None => (-1.0, words.say("looking-back-pick")),
    };
    screen.set_picked_s(at_s);
    screen.set_picked_tap(matches!(model.picked, Some(Picked::Tap(..))));
    screen.set_picked_label(label.into());
}

fn tried(feeds: &[Feed], shown: usize, now: At, words: &Words) -> Vec<ui::Tried> {
    let count = feeds.get(shown).map_or(0, |feed| feed.adjustments.len());
    (0..count)
        .filter_map(|tried| compare(feeds, shown, tried, now))
        .map(|it| ui::Tried {
            heading: compared::heading(&it, feeds[shown].started, words).into(),
            quiet: compared::quiet(&it, words).into(),
            rows: list(compared::rows(&it, words)),
        })
        .collect()
}

fn fact(label: String, value: String, quiet: String) -> ui::FactRow {
    ui::FactRow {
        label: label.into(),
        value: value.into(),
        quiet: quiet.into(),
    }
}

fn phase_rows(summary: &Summary, words: &Words) -> Vec<ui::FactRow> {
    Phase::ALL
        .iter()
        .filter(|phase| 0 < summary.totals_ms.of(**phase))
        .map(|phase| {
            let rates = summary
                .rates
                .iter()
                .find(|rates| rates.phase == Some(*phase));
            let quiet =
                rates
                    .and_then(|rates| rates.sucks_per_min)
                    .map_or_else(String::new, |rate| {
                        format!(
                            "{} {}",
                            words.number(rate.value, 0),
                            words.say("bedside-sucks-a-minute")
                        )
                    });
            fact(
                say::stored(words, "phase", *phase),
                words.duration_clock(summary.totals_ms.of(*phase)),
                quiet,
            )
        })
        .collect()
}

fn number_rows(feed: &Feed, summary: &Summary, words: &Words) -> Vec<ui::FactRow> {
    let whole = summary.rates.iter().find(|rates| rates.phase.is_none());
    let few = || words.say("looking-back-too-few");
    let rate = |rate: Option<Rate>, decimals| {
        rate.map_or_else(
            || (few(), String::new()),
            |rate| {
                (
                    words.number(rate.value, decimals),
                    words.say_with(
                        "looking-back-interval",
                        &[
                            ("low", words.number(rate.low, decimals).into()),
                            ("high", words.number(rate.high, decimals).into()),
                        ],
                    ),
                )
            },
        )
    };
    let (per_min, per_min_quiet) = rate(whole.and_then(|rates| rates.sucks_per_min), 0);
    let (per_swallow, per_swallow_quiet) = rate(whole.and_then(|rates| rates.sucks_per_swallow), 1);
    let first_flow = summary.first_flow.map_or_else(
        || words.say("looking-back-no-flow"),
        |at| {
            words.say_with(
                "looking-back-first-flow-at",
                &[(
                    "time",
                    words.duration_clock(at.since_ms(feed.started)).into(),
                )],
            )
        },
    );
    let mut rows = vec![
        fact(
            words.say("looking-back-first-flow"),
            first_flow,
            String::new(),
        ),
        fact(words.say("looking-back-rate"), per_min, per_min_quiet),
        fact(
            words.say("looking-back-ratio"),
            per_swallow,
            per_swallow_quiet,
        ),
        fact(
            words.say("looking-back-runs"),
            words.say_with(
                "looking-back-runs-value",
                &[
                    ("count", i64::from(summary.run_statistics.count).into()),
                    (
                        "sucks",
                        words.number(summary.run_statistics.median_sucks, 0).into(),
                    ),
                ],
            ),
            String::new(),
        ),
        fact(
            words.say("looking-back-rests"),
            words.say_with(
                "looking-back-rests-value",
                &[
                    ("count", i64::from(summary.rest_statistics.count).into()),
                    (
                        "time",
                        words
                            .number(summary.rest_statistics.median_ms / 1000.0, 1)
                            .into(),
                    ),
                ],
            ),
            String::new(),
        ),
    ];
    if let Some(share) = summary.share_sucking {
        rows.push(fact(
            words.say("looking-back-share"),
            words.say_with(
                "looking-back-share-value",
                &[("percent", words.number(share * 100.0, 0).into())],
            ),
            String::new(),
        ));
    }
    rows.push(fact(
        words.say("looking-back-counts"),
        words.say_with(
            "looking-back-counts-value",
            &[
                ("sucks", i64::from(summary.sucks).into()),
                ("swallows", i64::from(summary.swallows).into()),
            ],
        ),
        String::new(),
    ));
    rows.push(fact(
        words.say("looking-back-watched"),
        words.duration_clock(summary.watched_ms),
        String::new(),
    ));
    let scores: Vec<u8> = feed
        .pains
        .iter()
        .filter_map(|pain| pain.pain.value())
        .collect();
    if let (Some(peak), Some(last)) = (scores.iter().max(), scores.last()) {
        rows.push(fact(
            words.say("looking-back-pain"),
            words.say_with(
                "looking-back-pain-value",
                &[
                    ("peak", i64::from(*peak).into()),
                    ("last", i64::from(*last).into()),
                ],
            ),
            String::new(),
        ));
    }
    rows
}

fn after(feed: &Feed, words: &Words) -> Vec<ui::ChoiceGroup> {
    fn group<T: StoredWord + PartialEq>(
        words: &Words,
        heading: &str,
        thing: &str,
        all: &[T],
        told: Option<T>,
    ) -> ui::ChoiceGroup {
        ui::ChoiceGroup {
            heading: words.say(heading).into(),
            choices: list(all.iter().map(|value| ui::Choice {
                label: say::stored(words, thing, *value).into(),
                chosen: told == Some(*value),
            })),
        }
    }
    vec![
        group(
            words,
            "looking-back-nipple",
            "nipple-after",
            NippleAfter::ALL,
            feed.nipple_after,
        ),
        group(
            words,
            "looking-back-breast",
            "breast-after",
            BreastAfter::ALL,
            feed.breast_after,
        ),
        group(
            words,
            "looking-back-baby",
            "baby-state",
            BabyState::ALL,
            feed.baby_state,
        ),
    ]
}
