//! The printed catalogue holds every rule with all that a clinical lead needs to review it.

use feedside::findings::{FAMILIES, Level, Limit, Policy, catalogue};
use feedside::report::catalogue::{condition, text};
use feedside::report::phrase;
use feedside::words::{Lang, Words};

/// The page's block of each rule, by the line that names its id.
fn block<'a>(page: &'a str, id: &str) -> &'a str {
    let named = format!(" ({id})\n");
    let at = page
        .find(&named)
        .unwrap_or_else(|| panic!("{id} is not on the page"));
    assert_eq!(page.matches(&named).count(), 1, "{id}");
    page[at..].split("\n\n").next().unwrap()
}

#[test]
fn every_rule_is_there_with_level_condition_source_and_last_change() {
    for lang in Lang::ALL {
        let words = Words::new(*lang);
        let page = text(&Policy::built_in(), &words);
        for rule in catalogue() {
            let block = block(&page, rule.id);
            for part in [
                phrase::of(&words, "level", rule.level),
                words.say(&condition(rule)),
                phrase::word(&words, "source", rule.source),
                format!("{}, 2026-", rule.changed),
            ] {
                assert!(block.contains(&part), "{}: {part} in\n{block}", rule.id);
            }
            for limit in rule.limits {
                let name = phrase::of(&words, "limit", *limit);
                assert!(block.contains(&name), "{}: {name}", rule.id);
            }
        }
        assert!(!page.contains(['{', '}']));
        assert!(!page.contains("rule-") && !page.contains("limit-") && !page.contains("family-"));
    }
}

#[test]
fn only_danger_signs_share_the_sentence_of_danger_signs() {
    for (family, rules) in FAMILIES {
        for rule in *rules {
            let shares = condition(rule) == "rule-danger";
            let is_danger = rule.level == Level::MedicalReviewNow
                && ["baby", "mother"].contains(family)
                && !["jaundice", "temperature", "stool", "urine", "sleepy"]
                    .iter()
                    .any(|it| rule.id.contains(it));
            assert_eq!(shares, is_danger, "{}", rule.id);
        }
    }
}

#[test]
fn thresholds_stand_with_their_published_bounds_and_the_ward_s_value() {
    let words = Words::new(Lang::En);
    let page = text(&Policy::built_in(), &words);
    let ten = "Loss above which it is assessed today: 10.0%; published bounds 7.0% to 10.0%";
    assert!(block(&page, "weight-loss-over-ten").contains(ten), "{page}");
    let ward = Policy::from_toml(
        "name = \"Ward seven\"\nversion = \"2\"\nauthor = \"Lead\"\ndate = \"2026-02-03\"\n\
         [limits]\nfeeds_least = 10\n",
    );
    let page = text(&ward.unwrap(), &words);
    assert!(page.contains("ward policy Ward seven, version 2, 2026-02-03, by Lead"));
    assert!(
        block(&page, "feeds-few").contains("Least feeds in 24 hours: 10; published bounds 8 to 12")
    );
    for limit in Limit::ALL {
        let name = phrase::of(&words, "limit", *limit);
        assert!(page.matches(&name).count() >= 2, "{name}");
    }
}
