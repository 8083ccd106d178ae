//! Rules about test weighing and about weights before and after a feed.

use super::is_asked_about;
use crate::findings::Missing;
use crate::findings::rule::Verdict;
use crate::findings::scene::{Scene, held_if, lacks, settle};
use crate::growth::{Age, Question, TestWeighing, usual_feed_volume};

/// Past the tables of reported intakes, the least of an ordinary feed of a baby born at term, in
/// millilitres: their last range begins there, and babies of one to six months take 30 to 135 on
/// average (Kent et al. 2006, Pediatrics 117:e387).
const LATER_LEAST_ML: i64 = 30;
/// A test weighing tells of the present for so many hours (common practice).
const FRESH_H: i64 = 24;
/// The days of gestation from which a baby is at term: 37 weeks.
const TERM_FROM_DAYS: u16 = 37 * 7;

/// The last test weighing and the least of a usual feed at its age, in millilitres.
fn last<'a>(scene: &'a Scene<'_>) -> Result<(&'a TestWeighing, i64), Verdict> {
    let test = scene.growth.test_weighings.last();
    let test = test.ok_or(Verdict::NotForThis)?;
    let at = |time| Age::of(scene.pair.birth, time).ok_or_else(|| lacks(Missing::Birth));
    let (now, age) = (at(scene.now)?, at(test.after)?);
    if FRESH_H < now.hours() - age.hours() {
        return Err(Verdict::NotForThis);
    }
    if is_asked_about(scene, test.before) || is_asked_about(scene, test.after) {
        return Err(lacks(Missing::CheckedWeight));
    }
    let gestation = scene.pair.gestation;
    let usual = usual_feed_volume(age, gestation).map(|it| it.low_ml);
    let at_term = gestation.is_none_or(|it| TERM_FROM_DAYS <= it.days());
    let least = usual.or(at_term.then_some(LATER_LEAST_ML));
    Ok((test, least.ok_or_else(|| lacks(Missing::EarlyReference))?))
}

const fn rounded_ml(test: &TestWeighing) -> i64 {
    (test.tenths_ml + 5) / 10
}

/// Even the upper end of what the scale allows lies below a usual feed.
pub(super) fn low(scene: &Scene<'_>) -> Verdict {
    settle(last(scene).map(|(test, least)| {
        held_if(
            test.high_ml < least,
            &[rounded_ml(test), test.high_ml, least],
        )
    }))
}

/// Even the lower end of what the scale allows is a usual feed.
pub(super) fn enough(scene: &Scene<'_>) -> Verdict {
    settle(last(scene).map(|(test, least)| {
        held_if(
            least <= test.low_ml,
            &[rounded_ml(test), test.low_ml, least],
        )
    }))
}

/// Weights before and after a feed that look swapped.
pub(super) fn swapped(scene: &Scene<'_>) -> Verdict {
    let count = count(scene, |why| why == Question::Swapped);
    held_if(0 < count, &[count])
}

/// Weights that are asked about for any other cause.
pub(super) fn asked(scene: &Scene<'_>) -> Verdict {
    let count = count(scene, |why| why != Question::Swapped);
    held_if(0 < count, &[count])
}

fn count(scene: &Scene<'_>, counts: impl Fn(Question) -> bool) -> i64 {
    let asked = scene.growth.questions.iter().filter(|it| counts(it.why));
    i64::try_from(asked.count()).unwrap_or(i64::MAX)
}
