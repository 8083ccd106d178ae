//! The note for a scanner: one line of plain ASCII that may be typed into a notes field.
//!
//! No name, no bed, no ward number and no words that anyone typed: whoever sees the code can read
//! it. What does not fit is left out by whole parts, the least pressing first, and the note says so.
//! The next look is never left out: it stands at the end with the visit's id.

use super::{Facts, FeedFacts, Look, phrase};
use crate::findings::Level;
use crate::record::{Sign, SignState};
use crate::rhythm::{Phase, PhaseRates};
use crate::words::Words;

/// The most characters of a note: one code that every scanner reads.
pub const MOST: usize = 900;

/// Writes the note; at most [`MOST`] characters of printable ASCII, ending with the visit's short id.
pub fn text(facts: &Facts, words: &Words) -> String {
    let parts: Vec<String> = parts(facts, words)
        .iter()
        .map(|part| typeable(part))
        .filter(|part| !part.is_empty())
        .collect();
    let end = end(facts, words);
    let shortened = |left_out: usize| {
        let said = words.say_with("note-shortened", &[("count", left_out.into())]);
        format!("{} {end}", typeable(&said))
    };
    let mut text = String::new();
    for (index, part) in parts.iter().enumerate() {
        let is_last = index + 1 == parts.len();
        let after = if is_last {
            end.len()
        } else {
            shortened(parts.len()).len()
        };
        if MOST < text.len() + part.len() + 1 + after {
            text.push_str(&shortened(parts.len() - index));
            return text;
        }
        text.push_str(part);
        text.push(' ');
    }
    text + &end
}

/// What is always said last: when to look again, that nothing is diagnosed, and the visit's id.
fn end(facts: &Facts, words: &Words) -> String {
    let due = facts.next_look.map(|due| {
        let due = words.date_time(due.local());
        words.say_with("note-next-look", &[("due", due.into())])
    });
    let id = words.say_with("note-end", &[("id", facts.short_id().into())]);
    typeable(&format!("{} {id}", due.unwrap_or_default()))
}

/// The parts, the most pressing first; each ends its own sentence.
fn parts(facts: &Facts, words: &Words) -> Vec<String> {
    let mut parts = findings(facts, words);
    parts.extend(unjudged(facts, words));
    if facts.replaces.is_some() {
        parts.push(words.say("note-amended"));
    }
    parts.extend(weight(facts, words));
    for (index, feed) in facts.feeds.iter().enumerate() {
        parts.push(feed_part(words, index + 1, feed));
    }
    parts.extend(signs(facts, words));
    parts.push(pain(facts, words));
    parts.extend(plan(facts, words));
    parts.extend(good(facts, words));
    parts
}

/// One part for each finding that asks for something; the first of a level names the level.
fn findings(facts: &Facts, words: &Words) -> Vec<String> {
    let mut parts = Vec::new();
    let mut last = None;
    for it in facts
        .judged
        .findings
        .iter()
        .filter(|it| it.level != Level::GoingWell)
    {
        let line = phrase::finding(words, it);
        if last == Some(it.level) {
            parts.push(words.say_with("note-finding-more", &[("finding", line.into())]));
        } else {
            let level = phrase::of(words, "level", it.level);
            let level = if it.level == Level::MedicalReviewNow {
                level.to_uppercase()
            } else {
                level
            };
            let args = [("level", level.into()), ("finding", line.into())];
            parts.push(words.say_with("note-finding", &args));
        }
        last = Some(it.level);
    }
    if parts.is_empty() {
        parts.push(words.say("note-no-finding"));
    }
    parts
}

/// What was missing to judge every rule: missing data must not read as fine.
fn unjudged(facts: &Facts, words: &Words) -> Option<String> {
    let mut missing: Vec<String> = Vec::new();
    for it in facts.judged.unjudged.iter().flat_map(|it| &it.missing) {
        let it = phrase::word(words, "missing", it);
        if !missing.contains(&it) {
            missing.push(it);
        }
    }
    let count = facts.judged.unjudged.len();
    (0 < count).then(|| {
        let args = [
            ("count", count.into()),
            ("missing", missing.join("; ").into()),
        ];
        words.say_with("note-unjudged", &args)
    })
}

