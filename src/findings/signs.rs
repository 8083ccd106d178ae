//! Rules about position and attachment: one for each sign that is looked for and not seen, with
//! its usual remedy, and one each for all of them seen.
//!
//! Signs are of a feed: how the baby is held and attached at one breast says nothing of the other.
//! A sign that any feed left not seen is a finding, whatever was seen in another; all of them are
//! seen only where each feed was looked at. The findings are of the whole visit, and a mother whose
//! one breast was looked at does not hear that all is well.
//!
//! The sign "quiet" has its rule with the baby's (`baby-clicking`).

use super::rule::Verdict;
use super::scene::{Scene, held_if};
use super::{Level, Missing, Rule};
use crate::record::{Adjustment, PlanWhat, Sign, SignState};

const fn sign(id: &'static str, source: &'static str, judge: fn(&Scene<'_>) -> Verdict) -> Rule {
    Rule::new(id, Level::KeepWatching, source, judge)
        .plans(&[PlanWhat::WorkOnAttachment])
        .changed("findings-3")
}

/// The rules.
pub(super) const RULES: &[Rule] = &[
    sign(
        "sign-not-close",
        "who-counselling",
        missing::<{ Sign::Close as usize }>,
    )
    .tries(&[Adjustment::CloserIn]),
    sign(
        "sign-head-not-free",
        "common-practice",
        missing::<{ Sign::HeadFree as usize }>,
    )
    .tries(&[Adjustment::FreeHead]),
    sign(
        "sign-not-in-line",
        "who-counselling",
        missing::<{ Sign::InLine as usize }>,
    )
    .tries(&[Adjustment::TurnBody]),
    sign(
        "sign-nose-not-to-nipple",
        "who-counselling",
        missing::<{ Sign::NoseToNipple as usize }>,
    )
    .tries(&[Adjustment::SlideToNose]),
    sign(
        "sign-cannot-be-kept-up",
        "common-practice",
        missing::<{ Sign::CanBeKeptUp as usize }>,
    )
    .tries(&[Adjustment::SupportMother, Adjustment::ChangeHold]),
    sign(
        "sign-mouth-not-wide",
        "who-imci",
        missing::<{ Sign::MouthWide as usize }>,
    )
    .tries(&[Adjustment::AttachAgain]),
    sign(
        "sign-chin-not-in",
        "who-imci",
        missing::<{ Sign::ChinIn as usize }>,
    )
    .tries(&[Adjustment::ChinFirst, Adjustment::CloserIn]),
    sign(
        "sign-nose-not-clear",
        "common-practice",
        missing::<{ Sign::NoseClear as usize }>,
    )
    .tries(&[Adjustment::ChinFirst, Adjustment::FreeHead]),
    sign(
        "sign-cheeks-not-full",
        "common-practice",
        missing::<{ Sign::CheeksFull as usize }>,
    )
    .tries(&[Adjustment::AttachAgain]),
    sign(
        "sign-areola-not-above",
        "who-imci",
        missing::<{ Sign::MoreAreolaAbove as usize }>,
    )
    .tries(&[Adjustment::SlideToNose, Adjustment::ChinFirst]),
    sign(
        "sign-lower-lip-not-out",
        "who-imci",
        missing::<{ Sign::LowerLipOut as usize }>,
    )
    .tries(&[Adjustment::AttachAgain]),
    Rule::new(
        "signs-position-good",
        Level::GoingWell,
        "who-counselling",
        position_good,
    )
    .plans(&[PlanWhat::KeepHold])
    .changed("findings-3"),
    Rule::new(
        "signs-attachment-good",
        Level::GoingWell,
        "who-imci",
        attachment_good,
    )
    .changed("findings-3"),
];

/// Whether some feed left a sign looked for and not seen; lacking if none did and it was not looked
/// for, or not clear, in one.
pub(super) fn not_seen(scene: &Scene<'_>, sign: Sign) -> Verdict {
    let states = scene.visit.sign_in_each(sign);
    if states.contains(&Some(SignState::NotSeen)) {
        return held_if(true, &[]);
    }
    let missing: Vec<Missing> = [
        (None, Missing::Sign),
        (Some(SignState::Unclear), Missing::SignClear),
    ]
    .into_iter()
    .filter(|(state, _)| states.contains(state))
    .map(|(_, word)| word)
    .collect();
    if missing.is_empty() {
        Verdict::NotHeld
    } else {
        Verdict::Lacks(missing)
    }
}

fn missing<const SIGN: usize>(scene: &Scene<'_>) -> Verdict {
    not_seen(scene, Sign::ALL[SIGN])
}

fn all_seen(scene: &Scene<'_>, position: bool) -> Verdict {
    let mut missing = Vec::new();
    for sign in Sign::ALL.iter().filter(|it| it.is_position() == position) {
        match not_seen(scene, *sign) {
            Verdict::Held(_) => return Verdict::NotHeld,
            Verdict::Lacks(words) => missing.extend(words),
            Verdict::NotHeld | Verdict::NotForThis => {}
        }
    }
    missing.sort_unstable();
    missing.dedup();
    if missing.is_empty() {
        held_if(true, &[])
    } else {
        Verdict::Lacks(missing)
    }
}

fn position_good(scene: &Scene<'_>) -> Verdict {
    all_seen(scene, true)
}

fn attachment_good(scene: &Scene<'_>) -> Verdict {
    all_seen(scene, false)
}
