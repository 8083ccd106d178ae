//! The rows that came over the wire to the values of the rooms that computed them.
//!
//! Only what the tablet said: nothing is judged again here. A word of a later version is left out
//! and named as a doubt; a finding is never left out, whatever its words.

use crate::findings::{CallWhom, Finding, Judged, Level, Number, Unit, Unjudged};
use crate::handover::{FeedTable, FindingRow, Handed, RateRow};
use crate::rhythm::{
    Doubt, Phase, PhaseRates, PhaseSpan, Rate, RestStatistics, Run, RunStatistics, Summary,
    TotalsMs,
};

/// A word that this version does not know.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct UnknownWord {
    /// Of what it is: `phase`, `doubt`, `level`, `call` or `unit`.
    pub of: &'static str,
    /// The word.
    pub word: String,
}

/// What the tablet computed.
#[derive(Debug, Clone, PartialEq)]
pub struct Computed {
    /// One for each feed, in order.
    pub rhythms: Vec<Summary>,
    /// What the rules said.
    pub judged: Judged,
    /// Words that this version does not know, each once.
    pub unknown: Vec<UnknownWord>,
}

/// Reads the tables of a record.
pub fn computed(handed: &Handed) -> Computed {
    let mut reader = Reader::default();
    let rhythms = handed.feeds.iter().map(|feed| reader.feed(feed)).collect();
    let mut findings: Vec<Finding> = handed
        .findings
        .iter()
        .map(|row| reader.finding(row))
        .collect();
    // Stable: within a level the tablet's order stays.
    findings.sort_by_key(|finding| finding.level);
    let unjudged = handed
        .unjudged
        .iter()
        .map(|(rule, missing)| Unjudged {
            rule: rule.clone(),
            missing: missing.clone(),
        })
        .collect();
    Computed {
        rhythms,
        judged: Judged { findings, unjudged },
        unknown: reader.unknown,
    }
}

#[derive(Default)]
struct Reader {
    unknown: Vec<UnknownWord>,
}

impl Reader {
    /// The value of a word, or `None` and a doubt.
    fn word<T>(&mut self, of: &'static str, word: &str, known: Option<T>) -> Option<T> {
        if known.is_none() {
            let unknown = UnknownWord {
                of,
                word: word.to_owned(),
            };
            if !self.unknown.contains(&unknown) {
                self.unknown.push(unknown);
            }
        }
        known
    }

    fn phase(&mut self, word: &str) -> Option<Phase> {
        self.word("phase", word, Phase::from_word(word))
    }

    fn feed(&mut self, table: &FeedTable) -> Summary {
        let phases: Vec<PhaseSpan> = table
            .phases
            .iter()
            .filter_map(|row| {
                Some(PhaseSpan {
                    from: row.from,
                    to: row.to,
                    phase: self.phase(&row.phase)?,
                    probability: f64::from(row.percent) / 100.0,
                })
            })
            .collect();
        let runs: Vec<Run> = table
            .runs
            .iter()
            .map(|row| Run {
                from: row.from,
                to: row.to,
                sucks: row.sucks,
                swallows: row.swallows,
            })
            .collect();
        let doubts: Vec<Doubt> = table
            .doubts
            .iter()
            .filter_map(|word| self.word("doubt", word, Doubt::from_word(word)))
            .collect();
        let totals_ms = totals(&phases);
        let sucking_ms = totals_ms.quick + totals_ms.flow + totals_ms.flutter;
        let on_ms = sucking_ms + totals_ms.rest;
        Summary {
            // The tablet sends the phases as they are told.
            computed: None,
            watched_ms: table.watched_ms,
            sucks: table.sucks,
            swallows: table.swallows,
            first_flow: table.first_flow,
            totals_ms,
            rates: self.rates(&table.rates),
            flow_episodes: flow_episodes(&phases),
            share_sucking: (0 < on_ms).then(|| ms(sucking_ms) / ms(on_ms)),
            run_statistics: run_statistics(&runs),
            rest_statistics: rest_statistics(&phases),
            phases,
            runs,
            doubts,
        }
    }

