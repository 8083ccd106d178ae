//! The mother's sheet: what went well, what to try, how to see that milk goes in, what to expect,
//! when to get help, and the next visit. Plain words, in her language where there is one.
//!
//! Made from [`Facts`] alone, as every page. It names nobody, tells nothing that was not seen or
//! agreed, and says that it does not replace advice. What is usual at an age comes from the tables
//! of `growth`, with their source at the foot.

use super::printed::{Block, Printed, Table, isolated};
use super::{Facts, phrase};
use crate::findings::{CallWhom, Level};
use crate::growth::{Age, EXPECTED_OUTPUT, ExpectedOutput};
use crate::record::{
    BabyState, BreastAfter, NippleAfter, PainAt, Pair, Sign, SignState, StoolColour, StoredWord,
};
use crate::words::{Lang, Words};

/// The most lines on what went well: one glance.
const WELL_MOST: usize = 5;
/// The most pain that is told as little. Common practice: a score of 0 to 2 needs nothing done.
const LITTLE_PAIN: u8 = 2;
/// How many lines there are: signs that milk goes in, when to get help for the baby and for her.
const MILK_SIGNS: usize = 5;
const HELP_BABY: usize = 7;
const HELP_MOTHER: usize = 5;

/// Her language, if the sheet has it; otherwise the one given.
pub fn lang_of(pair: &Pair, otherwise: Lang) -> Lang {
    pair.language
        .as_ref()
        .and_then(|language| Lang::from_tag(language.tag()))
        .unwrap_or(otherwise)
}

/// The sheet in the language of the words.
pub fn page(facts: &Facts, words: &Words) -> Printed {
    let mut page = Printed::new(words.say("sheet-title"), words.lang(), facts.until);
    let id = facts.short_id();
    page.foot = words.say_with("sheet-foot", &[("id", isolated(&id).into())]);
    let sheet = Sheet { facts, words };
    page.blocks.push(Block::Text(sheet.day()));
    page.blocks.extend(sheet.review());
    sheet.section(&mut page, "sheet-well", sheet.well());
    sheet.section(&mut page, "sheet-try", sheet.tries());
    let milk = (1..=MILK_SIGNS).map(|it| words.say(&format!("sheet-milk-{it}")));
    sheet.section(&mut page, "sheet-milk", milk.collect());
    page.blocks.push(Block::Heading(words.say("sheet-expect")));
    page.blocks.extend(sheet.weight());
    page.blocks.extend(sheet.nappies());
    page.blocks.push(sheet.help());
    page.blocks.push(Block::Heading(words.say("sheet-next")));
    page.blocks.push(Block::Text(sheet.next()));
    page.blocks.push(Block::Quiet(words.say("sheet-sources")));
    page
}

struct Sheet<'a> {
    facts: &'a Facts,
    words: &'a Words,
}

