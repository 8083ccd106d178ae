//! Every rule, source, missing thing, level and call has its message in each language, with the
//! numbers that the rule shows. Source: the Fluent syntax 1.0, by its own parser.

use std::collections::{BTreeMap, BTreeSet};

use feedside::findings::{CallWhom, Level, Limit, Missing, catalogue};
use feedside::growth::{Caution, MissingForGrowth, Question};
use fluent_syntax::ast::{Entry, Expression, InlineExpression, PatternElement};

const FILES: [(&str, [&str; 2]); 2] = [
    (
        "en",
        [
            include_str!("../../../translations/en/findings.ftl"),
            include_str!("../../../translations/en/growth.ftl"),
        ],
    ),
    (
        "de",
        [
            include_str!("../../../translations/de/findings.ftl"),
            include_str!("../../../translations/de/growth.ftl"),
        ],
    ),
];

/// Each message's id and the arguments that it uses.
fn messages(texts: &[&str]) -> BTreeMap<String, BTreeSet<String>> {
    let mut all = BTreeMap::new();
    for text in texts {
        let resource = fluent_syntax::parser::parse(*text).unwrap();
        for entry in resource.body {
            let Entry::Message(message) = entry else {
                continue;
            };
            let value = message.value.unwrap();
            let arguments = value
                .elements
                .iter()
                .filter_map(|element| match element {
                    PatternElement::Placeable {
                        expression: Expression::Inline(InlineExpression::VariableReference { id }),
                    } => Some(id.name.to_owned()),
                    _ => None,
                })
                .collect();
            let id = message.id.name.to_owned();
            assert!(all.insert(id.clone(), arguments).is_none(), "{id} twice");
        }
    }
    all
}

fn dashed(word: &str) -> String {
    word.replace('_', "-")
}

/// Every id that the rooms can ask for.
fn needed() -> BTreeSet<String> {
    let mut ids: BTreeSet<String> = catalogue()
        .flat_map(|it| {
            [
                format!("finding-{}", it.id),
                format!("finding-{}-reason", it.id),
                format!("source-{}", it.source),
            ]
        })
        .collect();
    ids.extend(
        Limit::ALL
            .iter()
            .map(|it| format!("source-{}", it.facts().source)),
    );
    ids.extend(
        Missing::ALL
            .iter()
            .map(|it| format!("missing-{}", dashed(it.as_word()))),
    );
    ids.extend(
        MissingForGrowth::ALL
            .iter()
            .map(|it| format!("missing-{}", dashed(it.as_word()))),
    );
    ids.extend(
        Level::ALL
            .iter()
            .map(|it| format!("level-{}", dashed(it.as_word()))),
    );
    ids.extend(
        CallWhom::ALL
            .iter()
            .map(|it| format!("call-{}", dashed(it.as_word()))),
    );
    ids.extend(
        Caution::ALL
            .iter()
            .map(|it| format!("caution-{}", dashed(it.as_word()))),
    );
    ids.extend(
        Question::ALL
            .iter()
            .map(|it| format!("question-{}", dashed(it.as_word()))),
    );
    ids
}

#[test]
fn every_id_that_is_asked_for_is_there_in_each_language() {
    for (language, texts) in FILES {
        let there = messages(&texts);
        for id in needed() {
            assert!(there.contains_key(&id), "{language}: {id}");
        }
    }
}

#[test]
fn a_reason_uses_no_number_that_its_rule_does_not_show() {
    for (language, texts) in FILES {
        let there = messages(&texts);
        for it in catalogue() {
            let shown: BTreeSet<String> = it
                .numbers
                .iter()
                .map(|(name, _)| (*name).to_owned())
                .collect();
            let used = &there[&format!("finding-{}-reason", it.id)];
            assert!(used.is_subset(&shown), "{language}: {}: {used:?}", it.id);
            assert!(
                there[&format!("finding-{}", it.id)].is_empty(),
                "{language}: {}",
                it.id
            );
        }
    }
}

#[test]
fn both_languages_have_the_same_ids_and_arguments() {
    assert_eq!(messages(&FILES[0].1), messages(&FILES[1].1));
}

#[test]
fn no_finding_message_is_for_a_rule_that_is_gone() {
    let ids: BTreeSet<&str> = catalogue().map(|it| it.id).collect();
    for id in messages(&FILES[0].1).keys() {
        if let Some(rule) = id.strip_prefix("finding-") {
            let rule = rule.strip_suffix("-reason").unwrap_or(rule);
            assert!(ids.contains(rule), "{id}");
        }
    }
}
