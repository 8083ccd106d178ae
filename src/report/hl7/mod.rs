//! The facts as HL7 version 2.5.1 messages, `ORU^R01`: the same observations as in FHIR.
//!
//! One message is the baby's and one the mother's (her pain, nipple and breast), since receivers
//! commonly take one patient a message. Each observation is an `OBR` with an `OBX` for its value and
//! for each of its parts. The control ids are the visit's own: a second sending of the same visit
//! has the same ones. An amendment has the same filler
//! numbers, and says that it corrects; what was taken back says that it deletes.
//! What is unknown is an `OBX` without a value and a note that says why.

mod observations;
mod people;
mod segment;

use uuid::Uuid;

use super::Facts;
use super::codes::Codes;
use super::observed::Observed;
use segment::Segment;

/// The name by which this program is known in messages.
const NAME: &str = "FEEDSIDE";
/// Our codes among coding systems (HL7 table 0396: `99` and three signs for a local one).
const OURS: &str = "99FSD";

/// One message.
#[derive(Clone, PartialEq, Eq)]
pub struct Message {
    /// The id by which the far end tells it from another and from its repetition (`MSH-10`): 20
    /// signs, the most that 2.5.1 allows.
    pub control_id: String,
    /// Its text; each segment ends in a carriage return.
    pub text: String,
}

/// Writes the baby's message and the mother's, in this order.
pub fn messages(facts: &Facts, codes: &Codes) -> Vec<Message> {
    let observed = Observed::of(facts);
    [false, true]
        .map(|of_mother| message(facts, codes, &observed, of_mother))
        .into()
}

fn message(facts: &Facts, codes: &Codes, observed: &Observed<'_>, of_mother: bool) -> Message {
    let control_id = control_id(facts, of_mother);
    let mut text = String::new();
    header(&mut text, facts, &control_id);
    if of_mother {
        people::mother(&mut text, facts);
    } else {
        people::baby(&mut text, facts);
    }
    people::visit(&mut text, facts);
    let mut writer = observations::Writer::new(facts, codes, &mut text);
    if !of_mother {
        writer.visit();
    }
    for it in observed.all.iter().filter(|it| it.of_mother == of_mother) {
        writer.observation(it);
    }
    if !of_mother {
        writer.plan();
    }
    Message { control_id, text }
}

fn control_id(facts: &Facts, of_mother: bool) -> String {
    let whose = if of_mother { "mother" } else { "baby" };
    let signed = if facts.signed.is_some() {
        "signed"
    } else {
        "not signed"
    };
    let name = format!("ORU^R01 {whose} {signed}");
    let id = Uuid::new_v5(&facts.visit.uuid(), name.as_bytes());
    id.simple().to_string()[..20].to_owned()
}

fn header(message: &mut String, facts: &Facts, control_id: &str) {
    // The first field is the separator itself, so every number is one less here.
    let written = facts.signed.as_ref().map_or(facts.until, |it| it.wall);
    Segment::new("MSH")
        .raw(1, "^~\\&".to_owned())
        .text(2, NAME)
        .time(6, written)
        .raw(8, "ORU^R01^ORU_R01".to_owned())
        .text(9, control_id)
        .text(10, "P")
        .text(11, "2.5.1")
        .text(17, "UNICODE UTF-8")
        .end(message);
}
