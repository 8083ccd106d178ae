//! Rules about the weeks after the first loss: birth weight back, gain, centile.

use super::{EARLY_DAYS, fresh_hours, is_asked_about, unless_doubtful, weight, weights};
use crate::findings::rule::Verdict;
use crate::findings::scene::{Scene, held_if, lacks, settle};
use crate::findings::{Limit, Missing};
use crate::growth::{Age, Caution, Z, z};
use crate::record::Sex;

/// By now weight is expected to go up again, in hours: about day 5 (common practice).
const GROWING_FROM_H: i64 = 120;
/// A gain is judged from a first weight of this age on, in hours: before it the loss may not have
/// ended (NICE NG75: it usually stops by about day 3 to 4).
const GAIN_BASE_FROM_H: i64 = 96;
/// The last day for which the least gain is meant: about three months.
const GAIN_TO_DAY: i64 = 91;
/// The second centile of a nine-centile chart, in standard deviations.
const SECOND_CENTILE_SD: f64 = -2.0;
/// From this age on a fall across centiles is judged, in days. NICE NG75 (2017) says "after the
/// early days"; four weeks are our choice, as a baby that has just regained its birth weight has
/// fallen against the standard, which grew meanwhile.
const CENTILE_FALL_FROM_DAY: i64 = 28;
/// The distance of two lines of a nine-centile chart, in standard deviations: two thirds.
const CENTILE_SPACE_SD: f64 = 2.0 / 3.0;
/// The 9th and the 91st centile of that chart, in standard deviations from the median: two spaces.
const NINTH_SD: f64 = 2.0 * CENTILE_SPACE_SD;
/// Days at which birth weight is expected to be back: most by two weeks (86 % and 76 % by way of
/// birth, Paul et al. 2016), most by three (NICE NG75, 2017).
const BACK_BY_DAYS: [i64; 2] = [14, 21];

fn not_back(scene: &Scene<'_>, by_day: i64, before_day: i64) -> Verdict {
    settle((|| {
        let age = scene.age().ok_or_else(|| lacks(Missing::Birth))?;
        if age.days() < by_day {
            return Ok(Verdict::NotForThis);
        }
        let (last, _) = weight(scene)?;
        let below = weights(scene)
            .filter(|(it, change)| by_day <= it.age.days() && !change.is_at_birth_weight())
            .max_by_key(|(it, _)| it.age);
        Ok(match below {
            // The later rule speaks for it.
            Some((it, _)) if before_day <= it.age.days() => Verdict::NotHeld,
            Some((it, change)) => held_if(true, &[-change.grams, it.age.days()]),
            None if is_asked_about(scene, last.at) => lacks(Missing::CheckedWeight),
            None if scene.growth.back_at.is_some() && !last.clothed => Verdict::NotHeld,
            None if last.age.days() < by_day => lacks(Missing::RecentWeight),
            None => unless_doubtful(scene, last),
        })
    })())
}

pub(super) fn not_back_14(scene: &Scene<'_>) -> Verdict {
    not_back(scene, BACK_BY_DAYS[0], BACK_BY_DAYS[1])
}

pub(super) fn not_back_21(scene: &Scene<'_>) -> Verdict {
    not_back(scene, BACK_BY_DAYS[1], i64::MAX)
}

pub(super) fn back(scene: &Scene<'_>) -> Verdict {
    settle(weight(scene).map(|(last, change)| {
        match (scene.growth.back_at, unless_doubtful(scene, last)) {
            (Some(age), Verdict::NotHeld) => held_if(change.is_at_birth_weight(), &[age.days()]),
            (None, Verdict::NotHeld) => Verdict::NotHeld,
            (_, doubtful) => doubtful,
        }
    }))
}

/// The gain per day as numbers, its upper end, and whether it fell for sure.
struct Judged {
    per_day: i64,
    grams: i64,
    hours: i64,
    surely_down: bool,
    from: Age,
}

fn gain(scene: &Scene<'_>) -> Result<Judged, Verdict> {
    let age = scene.age().ok_or_else(|| lacks(Missing::Birth))?;
    if age.hours() < GROWING_FROM_H || GAIN_TO_DAY < age.days() {
        return Err(Verdict::NotForThis);
    }
    let gain = scene
        .growth
        .gain
        .ok_or_else(|| lacks(Missing::SecondWeight))?;
    let at = |time| Age::of(scene.pair.birth, time).ok_or_else(|| lacks(Missing::Birth));
    if is_asked_about(scene, gain.from) || is_asked_about(scene, gain.to) {
        return Err(lacks(Missing::CheckedWeight));
    }
    let to = at(gain.to)?;
    if to.hours() < GROWING_FROM_H || fresh_hours(scene, age) < age.hours() - to.hours() {
        return Err(lacks(Missing::RecentWeight));
    }
    Ok(Judged {
        per_day: gain.per_day,
        grams: gain.grams,
        hours: gain.hours,
        surely_down: gain.high < 0,
        from: at(gain.from)?,
    })
}

