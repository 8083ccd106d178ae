//! The bundle while it is built: ids, identifiers and requests.

use serde_json::{Map, Value, json};
use uuid::Uuid;

use crate::record::WallTime;
use crate::report::Facts;
use crate::report::codes::Codes;
use crate::report::form::iso;

/// The fixed keys of resources that others refer to.
pub(super) mod key {
    pub const MOTHER: &str = "mother";
    pub const BABY: &str = "baby";
    pub const RELATED: &str = "mother-of-baby";
    pub const PRACTITIONER: &str = "specialist";
    pub const DEVICE: &str = "device";
    pub const ENCOUNTER: &str = "encounter";
}

/// The bundle while it is built.
pub(super) struct Bundle<'a> {
    pub facts: &'a Facts,
    pub codes: &'a Codes,
    kind: Kind,
    entries: Vec<Value>,
}

/// What the bundle is for.
#[derive(Clone, Copy, PartialEq, Eq)]
pub(super) enum Kind {
    /// To be put into a server, all of it or nothing.
    Transaction,
    /// To be filed as it is.
    Document,
}

impl<'a> Bundle<'a> {
    pub const fn new(facts: &'a Facts, codes: &'a Codes, kind: Kind) -> Self {
        Self {
            facts,
            codes,
            kind,
            entries: Vec::new(),
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
        let mut entry = json!({ "fullUrl": self.url(key), "resource": typed });
        if self.kind == Kind::Transaction {
            entry["request"] = request;
        }
        self.entries.push(entry);
    }

    /// The addresses of all resources of a kind that fit.
    pub fn references(&self, fits: impl Fn(&Value) -> bool) -> Vec<Value> {
        let fitting = self.entries.iter().filter(|it| fits(&it["resource"]));
        fitting
            .map(|it| json!({ "reference": it["fullUrl"] }))
            .collect()
    }

    /// Puts the resource added last before all others: a document begins with its composition.
    pub fn last_to_front(&mut self) {
        self.entries.rotate_right(1);
    }

    /// The bundle.
    pub fn finish(self) -> Value {
        let kind = match self.kind {
            Kind::Transaction => "transaction",
            Kind::Document => "document",
        };
        json!({
            "resourceType": "Bundle",
            "identifier": { "system": "urn:feedside:visit", "value": self.facts.visit.to_string() },
            "type": kind,
            "timestamp": iso(self.facts.until),
            "entry": self.entries,
        })
    }
}

/// A period; open if it has no end.
pub(super) fn period(from: WallTime, to: Option<WallTime>) -> Value {
    match to {
        Some(to) => json!({ "start": iso(from), "end": iso(to) }),
        None => json!({ "start": iso(from) }),
    }
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
