//! The flags of a strip: pain, adjustments and changes of a sign, on the strip's time axis. Marks of
//! one kind that stand close together share a flag, so that none is written over another.

use super::strip::seconds;
use crate::app::ui;
use crate::record::{At, Feed, SignState};

/// How wide a flag with one letter is on the narrowest strip, as a share of what is shown.
const FLAG_SHARE: f32 = 0.04;
/// How much wider each further letter makes it.
const LETTER_SHARE: f32 = 0.02;

/// The number under which the strip knows pain.
const PAIN: i32 = 0;
/// The number under which the strip knows an adjustment.
const TRIED: i32 = 1;
/// The number under which the strip knows a change of a sign.
const SIGN: i32 = 2;

/// Pain, adjustments and changes of signs since `from`, each kind by time, for a strip that shows so
/// many seconds.
pub fn flag_rows(feed: &Feed, from: At, shown_s: f32) -> Vec<ui::StripFlag> {
    let pains = feed.pains.iter().map(|pain| {
        let told = pain.pain.value().map(|value| value.to_string());
        (pain.at, told.unwrap_or_else(|| "?".to_owned()))
    });
    let tried = feed
        .adjustments
        .iter()
        .map(|tried| (tried.at, "+".to_owned()));
    let signs = feed.signs.iter().map(|change| {
        let sign = match change.state {
            Some(SignState::Seen) => "✓",
            Some(SignState::NotSeen) => "×",
            Some(SignState::Unclear) => "?",
            None => "–",
        };
        (change.at, sign.to_owned())
    });
    let shown = |it: &(At, String)| from <= it.0;
    [
        gathered(PAIN, pains.filter(shown), shown_s),
        gathered(TRIED, tried.filter(shown), shown_s),
        gathered(SIGN, signs.filter(shown), shown_s),
    ]
    .concat()
}

/// The flags of one kind. Where two would be written over each other, the first one tells what
/// changed in its order, and the second has no label.
fn gathered(
    kind: i32,
    marks: impl Iterator<Item = (At, String)>,
    shown_s: f32,
) -> Vec<ui::StripFlag> {
    let width_s = |label: &str| {
        let more = u16::try_from(label.chars().count().saturating_sub(1)).unwrap_or(u16::MAX);
        (FLAG_SHARE + f32::from(more) * LETTER_SHARE) * shown_s
    };
    let between = if kind == PAIN { "→" } else { "" };
    let mut flags: Vec<ui::StripFlag> = Vec::new();
    // The last flag with a label, and what was put into it last.
    let mut open: Option<(usize, String)> = None;
    for (at, label) in marks {
        let at_s = seconds(at);
        let near = open.take().filter(|(first, _)| {
            let first = &flags[*first];
            at_s - first.at_s < (width_s(&first.label) + width_s(&label)) / 2.0
        });
        let own = near.is_none();
        let first = near.map_or(flags.len(), |(first, last)| {
            if label != last {
                flags[first].label = format!("{}{between}{label}", flags[first].label).into();
            }
            first
        });
        flags.push(ui::StripFlag {
            at_s,
            kind,
            label: if own { label.as_str() } else { "" }.into(),
        });
        open = Some((first, label));
    }
    flags
}
