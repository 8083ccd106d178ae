//! How right the rhythm is on simulated feeds whose truth is known, by level of the hand's noise.
//!
//! `cargo run --release --no-default-features --example accuracy [FEEDS [FIRST [WORLDS [FROM]]]]`
//! prints a row for each of so many worlds (see `worlds`) if they are asked for; else it prints a table for
//! each of two simulators: `practice`, and one that is built otherwise. A table has the share of
//! sucks in a wrong phase (looking back, by a pass that is told the feed's true numbers, live, and by a
//! naive rule), the error of the first flow, told and by that pass, how well runs are found, and
//! how often the 95 % intervals hold the truth, each with the standard error of that share.

mod cover;
mod informed;
mod naive;
mod other;
mod runs;
mod score;
mod told;
mod worlds;

use feedside::practice::{Baby, Hand, HandLevel};

use score::Score;
use told::Feed;

fn main() {
    let given = |at| std::env::args().nth(at).and_then(|it| it.parse().ok());
    let (feeds, first): (u64, u64) = (given(1).unwrap_or(600), given(2).unwrap_or(0));
    let seeds = first..first + feeds;
    if let Some(most) = given(3) {
        let from = given(4).unwrap_or(0);
        return worlds::table(from..from + most, &seeds);
    }
    println!("{feeds} feeds a level, seeds from {first} on.");
    println!(
        "\n`practice`, {} minutes, every kind of baby in turn:\n",
        told::MINUTES
    );
    let levels = HandLevel::ALL.iter().map(|it| (it.as_word(), it.hand()));
    table(seeds.clone(), levels, |hand, seed| {
        told::practice(Baby::ALL[seed as usize % Baby::ALL.len()], hand, seed)
    });
    println!("\nThe other simulator, 5 to 37 minutes:\n");
    table(seeds, other::HANDS.into_iter(), |hand, seed| {
        other::feed(&other::PLAIN, hand, seed)
    });
}

fn table<'a>(
    seeds: std::ops::Range<u64>,
    levels: impl Iterator<Item = (&'a str, Hand)>,
    feed: impl Fn(Hand, u64) -> Feed,
) {
    score::print_head(score::HEAD);
    for (name, hand) in levels {
        Score::of(seeds.clone().map(|seed| feed(hand, seed))).print(name);
    }
}
