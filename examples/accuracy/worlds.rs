//! The second simulator with other numbers and other orders of phases: what the rhythm comes to in
//! worlds. Some of these served to choose its starting numbers, others did not: `DEVELOPERS.md` says
//! which.

use feedside::practice::Hand;

use crate::lines;
use crate::other::{self, World};
use crate::score::{self, Score};
use crate::told::Feed;

/// The feeds of a world by a hand. Each world has feeds of its own: the same chances in all would be
/// one draw, told often.
fn feeds(world: &World, hand: Hand, seeds: &std::ops::Range<u64>) -> impl Iterator<Item = Feed> {
    let after = world.number * (seeds.end - seeds.start);
    (seeds.start + after..seeds.end + after).map(move |seed| other::feed(world, hand, seed))
}

/// Prints a line for each feed of each world.
pub fn lines(worlds: std::ops::Range<u64>, seeds: &std::ops::Range<u64>) {
    for number in worlds {
        let world = World::drawn(number);
        let name = format!("worlds, {}", world.order.as_word());
        for (hand_name, hand) in other::HANDS {
            lines::print(&name, hand_name, feeds(&world, hand, seeds));
        }
    }
}

/// Prints a row for each world: the ratio to the informed pass by hand, and how often intervals
/// hold over all hands.
pub fn table(worlds: std::ops::Range<u64>, seeds: &std::ops::Range<u64>) {
    score::print_head(
        "| world | phases follow | kinds | wrong, informed | ratio: best | good | fair | worst | live | 90th of first flow over informed's | rate, phase | rate, feed | ratio, phase | ratio, feed |",
    );
    let mut ratios: [Vec<f64>; 4] = Default::default();
    for number in worlds {
        let world = World::drawn(number);
        let mut all = Score::default();
        let mut row = Vec::new();
        for ((_, hand), ratios) in other::HANDS.into_iter().zip(&mut ratios) {
            let score = Score::of(feeds(&world, hand, seeds));
            ratios.push(score.ratio());
            row.push(format!("{:.2}", score.ratio()));
            all.join(score);
        }
        println!(
            "| {number} | {} | {} | {:.1} % | {} | {} |",
            world.order.as_word(),
            if world.kinds == 0.0 { "no" } else { "yes" },
            all.wrong_informed(),
            row.join(" | "),
            all.told_of_world(),
        );
    }
    let mut means = Vec::new();
    for ratios in &mut ratios {
        ratios.sort_by(f64::total_cmp);
        let ln: f64 = ratios.iter().map(|it| it.ln()).sum();
        let within = ratios.iter().filter(|it| **it < 1.205).count();
        means.push(format!(
            "{:.2} ({:.2} to {:.2}, {within} of {} at most 1.2)",
            (ln / ratios.len() as f64).exp(),
            ratios[0],
            ratios[ratios.len() - 1],
            ratios.len()
        ));
    }
    println!(
        "\nRatio, geometric mean over worlds (least to most): {}",
        means.join("; ")
    );
}
