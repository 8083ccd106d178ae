//! Makes the codes of a signed visit: the record's and the note's.
//!
//! The same signed visit for the same desk always gives the same codes and so the same receipt: what
//! would be random is drawn, with the tablet's secret, from exactly what is sealed. A tablet that was
//! closed before the receipt was typed can show the same codes again.

use hmac::{Hmac, KeyInit, Mac};
use sha2::Sha512;

use crate::app::around::Around;
use crate::app::open_visit::OpenVisit;
use crate::fault;
use crate::findings::Judged;
use crate::handover::{
    DeskPublic, Fresh, Handed, HandoverError, Note, TabletKey, pack as pack_record,
};
use crate::record::{WallTime, to_stored};
use crate::report::{self, Computed, Facts, RuleVersions};
use crate::words::Words;

use super::Shown;
use super::table::handed;

/// Makes and reads back the codes; with every tap, or without: then single taps stay on the tablet,
/// and their table of runs and phases goes.
///
/// # Errors
/// Why it could not be done, as a sentence to show.
pub fn pack(
    open: &OpenVisit,
    around: &Around<'_>,
    words: &Words,
    tablet: &TabletKey,
    secret: &[u8; 32],
    taps: bool,
) -> Result<Shown, String> {
    let desk = DeskPublic::from_typed(&around.preferences.desk_key)
        .map_err(|_| words.say("handover-no-desk"))?;
    let told = |error: HandoverError| {
        let explained = fault::handover(&error, words);
        words.say_with(
            "handover-failed",
            &[(
                "why",
                format!("{} {}", explained.happened, explained.now_do).into(),
            )],
        )
    };
    let signed = open
        .folded
        .signed
        .as_ref()
        .ok_or_else(|| words.say("handover-not-signed"))?;
    // Judged as of the signature, so that showing it again later changes nothing.
    let wall = signed.wall;
    let judged = open.judged(around.policy, wall);
    let content = handed(open, &judged, around.policy.mark())
        .for_codes(taps)
        .map_err(|error| fault::record(&error, words).to_string())?;
    let fresh = Fresh::from_random(drawn(&content, &desk, secret));
    let packed =
        pack_record(&content, tablet, &desk, &fresh, around.preferences.cap).map_err(told)?;
    let facts = facts(open, &judged, around, wall);
    let note = Note::new(&report::note::text(&facts, words))
        .and_then(|note| note.to_code())
        .map_err(told)?;
    Ok(Shown {
        taps,
        record: packed.codes,
        pieces: packed.pieces,
        note,
        receipt: packed.receipt,
        transfer: packed.transfer,
    })
}

/// All that is told of the visit.
pub fn facts(open: &OpenVisit, judged: &Judged, around: &Around<'_>, wall: WallTime) -> Facts {
    Facts::of(
        &open.pair,
        &open.visit,
        &open.folded,
        &Computed {
            rhythms: &open.summaries(),
            growth: Some(&open.growth(wall)),
            judged,
            policy: &around.policy.mark(),
            rule_versions: &RuleVersions::current(),
        },
    )
}

/// 64 bytes drawn from the content, the desk's key and the tablet's secret.
fn drawn(content: &Handed, desk: &DeskPublic, secret: &[u8; 32]) -> [u8; 64] {
    let mut mac = match Hmac::<Sha512>::new_from_slice(secret) {
        Ok(mac) => mac,
        // HMAC takes a key of any length.
        Err(_) => return [0; 64],
    };
    mac.update(b"feedside codes 1\0");
    mac.update(desk.to_typed().as_bytes());
    mac.update(content.visit.id.uuid().as_bytes());
    mac.update(&serde_json::to_vec(&content.pair).unwrap_or_default());
    for entry in content.visit.journal.entries() {
        if let Ok(stored) = to_stored(entry) {
            mac.update(&stored.seq.to_be_bytes());
            mac.update(&stored.at_ms.to_be_bytes());
            mac.update(&stored.utc_ms.to_be_bytes());
            mac.update(&stored.offset_min.to_be_bytes());
            mac.update(stored.kind.as_bytes());
            mac.update(&[0]);
            mac.update(stored.body.as_bytes());
            mac.update(&[0]);
        }
    }
    // Everything computed is numbers and stored words, which `Debug` shows whole.
    mac.update(
        format!(
            "{:?}{:?}{:?}{:?}{:?}",
            content.feeds,
            content.findings,
            content.unjudged,
            content.policy,
            content.rule_versions
        )
        .as_bytes(),
    );
    mac.finalize().into_bytes().into()
}
