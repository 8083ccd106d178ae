//! Simulated babies against the published figures for feeding at the breast.
//!
//! They are not held to what was measured at a bottle, a pacifier or a pump alone, nor to what is
//! not simulated: breaths, volumes, vacuum, feeds in a day.

use feedside::practice::Baby::{self, Established, Preterm};
use feedside::practice::TruthPhase::{Flow, Quick};

use super::counted::feeds;
use super::told::{
    Told, deviation, ejections, mean, median, per_feed, share_between, share_of_ejections_in_range,
    share_with_fewer_sucks_a_swallow_in_flow, sucks_a_swallow, swallows_per_min,
};

/// A published figure.
struct Figure {
    baby: Baby,
    what: &'static str,
    told: Told,
    held_to: (f64, f64),
    source: &'static str,
}

const HARTMANN: &str = "Hartmann, McClellan and others 2011, FASEB J 25 suppl 589.1";
const RAMSAY: &str = "Ramsay and others 2004, Pediatrics 113:361: 2.5 ± 1.5 in 62 feeds";

/// A value, give or take one of so many parts of it.
const fn about(value: f64, parts: f64) -> (f64, f64) {
    (value - value / parts, value + value / parts)
}

/// A share that leaves out those that chance puts beyond a range.
const NEARLY_ALL: (f64, f64) = (0.95, 1.0);

/// The first study gives neither a spread nor how many babies it saw: its means are held to a
/// twentieth for rates, which are steady, and to an eighth for counts of swallows.
const FIGURES: [Figure; 14] = [
    Figure {
        baby: Established,
        what: "sucks a minute in flow",
        told: |it| mean(&per_feed(it, Flow).rates),
        held_to: about(90.0, 20.0),
        source: HARTMANN,
    },
    Figure {
        baby: Established,
        what: "quick sucks a minute",
        told: |it| mean(&per_feed(it, Quick).rates),
        held_to: about(107.0, 20.0),
        source: HARTMANN,
    },
    Figure {
        baby: Established,
        what: "sucks a swallow in flow",
        told: |it| mean(&per_feed(it, Flow).ratios),
        held_to: about(2.5, 8.0),
        source: HARTMANN,
    },
    Figure {
        baby: Established,
        what: "quick sucks a swallow",
        told: |it| mean(&per_feed(it, Quick).ratios),
        held_to: about(6.7, 8.0),
        source: HARTMANN,
    },
    Figure {
        baby: Established,
        what: "swallows a minute in flow: 90 over 2.5",
        told: |it| swallows_per_min(it, Flow),
        held_to: about(36.0, 8.0),
        source: HARTMANN,
    },
    Figure {
        baby: Established,
        what: "swallows a minute of quick sucks: 107 over 6.7",
        told: |it| swallows_per_min(it, Quick),
        held_to: about(16.0, 8.0),
        source: HARTMANN,
    },
    Figure {
        baby: Established,
        what: "share of babies between 1.3 and 8.7 sucks a swallow in flow, the published range",
        told: |it| share_between(&per_feed(it, Flow).ratios, 1.3, 8.7),
        held_to: NEARLY_ALL,
        source: HARTMANN,
    },
    Figure {
        baby: Established,
        what: "share of babies between 2.5 and 23 quick sucks a swallow, the published range",
        told: |it| share_between(&per_feed(it, Quick).ratios, 2.5, 23.0),
        held_to: NEARLY_ALL,
        source: HARTMANN,
    },
    Figure {
        baby: Established,
        what: "share of feeds where flow takes fewer sucks a swallow than quick sucks do",
        told: share_with_fewer_sucks_a_swallow_in_flow,
        held_to: NEARLY_ALL,
        source: "Geddes and others 2021, Nutrients: within one feed the ratio goes with the flow",
    },
    Figure {
        baby: Established,
        what: "ejections a feed",
        told: |it| mean(&ejections(it)),
        // Its own 95 % interval: 1.96 times 1.5 over the root of 62.
        held_to: (2.13, 2.87),
        source: RAMSAY,
    },
    Figure {
        baby: Established,
        what: "standard deviation of ejections a feed",
        told: |it| deviation(&ejections(it)),
        // Its own 95 % interval, by chi-squared of 61 degrees of freedom.
        held_to: (1.27, 1.82),
        source: RAMSAY,
    },
    Figure {
        baby: Established,
        what: "share of ejections of 45 s to 3.5 min, of those that quick sucks follow",
        told: share_of_ejections_in_range,
        // A flow is seen from its first suck to its last, so that a rest at an end shortens it.
        held_to: NEARLY_ALL,
        source: "Gardner and others 2015, BMC Pregnancy Childbirth 15:156",
    },
    Figure {
        baby: Established,
        what: "seconds to the first ejection, median",
        told: |it| median(it.iter().filter_map(|it| it.first_flow_s).collect()),
        held_to: about(56.0, 8.0),
        source: "Kent and others 2003, J Hum Lact 19:179, from memory: about 56 s, a mean",
    },
    Figure {
        baby: Preterm,
        what: "sucks a swallow in flow: 2 to 4",
        told: |it| sucks_a_swallow(it, Flow),
        held_to: (2.0, 4.0),
        source: "as quoted in Matern Health Neonatol Perinatol 2019, 40748-019-0113-9",
    },
];

#[test]
fn figures_come_out_as_published() {
    let mut wrong = Vec::new();
    for it in &FIGURES {
        let told = (it.told)(feeds(it.baby));
        let line = format!(
            "{:?}, {}: {told:.3}, held to {:?} ({})",
            it.baby, it.what, it.held_to, it.source
        );
        println!("{line}");
        let (low, high) = it.held_to;
        wrong.extend((!(low..=high).contains(&told)).then_some(line));
    }
    assert!(wrong.is_empty(), "{wrong:#?}");
}
