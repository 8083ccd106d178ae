//! The plain page.

use feedside::findings::CallWhom;
use feedside::record::{Coded, PlanItem, Text};
use feedside::report::plain::text;
use feedside::words::{Lang, Words};

use crate::support::{bare_visit, both_breasts_visit, facts_of, sample_amendment, sample_facts};

/// Where the lines that hold these stand, in the order given.
fn in_order(page: &str, parts: &[&str]) {
    let mut from = 0;
    for part in parts {
        let at = page[from..].find(part);
        from += at.unwrap_or_else(|| panic!("{part:?} is not after what came before in\n{page}"));
    }
}

#[test]
fn what_needs_a_doctor_now_comes_first_and_the_caution_last() {
    let page = text(&sample_facts(), &Words::new(Lang::En));
    in_order(
        &page,
        &[
            "Signed by kb, 4 Mar 2026, 09:40",
            "Acknowledged by kb, 4 Mar 2026, 09:38",
            "Not acknowledged yet.",
            "Could not be judged",
            "missing",
            "About the pair",
            "The last 24 hours",
            "Weight and output",
            "Feed 1, Left",
            "Signs of position and attachment",
            "Plan",
            "Judged by ward policy Sample ward, version 3, 5f5f5f5f",
            "It does not diagnose. Local policy and the clinician decide.",
        ],
    );
    assert!(page.ends_with("decide.\n"));
}

#[test]
fn at_both_breasts_each_feed_has_its_signs() {
    let page = text(&facts_of(&both_breasts_visit()), &Words::new(Lang::En));
    let signs = page.find("Signs of position and attachment").unwrap();
    in_order(
        &page[signs..],
        &[
            "Feed 1, Left",
            "Not seen: Chin in",
            "Seen: Close; Mouth wide",
            "Feed 2, Right",
            "Unclear: Close",
            "Seen: Chin in",
            "Not looked at: ",
        ],
    );
    // A lone feed needs no naming.
    let lone = text(&sample_facts(), &Words::new(Lang::En));
    assert_eq!(lone.matches("Feed 1, Left").count(), 1);
}

#[test]
fn numbers_stand_with_their_unit_interval_and_doubts() {
    let page = text(&sample_facts(), &Words::new(Lang::De));
    for part in [
        "4. März 2026, 09:31: 3049 g",
        "Teilung der Waage 5 g",
        "Veränderung zum Geburtsgewicht in Prozent: \u{2212}10,3\u{a0}%",
        "Beobachtet 4:00 von 5:00: 40 Saugzüge, 13 Schlucke gezählt",
        "Saugzüge je Minute 86 (80 bis 92), Saugzüge je Schluck 3,1 (1,9 bis 5,2)",
        "Saugzüge je Schluck zu wenige für eine Aussage",
        "Milchfluss zuerst bei 0:42, ein Abschnitt",
        "Diesen Zahlen weniger trauen wegen: ",
        "Schmerz, 0 bis 10: 0:20 6; 1:00 2; 1:05 kann es nicht sagen",
    ] {
        assert!(page.contains(part), "{part} in\n{page}");
    }
}

#[test]
fn what_was_not_asked_is_said_and_never_left_to_be_read_as_none() {
    let page = text(&sample_facts(), &Words::new(Lang::En));
    for part in [
        "Dirty nappies: not known",
        "Danger signs of the baby: not known",
        "Danger signs of the mother: asked for, none",
        "Not looked at: ",
    ] {
        assert!(page.contains(part), "{part} in\n{page}");
    }
    let bare = text(&facts_of(&bare_visit()), &Words::new(Lang::En));
    for part in [
        "Not asked.",
        "Not weighed in this visit.",
        "Nothing was agreed.",
        "Next look: not set",
    ] {
        assert!(bare.contains(part), "{part} in\n{bare}");
    }
}

#[test]
fn an_amendment_names_the_visit_it_replaces() {
    let page = text(&facts_of(&sample_amendment()), &Words::new(Lang::En));
    assert!(page.contains("this record replaces visit abcdef01."));
}

#[test]
fn no_message_of_the_page_or_the_note_is_missing_in_any_language() {
    for lang in Lang::ALL {
        let words = Words::new(*lang);
        for facts in [
            sample_facts(),
            facts_of(&bare_visit()),
            facts_of(&sample_amendment()),
        ] {
            let all = text(&facts, &words) + &feedside::report::note::text(&facts, &words);
            for start in ["report-", "note-", "figure-", "{$"] {
                assert!(!all.contains(start), "{start} in\n{all}");
            }
        }
    }
}

#[test]
fn a_finding_says_whom_to_call_with_the_number_that_was_agreed() {
    let mut facts = sample_facts();
    let finding = facts.judged.findings.first_mut().unwrap();
    finding.call = CallWhom::BabyDoctor;
    facts.judged.findings.truncate(1);
    let page = text(&facts, &Words::new(Lang::En));
    in_order(&page, &["  Call: Doctor for the baby\n"]);
    facts.plan = vec![PlanItem {
        what: CallWhom::BabyDoctor.agreed().map(Coded::Known),
        words: Some(Text::new("bleep 101").unwrap()),
    }];
    let page = text(&facts, &Words::new(Lang::En));
    let agreed = "* If it gets worse, call the doctor for the baby: bleep 101";
    in_order(
        &page,
        &["  Call: Doctor for the baby (bleep 101)\n", agreed],
    );
    let page = text(&facts, &Words::new(Lang::De));
    in_order(&page, &["Kinderarzt rufen: bleep 101"]);
}
