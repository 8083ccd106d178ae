//! A simulated feed counted from its sucks, as by an observer who misses nothing. The truth's
//! phases only say which one a suck lies in; nothing of how the feed was drawn is asked.

use std::sync::LazyLock;

use feedside::practice::{Baby, HandLevel, Truth, TruthPhase, simulate};
use feedside::record::At;

/// So many feeds of each kind of baby.
const FEEDS: u64 = 240;
/// Their length: the usual breastfeed (Kent and others 2006, Pediatrics 117:e387, as reported from
/// it).
const MINUTES: u32 = 16;
/// A longer gap is a rest (from memory, the usual definition in work on nutritive sucking).
const REST_MS: u64 = 2_000;

/// A jaw movement.
pub struct Suck {
    pub at: At,
    pub phase: TruthPhase,
    /// When, as a share of the feed.
    pub share: f64,
    pub swallow: bool,
    /// The gap before it and the phase of the suck before, if both are of one run.
    pub gap: Option<(f64, TruthPhase)>,
}

/// A run, or the rest after one.
pub struct Stretch {
    pub share: f64,
    /// Sucks of a run, milliseconds of a rest.
    pub size: f64,
}

/// Milk flowing until another way of sucking follows.
pub struct Flow {
    pub ms: f64,
    pub then: TruthPhase,
}

/// One feed.
pub struct Feed {
    pub sucks: Vec<Suck>,
    pub runs: Vec<Stretch>,
    pub rests: Vec<Stretch>,
    pub ejections: u32,
    /// Those after which the baby sucked another way.
    pub flows: Vec<Flow>,
    pub first_flow_s: Option<f64>,
}

static ALL: LazyLock<Vec<Vec<Feed>>> = LazyLock::new(|| {
    let feed = |baby, seed| {
        let simulated = simulate(baby, HandLevel::Perfect.hand(), seed, MINUTES);
        Feed::of(&simulated.truth)
    };
    let feeds = |baby| (0..FEEDS).map(|seed| feed(baby, seed)).collect();
    Baby::ALL.iter().map(|baby| feeds(*baby)).collect()
});

/// The feeds of one kind of baby.
pub fn feeds(baby: Baby) -> &'static [Feed] {
    let place = Baby::ALL.iter().position(|it| *it == baby);
    &ALL[place.unwrap()]
}

impl Feed {
    fn of(truth: &Truth) -> Self {
        let end_ms = truth.phases.last().unwrap().to.as_ms() as f64;
        let share = |at: At| at.as_ms() as f64 / end_ms;
        let was_off = |from: At, to: At| {
            let mut off = truth.phases.iter().filter(|it| it.phase == TruthPhase::Off);
            off.any(|it| from < it.to && it.from < to)
        };
        let mut sucks: Vec<Suck> = Vec::new();
        let (mut runs, mut rests) = (Vec::<Stretch>::new(), Vec::new());
        for (at, swallow) in &truth.sucks {
            let before = sucks.last().map(|it| (it.at, it.phase));
            let gap = before
                .map(|(last, phase)| (at.since_ms(last), phase))
                .filter(|it| it.0 <= REST_MS);
            match runs.last_mut() {
                Some(run) if gap.is_some() => run.size += 1.0,
                _ => {
                    rests.extend(before.filter(|it| !was_off(it.0, *at)).map(|it| Stretch {
                        share: share(it.0),
                        size: at.since_ms(it.0) as f64,
                    }));
                    runs.push(Stretch {
                        share: share(*at),
                        size: 1.0,
                    });
                }
            }
            sucks.push(Suck {
                at: *at,
                phase: truth.phase_at(*at).unwrap(),
                share: share(*at),
                swallow: *swallow,
                gap: gap.map(|(ms, phase)| (ms as f64, phase)),
            });
        }
        let (ejections, flows) = flows(truth);
        Self {
            sucks,
            runs,
            rests,
            ejections,
            flows,
            first_flow_s: truth.first_flow.map(|it| it.as_ms() as f64 / 1_000.0),
        }
    }
}

/// How often the milk flowed, and how long each time but one that the feed ended. Neither a rest
/// nor coming off ends a flow, another way of sucking does.
fn flows(truth: &Truth) -> (u32, Vec<Flow>) {
    let (mut count, mut flows) = (0, Vec::new());
    let mut flowing: Option<(At, At)> = None;
    for span in &truth.phases {
        match (span.phase, flowing) {
            (TruthPhase::Flow, None) => {
                count += 1;
                flowing = Some((span.from, span.to));
            }
            (TruthPhase::Flow, Some((from, _))) => flowing = Some((from, span.to)),
            (TruthPhase::Quick | TruthPhase::Flutter, Some((from, to))) => {
                let ms = to.since_ms(from) as f64;
                let then = span.phase;
                flows.push(Flow { ms, then });
                flowing = None;
            }
            _ => {}
        }
    }
    (count, flows)
}
