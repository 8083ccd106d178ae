//! What the touches before the feed tell, change and take back, and when a weight was taken.

use feedside::app::around::Around;
use feedside::app::before::{self, Count, Effect, Event as It, Question, TimePart, WeightTrouble};
use feedside::app::clock::Now;
use feedside::app::open_visit::{OpenVisit, Others};
use feedside::app::preferences::Preferences;
use feedside::findings::Policy;
use feedside::record::{
    BabyDanger, BreastState, Coded, Folded, Jaundice, LastDay, NippleBefore, Side, StoolColour,
    TenthsCelsius, Visit, What, fold,
};

use crate::support::{add, empty_visit, sample_began, sample_pair};

fn now(ms: u64) -> Now {
    Now {
        boot_ms: 5_000_000 + ms,
        wall: sample_began().plus_ms(i64::try_from(ms).unwrap()),
    }
}

/// A screen over a visit: each step hears its events, settles, and puts what came into the journal.
struct Screen {
    model: before::Model,
    visit: Visit,
    ms: u64,
}

impl Screen {
    fn over(visit: Visit) -> Self {
        Self {
            model: before::Model::default(),
            visit,
            ms: 600_000,
        }
    }

    /// Hears one event without waiting; the effects are not carried out.
    fn hear(&mut self, event: It) -> Vec<Effect> {
        let at = now(self.ms);
        let open = OpenVisit::take_up(sample_pair(), self.visit.clone(), Others::default(), at);
        let around = Around {
            now: at,
            open: Some(&open),
            preferences: &Preferences::default(),
            policy: &Policy::built_in(),
            has_pin: false,
        };
        before::update(&mut self.model, event, &around)
    }

    fn note(&mut self, effects: Vec<Effect>) {
        for effect in effects {
            if let Effect::Note(what) = effect {
                self.ms += 1;
                add(&mut self.visit, self.ms, what);
            }
        }
    }

    /// Touches, then rests until what was touched is in the journal.
    fn touch(&mut self, events: &[It]) -> Folded {
        for event in events {
            let effects = self.hear(event.clone());
            self.note(effects);
        }
        self.ms += 2_000;
        let effects = self.hear(It::Ticked);
        self.note(effects);
        fold(&self.visit.journal)
    }

    fn day(&mut self, events: &[It]) -> LastDay {
        self.touch(events).last_day.unwrap_or_default()
    }
}

fn screen() -> Screen {
    Screen::over(empty_visit())
}

const SIGN: It = It::Chose(Question::BabyDanger, 1);
const NONE: It = It::Chose(Question::BabyDanger, BabyDanger::ALL.len());

#[test]
fn the_last_danger_sign_taken_out_leaves_not_asked_and_only_none_of_these_says_none() {
    let floppy = Some(vec![Coded::Known(BabyDanger::Floppy)]);
    assert_eq!(screen().day(&[SIGN]).baby_danger, floppy);
    assert_eq!(screen().day(&[SIGN, SIGN]).baby_danger, None);
    assert_eq!(screen().day(&[NONE]).baby_danger, Some(vec![]));
    assert_eq!(screen().day(&[NONE, NONE]).baby_danger, None);
    assert_eq!(screen().day(&[NONE, SIGN]).baby_danger, floppy);
    assert_eq!(screen().day(&[SIGN, NONE]).baby_danger, Some(vec![]));
    // The same once each touch is in the journal.
    let mut slow = screen();
    slow.touch(&[SIGN]);
    assert_eq!(slow.day(&[SIGN]).baby_danger, None);
    slow.touch(&[NONE]);
    assert_eq!(slow.day(&[NONE]).baby_danger, None);
    let mother = It::Chose(Question::MotherDanger, 0);
    assert_eq!(screen().day(&[mother.clone(), mother]).mother_danger, None);
}

#[test]
fn one_touch_on_less_tells_nothing_and_a_second_tells_none() {
    for count in [Count::Feeds, Count::Wet, Count::Dirty, Count::HoursSinceWet] {
        let less = It::Counted(count, -1);
        let told = |events: &[It]| {
            let day = screen().day(events);
            match count {
                Count::Feeds => day.feeds,
                Count::Wet => day.wet,
                Count::Dirty => day.dirty,
                _ => day.hours_since_wet,
            }
        };
        let more = It::Counted(count, 1);
        assert_eq!(told(std::slice::from_ref(&less)), None);
        assert_eq!(told(&[less.clone(), less.clone()]), Some(0));
        assert_eq!(told(std::slice::from_ref(&more)), Some(1));
        assert_eq!(told(&[less.clone(), more.clone()]), Some(1));
        assert_eq!(told(&[more.clone(), less.clone()]), Some(0));
        // Below none lies "not told".
        assert_eq!(told(&[more.clone(), less.clone(), less.clone()]), None);
        // Touches on two numbers are not two touches on one.
        let other = It::Counted(Count::Supplement, -1);
        assert_eq!(told(&[less.clone(), other, less]), None);
        assert_eq!(told(&[more, It::CountCleared(count)]), None);
    }
}

