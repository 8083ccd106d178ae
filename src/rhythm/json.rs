//! A summary as one JSON object, as `feedside rhythm --json` prints it.

use serde_json::{Map, Value, json};

use super::summary::{Phase, PhaseRates, Rate, Summary};
use crate::record::At;

/// The name of the whole feed among the rates.
const WHOLE_FEED: &str = "feed";

/// One object: `watched_ms sucks swallows first_flow_ms phases runs totals_ms rates doubts`. The
/// rates are by phase, and `feed` for the whole; what is not known is null.
pub fn json(summary: &Summary) -> Value {
    let mut totals = Map::new();
    for phase in Phase::ALL {
        totals.insert(
            phase.as_word().to_owned(),
            summary.totals_ms.of(*phase).into(),
        );
    }
    let mut rates = Map::new();
    for phase in [Phase::Quick, Phase::Flow, Phase::Flutter] {
        rates.insert(
            phase.as_word().to_owned(),
            phase_rates(summary, Some(phase)),
        );
    }
    rates.insert(WHOLE_FEED.to_owned(), phase_rates(summary, None));
    json!({
        "watched_ms": summary.watched_ms,
        "sucks": summary.sucks,
        "swallows": summary.swallows,
        "first_flow_ms": summary.first_flow.map(At::as_ms),
        "phases": summary.phases.iter().map(|span| json!({
            "from_ms": span.from.as_ms(),
            "to_ms": span.to.as_ms(),
            "phase": span.phase.as_word(),
            "probability": span.probability,
        })).collect::<Vec<_>>(),
        "runs": summary.runs.iter().map(|run| json!({
            "from_ms": run.from.as_ms(),
            "to_ms": run.to.as_ms(),
            "sucks": run.sucks,
            "swallows": run.swallows,
        })).collect::<Vec<_>>(),
        "totals_ms": totals,
        "rates": rates,
        "doubts": summary.doubts.iter().map(|doubt| doubt.as_word()).collect::<Vec<_>>(),
    })
}

fn phase_rates(summary: &Summary, phase: Option<Phase>) -> Value {
    let rates: Option<&PhaseRates> = summary.rates.iter().find(|it| it.phase == phase);
    json!({
        "sucks_per_min": rate(rates.and_then(|it| it.sucks_per_min)),
        "sucks_per_swallow": rate(rates.and_then(|it| it.sucks_per_swallow)),
    })
}

fn rate(rate: Option<Rate>) -> Value {
    rate.map_or(
        Value::Null,
        |rate| json!({ "value": rate.value, "low": rate.low, "high": rate.high }),
    )
}
