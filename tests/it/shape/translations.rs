//! The translations agree with each other, and with what the program says.

use std::collections::{BTreeMap, BTreeSet};

use feedside::record::{
    Adjustment, BabyDanger, BabyState, BreastAfter, BreastState, EndedBy, Hold, Jaundice,
    MotherDanger, NippleAfter, NippleBefore, PlanWhat, Reason, RiskNote, Sex, Side, Sign,
    SignState, StoolColour, StoredWord, TapWhat, WayOfBirth, WeighingMoment,
};
use feedside::words::{Arg, IDS, Lang, Words};
use syn::buffer::{Cursor, TokenBuffer};
use syn::visit::{self, Visit};

use super::messages::{self, Message};
use super::source::{files, none, root, shown, text};

fn english() -> BTreeMap<String, Message> {
    messages::of(Lang::En.tag())
}

fn ids<T: StoredWord>(thing: &str, all: &[T]) -> Vec<String> {
    all.iter()
        .map(|it| format!("{thing}-{}", it.word().replace('_', "-")))
        .collect()
}

/// The ids that stored words of the record stand for.
fn of_stored_words() -> Vec<String> {
    let mut all = vec!["state-not-looked".to_owned()];
    for sign in ids("sign", Sign::ALL) {
        all.extend([format!("{sign}-look"), format!("{sign}-try"), sign]);
    }
    all.extend(ids("state", SignState::ALL));
    all.extend(ids("side", Side::ALL));
    all.extend(ids("hold", Hold::ALL));
    all.extend(ids("adjustment", Adjustment::ALL));
    all.extend(ids("plan", PlanWhat::ALL));
    all.extend(ids("risk", RiskNote::ALL));
    all.extend(ids("reason", Reason::ALL));
    all.extend(ids("sex", Sex::ALL));
    all.extend(ids("birth", WayOfBirth::ALL));
    all.extend(ids("stool", StoolColour::ALL));
    all.extend(ids("jaundice", Jaundice::ALL));
    all.extend(ids("baby-danger", BabyDanger::ALL));
    all.extend(ids("mother-danger", MotherDanger::ALL));
    all.extend(ids("breast", BreastState::ALL));
    all.extend(ids("nipple", NippleBefore::ALL));
    all.extend(ids("nipple-after", NippleAfter::ALL));
    all.extend(ids("breast-after", BreastAfter::ALL));
    all.extend(ids("baby-state", BabyState::ALL));
    all.extend(ids("ended-by", EndedBy::ALL));
    all.extend(ids("weighing", WeighingMoment::ALL));
    all.extend(ids("tap", TapWhat::ALL));
    all
}

#[test]
fn every_stored_word_of_the_record_has_its_message() {
    let missing: Vec<_> = of_stored_words()
        .into_iter()
        .filter(|id| !IDS.contains(&id.as_str()))
        .collect();
    none(&missing);
}

#[test]
fn every_language_has_the_same_ids_in_the_same_files_with_the_same_arguments() {
    let english = english();
    let mut faults = Vec::new();
    for lang in Lang::ALL {
        let other = messages::of(lang.tag());
        for (id, message) in &english {
            match other.get(id) {
                None => faults.push(format!("{}: `{id}` is missing", lang.tag())),
                Some(it) if it.area != message.area => {
                    faults.push(format!("{}: `{id}` stands in {}.ftl", lang.tag(), it.area));
                }
                Some(it) if it.args != message.args => faults.push(format!(
                    "{}: `{id}` takes {:?}, English {:?}",
                    lang.tag(),
                    it.args,
                    message.args
                )),
                Some(_) => {}
            }
        }
        let more = other.keys().filter(|id| !english.contains_key(*id));
        faults.extend(more.map(|id| format!("{}: `{id}` is not in English", lang.tag())));
    }
    none(&faults);
}

#[test]
fn every_folder_of_translations_is_a_language_of_the_program() {
    let mut folders: Vec<_> = std::fs::read_dir(root().join("translations"))
        .unwrap()
        .map(|it| it.unwrap().file_name().to_string_lossy().into_owned())
        .collect();
    let mut tags: Vec<_> = Lang::ALL.iter().map(|lang| lang.tag().to_owned()).collect();
    folders.sort();
    tags.sort();
    assert_eq!(folders, tags);
}

/// Words of four letters or more that are the same in English and German, and names.
const SAME_IN_GERMAN: &[&str] = &[
    "Atkinson",
    "Baby",
    "Code",
    "Codes",
    "Export",
    "FHIR",
    "Feedside",
    "Font",
    "Hyperlegible",
    "License",
    "Name",
    "Next",
    "Open",
    "Plan",
    "Slint",
    "Somali",
    "Start",
    "Status",
    "Text",
    "Vaginal",
    "Version",
];

