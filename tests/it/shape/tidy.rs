//! What holds for every Rust file: it says what it is for, it is listed, and it has no leftovers.

use std::path::Path;

use syn::buffer::{Cursor, TokenBuffer};
use syn::visit::{self, Visit};

use super::source::{files, none, root, shown, text};

fn rust_files() -> Vec<std::path::PathBuf> {
    let mut all = vec![root().join("build.rs")];
    for folder in ["src", "tests", "benches", "examples"] {
        all.extend(files(folder, &[".rs"]));
    }
    all
}

#[test]
fn every_rust_file_begins_by_saying_what_it_is_for() {
    let faults: Vec<_> = rust_files()
        .iter()
        .filter(|path| {
            !text(path)
                .lines()
                .next()
                .is_some_and(|line| line.starts_with("//! ") && 8 < line.len())
        })
        .map(|path| format!("{} does not begin with `//! …`", shown(path)))
        .collect();
    none(&faults);
}

#[test]
fn no_room_is_still_to_be_built() {
    let faults: Vec<_> = rust_files()
        .iter()
        .filter(|path| text(path).starts_with(concat!("//! Room to be", " built")))
        .map(|path| format!("{} is empty", shown(path)))
        .collect();
    none(&faults);
}

/// The modules that a file declares without a body.
fn declared(path: &std::path::Path) -> Vec<String> {
    let file = syn::parse_file(&text(path)).unwrap();
    file.items
        .iter()
        .filter_map(|item| match item {
            syn::Item::Mod(it) if it.content.is_none() => Some(it.ident.to_string()),
            _ => None,
        })
        .collect()
}

/// The files that Cargo itself looks for: what lies beside them is named by them.
fn is_looked_for_by_cargo(path: &Path) -> bool {
    let known = ["tests/it/main.rs", "src/lib.rs", "src/main.rs"].map(|it| root().join(it));
    let folders = ["src/bin", "examples"].map(|it| root().join(it));
    let beside = path.parent().unwrap();
    known.iter().any(|it| it == path)
        || folders.iter().any(|it| it == beside)
        || path.ends_with("main.rs") && folders.iter().any(|it| beside.parent() == Some(it))
}

#[test]
fn every_source_file_is_listed_where_it_lies() {
    let mut faults = Vec::new();
    let all = ["src", "tests", "examples"].map(|it| files(it, &[".rs"]));
    for path in all.into_iter().flatten() {
        let name = path.file_stem().unwrap().to_string_lossy().into_owned();
        if is_looked_for_by_cargo(&path) {
            continue;
        }
        let folder = path.parent().unwrap();
        let (name, lister_folder) = if name == "mod" {
            let inner = folder.file_name().unwrap().to_string_lossy().into_owned();
            (inner, folder.parent().unwrap())
        } else {
            (name, folder)
        };
        let listers = [
            lister_folder.join("mod.rs"),
            lister_folder.join("main.rs"),
            lister_folder.join("lib.rs"),
            lister_folder.with_extension("rs"),
        ];
        let mut listers = listers.iter().filter(|it| it.exists());
        if !listers.any(|it| declared(it).contains(&name)) {
            faults.push(format!(
                "{} is listed nowhere, so nothing of it counts",
                shown(&path)
            ));
        }
    }
    none(&faults);
}

/// Looks for leftovers outside of `#[cfg(test)]`.
#[derive(Default)]
struct Leftovers(Vec<String>);

const LEFT_MACROS: &[&str] = &["dbg", "todo", "unimplemented"];

fn is_for_tests(attributes: &[syn::Attribute]) -> bool {
    attributes.iter().any(|it| {
        it.path().is_ident("test")
            || it.path().is_ident("cfg")
                && it
                    .parse_args::<syn::Path>()
                    .is_ok_and(|path| path.is_ident("test"))
    })
}

