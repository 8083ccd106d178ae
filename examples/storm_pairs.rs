//! A storm over the door for pair files, and over all that is worked out from what it lets in:
//! `cargo run --release --no-default-features --example storm_pairs [INPUTS] [SEED] [FIRST]`.
//!
//! Good pair files, and made-up ones, are changed by a seeded hand (bytes, names, values, numbers
//! and times that are hard, depth, length) and read; what is taken goes through the figures and all
//! rules. Ends at once at a panic, at a refusal that names no place, at a danger sign that no rule
//! hears, after more than a second for one input, or above 64 MB; the number of the input is said,
//! and given as FIRST makes it again. Prints how many were taken, the slowest, which is done
//! once more, and the peak of memory.

#![allow(missing_docs, clippy::unwrap_used)]

use std::collections::BTreeMap;
use std::panic::{AssertUnwindSafe, catch_unwind};
use std::time::{Duration, Instant};

use feedside::fault;
use feedside::findings::{Policy, judge};
use feedside::growth::pair_file::{self, PairFile, Wrong};
use feedside::growth::{json_of_file, of};
use feedside::record::{Coded, Folded, WallTime};
use feedside::words::{Lang, Words};
use rand::{Rng, RngExt, SeedableRng};
use rand_chacha::ChaCha8Rng;

const SECOND: Duration = Duration::from_secs(1);
const MEMORY_MOST_KB: u64 = 64 * 1024;

const GOOD: [&str; 4] = [
    r#"{"pair":{"birth":"2026-03-01T12:00:00+00:00","sex":"male"}}"#,
    r#"{"pair":{"id":"00000000-0000-4000-8000-000000000001","bed":"B2","initials":"XY",
"birth":"2026-03-28T23:30:00+01:00","sex":"female","gestation":275,"birth_weight":3500,
"way_of_birth":"caesarean","babies":2,"risk_notes":["sibling_phototherapy"],"reasons":["pain"],
"language":"de"},"weighings":[{"at":"2026-03-29T03:30:00+02:00","grams":3450,"step":5},
{"at":"2026-03-31T23:30:00+02:00","grams":3149,"clothed":false,"moment":"before_feed"},
{"at":"2026-03-31T23:59:00+02:00","grams":3180,"step":2,"moment":"after_feed"}],
"nappies":[{"at":"2026-03-30T01:00:00+02:00","wet":true,"heavy":true,"stool":"green","urates":false}],
"last_day":{"feeds":7,"wet":2,"dirty":1,"stool":"black","urates":true,"hours_since_wet":9,
"expressed_ml":20,"supplement_ml":0,"sleepy":true,"jaundice":"body","temperature":376,
"baby_danger":["fit","floppy"],"mother_danger":["calf"]},"at":"2026-04-01T00:30:00+02:00"}"#,
    r#"{"pair":{"birth":"1970-01-01T00:00:00+00:00","sex":"not_stated","birth_weight":1},
"weighings":[{"at":"1970-01-01T00:00:00-14:00","grams":30000,"clothed":true},
{"at":"2199-12-31T23:59:59.999+00:00","grams":1}],"last_day":{"baby_danger":[],"temperature":200},
"at":"2199-12-31T23:59:59.999Z"}"#,
    r#"{"at":"2026-10-25T02:30:00+01:00","pair":{"sex":"female","birth_weight":2400,
"birth":"2026-10-25T02:30:00+02:00","gestation":240},"weighings":null,"nappies":[],
"last_day":{"jaundice":"face","mother_danger":["sepsis","an_unknown_one"]}}"#,
];