/// The weight that counts and its change; the last one taken where nothing was computed.
fn weight(facts: &Facts, words: &Words) -> Option<String> {
    let counted = facts.figure("weight").and_then(|it| it.value);
    let taken = facts
        .weighings
        .last()
        .map(|(_, it)| f64::from(it.grams.value()));
    let grams = words.number(counted.or(taken)?, 0);
    let change = facts.figure("weight_change").and_then(|it| it.value);
    Some(match change {
        Some(change) => {
            let change = words.signed_percent(change, 1);
            let args = [("grams", grams.into()), ("change", change.into())];
            words.say_with("note-weight-change", &args)
        }
        None => words.say_with("note-weight", &[("grams", grams.into())]),
    })
}

fn feed_part(words: &Words, number: usize, it: &FeedFacts) -> String {
    let feed = &it.feed;
    let mut bits = Vec::new();
    if let Some(ended) = it.ended {
        let ms = u64::try_from(ended.since_ms(it.began)).unwrap_or(0);
        bits.push(words.say_with(
            "note-minutes",
            &[("minutes", phrase::minutes(words, ms, 0).into())],
        ));
    }
    if let Some(rhythm) = &it.rhythm {
        let unwatched = rhythm.totals_ms.unwatched;
        if 0 < unwatched {
            let minutes = phrase::minutes(words, unwatched, 1);
            bits.push(words.say_with("note-unwatched", &[("minutes", minutes.into())]));
        }
        match rhythm.first_flow {
            Some(at) => {
                let clock = words.duration_clock(at.since_ms(feed.started));
                bits.push(words.say_with("note-first-flow", &[("clock", clock.into())]));
                let flow = phrase::minutes(words, rhythm.totals_ms.of(Phase::Flow), 1);
                bits.push(words.say_with("note-flow", &[("minutes", flow.into())]));
            }
            None => bits.push(words.say("note-no-flow")),
        }
        let args = [
            ("sucks", rhythm.sucks.into()),
            ("swallows", rhythm.swallows.into()),
        ];
        bits.push(words.say_with("note-counts", &args));
        let flow: Option<&PhaseRates> =
            rhythm.rates.iter().find(|it| it.phase == Some(Phase::Flow));
        if let Some(rate) = flow.and_then(|it| it.sucks_per_swallow) {
            let ends = [rate.value, rate.low, rate.high].map(|it| words.number(it, 1));
            let [value, low, high] = ends;
            let args = [
                ("value", value.into()),
                ("low", low.into()),
                ("high", high.into()),
            ];
            bits.push(words.say_with("note-sucks-per-swallow", &args));
        }
        if !rhythm.doubts.is_empty() {
            let doubts: Vec<String> = rhythm
                .doubts
                .iter()
                .map(|doubt| phrase::of(words, "note-doubt", *doubt))
                .collect();
            bits.push(words.say_with("note-doubts", &[("doubts", doubts.join(", ").into())]));
        }
    }
    match feed.nipple_after {
        Some(nipple) => {
            let nipple = phrase::of(words, "nipple-after", nipple);
            bits.push(words.say_with("note-nipple", &[("nipple", nipple.into())]));
        }
        None => bits.push(words.say("note-nipple-unseen")),
    }
    let args = [
        ("number", number.into()),
        ("side", phrase::of(words, "side", feed.side).into()),
        ("facts", bits.join(", ").into()),
    ];
    words.say_with("note-feed", &args)
}

/// The signs of each feed, in one part where they stand alike in all.
fn signs(facts: &Facts, words: &Words) -> Vec<String> {
    let looks: Vec<Vec<String>> = facts.looks().iter().map(|it| look(it, words)).collect();
    match looks.as_slice() {
        [first, rest @ ..] if rest.iter().all(|it| it == first) => first.clone(),
        _ => (1..)
            .zip(&looks)
            .map(|(number, look): (usize, _)| {
                let args = [("number", number.into()), ("signs", look.join(" ").into())];
                words.say_with("note-signs-feed", &args)
            })
            .collect(),
    }
}

fn look(look: &Look<'_>, words: &Words) -> Vec<String> {
    let of = |wanted: Option<SignState>| -> Vec<String> {
        look.all_in(wanted)
            .map(|sign| phrase::of(words, "sign", sign))
            .collect()
    };
    if of(Some(SignState::Seen)).len() == Sign::ALL.len() {
        return vec![words.say("note-signs-all")];
    }
    if of(None).len() == Sign::ALL.len() {
        return vec![words.say("note-signs-none")];
    }
    let mut parts = Vec::new();
    for (id, state) in [
        ("note-signs-missing", SignState::NotSeen),
        ("note-signs-unclear", SignState::Unclear),
    ] {
        let signs = of(Some(state));
        if !signs.is_empty() {
            parts.push(words.say_with(id, &[("signs", signs.join("; ").into())]));
        }
    }
    let unlooked = of(None).len();
    if 0 < unlooked {
        parts.push(words.say_with("note-signs-unlooked", &[("count", unlooked.into())]));
    }
    parts
}

