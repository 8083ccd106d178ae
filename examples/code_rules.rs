//! Prints the lines that `src/handover/rules_2.txt` lacks for the rules of today: `cargo run
//! --no-default-features --example code_rules >> src/handover/rules_2.txt`.
//!
//! Lines are only added, never changed: their places are the numbers by which rules travel.

use feedside::findings::catalogue;
use feedside::handover::shapes::{self, Shape};

fn main() {
    for rule in catalogue() {
        let shape = Shape {
            rule: rule.id,
            level: rule.level.as_word(),
            source: rule.source,
            call: rule.call.as_word(),
            numbers: rule
                .numbers
                .iter()
                .map(|(name, unit)| (*name, unit.as_word()))
                .collect(),
            tries: rule.tries.iter().map(|it| it.as_word()).collect(),
            plan: rule.plan.iter().map(|it| it.as_word()).collect(),
        };
        if !shapes::all().contains(&shape) {
            println!("{}", shape.line());
        }
    }
}