/// Times that are hard: clock changes, leap days and seconds, the edges of years and of what is kept.
const TIMES: [&str; 16] = [
    "2026-03-29T01:59:59+01:00",
    "2026-03-29T02:30:00+01:00",
    "2026-10-25T02:59:59.999+02:00",
    "2024-02-29T00:00:00Z",
    "2025-02-29T00:00:00Z",
    "1999-12-31T23:59:60Z",
    "2026-12-31T23:59:59+14:00",
    "2027-01-01T00:00:00-14:00",
    "2027-01-01T00:00:00-14:01",
    "1969-12-31T23:59:59Z",
    "1970-01-01T00:00:00Z",
    "2200-01-01T00:00:00Z",
    "9999-12-31T23:59:59Z",
    "+262142-12-31T23:59:59Z",
    "2026-03-01T12:00:00",
    "2026-03-01t12:00:00.000000000000000001z",
];
/// Numbers that are hard, as they are written.
const NUMBERS: [&str; 22] = [
    "0",
    "-0",
    "-1",
    "1",
    "40",
    "41",
    "350",
    "374.5",
    "30000",
    "30001",
    "255",
    "256",
    "65536",
    "2147483648",
    "9223372036854775807",
    "9223372036854775808",
    "-9223372036854775808",
    "18446744073709551616",
    "1e308",
    "1e400",
    "3.5e3",
    "0.00000000000000000000000000000000000000001",
];
const WORDS: [&str; 35] = [
    "pair",
    "birth",
    "sex",
    "at",
    "grams",
    "weighings",
    "nappies",
    "last_day",
    "wet",
    "step",
    "moment",
    "clothed",
    "feeds",
    "stool",
    "temperature",
    "baby_danger",
    "mother_danger",
    "fit",
    "floppy",
    "cord",
    "jaundice_first_day",
    "bleeding",
    "mind",
    "male",
    "female",
    "not_stated",
    "after_feed",
    "pale",
    "extensive",
    "gestation",
    "birth_weight",
    "",
    "\\u0000",
    "\\u2028x",
    "\\ud800",
];

/// What makes much of a few bytes.
const MANY: [&str; 8] = [
    "[],",
    "{},",
    "0,",
    "{\"\":0},",
    "\"\",",
    "[[[{}]]],",
    "{\"at\":\"\",\"grams\":1},",
    "9",
];

struct Hand(ChaCha8Rng);

impl Hand {
    fn below(&mut self, most: usize) -> usize {
        self.0.random_range(0..most.max(1))
    }

    fn one_in(&mut self, many: usize) -> bool {
        self.below(many) == 0
    }

    fn of<'a>(&mut self, all: &[&'a str]) -> &'a str {
        all[self.below(all.len())]
    }

    /// Any value, as it is written; nested the less, the deeper.
    fn value(&mut self, deep: usize) -> String {
        match self.below(if deep < 4 { 12 } else { 9 }) {
            0 | 1 => self.of(&NUMBERS).to_owned(),
            2 => self.below(40_000).to_string(),
            3 | 4 => format!("\"{}\"", self.of(&TIMES)),
            5 | 6 => format!("\"{}\"", self.of(&WORDS)),
            7 => self.of(&["null", "true", "false"]).to_owned(),
            8 => self.time(),
            9 => {
                let all: Vec<_> = (0..self.below(5)).map(|_| self.value(deep + 1)).collect();
                format!("[{}]", all.join(","))
            }
            _ => {
                let all: Vec<_> = (0..self.below(5))
                    .map(|_| format!("\"{}\":{}", self.of(&WORDS), self.value(deep + 1)))
                    .collect();
                format!("{{{}}}", all.join(","))
            }
        }
    }

    /// A time of a civil year, with any offset.
    fn time(&mut self) -> String {
        let (year, month, day) = (
            1969 + self.below(232),
            1 + self.below(12),
            1 + self.below(31),
        );
        let (hour, minute, east) = (self.below(25), self.below(60), self.below(16));
        let sign = self.of(&["+", "-"]);
        format!("\"{year}-{month:02}-{day:02}T{hour:02}:{minute:02}:00{sign}{east:02}:30\"")
    }

    /// A made-up file that is often good: a birth, and what follows in the weeks after.
    fn made_up(&mut self) -> String {
        let birth_ms = self.below(7_258_118_400_000) as i64;
        let birth = WallTime::new(birth_ms, self.below(1681) as i16 - 840).unwrap();
        let told = |it: WallTime| serde_json::to_string(&it).unwrap();
        let ends = birth.plus_ms(self.below(120 * 86_400_000) as i64);
        let span = ends.since_ms(birth) as usize + 1;
        let mut weighings = Vec::new();
        for _ in 0..self.below(8) {
            let at = told(birth.plus_ms(self.below(span) as i64));
            let (grams, step) = (1 + self.below(6000), 1 + self.below(20));
            let moment = self.of(&["routine", "before_feed", "after_feed"]);
            let clothed = self.one_in(4);
            weighings.push(format!(
                r#"{{"at":{at},"grams":{grams},"step":{step},"moment":"{moment}","clothed":{clothed}}}"#
            ));
        }
        let (sex, weight) = (
            self.of(&["male", "female", "not_stated"]),
            1 + self.below(6000),
        );
        let (feeds, wet, warm) = (self.below(41), self.below(41), 200 + self.below(251));
        let (stool, danger) = (
            self.of(&["black", "pale", "bloody"]),
            self.of(&WORDS[17..23]),
        );
        let (birth, weighings, ends) = (told(birth), weighings.join(","), told(ends));
        format!(
            r#"{{"pair":{{"birth":{birth},"sex":"{sex}","birth_weight":{weight}}},"weighings":[{weighings}],"last_day":{{"feeds":{feeds},"wet":{wet},"temperature":{warm},"stool":"{stool}","baby_danger":["{danger}"]}},"at":{ends}}}"#
        )
    }

    /// One change of a text's tokens or bytes.
    fn change(&mut self, text: &mut Vec<u8>) {
        // Marks seldom: a text without one of them is no JSON.
        let marks = self.one_in(8);
        let tokens = tokens(text, marks);
        if tokens.is_empty() {
            text.extend_from_slice(self.value(0).as_bytes());
            return;
        }
        let (a, b) = (self.below(tokens.len()), self.below(tokens.len()));
        let (first, second) = (tokens[a.min(b)].clone(), tokens[a.max(b)].clone());
        let at = self.below(text.len());
        let is_name = |it: &std::ops::Range<usize>| text.get(it.end) == Some(&b':');
        let (a_name, alike) = (is_name(&first), is_name(&first) == is_name(&second));
        match self.below(12) {
            0 if self.one_in(2) => text[at] ^= 1 << self.below(8),
            1 if self.one_in(2) => text[at] = self.0.next_u32() as u8,
            2 if self.one_in(4) => text.truncate(at),
            3 if marks => drop(text.drain(first)),
            4 | 5 if a != b && alike => {
                let (one, other) = (text[first.clone()].to_vec(), text[second.clone()].to_vec());
                text.splice(second, one);
                text.splice(first, other);
            }
            6 => {
                let part = [b",", &text[first.start..second.end]].concat();
                text.splice(second.end..second.end, part);
            }
            7 if self.one_in(20) => {
                let times = 1 << self.below(18);
                let (open, close) = if self.one_in(2) {
                    ("[", "]")
                } else {
                    ("{\"a\":", "}")
                };
                let inner = text[first.clone()].to_vec();
                let (open, close) = (open.repeat(times), close.repeat(times));
                let whole = [open.as_bytes(), &inner, close.as_bytes()];
                text.splice(first, whole.concat());
            }
            8 if self.one_in(200) => {
                let part = self.of(&MANY).repeat(1 << self.below(18));
                text.splice(first.end..first.end, part.bytes());
            }
            _ => {
                let value = if a_name {
                    format!("\"{}\"", self.of(&WORDS))
                } else {
                    self.value(0)
                };
                text.splice(first, value.bytes());
            }
        }
    }
}