#[test]
fn one_touch_on_the_temperature_shows_a_start_that_is_not_kept() {
    let (less, more) = (
        It::Counted(Count::Temperature, -1),
        It::Counted(Count::Temperature, 1),
    );
    let told = |events: &[It]| screen().day(events).temperature.map(TenthsCelsius::value);
    assert_eq!(told(std::slice::from_ref(&more)), None);
    assert_eq!(told(std::slice::from_ref(&less)), None);
    assert_eq!(told(&[more.clone(), more.clone()]), Some(368));
    assert_eq!(told(&[more.clone(), more.clone(), more.clone()]), Some(369));
    assert_eq!(told(&[less.clone(), less.clone(), less.clone()]), Some(367));
    let cleared = It::CountCleared(Count::Temperature);
    assert_eq!(told(&[more.clone(), more, cleared]), None);
}

#[test]
fn an_offered_start_is_gone_when_the_screen_is_left_and_come_to_again() {
    let mut it = screen();
    let less = It::Counted(Count::Wet, -1);
    it.touch(&[less.clone(), It::Came]);
    assert_eq!(it.day(&[less]).wet, None);
}

#[test]
fn a_settled_answer_touched_again_is_taken_back_and_the_others_stay() {
    let answers = [
        It::Chose(Question::Stool, 1),
        It::Chose(Question::Urates, 0),
        It::Chose(Question::Sleepy, 1),
        It::Chose(Question::Jaundice, 0),
        It::Chose(Question::Meconium, 1),
        It::Chose(Question::DarkUrine, 1),
        It::Counted(Count::Feeds, 1),
    ];
    let mut full = screen();
    let before = full.day(&answers);
    assert_eq!(before.jaundice, Some(Jaundice::None));
    assert_eq!(before.meconium, Some(false));
    for (back, without) in [
        (
            answers[0].clone(),
            LastDay {
                stool: None,
                ..before.clone()
            },
        ),
        (
            answers[1].clone(),
            LastDay {
                urates: None,
                ..before.clone()
            },
        ),
        (
            answers[2].clone(),
            LastDay {
                sleepy: None,
                ..before.clone()
            },
        ),
        (
            answers[3].clone(),
            LastDay {
                jaundice: None,
                ..before.clone()
            },
        ),
        (
            answers[4].clone(),
            LastDay {
                meconium: None,
                ..before.clone()
            },
        ),
        (
            answers[5].clone(),
            LastDay {
                dark_urine: None,
                ..before.clone()
            },
        ),
        (
            It::CountCleared(Count::Feeds),
            LastDay {
                feeds: None,
                ..before.clone()
            },
        ),
    ] {
        let mut it = Screen::over(full.visit.clone());
        assert_eq!(it.day(&[back]), without);
        // What else was told is there at every step: it is told anew before anything is struck.
        let entries = it.visit.journal.entries();
        let kinds: Vec<bool> = entries[entries.len() - 2..]
            .iter()
            .map(|it| matches!(it.what, What::LastDay(_)))
            .collect();
        assert_eq!(kinds, [true, false]);
    }
}

#[test]
fn an_answer_told_over_an_earlier_one_is_gone_with_it_when_taken_back() {
    // The earlier "body" does not come back when "none" is taken back.
    let mut it = screen();
    it.touch(&[It::Chose(Question::Jaundice, 2), It::Counted(Count::Wet, 1)]);
    it.touch(&[It::Chose(Question::Jaundice, 0)]);
    let day = it.day(&[It::Chose(Question::Jaundice, 0)]);
    assert_eq!((day.jaundice, day.wet), (None, Some(1)));
    // The only answer taken back: nobody asked.
    let mut one = screen();
    one.touch(&[NONE]);
    assert_eq!(one.touch(&[NONE]).last_day, None);
}