fn has_a_word_to_translate(text: &str) -> bool {
    text.split(|c: char| !c.is_alphabetic())
        .any(|word| 3 < word.chars().count() && !SAME_IN_GERMAN.contains(&word))
}

#[test]
fn german_is_not_left_in_english() {
    let german = messages::of(Lang::De.tag());
    let faults: Vec<_> = english()
        .iter()
        // The title of a publication stays as it was published.
        .filter(|(id, _)| !id.starts_with("source-"))
        .filter(|(id, message)| {
            german.get(*id).is_some_and(|it| it.text == message.text)
                && has_a_word_to_translate(&message.text)
        })
        .map(|(id, message)| format!("`{id}` is \"{}\" in both", message.text))
        .collect();
    none(&faults);
}

#[test]
fn every_message_can_be_said_and_leaves_no_hole() {
    let mut faults = Vec::new();
    for (id, message) in english() {
        let args: Vec<(&str, Arg)> = message
            .args
            .iter()
            .map(|name| (name.as_str(), Arg::from(2_i64)))
            .collect();
        for lang in Lang::ALL {
            let said = Words::new(*lang).say_with(&id, &args);
            if said.trim().is_empty() || said.contains(['{', '}', '$']) || said == id {
                faults.push(format!("{}: `{id}` says \"{said}\"", lang.tag()));
            }
        }
    }
    none(&faults);
}

/// No exclamation marks, and no straight marks where a language has its own.
#[test]
fn sentences_are_calm_and_well_set() {
    let mut faults = Vec::new();
    for lang in Lang::ALL {
        for (id, message) in messages::of(lang.tag()) {
            for mark in ['!', '"', '\'', '\t', '\u{fffd}'] {
                if message.text.contains(mark) && !(*lang == Lang::En && mark == '\'') {
                    faults.push(format!("{}: `{id}` has {mark:?}", lang.tag()));
                }
            }
            // Space before the first word is how a report sets lines in.
            if message.text.contains("...") || message.text.trim_start().contains("  ") {
                faults.push(format!("{}: `{id}` has \"...\" or two spaces", lang.tag()));
            }
        }
    }
    none(&faults);
}

#[test]
fn what_happened_always_comes_with_what_to_do() {
    let english = english();
    let faults: Vec<_> = english
        .keys()
        .filter_map(|id| {
            let other = match (id.strip_prefix("err-"), id.strip_prefix("rec-")) {
                (Some(rest), _) => format!("rec-{rest}"),
                (_, Some(rest)) => format!("err-{rest}"),
                _ => return None,
            };
            (!english.contains_key(&other)).then(|| format!("`{id}` has no `{other}`"))
        })
        .collect();
    none(&faults);
}

/// What Rust code says about ids: every string literal, and those that are said at once.
#[derive(Default)]
struct Sayings {
    literals: BTreeSet<String>,
    said: BTreeSet<String>,
    things: BTreeSet<String>,
}

impl Sayings {
    fn tokens(&mut self, mut cursor: Cursor<'_>) {
        while !cursor.eof() {
            if let Some((literal, rest)) = cursor.literal() {
                if let Ok(text) = syn::parse_str::<syn::LitStr>(&literal.to_string()) {
                    self.literals.insert(text.value());
                }
                cursor = rest;
            } else if let Some((inside, _, _, rest)) = cursor.any_group() {
                self.tokens(inside);
                cursor = rest;
            } else if let Some((_, rest)) = cursor.token_tree() {
                cursor = rest;
            }
        }
    }
}

impl<'ast> Visit<'ast> for Sayings {
    fn visit_lit_str(&mut self, literal: &'ast syn::LitStr) {
        self.literals.insert(literal.value());
    }

