//! The note for a scanner.

use feedside::findings::{CallWhom, Finding, Level};
use feedside::record::{Coded, Label, PlanItem, Reason, Text};
use feedside::report::note::{MOST, text};
use feedside::words::{Lang, Words};
use proptest::prelude::*;

use crate::support::{bare_visit, both_breasts_visit, facts_of, sample_facts};

fn many_findings(count: usize) -> feedside::report::Facts {
    let mut facts = sample_facts();
    facts.judged.findings = (0..count)
        .map(|n| Finding {
            rule: format!("sample-rule-number-{n}-with-a-rather-long-name"),
            level: Level::MedicalReviewNow,
            numbers: Vec::new(),
            source: String::new(),
            tries: Vec::new(),
            plan: Vec::new(),
            call: CallWhom::Nobody,
        })
        .collect();
    facts
}

#[test]
fn a_visit_without_anything_says_what_was_not_looked_at() {
    let mut facts = facts_of(&bare_visit());
    facts.judged = Default::default();
    assert_eq!(
        text(&facts, &Words::new(Lang::En)),
        "No rule asked for anything. Signs of position and attachment not looked at. \
         Pain not asked. Describes, does not diagnose. Visit abcdef01"
    );
    assert_eq!(
        text(&facts, &Words::new(Lang::De)),
        "Keine Regel verlangte etwas. Zeichen fuer Haltung und Anlegen nicht angesehen. \
         Schmerz nicht erfragt. Beschreibt, stellt keine Diagnose. Besuch abcdef01"
    );
}

#[test]
fn where_breasts_differ_each_has_its_signs() {
    let note = text(&facts_of(&both_breasts_visit()), &Words::new(Lang::En));
    let first = "Feed 1: Signs not seen: Chin in. 9 signs not looked at.";
    let second = "Feed 2: Signs unclear: Close. 10 signs not looked at.";
    assert!(note.contains(&format!("{first} {second}")), "{note}");
}

#[test]
fn what_needs_a_doctor_now_leads_and_the_rest_follows_in_the_order_of_need() {
    for (lang, order) in [
        (
            Lang::En,
            &[
                "Weight 3049 g, -10.3% from birth weight",
                "Feed 1 Left",
                "Signs not seen: Chin in",
                "Pain, 0 to 10, in order: 6, 2, cannot say",
                "Plan: Weigh again",
                "Next look: 4 Mar 2026, 15:30",
            ][..],
        ),
        (
            Lang::De,
            &[
                "Gewicht 3049 g, -10,3% zum Geburtsgewicht",
                "Mahlzeit 1 Links",
                "Zeichen nicht gesehen: Kinn",
                "Schmerz, 0 bis 10, der Reihe nach: 6, 2, kann es nicht sagen",
                "Vereinbart: ",
                "Naechste Kontrolle: 4. Maerz 2026, 15:30",
            ][..],
        ),
    ] {
        let words = Words::new(lang);
        let note = text(&sample_facts(), &words);
        // The gravest level leads, in capitals.
        let lead = note.split(": ").next().unwrap();
        assert_eq!(lead, lead.to_uppercase(), "{note}");
        assert!(3 < lead.len(), "{note}");
        let mut from = 0;
        for part in order {
            let at = note[from..]
                .find(part)
                .unwrap_or_else(|| panic!("{part} in {note}"));
            from += at;
        }
        assert!(note.ends_with("abcdef01"));
    }
}

#[test]
fn a_number_stands_with_its_interval_and_its_doubts() {
    let note = text(&sample_facts(), &Words::new(Lang::En));
    assert!(
        note.contains("3.1 (1.9 to 5.2) sucks per swallow in flow, in doubt: "),
        "{note}"
    );
    assert!(note.contains("1.0 min of it unwatched"), "{note}");
}

#[test]
fn nobody_can_be_known_from_it() {
    let mut facts = sample_facts();
    facts.plan.push(PlanItem {
        what: None,
        words: Some(Text::new("Tamsin").unwrap()),
    });
    let note = text(&facts, &Words::new(Lang::En));
    for told in [
        "T. W.", "Bay 2", "W-0041", "Tamsin", "Wrenfold", "smiles", "kb",
    ] {
        assert!(!note.contains(told), "{told} in {note}");
    }
    assert!(note.contains("2 plan items in own words are in the record"));
}

#[test]
fn what_does_not_fit_is_left_out_by_whole_parts_and_the_note_says_so() {
    let words = Words::new(Lang::En);
    let note = text(&many_findings(40), &words);
    assert!(note.len() <= MOST);
    let shown = note.matches(" with a rather long name.").count();
    assert!(10 < shown);
    assert_eq!(note.matches("sample rule number").count(), shown);
    // 40 findings, then unjudged, weight, feed, three sentences on signs, pain, plan and own words:
    // 49 parts.
    let left_out = format!("Shortened: {} parts left out, see the record.", 49 - shown);
    assert!(note.contains(&left_out), "{note}");
    assert!(note.ends_with("Visit abcdef01"));
}

#[test]
fn the_next_look_is_told_however_full_the_note_is() {
    for lang in Lang::ALL {
        let words = Words::new(*lang);
        for count in 0..40 {
            let note = text(&many_findings(count), &words);
            assert!(note.len() <= MOST);
            assert!(note.contains("2026, 15:30"), "{note}");
        }
    }
}

#[test]
fn a_note_that_just_fits_is_not_shortened() {
    let words = Words::new(Lang::En);
    let longest = (0..40)
        .map(|count| text(&many_findings(count), &words))
        .filter(|note| !note.contains("Shortened"))
        .map(|note| note.len())
        .max()
        .unwrap();
    assert!((MOST - 100..=MOST).contains(&longest), "{longest}");
}

#[test]
fn letters_with_marks_are_written_out_and_a_unit_stays_with_its_number() {
    let mut facts = sample_facts();
    facts.judged.findings.truncate(1);
    facts.judged.findings[0].rule =
        "\u{c4}RZTLICH \u{c4}hre stra\u{df}e 5\u{a0}% / x .y \u{bb}z\u{ab}".to_owned();
    let note = text(&facts, &Words::new(Lang::En));
    assert!(
        note.contains(": AERZTLICH Aehre strasse 5%/ x.y z."),
        "{note}"
    );
}

proptest! {
    #[test]
    fn any_note_is_one_short_line_of_plain_signs(
        rules in prop::collection::vec("\\PC{0,60}", 0..30),
        word in "\\PC{1,20}",
        german in any::<bool>(),
    ) {
        let mut facts = many_findings(rules.len());
        for (finding, rule) in facts.judged.findings.iter_mut().zip(&rules) {
            finding.rule.clone_from(rule);
        }
        facts.pair.bed = Label::new("Z\u{e4}hringen").unwrap();
        facts.pair.reasons = vec![Coded::<Reason>::Unknown(word.clone())];
        facts.plan.push(PlanItem { what: Some(Coded::Unknown(word)), words: None });
        let note = text(&facts, &Words::new(if german { Lang::De } else { Lang::En }));
        prop_assert!(note.len() <= MOST);
        prop_assert!(note.ends_with(&facts.short_id()));
        prop_assert!(
            note.chars().all(|c| c.is_ascii_alphanumeric() || " .,:;()+-/%=?".contains(c)),
            "{}", note
        );
        // Signs that open a shortcut in many notes fields never start a word.
        for start in [" .", " /", " ;", " :", " =", "  "] {
            prop_assert!(!note.contains(start), "{:?} in {}", start, note);
        }
    }
}