    fn rates(&mut self, rows: &[RateRow]) -> Vec<PhaseRates> {
        let mut rates: Vec<PhaseRates> = Vec::new();
        for row in rows {
            let phase = match row.phase.as_deref() {
                None => None,
                Some(word) => match self.phase(word) {
                    Some(phase) => Some(phase),
                    None => continue,
                },
            };
            let [value, low, high] = row.hundredths.map(|it| f64::from(it) / 100.0);
            let rate = Some(Rate { value, low, high });
            let place = match rates.iter().position(|it| it.phase == phase) {
                Some(place) => place,
                None => {
                    rates.push(PhaseRates {
                        phase,
                        sucks_per_min: None,
                        sucks_per_swallow: None,
                    });
                    rates.len() - 1
                }
            };
            if row.per_min {
                rates[place].sucks_per_min = rate;
            } else {
                rates[place].sucks_per_swallow = rate;
            }
        }
        rates
    }

    fn finding(&mut self, row: &FindingRow) -> Finding {
        Finding {
            rule: row.rule.clone(),
            // Not known is not harmless: it asks to be looked at today.
            level: self
                .word("level", &row.level, Level::from_word(&row.level))
                .unwrap_or(Level::ActToday),
            numbers: row
                .numbers
                .iter()
                .filter_map(|it| {
                    let unit = self.word("unit", &it.unit, Unit::from_word(&it.unit))?;
                    Some(Number::new(&it.name, it.value, unit))
                })
                .collect(),
            source: row.source.clone(),
            tries: row.tries.clone(),
            plan: row.plan.clone(),
            call: self
                .word("call", &row.call, CallWhom::from_word(&row.call))
                .unwrap_or(CallWhom::MidwifeInCharge),
        }
    }
}

fn totals(phases: &[PhaseSpan]) -> TotalsMs {
    let mut totals_ms = TotalsMs::default();
    for span in phases {
        *totals_ms.of_mut(span.phase) += span.to.since_ms(span.from);
    }
    totals_ms
}

/// Separate stretches of milk flowing; a rest or an unwatched time within one does not end it.
fn flow_episodes(phases: &[PhaseSpan]) -> u32 {
    let mut episodes = 0;
    let mut in_flow = false;
    for span in phases {
        match span.phase {
            Phase::Flow => {
                episodes += u32::from(!in_flow);
                in_flow = true;
            }
            Phase::Rest | Phase::Unwatched => {}
            Phase::Quick | Phase::Flutter | Phase::Off => in_flow = false,
        }
    }
    episodes
}

fn run_statistics(runs: &[Run]) -> RunStatistics {
    let lengths_ms: Vec<u64> = runs.iter().map(|run| run.to.since_ms(run.from)).collect();
    let sucks: Vec<u64> = runs.iter().map(|run| run.sucks.into()).collect();
    RunStatistics {
        count: count(runs.len()),
        median_sucks: quantile(&sucks, 0.5),
        median_ms: quantile(&lengths_ms, 0.5),
        spread_ms: quantile(&lengths_ms, 0.75) - quantile(&lengths_ms, 0.25),
    }
}

fn rest_statistics(phases: &[PhaseSpan]) -> RestStatistics {
    let lengths_ms: Vec<u64> = phases
        .iter()
        .filter(|span| span.phase == Phase::Rest)
        .map(|span| span.to.since_ms(span.from))
        .collect();
    RestStatistics {
        count: count(lengths_ms.len()),
        median_ms: quantile(&lengths_ms, 0.5),
        spread_ms: quantile(&lengths_ms, 0.75) - quantile(&lengths_ms, 0.25),
    }
}

fn count(length: usize) -> u32 {
    u32::try_from(length).unwrap_or(u32::MAX)
}

/// Milliseconds as a number that divides; exact below 2^53, which is 285 thousand years.
#[allow(clippy::cast_precision_loss)]
const fn ms(ms: u64) -> f64 {
    ms as f64
}

/// A quantile between the values around it (type 7 of Hyndman and Fan 1996, Am Stat 50:361; from
/// memory), as the tablet computes it; zero of nothing.
fn quantile(values: &[u64], share: f64) -> f64 {
    let mut sorted = values.to_vec();
    sorted.sort_unstable();
    let Some(most) = sorted.len().checked_sub(1) else {
        return 0.0;
    };
    #[allow(
        clippy::cast_precision_loss,
        clippy::cast_possible_truncation,
        clippy::cast_sign_loss
    )]
    let (below, part) = {
        let place = most as f64 * share;
        (place.floor() as usize, place.fract())
    };
    let (low, high) = (sorted[below], sorted[(below + 1).min(most)]);
    ms(low) + ms(high - low) * part
}
