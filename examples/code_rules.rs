//! Prints the lines that `src/handover/rules_2.txt` lacks for the rules of today: `cargo run
//! --no-default-features --example code_rules >> src/handover/rules_2.txt`.
//!
//! Lines are only added, never changed: their places are the numbers by which rules travel.

#[path = "../tests/it/handover/today.rs"]
mod today;

use feedside::handover::shapes;

fn main() {
    for shape in today::shapes().filter(|it| !shapes::all().contains(it)) {
        println!("{}", shape.line());
    }
}
