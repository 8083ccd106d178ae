//! The errors of a pair file: a field that was refused.

use super::Explained;
use crate::growth::pair_file::{Needed, PairFileError, Wrong};
use crate::words::{Arg, Words};

/// A pair file's error in words, with the path of the field.
pub fn pair_file(error: &PairFileError, words: &Words) -> Explained {
    let number = |it: usize| Arg::from(it);
    let (name, more): (_, Vec<(&str, Arg)>) = match &error.wrong {
        Wrong::TooLarge { most } => ("growth-too-large", vec![("most", number(*most))]),
        Wrong::TooDeep { most } => ("growth-too-deep", vec![("most", number(*most))]),
        Wrong::TooMany { most } => ("growth-too-many", vec![("most", number(*most))]),
        Wrong::NotJson { line, column } => (
            "growth-not-json",
            vec![("line", number(*line)), ("column", number(*column))],
        ),
        Wrong::Twice => ("growth-twice", vec![]),
        Wrong::Missing => ("growth-missing", vec![]),
        Wrong::NotKnown => ("growth-not-known", vec![]),
        Wrong::Needs { needed } => (
            "growth-needs",
            vec![("needed", needed_there(needed, words).into())],
        ),
        Wrong::BirthInFuture => ("growth-birth-in-future", vec![]),
        Wrong::BeforeBirth => ("growth-before-birth", vec![]),
        Wrong::InFuture => ("growth-in-future", vec![]),
    };
    let mut args = vec![("path", error.path.as_str().into())];
    args.extend(more);
    Explained::of(name, &args, words)
}

fn needed_there(needed: &Needed, words: &Words) -> String {
    match needed {
        Needed::Object => words.say("needed-object"),
        Needed::List => words.say("needed-list"),
        Needed::Time => words.say("needed-time"),
        Needed::YesNo => words.say("needed-yes-no"),
        Needed::Whole { low, high } => words.say_with(
            "needed-whole",
            &[("low", (*low).into()), ("high", (*high).into())],
        ),
        Needed::OneOf { words: known } => {
            words.say_with("needed-one-of", &[("words", known.join(", ").into())])
        }
        Needed::Words => words.say("needed-words"),
        Needed::ShortText => words.say("needed-short-text"),
        Needed::Language => words.say("needed-language"),
        Needed::Id => words.say("needed-id"),
    }
}
