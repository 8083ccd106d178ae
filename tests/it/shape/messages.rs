//! The messages of every language, parsed with `fluent-syntax`.

use std::collections::{BTreeMap, BTreeSet};

use fluent_syntax::ast::{Entry, Expression, InlineExpression, Pattern, PatternElement};

use super::source::{files, text};

/// One message: the file (its area), its arguments, and its text with `{}` for each argument.
#[derive(Debug, Clone, PartialEq)]
pub struct Message {
    pub area: String,
    pub args: BTreeSet<String>,
    pub text: String,
}

/// All messages of one language by id.
pub fn of(lang: &str) -> BTreeMap<String, Message> {
    let mut all = BTreeMap::new();
    for path in files(&format!("translations/{lang}"), &[".ftl"]) {
        let area = path.file_stem().unwrap().to_string_lossy().into_owned();
        let resource = fluent_syntax::parser::parse(text(&path)).unwrap();
        for entry in resource.body {
            if let Entry::Message(message) = entry {
                let mut read = Message {
                    area: area.clone(),
                    args: BTreeSet::new(),
                    text: String::new(),
                };
                pattern(&message.value.unwrap(), &mut read);
                all.insert(message.id.name, read);
            }
        }
    }
    all
}

fn pattern(pattern: &Pattern<String>, read: &mut Message) {
    for element in &pattern.elements {
        match element {
            PatternElement::TextElement { value } => read.text.push_str(value),
            PatternElement::Placeable { expression } => placeable(expression, read),
        }
    }
}

fn placeable(expression: &Expression<String>, read: &mut Message) {
    match expression {
        Expression::Inline(it) => inline(it, read),
        Expression::Select { selector, variants } => {
            inline(selector, read);
            for variant in variants {
                pattern(&variant.value, read);
            }
        }
    }
}

fn inline(expression: &InlineExpression<String>, read: &mut Message) {
    match expression {
        InlineExpression::VariableReference { id } => {
            read.args.insert(id.name.clone());
            read.text.push_str("{}");
        }
        InlineExpression::FunctionReference { arguments, .. } => {
            for argument in &arguments.positional {
                inline(argument, read);
            }
        }
        InlineExpression::Placeable { expression } => placeable(expression, read),
        InlineExpression::StringLiteral { value } => read.text.push_str(value),
        _ => {}
    }
}
