//! Codes through every stage of opening, one after the other: what each gives, or why it refuses.
//! Shared by the vectors' test and the example that made them.

#![allow(missing_docs, clippy::unwrap_used, dead_code)]

use feedside::handover::{
    Collector, DeskKeyPair, HandoverError, Kid, Offered, Receipt, TabletPublic, cbor, coding, seal,
    sign, wire,
};
use serde_json::{Map, Value, json};

use super::sample;

/// The stages, in order.
pub const STAGES: [&str; 5] = ["codes", "seal", "signature", "coding", "record"];

/// The texts of codes through all stages with the keys of the samples, up to the first that refuses:
/// bytes where a stage passes, the word of the error where it does not.
pub fn walk(texts: &[String]) -> Map<String, Value> {
    let mut told = Map::new();
    let failed = go(texts, &mut told).err();
    if let Some(error) = failed {
        let stage = STAGES[told.len()];
        told.insert(stage.to_owned(), json!({ "refused": error.word() }));
    }
    told
}

fn go(texts: &[String], told: &mut Map<String, Value>) -> Result<(), HandoverError> {
    let mut pass = |stage: usize, value: Value| told.insert(STAGES[stage].to_owned(), value);
    let mut collector = Collector::new();
    let mut whole = None;
    for text in texts {
        match collector.offer(text) {
            Offered::Complete { sealed, .. } => whole = Some(sealed),
            Offered::Refused(error) => return Err(error),
            _ => {}
        }
    }
    let Some(sealed) = whole else {
        pass(0, json!({ "missing": collector.waiting()[0].missing }));
        return Ok(());
    };
    pass(0, json!({ "bytes": sample::hex(&sealed) }));
    let desk: DeskKeyPair = sample::desk();
    let tablet: TabletPublic = sample::tablet().public();
    let known = |kid: &Kid| (*kid == tablet.kid()).then_some(tablet);
    let (short, kid, secret) = seal::open(&sealed, &[desk])?;
    pass(1, json!({ "bytes": sample::hex(&short) }));
    let signed = sign::lengthen(&short)?;
    let (packed, _) = sign::verify(&signed, &known, &kid)?;
    pass(2, json!({ "bytes": sample::hex(&packed) }));
    let item = coding::content(&packed)?;
    let content = cbor::to_bytes(&item)?;
    pass(3, json!({ "bytes": sample::hex(&content) }));
    let handed = wire::of_wire(item)?;
    pass(
        4,
        json!({
            "visit": handed.visit.id.to_string(),
            "began_utc_ms": handed.visit.began.utc_ms(),
            "entries": handed.visit.journal.entries().len(),
            "taps": handed.taps,
            "feeds": handed.feeds.len(),
            "findings": handed.findings.len(),
            "receipt": Receipt::of(&secret, &sealed).digits(),
        }),
    );
    Ok(())
}
