//! Rules about the mother's danger signs. Each is a reason to call, never a diagnosis.

use super::rule::Verdict;
use super::scene::{Scene, held_if, lacks, settle};
use super::{CallWhom, Level, Missing, Rule};
use crate::record::{Coded, MotherDanger, PlanWhat};

const fn now(id: &'static str, source: &'static str, judge: fn(&Scene<'_>) -> Verdict) -> Rule {
    Rule::new(id, Level::MedicalReviewNow, source, judge)
        .plans(&[PlanWhat::MedicalTeamTold])
        .calls(CallWhom::MotherDoctor)
}

/// The rules.
pub(super) const RULES: &[Rule] = &[
    now(
        "mother-bleeding",
        "nice-ng194",
        danger::<{ MotherDanger::Bleeding as usize }>,
    ),
    now(
        "mother-infection",
        "nice-ng194",
        danger::<{ MotherDanger::Infection as usize }>,
    ),
    now(
        "mother-headache",
        "nice-ng194",
        danger::<{ MotherDanger::Headache as usize }>,
    ),
    now(
        "mother-calf",
        "nice-ng194",
        danger::<{ MotherDanger::Calf as usize }>,
    ),
    now(
        "mother-chest",
        "nice-ng194",
        danger::<{ MotherDanger::Chest as usize }>,
    ),
    now(
        "mother-sepsis",
        "nice-ng51",
        danger::<{ MotherDanger::Sepsis as usize }>,
    ),
    now(
        "mother-breast",
        "abm-36",
        danger::<{ MotherDanger::Breast as usize }>,
    ),
    now(
        "mother-mind",
        "nice-cg192",
        danger::<{ MotherDanger::Mind as usize }>,
    ),
    now("mother-danger-other", "newer-list", danger_other),
];

fn dangers<'a>(scene: &'a Scene<'_>) -> Result<&'a [Coded<MotherDanger>], Verdict> {
    let told = scene.visit.last_day.as_ref();
    told.and_then(|day| day.mother_danger.as_deref())
        .ok_or_else(|| lacks(Missing::MotherDanger))
}

fn danger<const DANGER: usize>(scene: &Scene<'_>) -> Verdict {
    let sought = MotherDanger::ALL[DANGER];
    settle(dangers(scene).map(|told| held_if(told.contains(&Coded::Known(sought)), &[])))
}

/// A danger sign that this version has no rule for must still be heard.
fn danger_other(scene: &Scene<'_>) -> Verdict {
    settle(dangers(scene).map(|told| held_if(told.iter().any(|it| it.known().is_none()), &[])))
}
