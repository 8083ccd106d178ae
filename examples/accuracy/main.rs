//! How right the rhythm is on simulated feeds whose truth is known, by level of the hand's noise.
//!
//! `cargo run --release --no-default-features --example accuracy [FEEDS [FIRST [WORLDS [FROM]]]]`
//! prints a row for each of so many worlds (see `worlds`) if they are asked for; else it prints a table for
//! each of two simulators: `practice`, and one that is built otherwise. A table has the share of
//! sucks in a wrong phase (looking back, by a pass that is told the feed's true numbers, live, and by a
//! naive rule), the error of the first flow, told and by that pass, how well runs are found, how often
//! the 95 % intervals hold the truth, each with the standard error of that share, and how many sucks the
//! rhythm itself expects to have in a wrong phase, by the probabilities that it tells.
//!
//! `... --example accuracy lines FEEDS FIRST [WORLDS FROM]` prints the same feeds for another program (see
//! `lines`).

mod cover;
mod informed;
mod lines;
mod naive;
mod other;
mod runs;
mod score;
mod told;
mod worlds;

use feedside::practice::{Baby, Hand, HandLevel};

use score::Score;
use told::Feed;

/// A simulator's name, the names of its hands, and a feed by a hand from a seed.
struct Simulator {
    name: &'static str,
    hands: Vec<(&'static str, Hand)>,
    feed: fn(Hand, u64) -> Feed,
}

fn simulators() -> [Simulator; 2] {
    [
        Simulator {
            name: "practice",
            hands: HandLevel::ALL
                .iter()
                .map(|it| (it.as_word(), it.hand()))
                .collect(),
            feed: |hand, seed| {
                told::practice(Baby::ALL[seed as usize % Baby::ALL.len()], hand, seed)
            },
        },
        Simulator {
            name: "other",
            hands: other::HANDS.to_vec(),
            feed: |hand, seed| other::feed(&other::PLAIN, hand, seed),
        },
    ]
}

fn main() {
    let mut given: Vec<String> = std::env::args().skip(1).collect();
    let as_lines = given.first().is_some_and(|it| it == "lines");
    if as_lines {
        given.remove(0);
    }
    let number = |at: usize| given.get(at).and_then(|it| it.parse::<u64>().ok());
    let (feeds, first) = (number(0).unwrap_or(600), number(1).unwrap_or(0));
    let seeds = first..first + feeds;
    if let Some(most) = number(2) {
        let from = number(3).unwrap_or(0);
        return if as_lines {
            worlds::lines(from..from + most, &seeds);
        } else {
            worlds::table(from..from + most, &seeds);
        };
    }
    for simulator in simulators() {
        if !as_lines {
            println!(
                "\n`{}`, {feeds} feeds a level, seeds from {first} on:\n",
                simulator.name
            );
            score::print_head(score::HEAD);
        }
        for (name, hand) in simulator.hands {
            let feeds = seeds.clone().map(|seed| (simulator.feed)(hand, seed));
            if as_lines {
                lines::print(simulator.name, name, feeds);
            } else {
                Score::of(feeds).print(name);
            }
        }
    }
}
