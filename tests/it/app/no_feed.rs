//! A visit in which there is no feed to watch, and medical review that is called for: both reach the
//! plan, the signature and the desk, and the call stays in view until somebody answers for it.

use feedside::app::bedside::{Event as Bedside, PadKind};
use feedside::app::before::{Event as Before, Question};
use feedside::app::event::Event;
use feedside::app::keeper::Told;
use feedside::app::looking_back::Event as LookingBack;
use feedside::app::plan::Event as Plan;
use feedside::app::route::Route;
use feedside::app::settings::Event as Settings;
use feedside::app::ui;
use feedside::record::{BabyDanger, Side, What};
use feedside::store::Store;
use feedside::words::Lang;
use slint::{Global, Model};

use super::eyes::faults_on;
use super::golden::Golden;
use super::tablet::{CANVAS, Tablet, tablet_over, told_nothing};
use crate::support::{empty_visit, sample_pair};

/// A tablet on the screen before the feed of a visit that has begun.
fn before_a_feed() -> Tablet {
    let store = Store::in_memory().unwrap();
    store.save_pair(&sample_pair()).unwrap();
    store.begin_visit(&empty_visit()).unwrap();
    let tablet = tablet_over(store, (1280, 800));
    let told = Told::Opened(Box::new(empty_visit()), Box::new(told_nothing()));
    (tablet.hear)(Event::Told(told));
    assert_eq!(route(&tablet), Route::Before);
    tablet
}

fn route(tablet: &Tablet) -> Route {
    tablet.shell.borrow().route()
}

fn review(tablet: &Tablet) -> String {
    ui::FrameAdapter::get(&tablet.window)
        .get_review()
        .to_string()
}

/// A danger sign of the baby is told.
fn told(tablet: &Tablet, danger: BabyDanger) {
    let place = BabyDanger::ALL.iter().position(|it| *it == danger).unwrap();
    (tablet.hear)(Event::Before(Before::Chose(Question::BabyDanger, place)));
}

#[test]
fn a_visit_without_a_feed_reaches_its_findings_the_plan_and_the_signature() {
    let tablet = before_a_feed();
    (tablet.hear)(Event::Before(Before::FindingsWanted));
    assert_eq!(route(&tablet), Route::LookingBack);
    let screen = ui::LookingBackAdapter::get(&tablet.window);
    assert!(!screen.get_has_feed());
    (tablet.hear)(Event::LookingBack(LookingBack::PlanWanted));
    assert_eq!(route(&tablet), Route::Plan);
    (tablet.hear)(Event::Plan(Plan::BackWanted));
    assert_eq!(route(&tablet), Route::LookingBack);
    (tablet.hear)(Event::LookingBack(LookingBack::AnotherFeed));
    assert_eq!(route(&tablet), Route::Before);
}

#[test]
fn medical_review_is_called_for_on_every_screen_until_somebody_answers_for_it() {
    let tablet = before_a_feed();
    assert_eq!(review(&tablet), "");
    told(&tablet, BabyDanger::Fit);
    // Answers settle first.
    (tablet.hear)(Event::Before(Before::FindingsWanted));
    assert_eq!(route(&tablet), Route::LookingBack);
    assert_eq!(review(&tablet), "", "its card is here");
    // Nobody is named in the settings: whoever began the visit answers, as the key says.
    let findings = ui::LookingBackAdapter::get(&tablet.window).get_findings();
    let first = findings.row_data(0).unwrap();
    assert_eq!(first.acknowledge, "Acknowledge as kb");
    (tablet.hear)(Event::LookingBack(LookingBack::PlanWanted));
    assert_ne!(review(&tablet), "");
    (tablet.hear)(Event::Plan(Plan::BackWanted));
    (tablet.hear)(Event::LookingBack(LookingBack::AnotherFeed));
    assert_ne!(review(&tablet), "");
    (tablet.hear)(Event::Before(Before::SideChosen(Side::Left)));
    (tablet.hear)(Event::Before(Before::HoldChosen(0)));
    (tablet.hear)(Event::Before(Before::Started));
    assert_eq!(route(&tablet), Route::Bedside);
    (tablet.hear)(Event::Bedside(Bedside::Tapped(PadKind::Suck)));
    assert_ne!(review(&tablet), "");
    (tablet.hear)(Event::Bedside(Bedside::BackWanted));
    assert_eq!(route(&tablet), Route::Ward);
    assert!(review(&tablet).contains(sample_pair().bed.as_str()));
    // The banner leads to the card; answered for, it goes.
    (tablet.hear)(Event::ToReview);
    assert_eq!(route(&tablet), Route::LookingBack);
    (tablet.hear)(Event::LookingBack(LookingBack::Acknowledged(0)));
    (tablet.hear)(Event::LookingBack(LookingBack::PlanWanted));
    assert_eq!(review(&tablet), "");
    // The feed ran all the while.
    let shell = tablet.shell.borrow();
    assert!(shell.open().unwrap().folded.running().is_some());
}