impl Sheet<'_> {
    fn section(&self, page: &mut Printed, heading: &str, points: Vec<String>) {
        page.blocks.push(Block::Heading(self.words.say(heading)));
        page.blocks.push(Block::List(points));
    }

    /// When, and how old the baby was.
    fn day(&self) -> String {
        let facts = self.facts;
        let date = isolated(&self.words.date(facts.began.local()));
        match Age::of(facts.pair.birth, facts.began) {
            Some(age) => {
                let args = [("date", date.into()), ("days", age.days().into())];
                self.words.say_with("sheet-day", &args)
            }
            None => self
                .words
                .say_with("sheet-day-only", &[("date", date.into())]),
        }
    }

    /// Medical review now leads every page, for the one whom it is about.
    fn review(&self) -> Option<Block> {
        let findings = &self.facts.judged.findings;
        let now = |whom: &dyn Fn(CallWhom) -> bool| {
            findings
                .iter()
                .any(|it| it.level == Level::MedicalReviewNow && whom(it.call))
        };
        let mother = now(&|whom| whom == CallWhom::MotherDoctor);
        let baby = now(&|whom| whom != CallWhom::MotherDoctor);
        let points: Vec<String> = [("sheet-review-baby", baby), ("sheet-review-mother", mother)]
            .into_iter()
            .filter(|(_, holds)| *holds)
            .map(|(id, _)| self.words.say(id))
            .collect();
        (!points.is_empty()).then(|| Block::Urgent {
            heading: self.words.say("sheet-review"),
            points,
            after: String::new(),
        })
    }

    /// Whether a sign was seen, and no feed that was looked at was without it.
    fn is_seen(&self, sign: Sign) -> bool {
        let looks = self.facts.looks();
        let mut told = looks.iter().filter_map(|look| look.state(sign)).peekable();
        told.peek().is_some() && told.all(|state| state == SignState::Seen)
    }

    /// What was seen to be good; never empty, and nothing that was not seen.
    fn well(&self) -> Vec<String> {
        let feeds = &self.facts.feeds;
        let last = feeds.last().map(|it| &it.feed);
        let flowed = feeds.iter().any(|it| {
            let rhythm = it.rhythm.as_ref();
            rhythm.is_some_and(|it| it.first_flow.is_some() && 0 < it.swallows)
        });
        let is_little = |it: &PainAt| it.pain.value().is_some_and(|score| score <= LITTLE_PAIN);
        // Pain afterwards would be no good end; not asked afterwards is no pain told.
        let little_pain = last.is_some_and(|feed| {
            feed.pains.last().is_some_and(is_little) && feed.pains_after.iter().all(is_little)
        });
        let seen = [
            ("sheet-well-flow", flowed),
            ("sheet-well-mouth", self.is_seen(Sign::MouthWide)),
            ("sheet-well-chin", self.is_seen(Sign::ChinIn)),
            ("sheet-well-close", self.is_seen(Sign::Close)),
            ("sheet-well-pain", little_pain),
            (
                "sheet-well-nipple",
                last.is_some_and(|it| it.nipple_after == Some(NippleAfter::Rounded)),
            ),
            (
                "sheet-well-softer",
                last.is_some_and(|it| it.breast_after == Some(BreastAfter::Softer)),
            ),
            (
                "sheet-well-content",
                last.is_some_and(|it| it.baby_state == Some(BabyState::Content)),
            ),
        ];
        let mut well: Vec<String> = seen
            .into_iter()
            .filter(|(_, holds)| *holds)
            .map(|(id, _)| self.words.say(id))
            .take(WELL_MOST)
            .collect();
        if well.is_empty() {
            well.push(self.words.say("sheet-well-together"));
        }
        well
    }

    /// What was agreed, each kind once; own words as they were written. The ward's number for a call
    /// is for those who work there.
    fn tries(&self) -> Vec<String> {
        let mut tries: Vec<String> = Vec::new();
        for item in &self.facts.plan {
            let what = item
                .what
                .as_ref()
                .map(|what| phrase::coded(self.words, "sheet-plan", what));
            let own = item
                .own_words()
                .map(|own| format!("\u{2068}{}\u{2069}", own.as_str().replace('\n', " ")));
            for line in what.into_iter().chain(own) {
                if !tries.contains(&line) {
                    tries.push(line);
                }
            }
        }
        if tries.is_empty() {
            tries.push(phrase::word(self.words, "sheet-plan", "feed_often"));
        }
        tries
    }

    /// The weights known, and what is usual.
    fn weight(&self) -> Vec<Block> {
        let grams = |value: f64| isolated(&format!("{}\u{a0}g", self.words.number(value, 0)));
        let birth = self.facts.pair.birth_weight;
        let birth = birth.map(|it| grams(f64::from(it.value())));
        let now = self.facts.figure("weight");
        let now = now.and_then(|it| Some((grams(it.value?), it.at?)));
        let mut said = Vec::new();
        if let Some(birth) = birth {
            said.push(
                self.words
                    .say_with("sheet-weight-birth", &[("grams", birth.into())]),
            );
        }
        if let Some((grams, at)) = now {
            let date = isolated(&self.words.date(at.local()));
            let args = [("grams", grams.into()), ("date", date.into())];
            said.push(self.words.say_with("sheet-weight-now", &args));
        }
        said.push(self.words.say("sheet-weight-usual"));
        vec![Block::Text(said.join(" "))]
    }

    /// Expected nappies from the baby's day on.
    fn nappies(&self) -> Vec<Block> {
        let words = self.words;
        let day = Age::of(self.facts.pair.birth, self.facts.until).map_or(1, Age::day_of_life);
        let rows: Vec<Vec<String>> = EXPECTED_OUTPUT
            .iter()
            .filter(|row| day <= row.to_day)
            .map(|row| self.nappy_row(row))
            .collect();
        if rows.is_empty() {
            return vec![Block::Text(words.say("sheet-nappies-later"))];
        }
        vec![
            Block::Text(words.say("sheet-nappies")),
            Block::Table(Table {
                head: ["day", "wet", "dirty", "colour"]
                    .iter()
                    .map(|it| words.say(&format!("sheet-nappies-{it}")))
                    .collect(),
                rows,
                shares: vec![3, 5, 5, 6],
            }),
        ]
    }

    fn nappy_row(&self, row: &ExpectedOutput) -> Vec<String> {
        let words = self.words;
        let days = isolated(&format!("{}\u{2013}{}", row.from_day, row.to_day));
        let id = if row.heavy {
            "sheet-nappies-heavy"
        } else {
            "sheet-nappies-least"
        };
        let least = |id: &str, count: u8| {
            let count = isolated(&count.to_string());
            words.say_with(id, &[("count", count.into())])
        };
        let colours: Vec<String> = row
            .colours
            .iter()
            .map(|it: &StoolColour| phrase::word(words, "sheet-colour", it.word()))
            .collect();
        vec![
            days,
            least(id, row.wet),
            least("sheet-nappies-least", row.dirty),
            colours.join(", "),
        ]
    }

    /// When to get help now.
    fn help(&self) -> Block {
        let baby = (1..=HELP_BABY).map(|it| format!("sheet-help-baby-{it}"));
        let mother = (1..=HELP_MOTHER).map(|it| format!("sheet-help-mother-{it}"));
        Block::Urgent {
            heading: self.words.say("sheet-help"),
            points: baby.chain(mother).map(|id| self.words.say(&id)).collect(),
            after: self.words.say("sheet-help-how"),
        }
    }

    fn next(&self) -> String {
        match self.facts.next_look {
            Some(due) => {
                let due = isolated(&self.words.date_time(due.local()));
                self.words.say_with("sheet-next-at", &[("due", due.into())])
            }
            None => self.words.say("sheet-next-ask"),
        }
    }
}