pub(super) fn falling(scene: &Scene<'_>) -> Verdict {
    settle((|| {
        let it = gain(scene)?;
        if it.from.hours() < GAIN_BASE_FROM_H {
            return Err(lacks(Missing::SecondWeight));
        }
        Ok(held_if(it.surely_down, &[-it.grams, it.hours]))
    })())
}

pub(super) fn gain_slow(scene: &Scene<'_>) -> Verdict {
    settle((|| {
        let it = gain(scene)?;
        if it.from.hours() < GAIN_BASE_FROM_H {
            return Err(lacks(Missing::SecondWeight));
        }
        let least = scene.limit(Limit::GainLeast);
        let slow = it.per_day < least && !it.surely_down;
        Ok(held_if(slow, &[it.per_day, least, it.hours]))
    })())
}

pub(super) fn gaining(scene: &Scene<'_>) -> Verdict {
    settle((|| {
        let it = gain(scene)?;
        let least = scene.limit(Limit::GainLeast);
        Ok(held_if(least <= it.per_day, &[it.per_day, least, it.hours]))
    })())
}

pub(super) fn below_second_centile(scene: &Scene<'_>) -> Verdict {
    settle((|| {
        let age = scene.age().ok_or_else(|| lacks(Missing::Birth))?;
        if age.days() < EARLY_DAYS {
            return Ok(Verdict::NotForThis);
        }
        if scene.pair.sex == Sex::NotStated {
            return Err(lacks(Missing::Sex));
        }
        if scene.growth.cautions.contains(&Caution::Preterm) {
            return Err(lacks(Missing::EarlyReference));
        }
        let last = scene.growth.weight.ok_or_else(|| lacks(Missing::Weight))?;
        if last.age.days() < EARLY_DAYS {
            return Err(lacks(Missing::RecentWeight));
        }
        // Past the table's five years there is nothing to hold it against.
        let Some(z) = scene.growth.z else {
            return Ok(Verdict::NotForThis);
        };
        if z.exact() < SECOND_CENTILE_SD {
            return Ok(held_if(true, &[z.hundredths(), last.age.days()]));
        }
        Ok(unless_doubtful(scene, last))
    })())
}

/// How many centile spaces a baby may fall, by where it was at birth (NICE NG75, 2017, 1.2).
fn spaces_allowed(birth: Z) -> f64 {
    if birth.exact() < -NINTH_SD {
        1.0
    } else if birth.exact() <= NINTH_SD {
        2.0
    } else {
        3.0
    }
}

pub(super) fn centile_fall(scene: &Scene<'_>) -> Verdict {
    settle((|| {
        let age = scene.age().ok_or_else(|| lacks(Missing::Birth))?;
        if age.days() < CENTILE_FALL_FROM_DAY {
            return Ok(Verdict::NotForThis);
        }
        if scene.pair.sex == Sex::NotStated {
            return Err(lacks(Missing::Sex));
        }
        if scene.growth.cautions.contains(&Caution::Preterm) {
            return Err(lacks(Missing::EarlyReference));
        }
        let birth_weight = scene.pair.birth_weight;
        let birth_weight = birth_weight.ok_or_else(|| lacks(Missing::BirthWeight))?;
        let last = scene.growth.weight.ok_or_else(|| lacks(Missing::Weight))?;
        if last.age.days() < CENTILE_FALL_FROM_DAY {
            return Err(lacks(Missing::RecentWeight));
        }
        // Past the table's five years there is nothing to hold it against.
        let (Some(birth), Some(now)) = (z(scene.pair.sex, 0, birth_weight), scene.growth.z) else {
            return Ok(Verdict::NotForThis);
        };
        let fall = birth.exact() - now.exact();
        let limit = spaces_allowed(birth) * CENTILE_SPACE_SD;
        if limit <= fall {
            let numbers = [hundredths(fall), hundredths(limit), last.age.days()];
            return Ok(held_if(true, &numbers));
        }
        Ok(unless_doubtful(scene, last))
    })())
}

// Standard deviations of weights that a scale can show: far inside the whole numbers of f64.
#[allow(clippy::cast_possible_truncation)]
fn hundredths(sd: f64) -> i64 {
    (sd * 100.0).round() as i64
}
