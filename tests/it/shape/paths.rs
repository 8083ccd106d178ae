//! Every path that a Rust file names, parsed with `syn`: in imports, types, expressions, patterns
//! and inside macros.

use syn::buffer::{Cursor, TokenBuffer};
use syn::visit::{self, Visit};

/// A path with its `self` and `super` resolved: the first segment is then `crate`.
#[derive(Debug, PartialEq)]
pub struct Named {
    pub path: Vec<String>,
}

impl Named {
    /// Whether these segments, as `Utc::now`, stand in it in a row.
    pub fn has(&self, name: &str) -> bool {
        let wanted: Vec<_> = name.split("::").collect();
        self.path.windows(wanted.len()).any(|part| part == wanted)
    }

    /// The room of the project that it names, if it does.
    pub fn room(&self) -> Option<&str> {
        match self.path.first().map(String::as_str) {
            Some("crate" | "feedside") => self.path.get(1).map(String::as_str),
            _ => None,
        }
    }
}

/// All paths of a file that is the module `module` (empty for `lib.rs`).
pub fn named(code: &str, module: &[String]) -> Vec<Named> {
    let file = syn::parse_file(code).unwrap();
    let mut finder = Finder {
        module: module.to_vec(),
        found: Vec::new(),
    };
    finder.visit_file(&file);
    finder.found
}

struct Finder {
    module: Vec<String>,
    found: Vec<Named>,
}

impl Finder {
    fn add(&mut self, path: &[String]) {
        let supers = path.iter().take_while(|it| *it == "super").count();
        let selfs = usize::from(path.first().is_some_and(|it| it == "self"));
        let path = if 0 < supers || 0 < selfs {
            let keep = self.module.len().saturating_sub(supers);
            std::iter::once("crate".to_owned())
                .chain(self.module[..keep].iter().cloned())
                .chain(path[supers.max(selfs)..].iter().cloned())
                .collect()
        } else {
            path.to_vec()
        };
        self.found.push(Named { path });
    }

    fn tree(&mut self, before: &[String], tree: &syn::UseTree) {
        let with = |name: &syn::Ident| {
            let mut path = before.to_vec();
            path.push(name.to_string());
            path
        };
        match tree {
            syn::UseTree::Path(path) => self.tree(&with(&path.ident), &path.tree),
            syn::UseTree::Name(name) => self.add(&with(&name.ident)),
            syn::UseTree::Rename(name) => self.add(&with(&name.ident)),
            syn::UseTree::Glob(_) => self.add(before),
            syn::UseTree::Group(group) => {
                for tree in &group.items {
                    self.tree(before, tree);
                }
            }
        }
    }

    /// Paths in tokens that are not parsed: `a::b::c`.
    fn tokens(&mut self, mut cursor: Cursor<'_>) {
        let mut path: Vec<String> = Vec::new();
        let mut colons = 0;
        while !cursor.eof() {
            if let Some((name, rest)) = cursor.ident() {
                if colons != 2 && !path.is_empty() {
                    self.add(&std::mem::take(&mut path));
                }
                path.push(name.to_string());
                colons = 0;
                cursor = rest;
            } else if let Some((mark, rest)) = cursor.punct()
                && mark.as_char() == ':'
            {
                colons += 1;
                cursor = rest;
            } else {
                if !path.is_empty() {
                    self.add(&std::mem::take(&mut path));
                }
                colons = 0;
                if let Some((inside, _, _, rest)) = cursor.any_group() {
                    self.tokens(inside);
                    cursor = rest;
                } else if let Some((_, rest)) = cursor.token_tree() {
                    cursor = rest;
                }
            }
        }
        if !path.is_empty() {
            self.add(&path);
        }
    }
}

impl<'ast> Visit<'ast> for Finder {
    fn visit_item_use(&mut self, item: &'ast syn::ItemUse) {
        self.tree(&[], &item.tree);
    }

    fn visit_path(&mut self, path: &'ast syn::Path) {
        let names: Vec<_> = path
            .segments
            .iter()
            .map(|it| it.ident.to_string())
            .collect();
        self.add(&names);
        visit::visit_path(self, path);
    }

    fn visit_macro(&mut self, mac: &'ast syn::Macro) {
        self.tokens(TokenBuffer::new2(mac.tokens.clone()).begin());
        visit::visit_macro(self, mac);
    }

    fn visit_item_mod(&mut self, item: &'ast syn::ItemMod) {
        self.module.push(item.ident.to_string());
        visit::visit_item_mod(self, item);
        self.module.pop();
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn check(code: &str, expected: &[&str]) {
        let module = ["growth".to_owned(), "loss".to_owned()];
        let found: Vec<_> = named(code, &module)
            .iter()
            .map(|it| it.path.join("::"))
            .collect();
        for path in expected {
            assert!(found.contains(&(*path).to_owned()), "{path} in {found:?}");
        }
    }

    #[test]
    fn imports_are_read_in_every_form() {
        check(
            "use crate::{record::{At, Pain}, store as s};\nuse std::\n  fs;",
            &[
                "crate::record::At",
                "crate::record::Pain",
                "crate::store",
                "std::fs",
            ],
        );
        check("use super::super::report::*;", &["crate::report"]);
        check("use super::sibling;", &["crate::growth::sibling"]);
        check(
            "mod inner { use super::super::super::app::X; }",
            &["crate::app::X"],
        );
    }

    #[test]
    fn paths_in_types_expressions_and_macros_are_read() {
        check("fn f(x: crate::store::Door) {}", &["crate::store::Door"]);
        check(
            "fn f() { let _ = chrono::Utc::now(); }",
            &["chrono::Utc::now"],
        );
        check(
            "fn f() { println!(\"{}\", std::fs::read(\"x\").len()); }",
            &["std::fs::read"],
        );
        check(
            "macro_rules! m { () => { $crate::app::x() } }",
            &["crate::app::x"],
        );
    }

    #[test]
    fn a_name_is_found_only_as_whole_segments() {
        let named = &named("use chrono::Utc;\nfn f() { Utc::nowhere(); }", &[]);
        assert!(named.iter().any(|it| it.has("chrono::Utc")));
        assert!(!named.iter().any(|it| it.has("Utc::now")));
    }
}
