//! The bundle while it is built: ids, identifiers, requests, and the common shape of observations.

use std::collections::HashSet;

use serde_json::{Map, Value, json};
use uuid::Uuid;

use crate::record::WallTime;
use crate::report::Facts;
use crate::report::codes::Codes;
use crate::report::form::iso;

/// Absent because nobody asked.
pub(super) const NOT_ASKED: &str = "not-asked";
/// Absent because nobody looked.
pub(super) const NOT_PERFORMED: &str = "not-performed";
/// Absent because the one who was asked could not say.
pub(super) const ASKED_UNKNOWN: &str = "asked-unknown";
/// Absent for a reason that the record does not tell.
pub(super) const UNKNOWN: &str = "unknown";
/// There can be no value.
pub(super) const NOT_APPLICABLE: &str = "not-applicable";
/// What was sent before was wrong.
const ERROR: &str = "error";

/// The fixed keys of resources that others refer to.
pub(super) mod key {
    pub const MOTHER: &str = "mother";
    pub const BABY: &str = "baby";
    pub const RELATED: &str = "mother-of-baby";
    pub const PRACTITIONER: &str = "specialist";
    pub const DEVICE: &str = "device";
    pub const ENCOUNTER: &str = "encounter";
}

/// A value as observations carry it.
pub(super) enum X {
    Quantity(Value, &'static str),
    Coded(String),
    Yes(bool),
    Text(String),
    Time(WallTime),
    Absent(&'static str),
    /// Absent, with what was missing.
    AbsentFor(&'static str, String),
}

impl X {
    /// A whole number in a UCUM unit.
    pub fn count(value: impl Into<u64>, unit: &'static str) -> Self {
        Self::Quantity(value.into().into(), unit)
    }

    /// A number in a UCUM unit, rounded to so many decimals.
    pub fn decimal(value: f64, decimals: usize, unit: &'static str) -> Self {
        Self::Quantity(rounded(value, decimals), unit)
    }

    /// A value, or the reason why there is none.
    pub fn or_absent<T>(
        value: Option<T>,
        absent: &'static str,
        as_x: impl FnOnce(T) -> Self,
    ) -> Self {
        value.map_or(Self::Absent(absent), as_x)
    }

    fn put(self, codes: &Codes, into: &mut Map<String, Value>) {
        let (name, value) = match self {
            Self::Quantity(value, unit) => (
                "valueQuantity",
                json!({
                    "value": value,
                    "unit": unit,
                    "system": "http://unitsofmeasure.org",
                    "code": unit,
                }),
            ),
            Self::Coded(ours) => ("valueCodeableConcept", codes.concept(&ours)),
            Self::Yes(yes) => ("valueBoolean", yes.into()),
            Self::Text(text) => ("valueString", text.into()),
            Self::Time(wall) => ("valueDateTime", iso(wall).into()),
            Self::Absent(reason) => ("dataAbsentReason", absent(reason, None)),
            Self::AbsentFor(reason, missing) => ("dataAbsentReason", absent(reason, Some(missing))),
        };
        into.insert(name.to_owned(), value);
    }
}

/// A number rounded to so many decimals, written as a whole one where it has none.
pub(super) fn rounded(value: f64, decimals: usize) -> Value {
    let text = format!("{value:.decimals$}");
    match text.parse::<i64>() {
        Ok(whole) => whole.into(),
        Err(_) => text.parse::<f64>().map_or(Value::Null, Value::from),
    }
}

fn absent(reason: &str, text: Option<String>) -> Value {
    let mut concept = json!({ "coding": [{
        "system": "http://terminology.hl7.org/CodeSystem/data-absent-reason",
        "code": reason,
    }]});
    if let Some(text) = text {
        concept["text"] = text.into();
    }
    concept
}

/// A message-like code of ours from a stored word: `seen`, `not_seen` to `sign-state-not-seen`.
pub(super) fn ours(thing: &str, word: &str) -> String {
    format!("{thing}-{}", word.replace('_', "-"))
}

/// One observation while it is built.
pub(super) struct Observation {
    key: String,
    map: Map<String, Value>,
    components: Vec<Value>,
    /// Shared by all visits of the pair: of birth, not of the visit.
    of_birth: bool,
}

/// The bundle while it is built.
pub(super) struct Bundle<'a> {
    pub facts: &'a Facts,
    pub codes: &'a Codes,
    entries: Vec<Value>,
    keys: HashSet<String>,
}

impl<'a> Bundle<'a> {
    pub fn new(facts: &'a Facts, codes: &'a Codes) -> Self {
        Self {
            facts,
            codes,
            entries: Vec::new(),
            keys: HashSet::new(),
        }
    }

    /// Whether it puts itself over what was sent before.
    pub const fn is_amendment(&self) -> bool {
        self.facts.replaces.is_some()
    }

    /// The address within the bundle of the resource with a key.
    pub fn url(&self, key: &str) -> String {
        let uuid = Uuid::new_v5(&self.facts.visit.uuid(), key.as_bytes());
        format!("urn:uuid:{uuid}")
    }

    /// A reference to the resource with a key.
    pub fn reference(&self, key: &str) -> Value {
        json!({ "reference": self.url(key) })
    }

    /// What stays the same from a visit to its amendments. A visit that is not signed has another,
    /// so that a copy of it never stands in the way of the signed one.
    pub fn occasion(&self) -> Uuid {
        let occasion = self.facts.occasion();
        if self.facts.signed.is_some() {
            occasion
        } else {
            Uuid::new_v5(&occasion, b"not signed")
        }
    }

    /// Addresses of all resources so far.
    pub fn urls(&self) -> Vec<Value> {
        let url = |entry: &Value| json!({ "reference": entry["fullUrl"] });
        self.entries.iter().map(url).collect()
    }

    /// Adds a resource. It is found again by its first identifier.
    pub fn add(&mut self, kind: &str, key: &str, resource: Value) {
        let identifier = resource["identifier"][0].clone();
        let text = |name: &str| identifier[name].as_str().unwrap_or_default().to_owned();
        let search = format!("identifier={}|{}", text("system"), encoded(&text("value")));
        let is_overwritten = matches!(kind, "Observation" | "Encounter" | "CarePlan");
        let request = if self.is_amendment() && is_overwritten {
            json!({ "method": "PUT", "url": format!("{kind}?{search}") })
        } else {
            json!({ "method": "POST", "url": kind, "ifNoneExist": search })
        };
        self.add_with(kind, key, resource, request);
    }

    /// Adds a resource with its own request.
    pub fn add_with(&mut self, kind: &str, key: &str, resource: Value, request: Value) {
        let mut typed = Map::new();
        typed.insert("resourceType".to_owned(), kind.into());
        if let Value::Object(rest) = resource {
            typed.extend(rest);
        }
        self.keys.insert(key.to_owned());
        self.entries.push(json!({
            "fullUrl": self.url(key),
            "resource": typed,
            "request": request,
        }));
    }

    /// Whether a resource with this key was added.
    pub fn has(&self, key: &str) -> bool {
        self.keys.contains(key)
    }

    /// Starts an observation about the baby, of category `exam`.
    pub fn observation(&self, key: &str, code: &str) -> Observation {
        let mut map = Map::new();
        let status = match (&self.facts.signed, self.facts.replaces) {
            (None, _) => "preliminary",
            (Some(_), None) => "final",
            (Some(_), Some(_)) => "amended",
        };
        map.insert("identifier".to_owned(), Value::Null);
        map.insert("status".to_owned(), status.into());
        map.insert("category".to_owned(), category("exam"));
        map.insert("code".to_owned(), self.codes.concept(code));
        map.insert("subject".to_owned(), self.reference(key::BABY));
        map.insert("encounter".to_owned(), self.reference(key::ENCOUNTER));
        map.insert("effectiveDateTime".to_owned(), iso(self.facts.began).into());
        map.insert("issued".to_owned(), iso(self.facts.until).into());
        map.insert(
            "performer".to_owned(),
            json!([self.reference(key::PRACTITIONER)]),
        );
        Observation {
            key: key.to_owned(),
            map,
            components: Vec::new(),
            of_birth: false,
        }
    }

    /// Adds an observation; two of the same key get different ones. Gives the key it got.
    pub fn observe(&mut self, mut observation: Observation) -> String {
        let mut key = observation.key.clone();
        let mut again = 2;
        while self.has(&key) {
            key = format!("{} {again}", observation.key);
            again += 1;
        }
        let base = if observation.of_birth {
            self.facts.pair.id.uuid()
        } else {
            self.occasion()
        };
        let uuid = Uuid::new_v5(&base, key.as_bytes());
        observation.map.insert(
            "identifier".to_owned(),
            json!([{ "system": "urn:feedside:observation", "value": uuid.to_string() }]),
        );
        if !observation.components.is_empty() {
            let components = observation.components.into();
            observation.map.insert("component".to_owned(), components);
        }
        self.add("Observation", &key, observation.map.into());
        key
    }

    /// Says of an observation that may have been sent before that it was wrong.
    pub fn take_back(&mut self, key: &str, code: &str, subject_mother: bool) {
        if self.has(key) {
            return;
        }
        let mut observation = self.observation(key, code).value(self, X::Absent(ERROR));
        if subject_mother {
            observation = observation.of_mother(self);
        }
        observation
            .map
            .insert("status".to_owned(), "entered-in-error".into());
        self.observe(observation);
    }

    /// The bundle.
    pub fn finish(self) -> Value {
        json!({
            "resourceType": "Bundle",
            "identifier": { "system": "urn:feedside:visit", "value": self.facts.visit.to_string() },
            "type": "transaction",
            "timestamp": iso(self.facts.until),
            "entry": self.entries,
        })
    }
}

impl Observation {
    /// About the mother, seen at the feeding of the baby.
    pub fn of_mother(mut self, bundle: &Bundle<'_>) -> Self {
        self.map
            .insert("subject".to_owned(), bundle.reference(key::MOTHER));
        self.map
            .insert("focus".to_owned(), json!([bundle.reference(key::BABY)]));
        self
    }

    /// Of birth: shared by all visits of the pair, not of this encounter.
    pub fn of_birth(mut self, birth: WallTime) -> Self {
        self.of_birth = true;
        self.map.remove("encounter");
        self.at(birth)
    }

    pub fn category(mut self, code: &str) -> Self {
        self.map.insert("category".to_owned(), category(code));
        self
    }

    pub fn at(mut self, wall: WallTime) -> Self {
        self.map
            .insert("effectiveDateTime".to_owned(), iso(wall).into());
        self
    }

    pub fn over(mut self, from: WallTime, to: Option<WallTime>) -> Self {
        self.map.remove("effectiveDateTime");
        self.map
            .insert("effectivePeriod".to_owned(), period(from, to));
        self
    }

    pub fn value(mut self, bundle: &Bundle<'_>, value: X) -> Self {
        value.put(bundle.codes, &mut self.map);
        self
    }

    pub fn with(mut self, name: &str, value: Value) -> Self {
        self.map.insert(name.to_owned(), value);
        self
    }

    /// Adds a component.
    pub fn part(&mut self, bundle: &Bundle<'_>, code: &str, value: X) {
        let mut map = Map::new();
        map.insert("code".to_owned(), bundle.codes.concept(code));
        value.put(bundle.codes, &mut map);
        self.components.push(map.into());
    }
}

/// A period; open if it has no end.
pub(super) fn period(from: WallTime, to: Option<WallTime>) -> Value {
    match to {
        Some(to) => json!({ "start": iso(from), "end": iso(to) }),
        None => json!({ "start": iso(from) }),
    }
}

fn category(code: &str) -> Value {
    json!([{ "coding": [{
        "system": "http://terminology.hl7.org/CodeSystem/observation-category",
        "code": code,
    }]}])
}

/// A search value: what FHIR search or an address would read as a sign of its own is escaped.
fn encoded(value: &str) -> String {
    let mut text = String::new();
    for c in value.chars() {
        if matches!(c, '\\' | '|' | ',' | '$') {
            text.push_str("%5C");
        }
        let mut utf8 = [0; 4];
        for byte in c.encode_utf8(&mut utf8).bytes() {
            if byte.is_ascii_alphanumeric() || matches!(byte, b'-' | b'.' | b'_' | b'~') {
                text.push(char::from(byte));
            } else {
                text.push_str(&format!("%{byte:02X}"));
            }
        }
    }
    text
}
