//! Observations as `OBR` and `OBX`.

use std::collections::HashMap;

use uuid::Uuid;

use super::segment::{Segment, escaped, time};
use super::{NAME, OURS};
use crate::record::WallTime;
use crate::report::Facts;
use crate::report::codes::Codes;
use crate::report::form::hex;
use crate::report::observed::{Observation, When, Why, X, ours};

/// How an observation stands (HL7 table 0085 for `OBX-11`, 0123 for `OBR-25`).
#[derive(Clone, Copy)]
enum Standing {
    Preliminary,
    Final,
    Corrected,
    /// What was sent before is to be taken out.
    Deleted,
}

impl Standing {
    const fn in_obx(self) -> &'static str {
        match self {
            Self::Preliminary => "P",
            Self::Final => "F",
            Self::Corrected => "C",
            Self::Deleted => "D",
        }
    }

    const fn in_obr(self) -> &'static str {
        match self {
            Self::Preliminary => "P",
            Self::Final => "F",
            Self::Corrected => "C",
            Self::Deleted => "X",
        }
    }
}

/// Writes the observations of one patient; counts them.
pub(super) struct Writer<'a> {
    facts: &'a Facts,
    codes: &'a Codes,
    message: &'a mut String,
    /// `OBR`s so far.
    orders: u32,
    /// `OBX`s under the last one, and how often each code stands there.
    results: u32,
    seen: HashMap<String, u32>,
}

impl<'a> Writer<'a> {
    pub fn new(facts: &'a Facts, codes: &'a Codes, message: &'a mut String) -> Self {
        Self {
            facts,
            codes,
            message,
            orders: 0,
            results: 0,
            seen: HashMap::new(),
        }
    }

    /// The visit itself: why it was asked for, and where the record comes from.
    pub fn visit(&mut self) {
        let facts = self.facts;
        let end = facts.signed.as_ref().map(|signed| signed.wall);
        let over = When::Over(facts.began, end);
        let standing = self.standing();
        self.order("visit", "breastfeeding-visit", over, standing);
        for reason in &facts.pair.reasons {
            let code = ours("reason", reason.word());
            self.result("reason", &X::Coded(code), facts.began, standing);
        }
        let mut texts = vec![("visit-id", facts.visit.to_string())];
        texts.extend(facts.replaces.map(|id| ("visit-replaced", id.to_string())));
        let policy = &facts.policy;
        let policy = format!("{} {} {}", policy.name, policy.version, policy.hash);
        texts.push(("policy", policy.trim().to_owned()));
        texts.push(("app-version", facts.app_version.clone()));
        if let Some(it) = &facts.handover {
            texts.extend(it.transfer.clone().map(|it| ("transfer", it)));
            let sum = it.sealed_sha256.as_ref().map(|sum| hex(sum));
            texts.extend(sum.map(|it| ("sealed-sha256", it)));
            texts.extend(it.tablet_key.clone().map(|it| ("tablet-key", it)));
        }
        for (code, text) in texts {
            self.result(code, &X::Text(text), facts.until, standing);
        }
        self.remark(&self.codes.display("caution"));
    }

    pub fn observation(&mut self, it: &Observation) {
        let standing = if it.is_wrong {
            Standing::Deleted
        } else {
            self.standing()
        };
        // What is of birth belongs to the pair, not to the visit.
        let key = if it.of_birth {
            format!("of birth: {}", it.key)
        } else {
            it.key.clone()
        };
        self.order(&key, &it.code, it.when, standing);
        let at = match it.when {
            When::At(wall) | When::Over(_, Some(wall)) => wall,
            When::Over(from, None) => from,
        };
        if let Some(value) = &it.value {
            self.result(&it.code, value, at, standing);
        }
        if let Some(side) = &it.side
            && !it.parts.iter().any(|(code, _)| code == "side")
        {
            self.result("side", &X::Coded(side.clone()), at, standing);
        }
        for (code, value) in &it.parts {
            self.result(code, value, at, standing);
        }
        if it.caution {
            self.remark(&self.codes.display("caution"));
        }
    }

