//! Wire values to few bytes and back: a range coder over a model that has learned frozen
//! records of ours, with our words in them, before the first decision.
//!
//! Knows nothing of what the values mean: where they stand, and what stood before them, is all.
//! Everything in this folder is part of the format: a change of any constant, or of a byte of what
//! is learned, makes other bytes. Vectors hold it still.

mod model;
mod range;
mod walk;

use std::cell::RefCell;
use std::sync::OnceLock;

use super::HandoverError;
use super::cbor::Item;
use model::Model;
use range::{Reader, Writer, decisions_most};
use walk::Walk;

/// Records of ours, invented: each as its length in two bytes, highest first, and squeezed by what
/// was learned from the records before it.
const PRIOR: &[u8] = include_bytes!("prior.bin");

/// The model that every record begins with.
fn primed() -> &'static Model {
    static PRIMED: OnceLock<Model> = OnceLock::new();
    PRIMED.get_or_init(|| {
        let mut model = Model::new();
        let mut rest = PRIOR;
        while let Some((length, after)) = rest.split_first_chunk::<2>() {
            let length = usize::from(u16::from_be_bytes(*length)).min(after.len());
            let (record, after) = after.split_at(length);
            rest = after;
            // The records are frozen with the program; a test reads each of them.
            let _ = Walk::new(&mut model, Reader::new(record)).whole(None);
        }
        model.note_changes();
        model
    })
}

/// Lends a model that is as [`primed`]; one a thread is kept.
fn with_primed<T>(then: impl FnOnce(&mut Model) -> T) -> T {
    thread_local! {
        static KEPT: RefCell<Option<Model>> = const { RefCell::new(None) };
    }
    let mut model = KEPT.take().unwrap_or_else(|| primed().clone());
    let given = then(&mut model);
    model.back_to(primed());
    KEPT.set(Some(model));
    given
}

/// Squeezes a value. Maps must stand in the order of their written keys.
///
/// # Errors
/// [`HandoverError::TooLarge`] for more than a record may hold, or than may be read of so few bytes
/// (values that hardly differ); [`HandoverError::NotReadable`] for maps in another order.
pub fn squeeze(item: &Item) -> Result<Vec<u8>, HandoverError> {
    let walked = with_primed(|model| Walk::new(model, Writer::new()).whole(Some(item)));
    let (_, writer, decisions) = walked?;
    let bytes = writer.finish();
    if decisions_most(bytes.len()) < decisions {
        return Err(HandoverError::TooLarge);
    }
    Ok(bytes)
}

/// Unpacks a value; anything but what [`squeeze`] writes is refused.
///
/// # Errors
/// [`HandoverError::CannotUnpack`] for damaged or cut input and for bytes after the end;
/// [`HandoverError::TooLarge`] for what would be larger than a record may be, or than so few bytes
/// may stand for;
/// [`HandoverError::NotReadable`] for values that no record has.
pub fn unsqueeze(bytes: &[u8]) -> Result<Item, HandoverError> {
    let (item, ..) = with_primed(|model| Walk::new(model, Reader::new(bytes)).whole(None))?;
    match squeeze(&item) {
        Ok(same) if same == bytes => Ok(item),
        _ => Err(HandoverError::CannotUnpack),
    }
}

/// Squeezes records one after the other into the form of what is learned before all others.
///
/// # Errors
/// As [`squeeze`].
pub fn prior_of(records: &[Item]) -> Result<Vec<u8>, HandoverError> {
    let mut model = Model::new();
    let mut prior = Vec::new();
    for record in records {
        let (_, writer, _) = Walk::new(&mut model, Writer::new()).whole(Some(record))?;
        let bytes = writer.finish();
        let length = u16::try_from(bytes.len()).map_err(|_| HandoverError::TooLarge)?;
        prior.extend(length.to_be_bytes());
        prior.extend(bytes);
    }
    Ok(prior)
}
