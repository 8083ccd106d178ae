//! Reads the translations, fails on a broken or doubled message, and writes what is made of them:
//! `ids.rs`, `strings.slint` and `strings_fill.rs` in `OUT_DIR`. With the feature `app` it then
//! compiles the screens.
//!
//! Knows nothing of what a message is about; that all languages say the same things is a test's
//! business.

use std::collections::BTreeMap;
use std::fmt::Write as _;
use std::path::{Path, PathBuf};
use std::{env, fs};

use fluent_syntax::ast::{Entry, Expression, InlineExpression, Message, Pattern, PatternElement};

/// The areas whose messages without arguments become properties that the screens read.
const SCREEN_AREAS: &[&str] = &[
    "frame",
    "ward",
    "pair",
    "before",
    "bedside",
    "looking-back",
    "month",
    "plan",
    "practice",
    "handover",
    "settings",
];

/// Those that the desk's window reads.
const CLERK_AREAS: &[&str] = &["clerk"];

/// The language that all others follow.
const SOURCE: &str = "en";

/// One message of the source language: its area, and its text if it needs no argument.
struct Said {
    area: String,
    plain: Option<String>,
}

fn main() {
    println!("cargo:rerun-if-changed=build.rs");
    println!("cargo:rerun-if-changed=translations");
    let root = PathBuf::from(env::var_os("CARGO_MANIFEST_DIR").expect("cargo sets it"));
    let out = PathBuf::from(env::var_os("OUT_DIR").expect("cargo sets it"));

    let mut faults = Vec::new();
    let mut source = BTreeMap::new();
    for folder in sorted(&root.join("translations")) {
        let said = language(&folder, &mut faults);
        if folder.ends_with(SOURCE) {
            source = said;
        }
    }
    for fault in &faults {
        println!("cargo::error={fault}");
    }
    if !faults.is_empty() {
        return;
    }

    write(&out.join("ids.rs"), &ids_rs(&source));
    for (areas, name, of) in [
        (SCREEN_AREAS, "strings", "Strings"),
        (CLERK_AREAS, "clerk_strings", "ClerkStrings"),
    ] {
        let shown: Vec<_> = source
            .iter()
            .filter(|(_, said)| areas.contains(&said.area.as_str()))
            .filter_map(|(id, said)| Some((id.as_str(), said.plain.as_deref()?)))
            .collect();
        write(
            &out.join(format!("{name}.slint")),
            &strings_slint(of, &shown),
        );
        write(&out.join(format!("{name}_fill.rs")), &fill_rs(of, &shown));
    }

    #[cfg(any(feature = "app", feature = "window"))]
    screens(&root, &out);
}

/// Compiles the screens of the tablet and the desk's window; their words are found in `OUT_DIR`.
#[cfg(any(feature = "app", feature = "window"))]
fn screens(root: &Path, out: &Path) {
    println!("cargo:rerun-if-changed=ui");
    for (is_wanted, from) in [
        (cfg!(feature = "app"), "ui/app.slint"),
        (cfg!(feature = "window"), "ui/clerk.slint"),
    ] {
        if !is_wanted || !root.join(from).exists() {
            continue;
        }
        let config = slint_build::CompilerConfiguration::new()
            .with_include_paths(vec![out.to_owned()])
            .with_style("fluent".to_owned())
            // Lets the tests find what is on a screen; a released program does without.
            .with_debug_info(std::env::var("PROFILE").is_ok_and(|it| it == "debug"));
        // Written to `OUT_DIR` under the file's own name.
        if let Err(error) = slint_build::compile_with_config(from, config) {
            println!("cargo::error={from}: {error}");
        }
    }
}

/// Everything in a folder, by name, so that the output is the same on every machine.
fn sorted(folder: &Path) -> Vec<PathBuf> {
    let entries = fs::read_dir(folder).expect("the folder of translations can be read");
    let mut paths: Vec<_> = entries.flatten().map(|entry| entry.path()).collect();
    paths.sort();
    paths
}