    /// What was agreed, and the next look.
    pub fn plan(&mut self) {
        let facts = self.facts;
        if facts.plan.is_empty() && facts.next_look.is_none() && facts.replaces.is_none() {
            return;
        }
        let standing = self.standing();
        self.order("plan", "feeding-plan", When::At(facts.until), standing);
        for item in &facts.plan {
            if let Some(what) = &item.what {
                let value = X::Coded(ours("plan", what.word()));
                self.result("plan-agreed", &value, facts.until, standing);
            }
            if let Some(words) = &item.words {
                let value = X::Text(words.as_str().to_owned());
                self.result("plan-agreed", &value, facts.until, standing);
            }
        }
        let due = X::or_absent(facts.next_look, Why::Unknown, X::Time);
        self.result("next-look", &due, facts.until, standing);
    }

    const fn standing(&self) -> Standing {
        match (&self.facts.signed, self.facts.replaces) {
            (None, _) => Standing::Preliminary,
            (Some(_), None) => Standing::Final,
            (Some(_), Some(_)) => Standing::Corrected,
        }
    }

    fn order(&mut self, key: &str, code: &str, when: When, standing: Standing) {
        self.orders += 1;
        self.results = 0;
        self.seen.clear();
        let base = match &self.facts.signed {
            Some(_) => self.facts.occasion(),
            None => Uuid::new_v5(&self.facts.occasion(), b"not signed"),
        };
        let filler = Uuid::new_v5(&base, key.as_bytes());
        let mut segment = Segment::new("OBR")
            .raw(1, self.orders.to_string())
            .raw(3, format!("{filler}^{NAME}"))
            .raw(4, self.coded(code))
            .time(22, self.facts.until)
            .raw(25, standing.in_obr().to_owned());
        segment = match when {
            When::At(wall) => segment.time(7, wall),
            When::Over(from, Some(to)) => segment.time(7, from).time(8, to),
            When::Over(from, None) => segment.time(7, from),
        };
        segment.end(self.message);
    }

    fn result(&mut self, code: &str, value: &X, at: WallTime, standing: Standing) {
        self.results += 1;
        let again = self.seen.entry(code.to_owned()).or_insert(0);
        *again += 1;
        let again = *again;
        let (kind, field, unit, absent) = match value {
            X::Quantity(number, unit) => ("NM", number.clone(), Some(*unit), None),
            X::Coded(ours) => ("CWE", self.coded(ours), None, None),
            // HL7 table 0136.
            X::Yes(true) => ("CWE", "Y^Yes^HL70136".to_owned(), None, None),
            X::Yes(false) => ("CWE", "N^No^HL70136".to_owned(), None, None),
            X::Text(text) => ("TX", escaped(text), None, None),
            X::Time(wall) => ("TS", time(*wall), None, None),
            X::Absent(why) => ("ST", String::new(), None, Some((*why, ""))),
            X::AbsentFor(why, missing) => ("ST", String::new(), None, Some((*why, &**missing))),
        };
        let status = match (standing, absent) {
            (Standing::Deleted, _) => standing.in_obx(),
            // Not asked for; no result can be had.
            (_, Some((Why::NotAsked, _))) => "N",
            (_, Some(_)) => "X",
            (_, None) => standing.in_obx(),
        };
        let mut segment = Segment::new("OBX")
            .raw(1, self.results.to_string())
            .raw(2, kind.to_owned())
            .raw(3, self.coded(code))
            .raw(4, again.to_string())
            .raw(5, field)
            .raw(11, status.to_owned())
            .time(14, at)
            .text(16, self.facts.specialist.as_str());
        if let Some(unit) = unit {
            segment = segment.parts(6, &[unit, unit, "UCUM"]);
        }
        segment.end(self.message);
        if let Some((why, missing)) = absent {
            self.remark(format!("{} {missing}", why.as_word()).trim_end());
        }
    }

    /// A note under the segment before it.
    fn remark(&mut self, text: &str) {
        Segment::new("NTE")
            .raw(1, "1".to_owned())
            .text(3, text)
            .end(self.message);
    }

    /// A code: the public one first with ours beside it, or ours alone.
    fn coded(&self, ours: &str) -> String {
        let display = escaped(&self.codes.display(ours));
        let ours_too = format!("{}^{display}^{OURS}", escaped(ours));
        let mut others = self.codes.others(ours).iter();
        let public = others.find_map(|it| Some((it, it.hl7_system()?)));
        match public {
            Some((it, system)) => format!(
                "{}^{}^{}^{ours_too}",
                escaped(&it.code),
                escaped(&it.display),
                escaped(system)
            ),
            None => ours_too,
        }
    }
}
