//! The main job done on the window as a person does it who goes by what things are called: in both
//! languages, lying and standing. The desk reads the codes from the window's own pixels.
//!
//! That each step must be reachable by its name is common practice for assistive technology.

use feedside::app::bedside::SILENT_ASK_MS;
use feedside::app::clock::Clock;
use feedside::app::event::Event;
use feedside::app::route::Route;
use feedside::app::shell::Shell;
use feedside::desk::{Desk, Kept, Said, read};
use feedside::handover::TabletKey;
use feedside::record::{Label, What};
use feedside::store::Store;
use feedside::words::Lang;

use super::hand::Hand;
use super::tablet::{CANVAS, tablet_over};
use crate::store::Folder;

/// A ten-inch tablet lying and standing.
const SIZES: [(u32, u32); 2] = [(1280, 800), (800, 1280)];

/// How the tablet is held and read: the language, the size of the window, the text in per cent.
type Way = (Lang, (u32, u32), u16);

/// Every language and both ways of holding, and the largest text.
fn ways() -> Vec<Way> {
    let usual = Lang::ALL
        .iter()
        .flat_map(|lang| SIZES.map(|size| (*lang, size, 100)));
    usual
        .chain([(Lang::De, SIZES[0], 200), (Lang::De, SIZES[1], 200)])
        .collect()
}

