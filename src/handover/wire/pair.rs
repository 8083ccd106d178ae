//! Mother and baby on the wire. The birth travels as its distance from the visit's beginning.

use super::super::HandoverError;
use super::super::cbor::Item;
use super::field::{Fields, ints, map, word, words};
use super::uuid;
use crate::record::{Coded, Gestation, Grams, Label, Language, Pair, PairId, WallTime};

const ID: i64 = 0;
const MOTHER_ID: i64 = 1;
const BED: i64 = 2;
const INITIALS: i64 = 3;
const MOTHER_NUMBER: i64 = 4;
const BABY_NUMBER: i64 = 5;
const BIRTH: i64 = 6;
const SEX: i64 = 7;
const GESTATION_D: i64 = 8;
const BIRTH_WEIGHT_G: i64 = 9;
const WAY_OF_BIRTH: i64 = 10;
const BABIES: i64 = 11;
const RISK_NOTES: i64 = 12;
const REASONS: i64 = 13;
const LANGUAGE: i64 = 14;

/// How many babies there are where the field is left out.
const BABIES_USUAL: u8 = 1;

pub(super) fn to_wire(pair: &Pair, began: WallTime) -> Item {
    let Pair {
        id,
        mother_id,
        bed,
        initials,
        mother_number,
        baby_number,
        birth,
        sex,
        gestation,
        birth_weight,
        way_of_birth,
        babies,
        risk_notes,
        reasons,
        language,
    } = pair;
    let label = |label: &Label| Item::Text(label.as_str().to_owned());
    map([
        (ID, Some(uuid(id.uuid()))),
        (MOTHER_ID, mother_id.map(uuid)),
        (BED, Some(label(bed))),
        (INITIALS, Some(label(initials))),
        (MOTHER_NUMBER, mother_number.as_ref().map(label)),
        (BABY_NUMBER, baby_number.as_ref().map(label)),
        (BIRTH, Some(birth_to_wire(*birth, began))),
        (SEX, Some(word(sex.as_word()))),
        (
            GESTATION_D,
            gestation.map(|gestation| Item::Int(gestation.days().into())),
        ),
        (
            BIRTH_WEIGHT_G,
            birth_weight.map(|weight| Item::Int(weight.value().into())),
        ),
        (WAY_OF_BIRTH, way_of_birth.map(|way| word(way.as_word()))),
        (
            BABIES,
            (*babies != BABIES_USUAL).then(|| Item::Int((*babies).into())),
        ),
        (
            RISK_NOTES,
            (!risk_notes.is_empty()).then(|| words(risk_notes.iter().map(Coded::word))),
        ),
        (
            REASONS,
            (!reasons.is_empty()).then(|| words(reasons.iter().map(Coded::word))),
        ),
        (
            LANGUAGE,
            language
                .as_ref()
                .map(|language| Item::Text(language.tag().to_owned())),
        ),
    ])
}

pub(super) fn of_wire(item: Item, began: WallTime) -> Result<Pair, HandoverError> {
    let mut fields = Fields::of(item)?;
    let pair = Pair {
        id: PairId::of(fields.take(ID)?.uuid()?),
        mother_id: fields.maybe(MOTHER_ID).map(Item::uuid).transpose()?,
        bed: fields.take(BED)?.label()?,
        initials: fields.take(INITIALS)?.label()?,
        mother_number: fields.maybe(MOTHER_NUMBER).map(Item::label).transpose()?,
        baby_number: fields.maybe(BABY_NUMBER).map(Item::label).transpose()?,
        birth: birth_of_wire(fields.take(BIRTH)?, began)?,
        sex: fields.take(SEX)?.known("sex")?,
        gestation: fields
            .maybe(GESTATION_D)
            .map(|item| Ok::<_, HandoverError>(Gestation::try_from(item.int()?)?))
            .transpose()?,
        birth_weight: fields
            .maybe(BIRTH_WEIGHT_G)
            .map(|item| Ok::<_, HandoverError>(Grams::new(item.int()?)?))
            .transpose()?,
        way_of_birth: fields
            .maybe(WAY_OF_BIRTH)
            .map(|item| item.known("way of birth"))
            .transpose()?,
        babies: fields.maybe(BABIES).map_or(Ok(BABIES_USUAL), Item::small)?,
        risk_notes: fields
            .maybe(RISK_NOTES)
            .map_or(Ok(Vec::new()), |item| item.each(Item::coded))?,
        reasons: fields
            .maybe(REASONS)
            .map_or(Ok(Vec::new()), |item| item.each(Item::coded))?,
        language: fields
            .maybe(LANGUAGE)
            .map(|item| Ok::<_, HandoverError>(Language::new(&item.text()?)?))
            .transpose()?,
    };
    fields.end()?;
    Ok(pair)
}

/// Births are told to the minute.
const MINUTE_MS: i64 = 60_000;

/// Whole minutes back from the minute in which the visit began, milliseconds past the minute, and
/// how much further east.
fn birth_to_wire(birth: WallTime, began: WallTime) -> Item {
    let (birth_ms, began_ms) = (birth.utc_ms(), began.utc_ms());
    ints([
        began_ms.div_euclid(MINUTE_MS) - birth_ms.div_euclid(MINUTE_MS),
        birth_ms.rem_euclid(MINUTE_MS),
        i64::from(birth.offset_min()) - i64::from(began.offset_min()),
    ])
}

fn birth_of_wire(item: Item, began: WallTime) -> Result<WallTime, HandoverError> {
    let [minutes, past_ms, east] = item.array()?;
    let past_ms = past_ms.int()?;
    if !(0..MINUTE_MS).contains(&past_ms) {
        return Err(HandoverError::NotReadable);
    }
    let utc_ms = began
        .utc_ms()
        .div_euclid(MINUTE_MS)
        .checked_sub(minutes.int()?)
        .and_then(|minutes| minutes.checked_mul(MINUTE_MS))
        .and_then(|ms| ms.checked_add(past_ms));
    let offset_min = i64::from(began.offset_min())
        .checked_add(east.int()?)
        .and_then(|offset| i16::try_from(offset).ok());
    match utc_ms.zip(offset_min) {
        Some((utc_ms, offset_min)) => Ok(WallTime::new(utc_ms, offset_min)?),
        None => Err(HandoverError::NotReadable),
    }
}
