//! The Slint files hold no sentence: whatever people read comes from the translations.

use super::source::{files, none, shown, text};

/// Properties whose value people see or hear.
fn is_shown(name: &str) -> bool {
    const WHOLE: &[&str] = &[
        "text", "title", "label", "hint", "caption", "name", "tooltip",
    ];
    const ENDS: &[&str] = &[
        "-text",
        "-title",
        "-label",
        "-hint",
        "-caption",
        "-description",
    ];
    let accessible_text = name == "accessible-value";
    WHOLE.contains(&name) || ENDS.iter().any(|end| name.ends_with(end)) || accessible_text
}

/// The program's name is the same in every language.
const OWN_NAME: &str = "Feedside";

/// One piece of a Slint file: a comment is none.
#[derive(Debug, PartialEq, Clone)]
enum Piece {
    /// A word: a name, a keyword, a number with its unit.
    Word(String),
    /// The inside of a string literal, without its interpolations.
    Literal(String),
    /// Any other character.
    Mark(char),
}

/// Cuts a Slint file into pieces with their lines.
fn pieces(code: &str) -> Vec<(usize, Piece)> {
    let mut found = Vec::new();
    let chars: Vec<char> = code.chars().collect();
    let (mut i, mut line) = (0, 1);
    while i < chars.len() {
        let start = line;
        match chars[i] {
            '\n' => line += 1,
            '/' if chars.get(i + 1) == Some(&'/') => {
                while i + 1 < chars.len() && chars[i + 1] != '\n' {
                    i += 1;
                }
            }
            '/' if chars.get(i + 1) == Some(&'*') => {
                while i + 1 < chars.len() && !(chars[i] == '*' && chars[i + 1] == '/') {
                    line += usize::from(chars[i] == '\n');
                    i += 1;
                }
                i += 1;
            }
            '"' => {
                let mut inside = String::new();
                let mut depth = 0;
                i += 1;
                while i < chars.len() && (chars[i] != '"' || 0 < depth) {
                    match (chars[i], chars.get(i + 1)) {
                        ('\\', Some('{')) if depth == 0 => {
                            depth = 1;
                            i += 1;
                        }
                        ('\\', Some(_)) if depth == 0 => i += 1,
                        ('{', _) if 0 < depth => depth += 1,
                        ('}', _) if 0 < depth => depth -= 1,
                        (c, _) if depth == 0 => inside.push(c),
                        _ => {}
                    }
                    i += 1;
                }
                found.push((start, Piece::Literal(inside)));
            }
            c if c.is_alphanumeric() || c == '_' => {
                let mut word = String::from(c);
                while let Some(next) = chars.get(i + 1)
                    && (next.is_alphanumeric() || matches!(next, '_' | '-'))
                {
                    word.push(*next);
                    i += 1;
                }
                found.push((start, Piece::Word(word)));
            }
            c if c.is_whitespace() => {}
            c => found.push((start, Piece::Mark(c))),
        }
        i += 1;
    }
    found
}

/// The literals that people would see: in a shown property's binding or default, except defaults
/// inside a `global` (they fill previews, and the program overwrites them).
fn shown_literals(code: &str) -> Vec<(usize, String)> {
    let all = pieces(code);
    let mut found = Vec::new();
    let mut depth = 0_i32;
    let mut global_until = None;
    let mut i = 0;
    while i < all.len() {
        match &all[i].1 {
            Piece::Word(word) if word == "global" && global_until.is_none() => {
                global_until = Some(depth);
            }
            Piece::Mark('{') => depth += 1,
            Piece::Mark('}') => {
                depth -= 1;
                if global_until == Some(depth) {
                    global_until = None;
                }
            }
            Piece::Word(name)
                if is_shown(name)
                    && global_until.is_none()
                    && all.get(i + 1).is_some_and(|it| it.1 == Piece::Mark(':')) =>
            {
                i += 2;
                let mut inner = 0;
                while i < all.len() {
                    match &all[i].1 {
                        Piece::Mark(';' | ',') if inner == 0 => break,
                        Piece::Mark('}') if inner == 0 => {
                            i -= 1;
                            break;
                        }
                        Piece::Mark('{' | '(') => inner += 1,
                        Piece::Mark('}' | ')') => inner -= 1,
                        Piece::Literal(inside)
                            if inside.chars().any(char::is_alphabetic)
                                && inside != OWN_NAME
                                && !is_compared(&all, i) =>
                        {
                            found.push((all[i].0, inside.clone()));
                        }
                        _ => {}
                    }
                    i += 1;
                }
            }
            _ => {}
        }
        i += 1;
    }
    found
}

/// Whether the literal is only compared with: `word == "flow"`.
fn is_compared(all: &[(usize, Piece)], i: usize) -> bool {
    let mark = |back: usize| i.checked_sub(back).map(|at| &all[at].1);
    mark(1) == Some(&Piece::Mark('=')) && matches!(mark(2), Some(Piece::Mark('=' | '!')))
}

#[test]
fn no_sentence_shown_to_people_stands_in_a_slint_file() {
    let mut faults = Vec::new();
    for path in files("ui", &[".slint"]) {
        let code = text(&path);
        for (line, literal) in shown_literals(&code) {
            faults.push(format!("{}:{line}: \"{literal}\"", shown(&path)));
        }
        for (line, piece) in pieces(&code) {
            if piece == Piece::Word("tr".to_owned()) {
                faults.push(format!("{}:{line}: @tr", shown(&path)));
            }
        }
    }
    none(&faults);
}

#[test]
fn shown_literals_are_found_and_others_are_not() {
    for (code, expected) in [
        ("Text { text: \"Hello\"; }", vec!["Hello"]),
        ("Text { text: a ? \"Yes\" : Strings.no; }", vec!["Yes"]),
        ("T { accessible-label:\n  \"Suck \\{n}\"; }", vec!["Suck "]),
        ("Text { text: \"\\{Strings.a} · 12 %\"; }", vec![]),
        (
            "Text { text: kind == \"flow\" ? Strings.a : Strings.b; }",
            vec![],
        ),
        ("// text: \"Hello\"\n/* title: \"Hello\" */ T { }", vec![]),
        (
            "import { A } from \"parts/a.slint\"; T { f: @image-url(\"a.svg\"); }",
            vec![],
        ),
        (
            "export global G { in property <string> title: \"Bay 3\"; }",
            vec![],
        ),
        (
            "component C { in property <string> title: \"Bay 3\"; }",
            vec!["Bay 3"],
        ),
        (
            "global G { } component C { Text { text: \"Hello\" } }",
            vec!["Hello"],
        ),
        ("W { title: \"Feedside\"; }", vec![]),
        ("T { clicked => { root.tapped(\"suck\"); } }", vec![]),
    ] {
        let found: Vec<_> = shown_literals(code).into_iter().map(|it| it.1).collect();
        assert_eq!(found, expected, "{code}");
    }
}