fn pain(facts: &Facts, words: &Words) -> String {
    let told: Vec<String> = facts
        .feeds
        .iter()
        .flat_map(|it| it.feed.all_pains())
        .map(|it| match it.pain.value() {
            Some(score) => words.number(score.into(), 0),
            None => words.say("note-pain-cannot-say"),
        })
        .collect();
    if told.is_empty() {
        words.say("note-pain-not-asked")
    } else {
        words.say_with("note-pain", &[("scores", told.join(", ").into())])
    }
}

fn plan(facts: &Facts, words: &Words) -> Vec<String> {
    let mut parts = Vec::new();
    let items: Vec<String> = facts
        .plan
        .iter()
        .filter_map(|item| item.what.as_ref())
        .map(|what| phrase::coded(words, "plan", what))
        .collect();
    if !items.is_empty() {
        parts.push(words.say_with("note-plan", &[("items", items.join("; ").into())]));
    }
    let own = facts
        .plan
        .iter()
        .filter(|item| item.own_words().is_some())
        .count();
    if 0 < own {
        parts.push(words.say_with("note-own-words", &[("count", own.into())]));
    }
    parts
}

fn good(facts: &Facts, words: &Words) -> Option<String> {
    let lines: Vec<String> = facts
        .judged
        .findings
        .iter()
        .filter(|it| it.level == Level::GoingWell)
        .map(|it| phrase::finding(words, it))
        .collect();
    (!lines.is_empty()).then(|| {
        let level = phrase::of(words, "level", Level::GoingWell);
        let args = [
            ("level", level.into()),
            ("finding", lines.join("; ").into()),
        ];
        words.say_with("note-finding", &args)
    })
}

/// Text as a keyboard may type it anywhere: printable ASCII without the signs that start a
/// shortcut in a notes field, single spaces, no mark at the start of a word.
fn typeable(text: &str) -> String {
    let mut out = String::with_capacity(text.len());
    let mut chars = text.chars().peekable();
    while let Some(c) = chars.next() {
        let mut one = [0; 4];
        let is_in_capitals =
            c.is_uppercase() && chars.peek().is_some_and(|next| next.is_uppercase());
        for c in ascii(c, &mut one).chars() {
            let c = if is_in_capitals {
                c.to_ascii_uppercase()
            } else {
                c
            };
            let at_start = out.is_empty() || out.ends_with(' ');
            match c {
                ' ' if at_start => {}
                // A unit or mark joins the word before it; with none before it, it says nothing.
                '.' | ',' | ';' | ':' | '/' | '%' | '=' if at_start => {
                    if out.pop().is_some() {
                        out.push(c);
                    }
                }
                _ => out.push(c),
            }
        }
    }
    out.truncate(out.trim_end().len());
    out
}

/// One character in ASCII letters, digits and plain signs; a question mark where there is none.
fn ascii(c: char, one: &mut [u8; 4]) -> &str {
    match c {
        'a'..='z' | 'A'..='Z' | '0'..='9' => c.encode_utf8(one),
        ' ' | '.' | ',' | ':' | ';' | '(' | ')' | '+' | '-' | '/' | '%' | '=' | '?' => {
            c.encode_utf8(one)
        }
        'ä' | 'æ' => "ae",
        'ö' | 'ø' | 'œ' => "oe",
        'ü' => "ue",
        'Ä' | 'Æ' => "Ae",
        'Ö' | 'Ø' | 'Œ' => "Oe",
        'Ü' => "Ue",
        'ß' => "ss",
        'à' | 'á' | 'â' | 'ã' | 'å' => "a",
        'ç' => "c",
        'è' | 'é' | 'ê' | 'ë' => "e",
        'ì' | 'í' | 'î' | 'ï' => "i",
        'ñ' => "n",
        'ò' | 'ó' | 'ô' | 'õ' => "o",
        'ù' | 'ú' | 'û' => "u",
        '−' | '–' | '—' | '‑' => "-",
        '·' | '•' => ",",
        '…' => "...",
        '×' => "x",
        '°' => " deg ",
        '&' => " + ",
        '\'' | '’' | '‘' | '"' | '“' | '”' | '„' | '«' | '»' => "",
        c if c.is_whitespace() || c.is_control() => " ",
        _ => "?",
    }
}