#[test]
fn the_call_and_the_visit_without_a_feed_look_as_they_did_when_they_were_looked_at() {
    let mut golden = Golden::of("called");
    let mut faults = Vec::new();
    for size in [(1280, 800), (800, 1280)] {
        let way = if size.1 < size.0 { "lying" } else { "standing" };
        let tablet = before_a_feed();
        told(&tablet, BabyDanger::NotFeeding);
        (tablet.hear)(Event::Before(Before::WeightTaken("3010".to_owned())));
        (tablet.hear)(Event::Before(Before::FindingsWanted));
        (tablet.hear)(Event::LookingBack(LookingBack::EntriesWanted(true)));
        let mut look = |name: &str| {
            for lang in 0..Lang::ALL.len() {
                (tablet.hear)(Event::Settings(Settings::LanguageChosen(lang)));
                CANVAS.with(|canvas| {
                    canvas.resize(size.0, size.1);
                    let drawn = canvas.draw();
                    let bedside = route(&tablet) == Route::Bedside;
                    faults.extend(faults_on(&tablet.window, bedside, size));
                    golden.compare(&drawn, &format!("{name}-{way}-{lang}.png"));
                });
            }
            (tablet.hear)(Event::Settings(Settings::LanguageChosen(0)));
        };
        look("without-a-feed");
        (tablet.hear)(Event::LookingBack(LookingBack::AnotherFeed));
        (tablet.hear)(Event::Before(Before::SideChosen(Side::Left)));
        (tablet.hear)(Event::Before(Before::HoldChosen(0)));
        (tablet.hear)(Event::Before(Before::Started));
        look("bedside");
    }
    assert_eq!(faults, Vec::<String>::new());
    golden.stand();
}

#[test]
fn an_earlier_weight_and_a_number_that_is_offered_fit_in_every_language_and_size() {
    use feedside::app::before::{Count, TimePart};
    let mut golden = Golden::of("earlier");
    let mut faults = Vec::new();
    let tablet = before_a_feed();
    (tablet.hear)(Event::Before(Before::Counted(Count::Feeds, -1)));
    (tablet.hear)(Event::Before(Before::EarlierChosen(true)));
    (tablet.hear)(Event::Before(Before::EarlierStepped(TimePart::Day, -1)));
    // The usual text and the largest: their place among the settings.
    for (text, percent) in [(0, 100), (4, 200)] {
        (tablet.hear)(Event::Settings(Settings::TextChosen(text)));
        for (place, lang) in Lang::ALL.iter().enumerate() {
            (tablet.hear)(Event::Settings(Settings::LanguageChosen(place)));
            for size in [(1280, 800), (800, 1280)] {
                let way = if size.1 < size.0 { "lying" } else { "standing" };
                CANVAS.with(|canvas| {
                    canvas.resize(size.0, size.1);
                    let drawn = canvas.draw();
                    faults.extend(faults_on(&tablet.window, false, size));
                    golden.compare(&drawn, &format!("{way}-{percent}-{}.png", lang.tag()));
                });
            }
        }
    }
    assert_eq!(faults, Vec::<String>::new());
    golden.stand();
}

#[test]
fn an_answer_that_has_not_settled_is_not_lost_when_a_banner_is_touched() {
    let tablet = before_a_feed();
    told(&tablet, BabyDanger::Floppy);
    (tablet.hear)(Event::Before(Before::Left));
    let shell = tablet.shell.borrow();
    let journal = &shell.open().unwrap().visit.journal;
    let entries = journal.entries().iter();
    let asked = entries.filter(|it| matches!(it.what, What::LastDay(_)));
    assert_eq!(asked.count(), 1);
}
