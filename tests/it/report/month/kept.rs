//! What is kept of a visit: it comes back as it was, and holds nobody.

use feedside::record::{
    Adjustment, NippleAfter, Sign, SignState, StoredWord, WallTime, What, fold,
};
use feedside::report::month::VisitSum;
use serde_json::Value;

use super::visit;
use crate::support::{bare_visit, sample_pair, sample_rhythm, sample_visit};

fn sample() -> VisitSum {
    let visit = sample_visit();
    let folded = fold(&visit.journal);
    VisitSum::of(visit.pair, &visit, &folded, &[sample_rhythm()], Some(true))
}

#[test]
fn a_sum_comes_back_from_its_json_as_it_was() {
    let bare = bare_visit();
    let bare = VisitSum::of(bare.pair, &bare, &fold(&bare.journal), &[], None);
    for sum in [sample(), bare, super::sum(&visit(1))] {
        let json = serde_json::to_string(&sum).unwrap();
        assert_eq!(
            serde_json::from_str::<VisitSum>(&json).unwrap(),
            sum,
            "{json}"
        );
    }
}

#[test]
fn it_holds_none_of_the_pairs_texts() {
    let (visit, pair) = (sample_visit(), sample_pair());
    let json = serde_json::to_string(&sample()).unwrap();
    let shown = format!("{:?}", sample());
    let mut texts = vec![
        pair.bed.as_str().to_owned(),
        pair.initials.as_str().to_owned(),
        pair.mother_number.unwrap().as_str().to_owned(),
        pair.baby_number.unwrap().as_str().to_owned(),
        visit.specialist.as_str().to_owned(),
    ];
    for entry in visit.journal.entries() {
        match &entry.what {
            What::Note { text } => texts.push(text.as_str().to_owned()),
            What::PlanItem(item) => {
                texts.extend(item.words.iter().map(|it| it.as_str().to_owned()))
            }
            _ => {}
        }
    }
    assert_eq!(texts.len(), 7);
    for text in texts {
        assert!(!json.contains(&text) && !shown.contains(&text), "{text}");
        for word in text.split(' ').filter(|it| 3 < it.len()) {
            assert!(!json.contains(word) && !shown.contains(word), "{word}");
        }
    }
}

fn words<T: StoredWord>(all: &[T]) -> Vec<&'static str> {
    all.iter().map(|it| it.word()).collect()
}

/// Every text in it, with where it stands.
fn texts(value: &Value, at: &str, found: &mut Vec<(String, String)>) {
    match value {
        Value::String(text) => found.push((at.to_owned(), text.clone())),
        Value::Array(all) => all.iter().for_each(|it| texts(it, at, found)),
        Value::Object(all) => all.iter().for_each(|(key, it)| texts(it, key, found)),
        _ => {}
    }
}

#[test]
fn its_only_texts_are_the_pairs_id_one_time_and_words_of_the_record() {
    let mut known = words(Sign::ALL);
    known.extend(words(SignState::ALL));
    known.extend(words(Adjustment::ALL));
    known.extend(words(NippleAfter::ALL));
    let mut found = Vec::new();
    texts(&serde_json::to_value(sample()).unwrap(), "", &mut found);
    assert!(5 < found.len());
    for (at, text) in found {
        let fits = match at.as_str() {
            "pair" => text == sample_pair().id.to_string(),
            "began" => serde_json::from_value::<WallTime>(text.clone().into()).is_ok(),
            _ => known.contains(&text.as_str()),
        };
        assert!(fits, "{at}: {text}");
    }
}

#[test]
fn what_is_not_a_sum_is_refused_and_brings_nothing_down() {
    for json in ["", "{}", "null", "[1]", r#"{"pair":"x","began":1}"#] {
        assert!(serde_json::from_str::<VisitSum>(json).is_err(), "{json}");
    }
}
