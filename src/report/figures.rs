//! The figures of the room `growth` as named rows. The only file here that knows their types.

use super::{Figure, Figures};
use crate::growth::{Centile, Growth};
use crate::record::WallTime;

/// Puts the figures in rows, in the order in which they are shown.
pub(super) fn figures(growth: &Growth) -> Figures {
    Figures {
        numbers: numbers(growth),
        cautions: growth.cautions.iter().map(|it| it.as_word()).collect(),
        missing: growth.missing.iter().map(|it| it.as_word()).collect(),
    }
}

fn numbers(growth: &Growth) -> Vec<Figure> {
    let mut all = Vec::new();
    if let Some(age) = growth.age {
        all.push(whole("age", age.hours(), "h").at(Some(growth.at)));
    }
    if let Some(weight) = growth.weight {
        let at = Some(weight.at);
        all.push(whole("weight", weight.grams.into(), "g").at(at));
        all.push(whole("weight_age", weight.age.hours(), "h").at(at));
        if let Some(change) = weight.change {
            all.push(whole("weight_change_grams", change.grams, "g").at(at));
            all.push(tenths("weight_change", change.tenths_percent(), "%").at(at));
        }
    }
    if let Some(clothed) = growth.clothed_since {
        all.push(whole("weight_clothed_since", clothed.grams.into(), "g").at(Some(clothed.at)));
    }
    // Lines and medians are losses; everything here is a change, so they get a sign.
    if let Some(median) = growth.median_loss {
        all.push(tenths("median_change", -median.tenths, "%"));
        all.push(whole("median_change_age", median.hours, "h"));
    }
    if let Some(line) = growth.line {
        all.push(tenths("sds_line", -line.line_tenths, "%"));
    }
    if let Some(z) = growth.z {
        all.push(Figure::new("who_z", z.exact(), 2, "{sd}"));
    }
    all.extend(growth.centile.map(centile));
    if let Some(age) = growth.back_at {
        all.push(whole("back_at_birth_weight", age.hours(), "h"));
    }
    if let Some(gain) = growth.gain {
        let figure = whole("gain_per_day", gain.per_day, "g/d").at(Some(gain.to));
        all.push(figure.between(Some(float(gain.low)), Some(float(gain.high))));
    }
    for it in &growth.test_weighings {
        let figure = tenths("test_weighing", it.tenths_ml, "mL").at(Some(it.after));
        all.push(figure.between(Some(float(it.low_ml)), Some(float(it.high_ml))));
    }
    if let Some(expected) = growth.expected {
        for (name, least) in [
            ("wet_expected", expected.wet),
            ("dirty_expected", expected.dirty),
        ] {
            all.push(Figure::range(name, 0, "{count}").between(Some(least.into()), None));
        }
    }
    if let Some(usual) = growth.usual_feed {
        let range = Figure::range("usual_feed", 0, "mL");
        all.push(range.between(Some(float(usual.low_ml)), Some(float(usual.high_ml))));
    }
    all.extend(growth.questions.iter().map(|it| {
        whole("weight_asked", it.grams, "g")
            .at(Some(it.at))
            .because(it.why.as_word())
    }));
    all
}

fn centile(centile: Centile) -> Figure {
    let range = Figure::range("who_centile", 1, "{centile}");
    match centile {
        Centile::Below => range.between(None, Some(0.4)),
        Centile::Above => range.between(Some(99.6), None),
        Centile::Tenths(value) => {
            Figure::new("who_centile", f64::from(value) / 10.0, 1, "{centile}")
        }
    }
}

fn whole(name: &'static str, value: i64, unit: &'static str) -> Figure {
    Figure::new(name, float(value), 0, unit)
}

fn tenths(name: &'static str, value: i64, unit: &'static str) -> Figure {
    Figure::new(name, float(value) / 10.0, 1, unit)
}

// Grams, hours and tenths are far below 2^52, so nothing is lost.
#[allow(clippy::cast_precision_loss)]
fn float(value: i64) -> f64 {
    value as f64
}

impl Figure {
    const fn new(name: &'static str, value: f64, decimals: usize, unit: &'static str) -> Self {
        Self {
            value: Some(value),
            ..Self::range(name, decimals, unit)
        }
    }

    const fn range(name: &'static str, decimals: usize, unit: &'static str) -> Self {
        Self {
            name,
            at: None,
            value: None,
            decimals,
            unit,
            low: None,
            high: None,
            why: None,
        }
    }

    const fn at(mut self, at: Option<WallTime>) -> Self {
        self.at = at;
        self
    }

    const fn between(mut self, low: Option<f64>, high: Option<f64>) -> Self {
        self.low = low;
        self.high = high;
        self
    }

    const fn because(mut self, why: &'static str) -> Self {
        self.why = Some(why);
        self
    }
}
