//! The visit as a plain page to be read: what is pressing first, doubts beside the numbers, and
//! what could not be judged said as plainly as what could.

mod feed;
mod findings;
mod laid;
mod told;

use super::printed::Printed;
use super::{Facts, phrase};
use crate::record::{SignState, WallTime};
use crate::words::{Arg, Words};
use laid::Part;

/// Writes the page; lines end in a line feed.
pub fn text(facts: &Facts, words: &Words) -> String {
    laid::characters(&parts(facts, words))
}

/// The same page to be printed; its title does not tell who it is about.
pub fn printed(facts: &Facts, words: &Words) -> Printed {
    laid::printed(parts(facts, words), facts, words)
}

fn parts(facts: &Facts, words: &Words) -> Vec<Part> {
    let mut page = Page {
        facts,
        words,
        parts: Vec::new(),
    };
    page.head();
    page.findings();
    page.unjudged();
    page.pair();
    page.last_day();
    page.weight();
    page.before();
    for (index, feed) in facts.feeds.iter().enumerate() {
        page.feed(index + 1, feed);
    }
    page.signs();
    page.notes();
    page.plan();
    page.foot();
    page.parts
}

struct Page<'a> {
    facts: &'a Facts,
    words: &'a Words,
    parts: Vec<Part>,
}

impl Page<'_> {
    fn line(&mut self, line: &str) {
        self.parts.push(Part::Line(line.to_owned()));
    }

    fn heading(&mut self, line: &str) {
        self.parts.push(Part::Heading(line.to_owned()));
    }

    fn say(&mut self, id: &str, args: &[(&str, Arg)]) {
        let line = self.words.say_with(id, args);
        self.line(&line);
    }

    /// A sentence that belongs to the line before it.
    fn say_under(&mut self, id: &str, args: &[(&str, Arg)]) {
        let line = self.words.say_with(id, args);
        self.line(&format!("  {line}"));
    }

    /// A label and its value; "not known" where there is none.
    fn field(&mut self, id: &str, value: Option<String>) {
        let label = self.words.say(id);
        let value = value.unwrap_or_else(|| self.words.say("report-unknown"));
        self.line(&format!("{label}: {value}"));
    }

    fn when(&self, wall: WallTime) -> String {
        self.words.date_time(wall.local())
    }

    fn yes(&self, yes: bool) -> String {
        self.words.say(if yes { "report-yes" } else { "report-no" })
    }

    fn head(&mut self) {
        let facts = self.facts;
        let title = self.words.say("report-title");
        self.parts.push(Part::Title(title));
        let args = [
            ("bed", facts.pair.bed.as_str().into()),
            ("initials", facts.pair.initials.as_str().into()),
        ];
        self.say("report-pair", &args);
        let args = [
            ("began", self.when(facts.began).into()),
            ("specialist", facts.specialist.as_str().into()),
            ("id", facts.short_id().into()),
        ];
        self.say("report-visit", &args);
        if let Some(replaced) = facts.replaces {
            let id = replaced.uuid().simple().to_string()[..8].to_owned();
            self.say("report-amends", &[("id", id.into())]);
        }
        match &facts.signed {
            Some(signed) => {
                let by = signed.by.as_str().into();
                let args = [("by", by), ("when", self.when(signed.wall).into())];
                self.say("report-signed", &args);
            }
            None => self.say("report-not-signed", &[]),
        }
    }

    /// The signs of each feed; a lone feed needs no naming.
    fn signs(&mut self) {
        let (facts, words) = (self.facts, self.words);
        let heading = words.say("report-signs");
        self.heading(&heading);
        let groups = [
            ("report-signs-missing", Some(SignState::NotSeen)),
            ("report-signs-unclear", Some(SignState::Unclear)),
            ("report-signs-seen", Some(SignState::Seen)),
            ("report-signs-unlooked", None),
        ];
        let looks = facts.looks();
        for (number, look) in (1_usize..).zip(&looks) {
            if let Some(it) = look.feed.filter(|_| 1 < looks.len()) {
                let side = phrase::of(words, "side", it.feed.side);
                let args = [("number", number.into()), ("side", side.into())];
                self.say("report-feed", &args);
            }
            for (id, state) in groups {
                let signs: Vec<String> = look
                    .all_in(state)
                    .map(|sign| phrase::of(words, "sign", sign))
                    .collect();
                if !signs.is_empty() {
                    self.field(id, Some(signs.join("; ")));
                }
            }
        }
    }

    fn notes(&mut self) {
        let facts = self.facts;
        if facts.notes.is_empty() {
            return;
        }
        let heading = self.words.say("report-notes");
        self.heading(&heading);
        for (wall, text) in &facts.notes {
            let when = self.when(*wall);
            self.line(&format!("{when}: {}", text.as_str().replace('\n', "\n  ")));
        }
    }

    fn plan(&mut self) {
        let (facts, words) = (self.facts, self.words);
        let heading = words.say("report-plan");
        self.heading(&heading);
        if facts.plan.is_empty() {
            self.say("report-plan-none", &[]);
        }
        for item in &facts.plan {
            let what = item
                .what
                .as_ref()
                .map(|it| phrase::coded(words, "plan", it));
            let own = item.words.as_ref().map(|it| it.as_str().replace('\n', " "));
            let both: Vec<String> = what.into_iter().chain(own).collect();
            self.line(&format!("* {}", both.join(": ")));
        }
        let due = facts.next_look.map(|due| self.when(due));
        self.field(
            "report-next-look",
            due.or_else(|| Some(words.say("report-next-look-none"))),
        );
    }

    fn foot(&mut self) {
        let facts = self.facts;
        self.line("");
        if 0 < facts.odd {
            self.say("report-odd", &[("count", facts.odd.into())]);
        }
        let rules = &facts.rule_versions;
        let hash = facts.policy.hash.get(..8).unwrap_or(&facts.policy.hash);
        let args = [
            ("name", facts.policy.name.as_str().into()),
            ("version", facts.policy.version.as_str().into()),
            ("hash", hash.into()),
        ];
        self.say("report-policy", &args);
        let args = [
            ("app", facts.app_version.as_str().into()),
            ("rhythm", rules.rhythm.as_str().into()),
            ("growth", rules.growth.as_str().into()),
            ("findings", rules.findings.as_str().into()),
        ];
        self.say("report-versions", &args);
        self.say("report-caution", &[]);
    }
}
