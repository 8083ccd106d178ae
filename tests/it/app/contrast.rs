//! The contrasts of the colours in `ui/theme.slint`, by day and by night.
//!
//! Source: W3C, Web Content Accessibility Guidelines 2.2, "relative luminance" and "contrast ratio"
//! (definitions from memory); 7:1 is its criterion 1.4.6, 3:1 its criterion 1.4.11.

fn channel(value: u8) -> f64 {
    let part = f64::from(value) / 255.0;
    if part <= 0.04045 {
        part / 12.92
    } else {
        ((part + 0.055) / 1.055).powf(2.4)
    }
}

fn luminance(hex: &str) -> f64 {
    let part = |from: usize| channel(u8::from_str_radix(&hex[from..from + 2], 16).unwrap());
    0.2126 * part(0) + 0.7152 * part(2) + 0.0722 * part(4)
}

fn contrast(one: &str, other: &str) -> f64 {
    let (one, other) = (luminance(one), luminance(other));
    (one.max(other) + 0.05) / (one.min(other) + 0.05)
}

/// A colour's six hexadecimal figures by night or by day.
fn colour(name: &str, night: bool) -> String {
    let theme = include_str!("../../../ui/theme.slint");
    let start = format!("<color> {name}: night ? #");
    let rest = theme
        .split(&start)
        .nth(1)
        .unwrap_or_else(|| panic!("{name}"));
    let (by_night, rest) = rest.split_once(" : #").unwrap();
    if night { by_night } else { &rest[..6] }.to_owned()
}

fn below(pairs: &[(&str, &str)], least: f64) -> Vec<String> {
    let mut faults = Vec::new();
    for (over, under) in pairs {
        for night in [false, true] {
            let found = contrast(&colour(over, night), &colour(under, night));
            if found < least {
                faults.push(format!("{over} on {under}, night {night}: {found:.2}"));
            }
        }
    }
    faults
}

#[test]
fn black_on_white_is_twenty_one_to_one() {
    assert!((contrast("000000", "FFFFFF") - 21.0).abs() < 1e-9);
    assert!((contrast("777777", "777777") - 1.0).abs() < 1e-9);
}

#[test]
fn every_text_stands_at_seven_to_one_on_its_ground() {
    let pairs = [
        ("ink", "paper"),
        ("ink", "card"),
        ("soft", "paper"),
        ("soft", "card"),
        ("seen", "seen-ground"),
        ("not-seen", "not-seen-ground"),
        ("ink", "unclear-ground"),
        ("soft", "unclear-ground"),
        ("soft", "flow-ground"),
        ("ink", "flow-ground"),
        ("not-seen", "paper"),
        ("flow", "flow-ground"),
        ("flow", "card"),
        ("pad-ink", "pad-suck"),
        ("pad-ink", "pad-suck-down"),
        ("pad-ink", "pad-swallow"),
        ("pad-ink", "pad-swallow-down"),
        ("review", "review-ground"),
        ("review", "card"),
        ("review", "paper"),
    ];
    assert_eq!(below(&pairs, 7.0), Vec::<String>::new());
}

#[test]
fn every_edge_with_a_meaning_stands_at_three_to_one() {
    assert_eq!(
        below(
            &[
                ("edge", "card"),
                ("edge", "paper"),
                ("flow", "flow-ground"),
                ("ink", "flow-ground"),
            ],
            3.0
        ),
        Vec::<String>::new()
    );
}