impl Leftovers {
    /// `.unwrap()` in tokens that are not parsed.
    fn tokens(&mut self, mut cursor: Cursor<'_>) {
        let mut after_dot = false;
        while !cursor.eof() {
            if let Some((name, rest)) = cursor.ident() {
                if after_dot && name == "unwrap" {
                    self.0.push("unwrap".to_owned());
                }
                if LEFT_MACROS.iter().any(|it| name == *it)
                    && rest.punct().is_some_and(|(mark, _)| mark.as_char() == '!')
                {
                    self.0.push(format!("{name}!"));
                }
                (after_dot, cursor) = (false, rest);
            } else if let Some((mark, rest)) = cursor.punct() {
                (after_dot, cursor) = (mark.as_char() == '.', rest);
            } else if let Some((inside, _, _, rest)) = cursor.any_group() {
                self.tokens(inside);
                (after_dot, cursor) = (false, rest);
            } else if let Some((_, rest)) = cursor.token_tree() {
                (after_dot, cursor) = (false, rest);
            }
        }
    }
}

impl<'ast> Visit<'ast> for Leftovers {
    fn visit_item(&mut self, item: &'ast syn::Item) {
        let attributes: &[syn::Attribute] = match item {
            syn::Item::Mod(it) => &it.attrs,
            syn::Item::Fn(it) => &it.attrs,
            syn::Item::Impl(it) => &it.attrs,
            _ => &[],
        };
        if !is_for_tests(attributes) {
            visit::visit_item(self, item);
        }
    }

    fn visit_expr_method_call(&mut self, call: &'ast syn::ExprMethodCall) {
        if call.method == "unwrap" {
            self.0.push("unwrap".to_owned());
        }
        visit::visit_expr_method_call(self, call);
    }

    fn visit_macro(&mut self, mac: &'ast syn::Macro) {
        if let Some(name) = LEFT_MACROS.iter().find(|it| mac.path.is_ident(it)) {
            self.0.push(format!("{name}!"));
        }
        self.tokens(TokenBuffer::new2(mac.tokens.clone()).begin());
        visit::visit_macro(self, mac);
    }
}

fn leftovers(code: &str) -> Vec<String> {
    let mut left = Leftovers::default();
    left.visit_file(&syn::parse_file(code).unwrap());
    left.0
}

#[test]
fn nothing_is_left_over_outside_the_tests() {
    let mut faults = Vec::new();
    for path in rust_files().iter().filter(|path| {
        let inside = shown(path);
        inside == "build.rs" || inside.starts_with("src/")
    }) {
        for left in leftovers(&text(path)) {
            faults.push(format!("{}: `{left}`", shown(path)));
        }
    }
    none(&faults);
}

#[test]
fn leftovers_are_found_in_code_and_in_macros_but_not_in_tests() {
    for (code, found) in [
        ("fn f() { x.unwrap(); }", 1),
        ("fn f() { println!(\"{}\", x.unwrap()); }", 1),
        ("fn f() { x.unwrap_or(1); }", 0),
        ("fn f() { todo!() }", 1),
        ("fn f() { vec![dbg!(1)]; }", 1),
        ("/// x.unwrap()\nfn f() {}", 0),
        ("#[cfg(test)] mod tests { fn f() { x.unwrap(); } }", 0),
        (
            "#[cfg(feature = \"app\")] mod m { fn f() { x.unwrap(); } }",
            1,
        ),
    ] {
        assert_eq!(leftovers(code).len(), found, "{code}");
    }
}

/// Folders that belong to one machine. Written so that this file does not hold them.
const MACHINE_PATHS: &[&str] = &[
    concat!("/wo", "rk/"),
    concat!("/ro", "ot/"),
    concat!("/ho", "me/"),
    concat!("/Us", "ers/"),
    concat!("C:", "\\"),
];

#[test]
fn no_line_names_a_path_of_one_machine() {
    let ends = &[
        ".rs", ".slint", ".ftl", ".md", ".toml", ".sql", ".sh", ".py", ".mjs", ".json", ".csv",
        ".txt", "run",
    ];
    let mut all = vec![
        root().join("build.rs"),
        root().join("Cargo.toml"),
        root().join("README.md"),
        root().join("DEVELOPERS.md"),
    ];
    for folder in [
        "src",
        "ui",
        "tests",
        "benches",
        "translations",
        "assets",
        ".ci",
    ] {
        all.extend(files(folder, ends));
    }
    let mut faults = Vec::new();
    for path in all {
        for (index, line) in text(&path).lines().enumerate() {
            if MACHINE_PATHS.iter().any(|it| line.contains(it)) {
                faults.push(format!("{}:{}: {line}", shown(&path), index + 1));
            }
        }
    }
    none(&faults);
}
