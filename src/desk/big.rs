//! Digits large enough to be read across a desk, in plain characters.

/// Each digit as five rows of three dots, the top row first, the left dot the highest bit.
/// The project's own drawing.
const DIGITS: [[u8; 5]; 10] = [
    [0b111, 0b101, 0b101, 0b101, 0b111],
    [0b010, 0b110, 0b010, 0b010, 0b111],
    [0b111, 0b001, 0b111, 0b100, 0b111],
    [0b111, 0b001, 0b011, 0b001, 0b111],
    [0b101, 0b101, 0b111, 0b001, 0b001],
    [0b111, 0b100, 0b111, 0b001, 0b111],
    [0b111, 0b100, 0b111, 0b101, 0b111],
    [0b111, 0b001, 0b010, 0b010, 0b010],
    [0b111, 0b101, 0b111, 0b101, 0b111],
    [0b111, 0b101, 0b111, 0b001, 0b111],
];

/// Digits in groups, five lines high; whatever is no digit is a gap.
pub(super) fn big(grouped: &str) -> String {
    let mut lines: [String; 5] = std::array::from_fn(|_| "  ".to_owned());
    for c in grouped.chars() {
        match c.to_digit(10) {
            Some(digit) => {
                for (line, dots) in lines.iter_mut().zip(DIGITS[digit as usize]) {
                    for bit in [0b100, 0b010, 0b001] {
                        line.push_str(if dots & bit == 0 { "  " } else { "██" });
                    }
                    line.push_str("  ");
                }
            }
            None => lines.iter_mut().for_each(|line| line.push_str("    ")),
        }
    }
    lines
        .iter()
        .map(|line| format!("{}\n", line.trim_end()))
        .collect()
}
