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
    let mut text = String::new();
    for row in 0..5 {
        let mut line = String::from("  ");
        for c in grouped.chars() {
            match c.to_digit(10) {
                Some(digit) => {
                    let dots = DIGITS[digit as usize][row];
                    for bit in [0b100, 0b010, 0b001] {
                        line.push_str(if dots & bit == 0 { "  " } else { "██" });
                    }
                    line.push_str("  ");
                }
                None => line.push_str("    "),
            }
        }
        text.push_str(line.trim_end());
        text.push('\n');
    }
    text
}
