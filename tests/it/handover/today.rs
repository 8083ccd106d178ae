//! The rules of today as the frozen list writes a rule; for the tests, and for the program that
//! prints the lines that the list lacks.

use feedside::findings::catalogue;
use feedside::handover::shapes::Shape;

/// What every finding of each rule has in common, in the catalogue's order.
pub fn shapes() -> impl Iterator<Item = Shape> {
    catalogue().map(|rule| Shape {
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
    })
}