#[test]
fn an_answer_changed_adds_one_entry_with_that_answer_alone_and_strikes_nothing() {
    let mut it = screen();
    it.touch(&[It::Chose(Question::Stool, 1), It::Counted(Count::Wet, 1)]);
    it.touch(&[It::Chose(Question::Stool, 2)]);
    let entries = it.visit.journal.entries();
    assert_eq!(entries.len(), 2);
    let yellow = LastDay {
        stool: Some(StoolColour::Yellow),
        ..LastDay::default()
    };
    assert_eq!(entries[1].what, What::LastDay(yellow));
}

#[test]
fn answers_with_more_in_them_than_this_version_knows_are_not_struck() {
    use feedside::record::{StoredEntry, from_stored};
    let mut visit = empty_visit();
    let stored = StoredEntry {
        seq: 1,
        at_ms: 1_000,
        utc_ms: sample_began().utc_ms() + 1_000,
        offset_min: sample_began().offset_min(),
        kind: "last_day".to_owned(),
        body: r#"{"sleepy":false,"a_later_question":"grave"}"#.to_owned(),
    };
    visit.journal.push(from_stored(&stored).unwrap()).unwrap();
    let mut it = Screen::over(visit);
    let folded = it.touch(&[It::Chose(Question::Sleepy, 1)]);
    assert_eq!(folded.last_day.unwrap().sleepy, Some(false));
    assert_eq!(folded.odd.len(), 1);
}

#[test]
fn breast_and_nipple_touched_again_are_taken_back_each_for_itself() {
    let soft = It::BreastTold(Side::Left, 0);
    let sore = It::NippleTold(Side::Left, 3);
    let mut it = screen();
    it.touch(&[soft.clone(), sore.clone(), It::BreastTold(Side::Right, 1)]);
    let left = it.touch(std::slice::from_ref(&soft)).breasts_before;
    let told = |all: &[feedside::record::BreastBefore], side| {
        let it = all.iter().find(|it| it.side == side);
        it.map(|it| (it.breast, it.nipple))
    };
    assert_eq!(
        told(&left, Side::Left),
        Some((None, Some(NippleBefore::Sore)))
    );
    assert_eq!(
        told(&left, Side::Right),
        Some((Some(BreastState::Filling), None))
    );
    let left = it.touch(&[sore]).breasts_before;
    assert_eq!(told(&left, Side::Left), None);
}

#[test]
fn a_weight_taken_earlier_is_kept_with_its_time_once_that_was_set() {
    let keep = || It::WeightTaken("3300".to_owned());
    let mut it = screen();
    it.touch(&[It::MomentChosen(1), It::EarlierChosen(true), keep()]);
    // The time that it starts with is nobody's word.
    assert_eq!(it.model.trouble, Some(WeightTrouble::NoTime));
    assert!(it.visit.journal.entries().is_empty());
    let folded = it.touch(&[
        It::EarlierStepped(TimePart::Day, -1),
        It::EarlierStepped(TimePart::Minute, 1),
        keep(),
    ]);
    let [(wall, weighing)] = folded.weighings[..] else {
        panic!("{folded:?}");
    };
    let local = wall.local();
    let began = now(600_000).wall.local();
    assert_eq!((began - local).num_hours(), 24);
    assert_eq!(local.format("%M").to_string(), "05");
    assert_eq!(weighing.taken, Some(wall));
    // It stands for no feed, and the next weight is taken now again.
    assert_eq!(weighing.moment, feedside::record::WeighingMoment::Routine);
    assert_eq!(it.model.earlier, None);
    let folded = it.touch(&[keep()]);
    assert_eq!(folded.weighings[1].1.taken, None);
}

#[test]
fn an_earlier_time_lies_neither_before_birth_nor_in_the_future() {
    let mut it = screen();
    it.touch(&[It::EarlierChosen(true)]);
    let far = vec![It::EarlierStepped(TimePart::Day, -1); 40];
    it.touch(&far);
    assert_eq!(
        it.model.earlier.unwrap().at.utc_ms(),
        sample_pair().birth.utc_ms()
    );
    let on = vec![It::EarlierStepped(TimePart::Day, 1); 80];
    let at = it.ms;
    it.touch(&on);
    assert_eq!(it.model.earlier.unwrap().at, now(at).wall);
}

#[test]
fn an_earlier_weight_that_is_asked_about_is_taken_back_by_its_own_time() {
    let mut it = screen();
    it.touch(&[
        It::EarlierChosen(true),
        It::EarlierStepped(TimePart::Hour, -5),
        It::WeightTaken("330".to_owned()),
        It::WeightTaken("330".to_owned()),
    ]);
    assert_eq!(
        it.hear(It::CorrectWanted(0)),
        [Effect::Note(What::Struck { entry: 1 })]
    );
}
