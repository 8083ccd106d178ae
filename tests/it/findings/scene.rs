//! Invented visits, told in a few words.

use feedside::findings::{Judged, Policy, judge};
use feedside::growth;
use feedside::record::WeighingMoment::Routine;
use feedside::record::{
    At, BabyDanger, BreastBefore, BreastState, Coded, EndedBy, Feed, FeedEnd, Folded, Gestation,
    Grams, Hold, Jaundice, Label, LastDay, Millilitres, MotherDanger, NippleBefore, Pain, PainAt,
    Pair, PairId, RiskNote, ScaleStep, Sex, Side, Sign, SignChange, SignNow, SignState,
    StoolColour, Tap, TapWhat, TenthsCelsius, WallTime, WayOfBirth, Weighing, WeighingMoment,
};
use feedside::rhythm::{Summary, TotalsMs};

/// A visit to be judged, built up step by step.
#[derive(Debug, Clone)]
pub struct Scene {
    pub pair: Pair,
    pub visit: Folded,
    pub rhythms: Vec<Summary>,
    pub weights: Vec<(WallTime, Weighing)>,
    pub age_h: i64,
    pub policy: Policy,
}

pub fn birth() -> WallTime {
    WallTime::new(1_772_366_400_000, 0).unwrap()
}

pub fn grams(value: i64) -> Grams {
    Grams::new(value).unwrap()
}

/// An invented girl of 3500 g at an age in hours; nothing asked, nothing seen.
pub fn at(age_h: i64) -> Scene {
    Scene {
        pair: Pair {
            id: PairId::from_random([9; 16]),
            mother_id: None,
            bed: Label::new("C4").unwrap(),
            initials: Label::new("QV").unwrap(),
            mother_number: None,
            baby_number: None,
            birth: birth(),
            sex: Sex::Female,
            gestation: Some(Gestation::weeks_days(39, 3).unwrap()),
            birth_weight: Some(grams(3500)),
            way_of_birth: Some(WayOfBirth::Vaginal),
            babies: 1,
            risk_notes: Vec::new(),
            reasons: Vec::new(),
            language: None,
        },
        visit: Folded::default(),
        rhythms: Vec::new(),
        weights: Vec::new(),
        age_h,
        policy: Policy::built_in(),
    }
}

impl Scene {
    /// A bare weight at an age in hours.
    pub fn weight(self, at_h: i64, value: i64) -> Self {
        self.weight_as(at_h, value, false)
    }

    pub fn weight_as(mut self, at_h: i64, value: i64, clothed: bool) -> Self {
        let weighing = Weighing {
            grams: grams(value),
            step: Some(ScaleStep::new(5).unwrap()),
            clothed,
            moment: Routine,
            taken: None,
        };
        self.weights
            .push((birth().plus_ms(at_h * 3_600_000), weighing));
        self
    }

    /// Weights before and after a feed half an hour apart, in a nappy.
    pub fn tested(mut self, at_h: i64, before: i64, after: i64, step: i64) -> Self {
        for (later_ms, value, moment) in [
            (0, before, WeighingMoment::BeforeFeed),
            (1_800_000, after, WeighingMoment::AfterFeed),
        ] {
            let weighing = Weighing {
                grams: grams(value),
                step: Some(ScaleStep::new(step).unwrap()),
                clothed: false,
                moment,
                taken: None,
            };
            self.weights
                .push((birth().plus_ms(at_h * 3_600_000 + later_ms), weighing));
        }
        self
    }

    /// Born at so many weeks and days.
    pub fn born(mut self, weeks: u16, days: u16) -> Self {
        self.pair.gestation = Some(Gestation::weeks_days(weeks, days).unwrap());
        self
    }

    pub fn noted(mut self, notes: &[RiskNote]) -> Self {
        self.pair.risk_notes = notes.iter().copied().map(Coded::Known).collect();
        self
    }

    pub fn danger(self, sign: BabyDanger) -> Self {
        self.day(|day| day.baby_danger = Some(vec![Coded::Known(sign)]))
    }

    pub fn mother(self, sign: MotherDanger) -> Self {
        self.day(|day| day.mother_danger = Some(vec![Coded::Known(sign)]))
    }

    /// Milk given another way in the last 24 hours, in millilitres.
    pub fn given(self, expressed: i64, supplement: i64) -> Self {
        self.day(|day| {
            day.expressed_ml = Some(Millilitres::new(expressed).unwrap());
            day.supplement_ml = Some(Millilitres::new(supplement).unwrap());
        })
    }

    /// The last feed ended so many seconds after the visit began, by somebody.
    pub fn ended(self, second: u64, by: EndedBy) -> Self {
        self.last_feed(|feed| {
            let at = At::ms(second * 1000);
            feed.ended = Some(FeedEnd { at, by });
            feed.taps.last_mut().unwrap().at = at;
        })
    }

    /// Pain told after the last feed.
    pub fn pain_after(self, score: i64) -> Self {
        self.last_feed(|feed| {
            feed.pains_after.push(PainAt {
                at: At::ms(700_000),
                pain: Pain::score(score).unwrap(),
            });
        })
    }

    /// Changes what was told of the last 24 hours.
    pub fn day(mut self, change: impl FnOnce(&mut LastDay)) -> Self {
        change(self.visit.last_day.get_or_insert_default());
        self
    }

