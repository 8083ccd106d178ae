//! `visit.json`: the folded visit with everything computed, in one stable order of keys.
//!
//! Coded words stay coded words, units are in the key names, and what was not asked is `null`.

use serde::Serialize;
use serde_json::{Map, Value, json};

use super::{Facts, FeedFacts, Figures};
use crate::record::{At, Sign, TapWhat};
use crate::rhythm::{PhaseRates, Rate, Summary};

/// The facts as one JSON object.
pub fn visit_json(facts: &Facts) -> Value {
    json!({
        "app_version": facts.app_version,
        "rule_versions": {
            "rhythm": facts.rule_versions.rhythm,
            "growth": facts.rule_versions.growth,
            "findings": facts.rule_versions.findings,
        },
        "policy": plain(&facts.policy),
        "pair": plain(&facts.pair),
        "visit": {
            "id": facts.visit.to_string(),
            "replaces": facts.replaces.map(|id| id.to_string()),
            "began": plain(&facts.began),
            "until": plain(&facts.until),
            "specialist": facts.specialist.as_str(),
            "signed": facts.signed.as_ref().map(|signed| json!({
                "by": signed.by.as_str(),
                "wall": plain(&signed.wall),
            })),
            "entries_that_do_not_fit": facts.odd,
        },
        "findings": plain(&facts.judged.findings),
        "unjudged": plain(&facts.judged.unjudged),
        "acknowledged": facts.acknowledged.iter().map(|it| json!({
            "rule": it.rule,
            "by": it.by.as_str(),
            "wall": plain(&it.wall),
        })).collect::<Vec<_>>(),
        "last_day": facts.last_day.as_ref().map(last_day),
        "weighings": facts.weighings.iter().map(|(wall, it)| json!({
            "wall": plain(wall),
            "grams": it.grams.value(),
            "scale_step_grams": it.step.map(crate::record::ScaleStep::value),
            "clothed": it.clothed,
            "moment": it.moment.as_word(),
            "told_later": it.taken.is_some(),
        })).collect::<Vec<_>>(),
        "growth": facts.growth.as_ref().map(growth),
        "nappies": facts.nappies.iter().map(|(wall, it)| json!({
            "wall": plain(wall),
            "wet": it.wet,
            "heavy": it.heavy,
            "stool": it.stool.map(crate::record::StoolColour::as_word),
            "urates": it.urates,
        })).collect::<Vec<_>>(),
        "breasts_before": plain(&facts.breasts_before),
        "signs": Value::Object(Sign::ALL.iter().map(|sign| {
            let now = facts.sign(*sign).map(|now| json!({
                "state": now.state.as_word(),
                "at_ms": now.at.as_ms(),
            }));
            (sign.as_word().to_owned(), now.unwrap_or(Value::Null))
        }).collect::<Map<_, _>>()),
        "feeds": facts.feeds.iter().map(feed).collect::<Vec<_>>(),
        "notes": facts.notes.iter().map(|(wall, text)| json!({
            "wall": plain(wall),
            "text": text.as_str(),
        })).collect::<Vec<_>>(),
        "plan": plain(&facts.plan),
        "next_look": facts.next_look.as_ref().map(plain),
        "handover": facts.handover.as_ref().map(|it| json!({
            "transfer": it.transfer,
            "sealed_sha256": it.sealed_sha256.as_ref().map(|hash| super::form::hex(hash)),
            "tablet_key": it.tablet_key,
        })),
    })
}

/// A value of the record in its own stored form. The record's own values always serialise.
fn plain(value: &impl Serialize) -> Value {
    serde_json::to_value(value).unwrap_or(Value::Null)
}

/// The last day with every key present: what was not asked is `null`.
fn last_day(day: &crate::record::LastDay) -> Value {
    json!({
        "feeds": day.feeds,
        "wet": day.wet,
        "dirty": day.dirty,
        "stool": plain(&day.stool),
        "urates": day.urates,
        "meconium": day.meconium,
        "dark_urine": day.dark_urine,
        "hours_since_wet": day.hours_since_wet,
        "expressed_ml": plain(&day.expressed_ml),
        "supplement_ml": plain(&day.supplement_ml),
        "sleepy": day.sleepy,
        "jaundice": plain(&day.jaundice),
        "temperature_tenths_celsius": plain(&day.temperature),
        "baby_danger": plain(&day.baby_danger),
        "mother_danger": plain(&day.mother_danger),
    })
}

