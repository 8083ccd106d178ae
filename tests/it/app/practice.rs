//! What the events on the practice screen lead to, and how the drawn baby moves.

use feedside::app::around::Around;
use feedside::app::bedside::PadKind;
use feedside::app::clock::Now;
use feedside::app::practice::{
    Effect, Event, Model, Observer, Speed, Stage, compare, compare_observers, jaw, throat, update,
};
use feedside::app::preferences::Preferences;
use feedside::findings::Policy;
use feedside::practice::{Baby, HandLevel, simulate};
use feedside::record::{At, Tap, TapWhat};

use crate::support::sample_began;

struct Practising {
    model: Model,
    boot_ms: u64,
    preferences: Preferences,
    policy: Policy,
}

impl Practising {
    fn new() -> Self {
        Self {
            model: Model::default(),
            boot_ms: 7_000_000,
            preferences: Preferences::default(),
            policy: Policy::built_in(),
        }
    }

    fn hear(&mut self, event: Event) -> Vec<Effect> {
        let around = Around {
            now: Now {
                boot_ms: self.boot_ms,
                wall: sample_began(),
            },
            open: None,
            preferences: &self.preferences,
            policy: &self.policy,
            has_pin: false,
        };
        update(&mut self.model, event, &around, 11)
    }

    /// Taps the feed that is played as it truly is, every suck so late, and lets it end.
    fn tap_along(&mut self, late_ms: u64) {
        let Stage::Watching(watched) = self.model.stage.clone() else {
            panic!("nothing is played");
        };
        for (at, swallow) in watched
            .truth
            .sucks
            .iter()
            .filter(|(at, _)| *at < watched.end)
        {
            self.boot_ms =
                watched.began_boot_ms + (at.as_ms() + late_ms) * 100 / watched.speed.percent() + 1;
            self.hear(Event::Tapped(if *swallow {
                PadKind::SuckSwallow
            } else {
                PadKind::Suck
            }));
        }
        self.boot_ms = watched.began_boot_ms + watched.end.as_ms() * 100 / watched.speed.percent();
        self.hear(Event::Ticked);
    }
}

#[test]
fn a_feed_tapped_as_it_was_has_no_miss_at_any_speed() {
    for place in 0..Speed::ALL.len() {
        let mut it = Practising::new();
        it.hear(Event::SpeedChosen(place));
        it.hear(Event::StartWanted);
        it.tap_along(80);
        let Stage::Told(told) = &it.model.stage else {
            panic!("the feed did not end");
        };
        let hand = &told.against_truth.hand;
        // The last taps may come after the end.
        assert!(hand.sucks - hand.tapped <= 1);
        assert_eq!(hand.extra, 0);
        assert!(hand.lag_ms.unwrap().abs_diff(80) <= 2, "{:?}", hand.lag_ms);
        assert!(0.4 < told.against_truth.phases.unwrap().kappa.unwrap());
    }
}

#[test]
fn the_second_observer_taps_the_same_feed_and_both_are_compared() {
    let mut it = Practising::new();
    it.hear(Event::StartWanted);
    it.tap_along(60);
    it.hear(Event::SecondWanted);
    it.tap_along(200);
    let Stage::Told(told) = &it.model.stage else {
        panic!("the feed did not end");
    };
    assert_eq!(told.observer, Observer::Second);
    let between = told.between.unwrap();
    assert!(0.9 < between.phases.unwrap().kappa.unwrap());
    assert!(0.9 < between.sucks.unwrap());
    assert!(0.9 < between.swallows.unwrap());
}

#[test]
fn without_a_first_observer_there_is_no_second() {
    let mut it = Practising::new();
    it.hear(Event::SecondWanted);
    assert_eq!(it.model.stage, Stage::Choosing);
}

#[test]
fn back_leaves_the_feed_first_and_the_screen_next() {
    let mut it = Practising::new();
    it.hear(Event::StartWanted);
    assert_eq!(it.hear(Event::BackWanted), []);
    assert_eq!(it.model.stage, Stage::Choosing);
    assert_eq!(it.hear(Event::BackWanted), [Effect::Leave]);
}

#[test]
fn a_tap_that_hits_no_feed_is_dropped() {
    let mut it = Practising::new();
    it.hear(Event::Tapped(PadKind::Suck));
    assert_eq!(it.model, Model::default());
}

#[test]
fn an_observer_who_hears_fewer_swallows_agrees_less() {
    let end = At::ms(12 * 60_000);
    let kappa = |it: &feedside::app::practice::Compared| it.phases.unwrap().kappa.unwrap();
    let (mut full, mut none) = (0.0, 0.0);
    // Over several feeds: a single one may read the same with fewer swallows. With one in four they all
    // do, as the gaps of so steady a hand tell the phases as well.
    for seed in 0..8 {
        let feed = simulate(Baby::Established, HandLevel::Perfect.hand(), seed, 12);
        let tapped = |swallow_each: usize| -> Vec<Tap> {
            let sucks = feed.truth.sucks.iter().enumerate();
            let taps = sucks.map(|(place, (at, swallow))| Tap {
                at: *at,
                what: if *swallow && place % swallow_each == 0 {
                    TapWhat::SuckSwallow
                } else {
                    TapWhat::Suck
                },
            });
            [Tap::new(0, TapWhat::On)].into_iter().chain(taps).collect()
        };
        let (all, few, nearly_none) = (tapped(1), tapped(4), tapped(1_000));
        full += kappa(&compare(&feed.truth, &all, end));
        none += kappa(&compare(&feed.truth, &nearly_none, end));
        let between = compare_observers(&all, &few, end);
        assert!(between.swallows.unwrap() < 0.8, "{seed}");
        assert!((between.sucks.unwrap() - 1.0).abs() < 1e-9, "{seed}");
    }
    assert!(none < full, "{none} of {full}");
}

#[test]
fn the_jaw_is_lowest_at_each_suck_and_a_swallow_runs_down_after_it() {
    let feed = simulate(Baby::Established, HandLevel::Perfect.hand(), 3, 3);
    for (at, swallow) in &feed.truth.sucks {
        assert_eq!(jaw(&feed.truth, *at), 1.0);
        assert_eq!(throat(&feed.truth, at.plus_ms(150)).is_some(), *swallow);
    }
    let still = feed.truth.sucks.last().unwrap().0.plus_ms(2_000);
    assert_eq!(
        (jaw(&feed.truth, still), throat(&feed.truth, still)),
        (0.0, None)
    );
}