    fn visit_attribute(&mut self, _: &'ast syn::Attribute) {}

    fn visit_macro(&mut self, mac: &'ast syn::Macro) {
        self.tokens(TokenBuffer::new2(mac.tokens.clone()).begin());
        visit::visit_macro(self, mac);
    }

    /// `of(words, "doubt", doubt)` and its like say `doubt-…`: the second argument is the thing.
    fn visit_expr_call(&mut self, call: &'ast syn::ExprCall) {
        if let Some(syn::Expr::Lit(second)) = call.args.iter().nth(1)
            && let syn::Lit::Str(thing) = &second.lit
        {
            self.things.insert(format!("{}-{{}}", thing.value()));
        }
        visit::visit_expr_call(self, call);
    }

    fn visit_expr_method_call(&mut self, call: &'ast syn::ExprMethodCall) {
        let says = ["say", "say_with"].iter().any(|it| call.method == it);
        if says
            && let Some(syn::Expr::Lit(first)) = call.args.first()
            && let syn::Lit::Str(id) = &first.lit
        {
            self.said.insert(id.value());
        }
        visit::visit_expr_method_call(self, call);
    }
}

fn sayings(code: &str) -> Sayings {
    let mut sayings = Sayings::default();
    sayings.visit_file(&syn::parse_file(code).unwrap());
    sayings
}

/// The ids that a Slint file reads: `Strings.some-id`.
fn read_by_screen(code: &str) -> BTreeSet<String> {
    code.split("Strings.")
        .skip(1)
        .map(|rest| {
            rest.chars()
                .take_while(|c| c.is_ascii_alphanumeric() || matches!(c, '-' | '_'))
                .map(|c| if c == '_' { '-' } else { c })
                .collect()
        })
        .collect()
}

/// Whether an id is one that a format literal makes: `finding-{rule}-reason` makes
/// `finding-feeds-few-reason`. The literal must begin with a word of its own.
fn makes(literal: &str, id: &str) -> bool {
    let Some((head, mut rest)) = literal.split_once('{') else {
        return false;
    };
    if head.len() < 3 || !head.ends_with('-') {
        return false;
    }
    let Some(mut left) = id.strip_prefix(head) else {
        return false;
    };
    while let Some((_, after)) = rest.split_once('}') {
        let fixed = after.split('{').next().unwrap_or_default();
        rest = after.strip_prefix(fixed).unwrap_or_default();
        if fixed.is_empty() && rest.is_empty() {
            return !left.is_empty();
        }
        let Some(at) = left.rfind(fixed).filter(|at| 0 < *at) else {
            return false;
        };
        left = &left[at + fixed.len()..];
    }
    left.is_empty()
}

#[test]
fn every_message_is_used() {
    let mut literals: BTreeSet<String> = of_stored_words().into_iter().collect();
    for path in files("src", &[".rs"]) {
        let found = sayings(&text(&path));
        // A fault is said as a pair: what happened, and what to do.
        if shown(&path).contains("src/fault/") {
            for name in &found.literals {
                literals.extend([format!("err-{name}"), format!("rec-{name}")]);
            }
        }
        literals.extend(found.literals);
        literals.extend(found.things);
    }
    for path in files("ui", &[".slint"]) {
        literals.extend(read_by_screen(&text(&path)));
    }
    let formats: Vec<_> = literals.iter().filter(|it| it.contains("-{")).collect();
    let faults: Vec<_> = english()
        .keys()
        .filter(|id| !literals.contains(*id) && !formats.iter().any(|it| makes(it, id)))
        .map(|id| format!("`{id}` is used nowhere"))
        .collect();
    none(&faults);
}

#[test]
fn every_id_that_the_program_says_is_there() {
    let mut faults = Vec::new();
    for path in files("src", &[".rs"]) {
        for id in sayings(&text(&path)).said {
            if !IDS.contains(&id.as_str()) {
                faults.push(format!("{}: say(\"{id}\")", shown(&path)));
            }
        }
    }
    for path in files("ui", &[".slint"]) {
        for id in read_by_screen(&text(&path)) {
            if !IDS.contains(&id.as_str()) {
                faults.push(format!("{}: Strings.{id}", shown(&path)));
            }
        }
    }
    none(&faults);
}

#[test]
fn uses_are_found_in_calls_in_formats_and_in_screens() {
    let found = sayings("fn f() { w.say(\"a-b\"); g(&format!(\"c-{x}\")); w.say(id); }");
    assert!(found.said.contains("a-b") && found.said.len() == 1);
    assert!(found.literals.contains("c-{x}"));
    let read = read_by_screen("T { text: Strings.pad-suck; x: Strings.a_b + \"\" }");
    assert_eq!(read.into_iter().collect::<Vec<_>>(), ["a-b", "pad-suck"]);
    for (literal, id, made) in [
        ("finding-{}", "finding-feeds-few", true),
        ("finding-{rule}-reason", "finding-feeds-few-reason", true),
        ("finding-{rule}-reason", "finding-feeds-few", false),
        ("month-{}", "month-12", true),
        ("month-{}", "month-", false),
        ("{a}-{b}", "month-12", false),
        ("unit-{a}-of-{b}", "unit-g-of-milk", true),
        ("unit-{a}-of-{b}", "unit-g", false),
    ] {
        assert_eq!(makes(literal, id), made, "{literal} {id}");
    }
}
