//! The mother's sheet.

use feedside::findings::{CallWhom, Finding, Level};
use feedside::record::{Language, NippleAfter, PlanItem, SignState, Text};
use feedside::report::printed::Block;
use feedside::report::sheet::{lang_of, page};
use feedside::words::{Lang, Words};

use crate::support::{bare_visit, facts_of, sample_facts, sample_pair};

fn text(facts: &feedside::report::Facts, lang: Lang) -> String {
    page(facts, &Words::new(lang)).plain()
}

/// Without the marks that only steer the direction.
fn bare(text: &str) -> String {
    text.replace(['\u{2066}', '\u{2068}', '\u{2069}'], "")
}

#[test]
fn it_says_what_went_well_what_to_try_what_comes_and_when_to_get_help_in_this_order() {
    for (lang, order) in [
        (
            Lang::En,
            [
                "What went well",
                "What to try",
                "We will weigh your baby again.",
                "How you can see that milk goes in",
                "Your baby weighed 3400\u{a0}g at birth. On 4 Mar 2026 it was 3049\u{a0}g.",
                "3\u{2013}4\t3 or more\t2 or more\tgreen, yellow",
                "7\u{2013}28\t6 or more, heavy",
                "Get help now",
                "We will look again on 4 Mar 2026, 15:30.",
                "does not take the place of advice",
            ],
        ),
        (
            Lang::De,
            [
                "Was gut ging",
                "Was Sie tun k\u{f6}nnen",
                "Wir wiegen Ihr Kind noch einmal.",
                "dass Milch ankommt",
                "wog Ihr Kind 3400\u{a0}g. Am 4. M\u{e4}rz 2026 waren es 3049\u{a0}g.",
                "3\u{2013}4\t3 oder mehr\t2 oder mehr\tgr\u{fc}n, gelb",
                "7\u{2013}28\t6 oder mehr, schwer",
                "sofort Hilfe",
                "Wir kommen wieder: 4. M\u{e4}rz 2026, 15:30.",
                "ersetzt nicht den Rat",
            ],
        ),
    ] {
        let text = bare(&text(&sample_facts(), lang));
        let mut from = 0;
        for part in order {
            let found = text[from..].find(part);
            from += found.unwrap_or_else(|| panic!("{part} in order in\n{text}"));
        }
    }
}

#[test]
fn medical_review_now_leads_it_for_the_one_whom_it_is_about() {
    let mut facts = facts_of(&bare_visit());
    let review = |call| Finding {
        rule: "sample-review".to_owned(),
        level: Level::MedicalReviewNow,
        numbers: Vec::new(),
        source: String::new(),
        tries: Vec::new(),
        plan: Vec::new(),
        call,
    };
    for (calls, baby, mother) in [
        (&[][..], false, false),
        (&[CallWhom::BabyDoctor][..], true, false),
        (&[CallWhom::MotherDoctor][..], false, true),
        (&[CallWhom::MidwifeInCharge][..], true, false),
        (
            &[CallWhom::BabyDoctor, CallWhom::MotherDoctor][..],
            true,
            true,
        ),
    ] {
        facts.judged.findings = calls.iter().map(|call| review(*call)).collect();
        let page = page(&facts, &Words::new(Lang::En));
        let first_box = page.blocks.get(1);
        let leads = matches!(first_box, Some(Block::Urgent { .. }));
        assert_eq!(leads, baby || mother);
        let text = page.plain();
        assert_eq!(text.contains("needs to see your baby now"), baby);
        assert_eq!(text.contains("needs to see you now"), mother);
    }
}

#[test]
fn nothing_is_praised_that_was_not_seen() {
    let all = |facts: &feedside::report::Facts| bare(&text(facts, Lang::En));
    let bare_sheet = all(&facts_of(&bare_visit()));
    assert!(bare_sheet.contains("You and your baby tried it with each other."));
    assert!(!bare_sheet.contains("wide mouth."));
    let mut facts = sample_facts();
    // Creased after the feed, mouth unclear, chin not seen, pain cannot be told.
    let sample = all(&facts);
    for praise in [
        "Your nipple looked well",
        "with a wide mouth.",
        "chin was close",
        "no pain",
    ] {
        assert!(!sample.contains(praise), "{praise}");
    }
    assert!(sample.contains("Your milk came"));
    assert!(sample.contains("felt soft after the feed"));
    facts.feeds[0].feed.nipple_after = Some(NippleAfter::Rounded);
    for sign in facts.signs.iter_mut().flatten() {
        sign.state = SignState::Seen;
    }
    let good = all(&facts);
    assert!(good.contains("with a wide mouth.") && good.contains("chin was close"));
}

#[test]
fn it_names_nobody() {
    let mut facts = sample_facts();
    facts.plan.clear();
    for lang in Lang::ALL {
        let text = text(&facts, *lang);
        for told in ["T. W.", "Bay 2", "W-0041", "smiles"] {
            assert!(!text.contains(told), "{told} in {text}");
        }
    }
}

