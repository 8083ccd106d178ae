//! Mother and baby on the wire.

use super::super::HandoverError;
use super::super::cbor::Item;
use super::field::{Fields, map, wall, word, words};
use super::uuid;
use crate::record::{Coded, Gestation, Grams, Label, Language, Pair, PairId};

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

pub(super) fn to_wire(pair: &Pair) -> Item {
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
        (BIRTH, Some(wall(*birth))),
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

pub(super) fn of_wire(item: Item) -> Result<Pair, HandoverError> {
    let mut fields = Fields::of(item)?;
    let pair = Pair {
        id: PairId::of(fields.take(ID)?.uuid()?),
        mother_id: fields.maybe(MOTHER_ID).map(Item::uuid).transpose()?,
        bed: fields.take(BED)?.label()?,
        initials: fields.take(INITIALS)?.label()?,
        mother_number: fields.maybe(MOTHER_NUMBER).map(Item::label).transpose()?,
        baby_number: fields.maybe(BABY_NUMBER).map(Item::label).transpose()?,
        birth: fields.take(BIRTH)?.wall()?,
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