/// Where the strings, words and numbers of a text lie, and its marks if wanted; roughly.
fn tokens(text: &[u8], marks: bool) -> Vec<std::ops::Range<usize>> {
    let mut all = Vec::new();
    let mut at = 0;
    while at < text.len() && all.len() < 2000 {
        let length = match text[at] {
            b'"' => {
                text[at + 1..]
                    .iter()
                    .position(|it| *it == b'"')
                    .unwrap_or(0)
                    + 2
            }
            it if is_of_word(it) => text[at..].iter().take_while(|it| is_of_word(**it)).count(),
            _ => 1,
        };
        let end = (at + length).min(text.len());
        let is_mark = text[at].is_ascii_punctuation() && !matches!(text[at], b'"' | b'-');
        if !text[at].is_ascii_whitespace() && (marks || !is_mark) {
            all.push(at..end);
        }
        at = end;
    }
    all
}

const fn is_of_word(it: u8) -> bool {
    it.is_ascii_alphanumeric() || matches!(it, b'-' | b'.' | b'+')
}

fn input(samples: &[Vec<u8>], number: u64, seed: u64) -> Vec<u8> {
    // The first are as long as the door takes.
    if let Some(part) = MANY.get(number as usize) {
        let (head, times) = ("{\"nappies\":[", (pair_file::BYTES_MOST - 16) / part.len());
        return format!("{head}{}0]}}", part.repeat(times)).into_bytes();
    }
    let mut hand = Hand(ChaCha8Rng::seed_from_u64(seed.wrapping_shl(40) ^ number));
    let mut text = match hand.below(8) {
        0 => hand.value(0).into_bytes(),
        1..4 => hand.made_up().into_bytes(),
        _ => samples[hand.below(samples.len())].clone(),
    };
    for _ in 0..hand.below(5) {
        hand.change(&mut text);
    }
    text
}