#[test]
fn it_speaks_her_language_where_there_is_one() {
    let mut pair = sample_pair();
    assert_eq!(lang_of(&pair, Lang::En), Lang::De);
    pair.language = Some(Language::new("ar").unwrap());
    assert_eq!(lang_of(&pair, Lang::De), Lang::De);
    pair.language = None;
    assert_eq!(lang_of(&pair, Lang::En), Lang::En);
}

#[test]
fn own_words_stand_between_marks_that_keep_their_direction() {
    let mut facts = sample_facts();
    facts.plan = vec![PlanItem {
        what: None,
        words: Some(Text::new("\u{633}\u{627}\u{631}\u{629} 3").unwrap()),
    }];
    let text = text(&facts, Lang::En);
    assert!(text.contains("\u{2068}\u{633}\u{627}\u{631}\u{629} 3\u{2069}"));
    // Unicode 6.3, UAX 9: what is opened is closed, in every line.
    for line in text.lines() {
        let opened = line.matches(['\u{2066}', '\u{2068}']).count();
        assert_eq!(opened, line.matches('\u{2069}').count(), "{line}");
    }
}

#[cfg(feature = "pdf")]
#[test]
fn it_is_one_or_two_sheets_of_paper() {
    for facts in [sample_facts(), facts_of(&bare_visit())] {
        for lang in Lang::ALL {
            let pdf = feedside::report::pdf::write(&page(&facts, &Words::new(*lang))).unwrap();
            assert!(pdf.sheets <= 2, "{}", pdf.sheets);
        }
    }
}

/// Sentences, words and syllables of running text; a line without a full stop is a sentence.
fn counts(text: &str) -> (f64, f64, f64) {
    let sentences = text
        .split(['.', '!', '?', ':', '\n', '\t'])
        .filter(|it| it.chars().any(char::is_alphabetic))
        .count();
    let words: Vec<&str> = text
        .split(|c: char| !(c.is_alphabetic() || c == '\''))
        .filter(|word| !word.is_empty())
        .collect();
    let syllables: usize = words.iter().map(|word| syllables(word)).sum();
    (sentences as f64, words.len() as f64, syllables as f64)
}

/// Groups of vowels; in English a final e is silent. Never none.
fn syllables(word: &str) -> usize {
    let lower = word.to_lowercase();
    let is_vowel = |c: char| "aeiouy\u{e4}\u{f6}\u{fc}".contains(c);
    let mut groups = 0;
    let mut in_group = false;
    for c in lower.chars() {
        let vowel = is_vowel(c);
        groups += usize::from(vowel && !in_group);
        in_group = vowel;
    }
    groups.max(1)
}

/// The sheet's own sentences, every one that it can say.
fn every_sentence(lang: Lang) -> String {
    let words = Words::new(lang);
    feedside::words::IDS
        .iter()
        .filter(|id| id.starts_with("sheet-"))
        // The foot and the sources are for those who ask where a number comes from.
        .filter(|id| !["sheet-sources", "sheet-foot"].contains(id))
        .map(|id| words.say_with(id, &[("count", 3_i64.into()), ("days", 3_i64.into())]))
        .collect::<Vec<_>>()
        .join("\n")
}

#[test]
fn english_reads_as_for_a_child_of_ten() {
    // Flesch R. A new readability yardstick. J Appl Psychol 1948;32:221-233; 90 and more is
    // "very easy", 80 to 90 "easy". Kincaid and others 1975, Navy Research Branch Report 8-75: the
    // school grade. Both formulas and the bands from memory.
    let (sentences, words, syllables) = counts(&every_sentence(Lang::En));
    let (length, weight) = (words / sentences, syllables / words);
    let ease = 206.835 - 1.015 * length - 84.6 * weight;
    let grade = 0.39 * length + 11.8 * weight - 15.59;
    assert!(80.0 <= ease, "Flesch {ease}");
    assert!(grade <= 5.0, "grade {grade}");
}

#[test]
fn german_reads_easily() {
    // Amstad T. Wie verst\u{e4}ndlich sind unsere Zeitungen? Dissertation, Z\u{fc}rich 1978: the Flesch
    // figure for German; 70 and more is "easy". From memory.
    let (sentences, words, syllables) = counts(&every_sentence(Lang::De));
    let ease = 180.0 - words / sentences - 58.5 * (syllables / words);
    assert!(70.0 <= ease, "Amstad {ease}");
}

#[test]
fn the_measure_tells_hard_text_from_easy_text() {
    let (sentences, words, syllables) = counts(
        "Exclusive breastfeeding necessitates individualised multidisciplinary evaluation of \
         inadequate physiological transfer.",
    );
    assert!(206.835 - 1.015 * words / sentences - 84.6 * syllables / words < 0.0);
    assert_eq!(counts("The cat sat. It was fat.").0, 2.0);
}
