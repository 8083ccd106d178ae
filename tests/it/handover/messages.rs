//! Every error has its two sentences in each language, with the same arguments.

use std::collections::BTreeMap;
use std::path::Path;

use feedside::handover::{HandoverError, Kid};
use feedside::record::RecordError;
use fluent_syntax::ast;

fn all() -> Vec<HandoverError> {
    let kid = Kid::of([0; 8]);
    vec![
        HandoverError::NotOurs,
        HandoverError::UnknownVersion { found: 2 },
        HandoverError::CodeDamaged,
        HandoverError::PieceDamaged { piece: 2 },
        HandoverError::PieceCut { piece: 2 },
        HandoverError::PieceMixed { piece: 2 },
        HandoverError::TooLarge,
        HandoverError::NotForThisDesk { desk: kid },
        HandoverError::Altered,
        HandoverError::TabletNotEnrolled { tablet: kid },
        HandoverError::SignatureWrong,
        HandoverError::CannotUnpack,
        HandoverError::NotReadable,
        HandoverError::NotPossible(RecordError::AlreadySigned),
        HandoverError::KeyGroupWrong { group: 2 },
        HandoverError::KeyLengthWrong { given: 64 },
        HandoverError::KeyUnusable,
        HandoverError::NoteEmpty,
        HandoverError::NoteTooLong { given: 901 },
        HandoverError::NoteNotPlain { place: 3 },
        HandoverError::ReadBackFailed { piece: 2 },
    ]
}

/// Ids and the names of their arguments, sorted.
fn messages(lang: &str) -> BTreeMap<String, Vec<String>> {
    let path = Path::new(env!("CARGO_MANIFEST_DIR"))
        .join("translations")
        .join(lang)
        .join("fault-handover.ftl");
    let text = std::fs::read_to_string(path).unwrap();
    let resource = fluent_syntax::parser::parse(text).unwrap();
    resource
        .body
        .into_iter()
        .filter_map(|entry| match entry {
            ast::Entry::Message(message) => {
                let mut names: Vec<String> = message
                    .value
                    .unwrap()
                    .elements
                    .into_iter()
                    .filter_map(|element| match element {
                        ast::PatternElement::Placeable {
                            expression:
                                ast::Expression::Inline(ast::InlineExpression::VariableReference {
                                    id,
                                }),
                        } => Some(id.name),
                        _ => None,
                    })
                    .collect();
                names.sort();
                Some((message.id.name, names))
            }
            _ => None,
        })
        .collect()
}

#[test]
fn every_error_says_what_happened_and_what_to_do_in_each_language() {
    let english = messages("en");
    assert_eq!(english, messages("de"));
    assert_eq!(english.len(), all().len() * 2);
    for error in all() {
        let happened = &english[&format!("err-handover-{}", error.word())];
        assert!(english.contains_key(&format!("rec-handover-{}", error.word())));
        let given: Vec<&str> = error.numbers().iter().map(|(name, _)| *name).collect();
        assert_eq!(*happened, given, "{}", error.word());
    }
}

#[test]
fn an_error_names_its_piece_where_it_has_one() {
    for error in all() {
        let told = error.numbers().iter().any(|(name, _)| *name == "piece");
        assert_eq!(error.piece().is_some(), told);
    }
}
