//! What the rules said, gravest first, and what they could not judge.

use super::Page;
use crate::findings::{Finding, Level};
use crate::report::phrase;

impl Page<'_> {
    pub(super) fn findings(&mut self) {
        let findings = &self.facts.judged.findings;
        for level in Level::ALL {
            let of_level: Vec<&Finding> = findings.iter().filter(|it| it.level == *level).collect();
            if of_level.is_empty() {
                continue;
            }
            let heading = phrase::of(self.words, "level", *level);
            let is_now = *level == Level::MedicalReviewNow;
            self.heading(&if is_now {
                heading.to_uppercase()
            } else {
                heading
            });
            for it in of_level {
                self.finding(it);
            }
        }
        if findings.is_empty() {
            self.line("");
            self.say("report-no-finding", &[]);
        }
    }

    fn finding(&mut self, it: &Finding) {
        let words = self.words;
        self.line(&format!("* {}", phrase::finding(words, it)));
        let reason = phrase::reason(words, it);
        if !reason.is_empty() {
            self.line(&format!("  {reason}"));
        }
        let source = phrase::word(words, "source", &it.source);
        self.say_under("report-source", &[("source", source.into())]);
        let tries = phrase::tries(words, it);
        let call = phrase::call(words, it, self.facts.number_of(it.call));
        for line in tries.into_iter().chain(call) {
            self.line(&format!("  {line}"));
        }
        if it.level != Level::MedicalReviewNow {
            return;
        }
        let facts = self.facts;
        match facts.acknowledged.iter().find(|ack| ack.rule == it.rule) {
            Some(ack) => {
                let by = ack.by.as_str().into();
                let args = [("by", by), ("when", self.when(ack.wall).into())];
                self.say_under("report-acknowledged", &args);
            }
            None => self.say_under("report-not-acknowledged", &[]),
        }
    }

    pub(super) fn unjudged(&mut self) {
        let facts = self.facts;
        if facts.judged.unjudged.is_empty() {
            return;
        }
        let heading = self.words.say("report-unjudged");
        self.heading(&heading);
        for it in &facts.judged.unjudged {
            let missing: Vec<String> = it
                .missing
                .iter()
                .map(|it| phrase::word(self.words, "missing", it))
                .collect();
            let args = [
                ("rule", phrase::rule(self.words, &it.rule).into()),
                ("missing", missing.join("; ").into()),
            ];
            self.say("report-unjudged-rule", &args);
        }
    }
}