/// All messages of one language by id.
fn language(folder: &Path, faults: &mut Vec<String>) -> BTreeMap<String, Said> {
    let mut all: BTreeMap<String, Said> = BTreeMap::new();
    for path in sorted(folder) {
        if path.extension().is_none_or(|it| it != "ftl") {
            continue;
        }
        let shown = path.display();
        let area = path.file_stem().unwrap_or_default().to_string_lossy();
        let text = fs::read_to_string(&path).expect("a translation is a text in UTF-8");
        let resource = match fluent_syntax::parser::parse(text.as_str()) {
            Ok(resource) => resource,
            Err((resource, errors)) => {
                for error in errors {
                    let line = text[..error.pos.start.min(text.len())]
                        .matches('\n')
                        .count()
                        + 1;
                    faults.push(format!("{shown}:{line}: {error}"));
                }
                resource
            }
        };
        for entry in &resource.body {
            let Entry::Message(message) = entry else {
                continue;
            };
            let id = message.id.name;
            let Some(value) = &message.value else {
                faults.push(format!("{shown}: `{id}` has no text"));
                continue;
            };
            if !is_kebab(id) {
                faults.push(format!(
                    "{shown}: `{id}` is not small letters, digits and single hyphens"
                ));
            }
            let said = Said {
                area: area.clone().into_owned(),
                plain: plain(message, value),
            };
            if let Some(before) = all.insert(id.to_owned(), said) {
                faults.push(format!("{shown}: `{id}` stands in {}.ftl too", before.area));
            }
        }
    }
    all
}

/// Ids must also be names in Slint and, with underscores, in Rust.
fn is_kebab(id: &str) -> bool {
    id.starts_with(|c: char| c.is_ascii_lowercase())
        && !id.ends_with('-')
        && !id.contains("--")
        && id
            .bytes()
            .all(|b| b.is_ascii_lowercase() || b.is_ascii_digit() || b == b'-')
}

/// The text of a message that needs no argument. A reference to another message stands as its id:
/// it is only what a preview shows.
fn plain(message: &Message<&str>, value: &Pattern<&str>) -> Option<String> {
    let mut text = String::new();
    for element in &value.elements {
        match element {
            PatternElement::TextElement { value } => text.push_str(value),
            PatternElement::Placeable { expression } => match expression {
                Expression::Inline(InlineExpression::StringLiteral { value }) => {
                    text.push_str(&fluent_syntax::unicode::unescape_unicode_to_string(value));
                }
                Expression::Inline(InlineExpression::NumberLiteral { value }) => {
                    text.push_str(value);
                }
                Expression::Inline(
                    InlineExpression::MessageReference { .. }
                    | InlineExpression::TermReference { .. },
                ) => {
                    text.push_str(message.id.name);
                }
                _ => return None,
            },
        }
    }
    Some(text)
}

fn ids_rs(source: &BTreeMap<String, Said>) -> String {
    let mut text = String::from(
        "/// The ids of all messages, sorted.\n#[rustfmt::skip]\npub const IDS: &[&str] = &[\n",
    );
    for id in source.keys() {
        let _ = writeln!(text, "    {id:?},");
    }
    text + "];\n"
}

/// One property for each message; its default is the English text, so that previews read well.
fn strings_slint(name: &str, shown: &[(&str, &str)]) -> String {
    let mut text = format!("export global {name} {{\n");
    for (id, plain) in shown {
        let quoted = plain
            .replace('\\', "\\\\")
            .replace('"', "\\\"")
            .replace('\n', "\\n");
        let _ = writeln!(text, "    in property <string> {id}: \"{quoted}\";");
    }
    text + "}\n"
}

fn fill_rs(name: &str, shown: &[(&str, &str)]) -> String {
    let mut text = format!(
        "/// Puts every plain message into the screens, in the language that `word` speaks.\n\
         #[rustfmt::skip]\n\
         pub fn fill(strings: &ui::{name}, word: &dyn Fn(&str) -> String) {{\n",
    );
    for (id, _) in shown {
        let name = id.replace('-', "_");
        let _ = writeln!(text, "    strings.set_{name}(word({id:?}).into());");
    }
    text + "}\n"
}

fn write(path: &Path, text: &str) {
    fs::write(path, text).expect("OUT_DIR can be written to");
}