/// What must hold of a file that was taken; else what does not.
fn broken(file: &PairFile, now: WallTime, policy: &Policy) -> Option<String> {
    let figures = json_of_file(file, now);
    serde_json::from_str::<serde_json::Value>(&figures.to_string()).ok()?;
    let at = file.at.unwrap_or(now);
    let growth = of(&file.pair, &file.weighings, at);
    let visit = Folded {
        last_day: file.last_day.clone(),
        nappies: file.nappies.clone(),
        ..Folded::default()
    };
    let said = judge(&file.pair, &visit, &[], &growth, policy, at);
    let day = file.last_day.as_ref()?;
    let known = |whose: &str, word: &str| format!("{whose}-{}", word.replace('_', "-"));
    let baby = day.baby_danger.iter().flatten().filter_map(|it| match it {
        Coded::Known(it) => Some(known("baby", it.as_word())),
        _ => None,
    });
    let mother = day
        .mother_danger
        .iter()
        .flatten()
        .filter_map(|it| match it {
            Coded::Known(it) => Some(known("mother", it.as_word())),
            _ => None,
        });
    let silent = baby
        .chain(mother)
        .find(|id| said.findings.iter().all(|it| it.rule != *id));
    silent.map(|id| format!("{id} is silent"))
}

fn peak_kb() -> u64 {
    let status = std::fs::read_to_string("/proc/self/status").unwrap();
    let line = status.lines().find(|line| line.starts_with("VmHWM"));
    let kb = line.and_then(|line| line.split_whitespace().nth(1));
    kb.unwrap().parse().unwrap()
}

fn main() -> Result<(), String> {
    let mut arguments = std::env::args().skip(1).map(|it| it.parse::<u64>());
    let mut number = |usual| arguments.next().and_then(Result::ok).unwrap_or(usual);
    let (inputs, seed, first) = (number(1_000_000), number(1), number(0));
    let samples: Vec<Vec<u8>> = GOOD.iter().map(|it| it.as_bytes().to_vec()).collect();
    let now = WallTime::new(1_798_000_000_000, 0).unwrap();
    let (policy, words) = (Policy::built_in(), Words::new(Lang::En));
    let mut refused = BTreeMap::<String, u64>::new();
    let (mut taken, mut slowest, mut longest) = (0_u64, (Duration::ZERO, 0), 0);
    let began = Instant::now();
    for number in first..first + inputs {
        let text = input(&samples, number, seed);
        longest = longest.max(text.len());
        let stop = |why: &str| Err(format!("input {number} of seed {seed}: {why}"));
        let started = Instant::now();
        let read = catch_unwind(AssertUnwindSafe(|| {
            let read = pair_file::read(&text, now);
            let broken = read.as_ref().ok().and_then(|it| broken(it, now, &policy));
            (read.map(drop), broken)
        }));
        let took = started.elapsed();
        slowest = slowest.max((took, number));
        match read {
            Err(_) => return stop("a panic"),
            Ok((_, Some(broken))) => return stop(&broken),
            Ok((Ok(()), None)) => taken += 1,
            Ok((Err(error), None)) => {
                let told = fault::pair_file(&error, &words).to_string();
                let place = match error.wrong {
                    Wrong::NotJson { line, .. } => format!("line {line}"),
                    _ => error.path.clone(),
                };
                if error.path.is_empty() || !told.contains(&place) || told.lines().count() != 1 {
                    return stop(&format!("no place is named: {told}"));
                }
                let kind = format!("{:?}", error.wrong);
                let kind = kind.split([' ', '{']).next().unwrap_or_default();
                *refused.entry(kind.to_owned()).or_default() += 1;
            }
        }
        if SECOND < took {
            return stop(&format!("{took:?}"));
        }
        if number % 1024 == 0 && MEMORY_MOST_KB < peak_kb() {
            return stop(&format!(
                "{} kB, at this input or shortly before",
                peak_kb()
            ));
        }
    }
    println!(
        "{inputs} inputs of seed {seed} in {:.0} s, up to {longest} bytes: {taken} taken, refused {refused:?}",
        began.elapsed().as_secs_f64()
    );
    let (took, number) = slowest;
    let text = input(&samples, number, seed);
    let started = Instant::now();
    let _ = pair_file::read(&text, now).map(|it| broken(&it, now, &policy));
    println!(
        "slowest {:.1} ms, input {number} of {} bytes, {:.1} ms when done again; peak {} kB",
        took.as_secs_f64() * 1e3,
        text.len(),
        started.elapsed().as_secs_f64() * 1e3,
        peak_kb()
    );
    Ok(())
}