fn growth(figures: &Figures) -> Value {
    json!({
        "figures": figures.numbers.iter().map(|it| json!({
            "name": it.name,
            "at": it.at.as_ref().map(plain),
            "value": it.value,
            "unit": it.unit,
            "low": it.low,
            "high": it.high,
            "why": it.why,
        })).collect::<Vec<_>>(),
        "cautions": figures.cautions,
        "missing": figures.missing,
    })
}

fn feed(facts: &FeedFacts) -> Value {
    let feed = &facts.feed;
    json!({
        "began": plain(&facts.began),
        "started_ms": feed.started.as_ms(),
        "ended": facts.ended.as_ref().map(plain),
        "ended_ms": feed.ended.map(|end| end.at.as_ms()),
        "ended_by": feed.ended.map(|end| end.by.as_word()),
        "side": feed.side.as_word(),
        "holds": feed.holds.iter().map(|(at, hold)| json!({
            "at_ms": at.as_ms(),
            "hold": hold.as_word(),
        })).collect::<Vec<_>>(),
        "taps": feed.taps.iter().filter(|tap| is_counted(tap.what)).count(),
        "unresolved_touches": feed.unresolved_touches,
        "rhythm": facts.rhythm.as_ref().map(rhythm),
        "pains": feed.all_pains().map(|it| json!({
            "at_ms": it.at.as_ms(),
            "score": it.pain.value(),
        })).collect::<Vec<_>>(),
        "signs": feed.signs.iter().map(|it| json!({
            "at_ms": it.at.as_ms(),
            "sign": it.sign.as_word(),
            "state": it.state.map(crate::record::SignState::as_word),
        })).collect::<Vec<_>>(),
        "adjustments": feed.adjustments.iter().map(|it| json!({
            "at_ms": it.at.as_ms(),
            "what": it.what.as_word(),
        })).collect::<Vec<_>>(),
        "nipple_after": plain(&feed.nipple_after),
        "breast_after": plain(&feed.breast_after),
        "baby_state": plain(&feed.baby_state),
    })
}

/// Whether a row is a tap of the hand; the others mark time on and off the breast.
const fn is_counted(what: TapWhat) -> bool {
    matches!(
        what,
        TapWhat::Suck | TapWhat::SuckSwallow | TapWhat::Swallow
    )
}

fn rhythm(it: &Summary) -> Value {
    json!({
        "watched_ms": it.watched_ms,
        "sucks": it.sucks,
        "swallows": it.swallows,
        "first_flow_ms": it.first_flow.map(At::as_ms),
        "flow_episodes": it.flow_episodes,
        "share_sucking": it.share_sucking,
        "totals_ms": plain(&it.totals_ms),
        "rates": it.rates.iter().map(rates).collect::<Vec<_>>(),
        "run_statistics": {
            "count": it.run_statistics.count,
            "median_sucks": it.run_statistics.median_sucks,
            "median_ms": it.run_statistics.median_ms,
            "spread_ms": it.run_statistics.spread_ms,
        },
        "rest_statistics": {
            "count": it.rest_statistics.count,
            "median_ms": it.rest_statistics.median_ms,
            "spread_ms": it.rest_statistics.spread_ms,
        },
        "doubts": it.doubts.iter().map(|doubt| doubt.as_word()).collect::<Vec<_>>(),
        "phases": it.phases.iter().map(|span| json!({
            "from_ms": span.from.as_ms(),
            "to_ms": span.to.as_ms(),
            "phase": span.phase.as_word(),
            "probability": span.probability,
        })).collect::<Vec<_>>(),
        "runs": it.runs.iter().map(|run| json!({
            "from_ms": run.from.as_ms(),
            "to_ms": run.to.as_ms(),
            "sucks": run.sucks,
            "swallows": run.swallows,
        })).collect::<Vec<_>>(),
    })
}

fn rates(it: &PhaseRates) -> Value {
    let rate = |rate: Option<Rate>| rate.map(|rate| plain(&rate));
    json!({
        "phase": it.phase.map(crate::rhythm::Phase::as_word),
        "sucks_per_min": rate(it.sucks_per_min),
        "sucks_per_swallow": rate(it.sucks_per_swallow),
    })
}