    /// Everything asked, nothing wrong, counts that are enough on any day.
    pub fn good_day(self) -> Self {
        self.day(|day| {
            day.feeds = Some(10);
            day.wet = Some(7);
            day.dirty = Some(4);
            day.stool = Some(StoolColour::Yellow);
            day.urates = Some(false);
            day.hours_since_wet = Some(2);
            day.sleepy = Some(false);
            day.jaundice = Some(Jaundice::None);
            day.temperature = Some(TenthsCelsius::new(369).unwrap());
            day.baby_danger = Some(Vec::new());
            day.mother_danger = Some(Vec::new());
        })
    }

    pub fn celsius_tenths(self, tenths: i64) -> Self {
        self.day(|day| day.temperature = Some(TenthsCelsius::new(tenths).unwrap()))
    }

    /// A sign in the last feed, or before the first.
    pub fn sign(mut self, sign: Sign, state: SignState) -> Self {
        let at = At::START;
        self.visit.signs[sign.index()] = Some(SignNow { state, at });
        if let Some(feed) = self.visit.feeds.last_mut() {
            let state = Some(state);
            feed.signs.push(SignChange { at, sign, state });
        }
        self
    }

    pub fn all_signs(mut self) -> Self {
        for sign in Sign::ALL {
            self = self.sign(*sign, SignState::Seen);
        }
        self
    }

    pub fn breasts(mut self, breast: BreastState, nipple: NippleBefore) -> Self {
        self.visit.breasts_before = [Side::Left, Side::Right]
            .map(|side| BreastBefore {
                side,
                breast: Some(breast),
                nipple: Some(nipple),
            })
            .to_vec();
        self
    }

    /// A feed of ten minutes from the start of the visit, ended, with its seconds of phases
    /// (quick, flow, flutter, rest) and its swallows.
    pub fn feed(mut self, seconds: [u64; 4], swallows: u32) -> Self {
        let end = At::ms(600_000);
        let first = self.visit.feeds.is_empty();
        let told = self.visit.signs.iter().zip(Sign::ALL);
        let told: Vec<SignChange> = told
            .filter_map(|(now, sign)| {
                let now = (*now)?;
                Some(SignChange {
                    at: now.at,
                    sign: *sign,
                    state: Some(now.state),
                })
            })
            .collect();
        if !first {
            self.visit.signs = Default::default();
        }
        self.visit.feeds.push(Feed {
            started: At::START,
            side: Side::Left,
            holds: vec![(At::START, Hold::Cradle)],
            ended: Some(FeedEnd {
                at: end,
                by: EndedBy::Baby,
            }),
            taps: vec![
                Tap {
                    at: At::START,
                    what: TapWhat::On,
                },
                Tap {
                    at: end,
                    what: TapWhat::End,
                },
            ],
            pains: Vec::new(),
            pains_after: Vec::new(),
            signs: if first { told } else { Vec::new() },
            adjustments: Vec::new(),
            unresolved_touches: 0,
            boundaries: Vec::new(),
            nipple_after: None,
            breast_after: None,
            baby_state: None,
        });
        let [quick, flow, flutter, rest] = seconds.map(|it| it * 1000);
        self.rhythms.push(Summary {
            watched_ms: quick + flow + flutter + rest,
            swallows,
            first_flow: (0 < flow).then_some(At::ms(quick)),
            totals_ms: TotalsMs {
                quick,
                flow,
                flutter,
                rest,
                ..TotalsMs::default()
            },
            ..Summary::default()
        });
        self
    }

    /// A feed as one hopes for.
    pub fn good_feed(self) -> Self {
        self.feed([50, 300, 60, 190], 160)
            .last_feed(|feed| {
                feed.nipple_after = Some(feedside::record::NippleAfter::Rounded);
                feed.breast_after = Some(feedside::record::BreastAfter::Softer);
                feed.baby_state = Some(feedside::record::BabyState::Content);
            })
            .pain(60, 0)
    }

    pub fn last_feed(mut self, change: impl FnOnce(&mut Feed)) -> Self {
        change(self.visit.feeds.last_mut().unwrap());
        self
    }

    /// Pain told so many seconds into the last feed.
    pub fn pain(self, second: u64, score: i64) -> Self {
        self.pain_at_ms(second * 1000, score)
    }

    pub fn pain_at_ms(self, ms: u64, score: i64) -> Self {
        self.last_feed(|feed| {
            let pain = Pain::score(score).unwrap();
            feed.pains.push(PainAt {
                at: At::ms(ms),
                pain,
            });
        })
    }

    pub fn judged(&self) -> Judged {
        let now = birth().plus_ms(self.age_h * 3_600_000);
        let growth = growth::of(&self.pair, &self.weights, now);
        judge(
            &self.pair,
            &self.visit,
            &self.rhythms,
            &growth,
            &self.policy,
            now,
        )
    }

    /// The ids of the rules that held, in order.
    pub fn ids(&self) -> Vec<String> {
        self.judged()
            .findings
            .into_iter()
            .map(|it| it.rule)
            .collect()
    }

    pub fn holds(&self, rule: &str) -> bool {
        assert!(feedside::findings::rule(rule).is_some(), "no rule {rule}");
        self.ids().iter().any(|id| id == rule)
    }

    /// What a rule lacked; `None` if it was judged.
    pub fn lacked(&self, rule: &str) -> Option<Vec<String>> {
        assert!(feedside::findings::rule(rule).is_some(), "no rule {rule}");
        let all = self.judged().unjudged;
        all.into_iter()
            .find(|it| it.rule == rule)
            .map(|it| it.missing)
    }
}
