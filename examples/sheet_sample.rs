//! Writes a sample page with letters of both directions as PDF, for the checks from outside.
//!
//! Usage: `sheet_sample FILE.pdf`

use feedside::record::WallTime;
use feedside::report::pdf::write;
use feedside::report::printed::{Block, Printed, Table, isolated};
use feedside::words::Lang;

/// "Hello", "the weight is … today" and a name, in Arabic letters.
const HELLO: &str = "\u{645}\u{631}\u{62d}\u{628}\u{627}";
const THE_WEIGHT: &str = "\u{627}\u{644}\u{648}\u{632}\u{646}";
const TODAY: &str = "\u{627}\u{644}\u{64a}\u{648}\u{645}";
const NAME: &str = "\u{633}\u{627}\u{631}\u{629}";

fn main() -> Result<(), Box<dyn std::error::Error>> {
    let file = std::env::args().nth(1).ok_or("say where to write")?;
    let made = WallTime::new(1_772_442_600_000, 0)?;
    let mut page = Printed::new(HELLO.to_owned(), Lang::En, made);
    page.right_to_left = true;
    let weight = isolated("3049\u{a0}g");
    page.foot = format!("{THE_WEIGHT} {weight}");
    page.blocks = vec![
        Block::Text(format!("{THE_WEIGHT} {weight} {TODAY}.")),
        Block::List(vec![HELLO.to_owned(), TODAY.to_owned()]),
        Block::Text(format!("Ask for {} at bed 4.", NAME)),
        Block::Table(Table {
            head: vec![THE_WEIGHT.to_owned(), TODAY.to_owned()],
            rows: vec![vec![weight, HELLO.to_owned()]],
            shares: vec![1, 1],
        }),
    ];
    std::fs::write(file, write(&page)?.bytes)?;
    Ok(())
}
