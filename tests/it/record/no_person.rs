//! `Debug` shows no person: it ends up in logs and panics.

use feedside::record::{RecordError, Text, What, fold, to_stored};

use super::make::{PERSONAL, entry, label, one_of_each, pair, visit};

fn check(printed: &str) {
    for word in PERSONAL {
        assert!(!printed.contains(word), "{word} in {printed}");
    }
}

#[test]
fn pair_visit_and_all_that_is_folded_print_no_person() {
    check(&format!("{:?}", pair()));
    let visit = visit(one_of_each());
    check(&format!("{visit:?} {visit:#?}"));
    let folded = fold(&visit.journal);
    assert_eq!((folded.notes.len(), folded.plan.len()), (1, 1));
    check(&format!("{folded:?} {folded:#?}"));
}

#[test]
fn labels_and_notes_print_as_dots() {
    assert_eq!(format!("{:?}", label("Q.Z.")), "…");
    assert_eq!(format!("{:?}", Text::new("Whispered").unwrap()), "…");
}

#[test]
fn stored_entries_and_kept_ones_of_a_newer_version_print_no_body() {
    let kept = What::Unknown {
        kind: "name_told".to_owned(),
        body: "{\"name\":\"Zarquilla\"}".to_owned(),
    };
    let kept = entry(1, kept);
    check(&format!("{kept:?} {:?}", to_stored(&kept).unwrap()));
    for (seq, what) in (1..).zip(one_of_each()) {
        check(&format!("{:?}", to_stored(&entry(seq, what)).unwrap()));
    }
}

#[test]
fn what_happened_is_still_told_where_nobody_typed_it() {
    assert_eq!(format!("{:?}", What::Suck), "suck");
    assert_eq!(format!("{:?}", super::make::pain(4)), "pain {\"score\":4}");
}

#[test]
fn an_error_about_text_does_not_repeat_the_text() {
    let long = "Zarquilla ".repeat(100);
    let error = Text::new(&long).unwrap_err();
    check(&format!("{error} {error:?}"));
    assert_eq!(
        error,
        RecordError::TooLong {
            what: "note",
            most: 600
        }
    );
}
