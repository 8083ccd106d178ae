//! The catalogue of the rules as a page to be printed, so that a ward's clinical lead can review
//! them: each with level, condition, thresholds and their published bounds, source, what is usually
//! tried and agreed, whom to call, and its last change.

use super::phrase;
use crate::findings::{
    CallWhom, FAMILIES, Limit, Number, Policy, RULE_VERSION, Rule, catalogue, version_date,
};
use crate::record::StoredWord;
use crate::words::Words;

/// Writes the page; lines end in a line feed.
pub fn text(policy: &Policy, words: &Words) -> String {
    let mut page = Page {
        policy,
        words,
        text: String::new(),
    };
    page.head();
    for (family, rules) in FAMILIES {
        page.heading(&phrase::word(words, "family", family));
        for rule in *rules {
            page.rule(rule);
        }
    }
    page.thresholds();
    page.text
}

struct Page<'a> {
    policy: &'a Policy,
    words: &'a Words,
    text: String,
}

impl Page<'_> {
    fn line(&mut self, line: &str) {
        self.text.push_str(line.trim_end());
        self.text.push('\n');
    }

    fn heading(&mut self, line: &str) {
        self.line("");
        self.line(line);
        let rule = "-".repeat(line.chars().count());
        self.line(&rule);
    }

    fn field(&mut self, id: &str, value: &str) {
        let label = self.words.say(id);
        self.line(&format!("  {label}: {value}"));
    }

    fn head(&mut self) {
        let (words, policy) = (self.words, self.policy);
        let title = words.say("rules-title");
        self.line(&title);
        let rule = "=".repeat(title.chars().count());
        self.line(&rule);
        let counted = words.say_with(
            "rules-count",
            &[
                ("rules", catalogue().count().into()),
                ("families", FAMILIES.len().into()),
                ("version", RULE_VERSION.into()),
                ("date", version_date(RULE_VERSION).unwrap_or("-").into()),
            ],
        );
        self.line(&counted);
        let by = words.say_with(
            "rules-policy",
            &[
                ("name", policy.name.as_str().into()),
                ("version", policy.version.as_str().into()),
                ("date", policy.date.as_str().into()),
                ("author", policy.author.as_str().into()),
            ],
        );
        self.line(&by);
        let caution = words.say("rules-caution");
        self.line(&caution);
    }

    fn rule(&mut self, rule: &Rule) {
        let words = self.words;
        self.line("");
        self.line(&format!("{} ({})", phrase::rule(words, rule.id), rule.id));
        self.field("rules-level", &phrase::of(words, "level", rule.level));
        self.field("rules-when", &words.say(&condition(rule)));
        if rule.limits.is_empty() {
            let fixed = words.say("rules-fixed");
            self.line(&format!("  {fixed}"));
        }
        for limit in rule.limits {
            let value = self.limit(*limit);
            self.field("rules-threshold", &value);
        }
        self.field("rules-source", &phrase::word(words, "source", rule.source));
        if let Some(tried) = list(words, "adjustment", rule.tries) {
            self.field("rules-tried", &tried);
        }
        if let Some(agreed) = list(words, "plan", rule.plan) {
            self.field("rules-agreed", &agreed);
        }
        if rule.call != CallWhom::Nobody {
            self.field("rules-call", &phrase::of(words, "call", rule.call));
        }
        let changed = words.say_with(
            "rules-changed-value",
            &[
                ("version", rule.changed.into()),
                ("date", version_date(rule.changed).unwrap_or("-").into()),
            ],
        );
        self.field("rules-changed", &changed);
    }

    /// A threshold with its value here and its published bounds.
    fn limit(&self, limit: Limit) -> String {
        let facts = limit.facts();
        let shown = |value| phrase::number(self.words, &Number::new("", value, facts.unit));
        self.words.say_with(
            "rules-threshold-value",
            &[
                ("name", phrase::of(self.words, "limit", limit).into()),
                ("value", shown(self.policy.limit(limit)).into()),
                ("low", shown(facts.low).into()),
                ("high", shown(facts.high).into()),
            ],
        )
    }

    fn thresholds(&mut self) {
        let heading = self.words.say("rules-thresholds");
        self.heading(&heading);
        for limit in Limit::ALL {
            let value = self.limit(*limit);
            self.line("");
            self.line(&value);
            let source = phrase::word(self.words, "source", limit.facts().source);
            self.field("rules-source", &source);
        }
    }
}

/// The message that says when a rule holds: its own, or one that it shares with its like.
pub fn condition(rule: &Rule) -> String {
    let is_sign = rule.id.starts_with("sign-") || rule.id == "baby-clicking";
    let own = format!("rule-{}", rule.id);
    if is_sign {
        "rule-sign-not-seen".to_owned()
    } else if crate::words::IDS.contains(&own.as_str()) {
        own
    } else {
        "rule-danger".to_owned()
    }
}

fn list<T: StoredWord>(words: &Words, thing: &str, all: &[T]) -> Option<String> {
    let phrases: Vec<String> = all.iter().map(|it| phrase::of(words, thing, *it)).collect();
    (!phrases.is_empty()).then(|| phrases.join("; "))
}