/// Acts on a new tablet without a pair.
fn on_a_tablet((lang, size, percent): Way, act: impl FnOnce(&Hand<'_>)) {
    let tablet = tablet_over(Store::in_memory().unwrap(), size);
    (tablet.hear)(Event::Arrived);
    let hand = Hand::new(&tablet, Lang::En, size);
    hand.wait_ms(1_000);
    hand.touch(&hand.say("ward-settings"));
    hand.touch_in(&hand.say("settings-language"), lang.own_name());
    let hand = Hand::new(&tablet, lang, size);
    let text = hand.say_with(
        "settings-text-percent",
        &[("percent", i64::from(percent).into())],
    );
    hand.touch_in(&hand.say("settings-text"), &text);
    hand.touch(&hand.say("frame-back"));
    act(&hand);
}

/// Touches what may stand on another page of the bedside in large text.
fn touch_on(hand: &Hand<'_>, page: &str, label: &str) {
    let page = hand.say(page);
    if hand.sees(&page) {
        hand.touch(&page);
    }
    hand.touch(label);
}

/// Writes the specialist's sign and the desk's key in Settings.
fn sign_on(hand: &Hand<'_>, desk_key: &str) {
    hand.touch(&hand.say("ward-settings"));
    hand.write(&hand.say("settings-specialist"), "E. Hart");
    hand.touch(&hand.say("settings-keep"));
    hand.write(&hand.say("settings-desk-key"), desk_key);
    hand.touch(&hand.say("settings-desk-keep"));
    hand.touch(&hand.say("frame-back"));
}

/// Writes down a new pair, and begins a visit with it.
fn new_pair(hand: &Hand<'_>) {
    hand.touch(&hand.say("ward-new-pair"));
    hand.write(&hand.say("pair-form-bed"), "Bay 2, bed 5");
    hand.write(&hand.say("pair-form-initials"), "A. M.");
    // The tests' day is the day after.
    hand.write(&hand.say("pair-form-birth"), &born(hand));
    hand.write(&hand.say("pair-form-weight"), "3400");
    hand.write(&hand.say("pair-form-gestation"), "39+4");
    hand.touch_in(&hand.say("pair-form-sex"), &hand.say("sex-female"));
    hand.touch_in(&hand.say("pair-form-way"), &hand.say("birth-vaginal"));
    hand.touch_in(&hand.say("pair-form-reasons"), &hand.say("reason-pain"));
    hand.touch(&hand.say("pair-save"));
    assert_eq!(hand.route(), Route::Pair);
    hand.touch(&hand.say("pair-begin"));
    assert_eq!(hand.route(), Route::Before);
}

/// Two days before now, as it is typed.
fn born(hand: &Hand<'_>) -> String {
    let birth = hand.tablet.clock.now().wall.plus_ms(-48 * 3_600_000);
    birth.local().format("%Y-%m-%d %H:%M").to_string()
}

/// What is asked before the feed, and the feed's start.
fn before_feed(hand: &Hand<'_>) {
    for (id, touches) in [("before-feeds", 8), ("before-wet", 3), ("before-dirty", 2)] {
        for _ in 0..touches {
            hand.touch(&format!("{} +", hand.say(id)));
        }
    }
    hand.touch(&format!("{} −", hand.say("before-dirty")));
    for danger in ["before-baby-danger", "before-mother-danger"] {
        hand.touch_in(&hand.say(danger), &hand.say("before-none-of-these"));
    }
    hand.touch_in(&hand.say("before-jaundice"), &hand.say("jaundice-none"));
    hand.touch_in(&hand.say("before-weight"), &hand.say("before-naked"));
    hand.write(&hand.say("before-weight-grams"), "3250");
    hand.touch(&hand.say("before-weight-take"));
    hand.touch_in(&hand.say("before-nappy"), &hand.say("before-nappy-wet"));
    hand.touch(&hand.say("before-nappy-add"));
    hand.touch_in(&hand.say("before-side"), &hand.say("side-left"));
    hand.touch_in(&hand.say("before-hold"), &hand.say("hold-cradle"));
    hand.touch(&hand.say("before-baby-on"));
    assert_eq!(hand.route(), Route::Bedside);
}

/// Everything that is done at the bedside, each once.
fn at_the_bedside(hand: &Hand<'_>) {
    let act = |id| touch_on(hand, "bedside-page-pain", &hand.say(id));
    let pain = |score| {
        let key = format!("{} {score}", hand.say("bedside-pain-now"));
        touch_on(hand, "bedside-page-pain", &key);
    };
    let seen = hand.say("bedside-state-seen");
    let wide = format!("{}: {seen}", hand.say("sign-mouth-wide"));
    touch_on(hand, "bedside-page-attachment", &wide);
    let close = format!("{}: {seen}", hand.say("sign-close"));
    touch_on(hand, "bedside-page-position", &close);
    pain(6);
    for _ in 0..30 {
        hand.wait_ms(500);
        hand.touch(&hand.say("bedside-suck"));
        hand.wait_ms(500);
        hand.touch(&hand.say("bedside-suck-swallow"));
    }
    hand.touch(&hand.say("bedside-suck"));
    hand.touch(&hand.say("bedside-take-back"));
    hand.touch(&hand.say("bedside-swallow-only"));
    hand.touch(&hand.say("bedside-looked-away"));
    hand.wait_ms(9_000);
    hand.touch(&hand.say("bedside-watching-again"));
    act("bedside-try-change");
    hand.touch(&hand.say("adjustment-chin-first"));
    pain(2);
    act("bedside-change-hold");
    hand.touch(&hand.say("hold-underarm"));
    act("bedside-came-off");
    hand.wait_ms(5_000);
    act("bedside-back-on");
    // Called away: the feed runs on, and a touch leads back to it.
    hand.touch(&hand.say("frame-back"));
    assert_ne!(hand.route(), Route::Bedside);
    hand.touch(&hand.say_with("frame-running", &[("bed", "Bay 2, bed 5".into())]));
    assert_eq!(hand.route(), Route::Bedside);
    // Nobody tapped for a while: the quiet question.
    hand.wait_ms(SILENT_ASK_MS);
    hand.touch(&hand.say("bedside-question-resting"));
    act("bedside-end-feed");
    hand.touch(&hand.say("ended-by-baby"));
    assert_eq!(hand.route(), Route::LookingBack);
}

/// After the feed: what is told of it, the plan, and the signature.
fn after_feed(hand: &Hand<'_>) {
    hand.touch_in(
        &hand.say("looking-back-nipple"),
        &hand.say("nipple-after-rounded"),
    );
    hand.touch_in(
        &hand.say("looking-back-breast"),
        &hand.say("breast-after-softer"),
    );
    hand.touch_in(
        &hand.say("looking-back-baby"),
        &hand.say("baby-state-content"),
    );
    hand.touch(&format!("{} 3", hand.say("looking-back-pain-after")));
    let after = |shell: &Shell| shell.open().unwrap().folded.feeds[0].pains_after.len();
    assert_eq!(after(&hand.tablet.shell.borrow()), 1);
    hand.touch(&hand.say("looking-back-to-plan"));
    assert_eq!(hand.route(), Route::Plan);
    hand.write(&hand.say("plan-own-words"), "Chin in first.");
    hand.touch(&hand.say("plan-add"));
    let hours = hand.say_with("plan-in-hours", &[("hours", 8_u32.into())]);
    hand.touch_in(&hand.say("plan-next-look"), &hours);
    hand.write(&hand.say("plan-note"), "Slept well.");
    hand.touch(&hand.say("plan-add-note"));
    hand.touch(&hand.say("plan-sheet"));
    hand.touch(&hand.say("frame-back"));
    hand.touch(&hand.say_with("plan-sign", &[("by", "E. Hart".into())]));
    assert_eq!(hand.route(), Route::Handover);
}

/// The desk reads the window, code after code, until it has a whole record.
fn read_by(hand: &Hand<'_>, desk: &mut Desk) -> Kept {
    let now = hand.tablet.clock.now().wall;
    loop {
        let picture = image::DynamicImage::from(CANVAS.with(|canvas| canvas.draw()));
        for text in read::texts_in(&picture) {
            for said in desk.take(&text, now) {
                if let Said::Kept(it) = said {
                    return it;
                }
            }
        }
        hand.touch(&hand.say("handover-next"));
    }
}

/// The desk reads the window; the receipt that it shows is typed.
fn hand_over(hand: &Hand<'_>, desk: &mut Desk) {
    let kept = read_by(hand, desk);
    for figure in kept.head.receipt.chars().filter(char::is_ascii_digit) {
        hand.touch(&figure.to_string());
    }
    hand.touch(&hand.say("handover-take"));
    let shell = hand.tablet.shell.borrow();
    assert!(shell.open().unwrap().folded.receipt.is_some());
}

#[test]
fn the_whole_job_can_be_done_by_name() {
    for way in ways() {
        on_a_tablet(way, |hand| {
            let folder = Folder::new("by-label");
            let mut desk = Desk::open(&folder.file("desk")).unwrap();
            let now = hand.tablet.clock.now().wall;
            let key = desk.new_key([9; 32], now).unwrap();
            let tablet = TabletKey::from_random([3; 32]).public();
            desk.enrol(tablet, &Label::new("Tablet 1").unwrap(), now)
                .unwrap();
            sign_on(hand, &key.to_typed());
            new_pair(hand);
            before_feed(hand);
            at_the_bedside(hand);
            after_feed(hand);
            let is_suck = |it: &What| matches!(it, What::Suck | What::SuckSwallow);
            let handed_sucks = |desk: &Desk, number| {
                let handed = desk.inbox().record(number).unwrap().handed;
                let entries = handed.visit.journal.entries().iter();
                entries.filter(|it| is_suck(&it.what)).count()
            };
            // Every tap where somebody wants them; then the shorter record, which is handed over.
            hand.touch(&hand.say("handover-with-taps"));
            let with_taps = read_by(hand, &mut desk).head.number;
            assert_eq!(handed_sucks(&desk, with_taps), 61);
            hand.touch(&hand.say("handover-record"));
            hand_over(hand, &mut desk);
            assert_eq!(handed_sucks(&desk, with_taps + 1), 0);
            assert_eq!(noted(hand, is_suck), 61);
        });
    }
}

/// How many entries of the open visit are such.
fn noted(hand: &Hand<'_>, such: impl Fn(&What) -> bool) -> usize {
    let shell = hand.tablet.shell.borrow();
    let entries = shell.open().unwrap().visit.journal.entries();
    entries.iter().filter(|it| such(&it.what)).count()
}

#[test]
fn a_danger_sign_is_acknowledged_by_name_before_the_visit_is_signed_and_then_amended() {
    for way in ways() {
        on_a_tablet(way, |hand| {
            sign_on(hand, "");
            new_pair(hand);
            let dangers = hand.say("before-baby-danger");
            hand.touch_in(&dangers, &hand.say("baby-danger-floppy"));
            hand.touch_in(&hand.say("before-side"), &hand.say("side-right"));
            hand.touch_in(&hand.say("before-hold"), &hand.say("hold-laid-back"));
            hand.touch(&hand.say("before-baby-on"));
            hand.wait_ms(600_000);
            touch_on(hand, "bedside-page-pain", &hand.say("bedside-end-feed"));
            hand.touch(&hand.say("ended-by-mother"));
            for id in ["zoom-in", "earlier", "later", "zoom-out"] {
                hand.touch(&hand.say(&format!("looking-back-{id}")));
            }
            hand.touch(&hand.say("looking-back-another-feed"));
            assert_eq!(hand.route(), Route::Before);
            hand.touch(&hand.say("frame-back"));
            hand.touch(&hand.say("looking-back-to-plan"));
            // Not before somebody has answered for it.
            let by = [("by", "E. Hart".into())];
            hand.touch(&hand.say_with("plan-sign", &by));
            assert_eq!(hand.route(), Route::Plan);
            hand.touch(&hand.say("frame-back"));
            assert_eq!(hand.route(), Route::LookingBack);
            hand.touch(&hand.say_with("looking-back-acknowledge", &by));
            hand.touch(&hand.say("looking-back-to-plan"));
            hand.touch(&hand.say_with("plan-sign", &by));
            assert_eq!(hand.route(), Route::Handover);
            hand.touch(&hand.say("handover-amend"));
            assert_eq!(hand.route(), Route::LookingBack);
            assert_eq!(noted(hand, |it| matches!(it, What::Signed { .. })), 0);
        });
    }
}

#[test]
fn a_visit_in_which_the_baby_does_not_feed_is_answered_for_signed_and_shown_as_codes() {
    for way in ways() {
        on_a_tablet(way, |hand| {
            sign_on(hand, "");
            new_pair(hand);
            let dangers = hand.say("before-baby-danger");
            hand.touch_in(&dangers, &hand.say("baby-danger-not-feeding"));
            hand.touch(&hand.say("before-findings"));
            assert_eq!(hand.route(), Route::LookingBack);
            let by = [("by", "E. Hart".into())];
            hand.touch(&hand.say_with("looking-back-acknowledge", &by));
            hand.touch(&hand.say("looking-back-to-plan"));
            hand.touch(&hand.say_with("plan-sign", &by));
            assert_eq!(hand.route(), Route::Handover);
            assert_eq!(noted(hand, |it| matches!(it, What::FeedStarted { .. })), 0);
        });
    }
}

#[test]
fn what_was_entered_is_taken_back_by_name_while_looking_back() {
    for way in ways() {
        on_a_tablet(way, |hand| {
            sign_on(hand, "");
            new_pair(hand);
            hand.write(&hand.say("before-weight-grams"), "3250");
            hand.touch(&hand.say("before-weight-take"));
            hand.touch(&hand.say("before-findings"));
            hand.touch(&hand.say("looking-back-entries-open"));
            let weight = hand.say_with("entry-weighed", &[("grams", 3_250_i64.into())]);
            let strike = hand.say("looking-back-entry-strike");
            hand.touch(&format!("{strike}: {weight}"));
            assert_eq!(noted(hand, |it| matches!(it, What::Struck { .. })), 1);
            let shell = hand.tablet.shell.borrow();
            assert_eq!(shell.open().unwrap().folded.weighings, []);
        });
    }
}

#[test]
fn a_slip_in_a_weight_is_answered_by_name_on_the_pairs_screen() {
    for way in ways() {
        on_a_tablet(way, |hand| {
            sign_on(hand, "");
            new_pair(hand);
            // A digit wrong; it is kept when it is said twice.
            hand.write(&hand.say("before-weight-grams"), "2250");
            hand.touch(&hand.say("before-weight-take"));
            hand.touch(&hand.say("before-weight-take"));
            hand.touch(&hand.say("frame-back"));
            assert_eq!(hand.route(), Route::Ward);
            hand.touch(&hand.starting_with("Bay 2, bed 5"));
            assert_eq!(hand.route(), Route::Pair);
            hand.touch(&hand.say("pair-it-is-right"));
            assert!(!hand.sees(&hand.say("pair-it-is-right")));
            let said = |it: &What| matches!(it, What::FindingAcknowledged { .. });
            assert_eq!(noted(hand, said), 1);
            hand.touch_in(&hand.say("pair-weights"), &hand.say("pair-table"));
            hand.touch_in(&hand.say("pair-weights"), &hand.say("pair-drawn"));
            hand.touch(&hand.say("pair-edit"));
            hand.touch(&hand.say("frame-back"));
            hand.touch(&hand.say("pair-twin"));
            hand.touch(&hand.say("frame-back"));
            hand.touch(&hand.say("pair-go-on"));
            assert_eq!(hand.route(), Route::Before);
        });
    }
}

#[test]
fn practice_can_be_done_by_name() {
    for way in ways() {
        on_a_tablet(way, |hand| {
            hand.touch(&hand.say("practice-title"));
            hand.touch_in(&hand.say("practice-baby"), &hand.say("baby-sleepy"));
            hand.touch(&hand.say("practice-start"));
            for _ in 0..5 {
                hand.wait_ms(900);
                hand.touch(&hand.say("bedside-suck"));
                hand.wait_ms(900);
                hand.touch(&hand.say("bedside-suck-swallow"));
            }
            hand.touch(&hand.say("practice-stop"));
            hand.touch(&hand.say("practice-second"));
            hand.touch(&hand.say("practice-stop"));
            hand.touch(&hand.say("practice-another"));
            hand.touch(&hand.say("frame-back"));
            assert_eq!(hand.route(), Route::Ward);
        });
    }
}
