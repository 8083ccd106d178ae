//! An entry of the journal as one short line, for keys and lists that take it back. Decides nothing.

use crate::app::say;
use crate::record::{TapWhat, WallTime, What};
use crate::words::{Arg, Words};

/// What was told, as "Pain 4" or "Mouth wide: Seen".
pub fn line(what: &What, now: WallTime, words: &Words) -> String {
    let said = |id: &str| words.say(id);
    let with = |id: &str, arguments: &[(&str, Arg)]| words.say_with(id, arguments);
    let one = |id: &str, it: String| words.say_with(id, &[("what", it.into())]);
    let tap = |what: TapWhat| say::stored(words, "tap", what);
    match what {
        What::LastDay(_) => said("entry-last-day"),
        What::Weighed(it) => with(
            "entry-weighed",
            &[("grams", i64::from(it.grams.value()).into())],
        ),
        What::Nappy(_) => said("entry-nappy"),
        What::BreastBefore(it) => one("entry-breast-before", say::stored(words, "side", it.side)),
        What::FeedStarted { side, .. } => {
            one("entry-feed-started", say::stored(words, "side", *side))
        }
        What::FeedEnded { .. } => said("entry-feed-ended"),
        What::Suck => tap(TapWhat::Suck),
        What::SuckSwallow => tap(TapWhat::SuckSwallow),
        What::Swallow => tap(TapWhat::Swallow),
        What::TapAdded { what, .. } => one("entry-tap-added", tap(*what)),
        What::TouchUnresolved => said("entry-touch-unresolved"),
        What::UnwatchedFrom { .. } => said("entry-unwatched-from"),
        What::UnwatchedTo => said("entry-unwatched-to"),
        What::BabyOff => tap(TapWhat::Off),
        What::BabyOn => tap(TapWhat::On),
        What::HoldChanged { hold } => one("entry-hold", say::stored(words, "hold", *hold)),
        What::SignChanged { sign, state } => with(
            "entry-sign",
            &[
                ("sign", say::stored(words, "sign", *sign).into()),
                (
                    "state",
                    state
                        .map_or_else(
                            || words.say("state-not-looked"),
                            |state| say::stored(words, "state", state),
                        )
                        .into(),
                ),
            ],
        ),
        What::Pain { score, .. } => match score.value() {
            Some(score) => with("entry-pain", &[("score", i64::from(score).into())]),
            None => said("entry-pain-cannot-say"),
        },
        What::AdjustmentTried { what } => {
            one("entry-tried", say::stored(words, "adjustment", *what))
        }
        What::Note { text } => one("entry-note", text.as_str().to_owned()),
        What::NippleAfter { nipple, .. } => one(
            "entry-nipple-after",
            say::stored(words, "nipple-after", *nipple),
        ),
        What::BreastAfter { breast, .. } => one(
            "entry-breast-after",
            say::stored(words, "breast-after", *breast),
        ),
        What::BabyState { state, .. } => {
            one("entry-baby-state", say::stored(words, "baby-state", *state))
        }
        What::BoundaryMoved(_) => said("entry-boundary-moved"),
        What::PlanItem(item) => {
            let agreed = item.what.as_ref().map_or_else(
                || item.words.as_ref().map_or("", |it| it.as_str()).to_owned(),
                |it| say::coded(words, "plan", it.word()),
            );
            one("entry-plan", agreed)
        }
        What::NextLook { due } => one("entry-next-look", say::time(words, *due, now)),
        What::FindingAcknowledged { .. }
        | What::Signed { .. }
        | What::ShownAsCode { .. }
        | What::ReceiptTaken { .. }
        | What::Struck { .. }
        | What::Unknown { .. } => said("entry-other"),
    }
}
