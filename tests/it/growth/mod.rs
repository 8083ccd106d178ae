//! Tests of the room `growth`.

mod age;
mod change;
mod checked;
mod figures;
mod lines;
mod output;
mod pair_file;
mod question;
mod test_weighing;
mod who;

use feedside::record::{
    Grams, Label, Pair, PairId, ScaleStep, Sex, WallTime, WayOfBirth, Weighing, WeighingMoment,
};

/// An instant from RFC 3339.
pub fn wall(text: &str) -> WallTime {
    serde_json::from_value(serde_json::Value::from(text)).unwrap()
}

pub fn grams(value: i64) -> Grams {
    Grams::new(value).unwrap()
}

/// An invented boy, born at noon.
pub fn pair() -> Pair {
    Pair {
        id: PairId::from_random([7; 16]),
        mother_id: None,
        bed: Label::new("B2").unwrap(),
        initials: Label::new("XY").unwrap(),
        mother_number: None,
        baby_number: None,
        birth: birth(),
        sex: Sex::Male,
        gestation: None,
        birth_weight: Some(grams(3500)),
        way_of_birth: Some(WayOfBirth::Vaginal),
        babies: 1,
        risk_notes: Vec::new(),
        reasons: Vec::new(),
        language: None,
    }
}

pub fn birth() -> WallTime {
    wall("2026-03-01T12:00:00+00:00")
}

/// So many hours after birth.
pub fn hours(hours: i64) -> WallTime {
    birth().plus_ms(hours * 3_600_000)
}

/// A bare routine weight so many hours after birth.
pub fn weighed(at_hours: i64, value: i64) -> (WallTime, Weighing) {
    weighed_as(at_hours, value, WeighingMoment::Routine, false)
}

pub fn weighed_as(
    at_hours: i64,
    value: i64,
    moment: WeighingMoment,
    clothed: bool,
) -> (WallTime, Weighing) {
    let weighing = Weighing {
        grams: grams(value),
        step: Some(ScaleStep::new(5).unwrap()),
        clothed,
        moment,
        taken: None,
    };
    (hours(at_hours), weighing)
}
