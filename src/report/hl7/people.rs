//! Baby and mother as `PID`, their relation as `NK1`, the place as `PV1`.

use uuid::Uuid;

use super::NAME;
use super::segment::{Segment, escaped, time};
use crate::record::{Label, Sex};
use crate::report::Facts;

/// The ward's own number first, if there is one (`MR`), then ours (`PI`); HL7 table 0203.
fn identifiers(ours: Uuid, number: Option<&Label>) -> String {
    let ours = format!("{ours}^^^{NAME}^PI");
    match number {
        Some(number) => format!("{}^^^^MR~{ours}", escaped(number.as_str())),
        None => ours,
    }
}

pub(super) fn baby(message: &mut String, facts: &Facts) {
    let pair = &facts.pair;
    let sex = match pair.sex {
        Sex::Female => "F",
        Sex::Male => "M",
        Sex::NotStated => "U",
    };
    Segment::new("PID")
        .raw(1, "1".to_owned())
        .raw(3, identifiers(pair.id.uuid(), pair.baby_number.as_ref()))
        // No name is kept of the baby: HL7 table 0200, unspecified.
        .raw(5, "^^^^^^U".to_owned())
        .raw(7, time(pair.birth))
        .raw(8, sex.to_owned())
        .raw(24, if 1 < pair.babies { "Y" } else { "N" }.to_owned())
        .end(message);
    Segment::new("NK1")
        .raw(1, "1".to_owned())
        .text(2, pair.initials.as_str())
        .raw(3, "MTH^Mother^HL70063".to_owned())
        .raw(
            33,
            identifiers(mother_id(facts), pair.mother_number.as_ref()),
        )
        .end(message);
}

pub(super) fn mother(message: &mut String, facts: &Facts) {
    let pair = &facts.pair;
    let mut segment = Segment::new("PID")
        .raw(1, "1".to_owned())
        .raw(
            3,
            identifiers(mother_id(facts), pair.mother_number.as_ref()),
        )
        .text(5, pair.initials.as_str())
        .raw(8, "F".to_owned());
    if let Some(language) = &pair.language {
        segment = segment.text(15, language.tag());
    }
    segment.end(message);
    Segment::new("NK1")
        .raw(1, "1".to_owned())
        .raw(2, "^^^^^^U".to_owned())
        .raw(3, "CHD^Child^HL70063".to_owned())
        .raw(33, identifiers(pair.id.uuid(), pair.baby_number.as_ref()))
        .end(message);
}

fn mother_id(facts: &Facts) -> Uuid {
    let pair = &facts.pair;
    pair.mother_id
        .unwrap_or_else(|| Uuid::new_v5(&pair.id.uuid(), b"mother"))
}

pub(super) fn visit(message: &mut String, facts: &Facts) {
    Segment::new("PV1")
        .raw(1, "1".to_owned())
        .raw(2, "I".to_owned())
        .text(3, facts.pair.bed.as_str())
        .end(message);
}
