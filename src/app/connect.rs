//! Joins the window's callbacks to the shell: each becomes one event, nothing more.

use std::cell::RefCell;
use std::rc::Rc;
use std::time::Duration;

use slint::{ComponentHandle, Global, Timer};

use super::event::Event;
use super::front::Hears;
use super::{
    bedside, before, handover, looking_back, month, pair, pin, plan, practice, settings, ui, ward,
};
use crate::record::{Side, Sign, TapWhat};

/// Something that hears events.
pub type Hear = Rc<dyn Fn(Event)>;

/// A hearer over a shared shell or front, which also keeps the ticking as fast as the screen that is seen
/// needs it, and no faster. A callback that comes while another is heard cannot happen: the window
/// calls only from its event loop.
pub fn hearer<H: Hears + 'static>(shell: &Rc<RefCell<H>>, ticking: Option<Rc<Timer>>) -> Hear {
    let shell = Rc::downgrade(shell);
    Rc::new(move |event| {
        let Some(shell) = shell.upgrade() else {
            return;
        };
        let Ok(mut shell) = shell.try_borrow_mut() else {
            return;
        };
        shell.hear(event);
        let wanted = Duration::from_millis(shell.tick_ms());
        if let Some(timer) = &ticking
            && timer.interval() != wanted
        {
            timer.set_interval(wanted);
        }
    })
}

/// Connects every screen.
pub fn connect(window: &ui::AppWindow, hear: &Hear) {
    frame(window, hear);
    ward_and_pair(window, hear);
    before_feed(window, hear);
    at_the_bedside(window, hear);
    after_feed(window, hear);
    hand_over(window, hear);
    practising(window, hear);
    preferences(window, hear);
    at_the_lock(window, hear);
    last_days(window, hear);
}

/// A place in a list as the window gives it.
fn place(index: i32) -> usize {
    usize::try_from(index).unwrap_or(usize::MAX)
}

macro_rules! on {
    ($hear:ident, $adapter:ident . $on:ident ( $($arg:ident),* ) => $event:expr) => {{
        let hear = Rc::clone($hear);
        $adapter.$on(move |$($arg),*| hear($event));
    }};
}

fn frame(window: &ui::AppWindow, hear: &Hear) {
    let it = ui::FrameAdapter::get(window);
    on!(hear, it.on_to_running() => Event::ToRunning);
    on!(hear, it.on_to_review() => Event::ToReview);
    on!(hear, it.on_trouble_seen() => Event::TroubleSeen);
    on!(hear, it.on_back() => Event::Back);
}

fn ward_and_pair(window: &ui::AppWindow, hear: &Hear) {
    let it = ui::WardAdapter::get(window);
    on!(hear, it.on_open(index) => Event::Ward(ward::Event::Opened(place(index))));
    on!(hear, it.on_new_pair() => Event::Ward(ward::Event::NewWanted));
    on!(hear, it.on_practice() => Event::Ward(ward::Event::PracticeWanted));
    on!(hear, it.on_settings() => Event::Ward(ward::Event::SettingsWanted));
    on!(hear, it.on_month() => Event::Ward(ward::Event::MonthWanted));
    on!(hear, it.on_demo() => Event::Ward(ward::Event::DemoWanted));
    let it = ui::PairAdapter::get(window);
    on!(hear, it.on_back() => Event::Pair(pair::Event::BackWanted));
    on!(hear, it.on_begin() => Event::Pair(pair::Event::BeginWanted));
    on!(hear, it.on_edit() => Event::Pair(pair::Event::EditWanted));
    on!(hear, it.on_twin() => Event::Pair(pair::Event::TwinWanted));
    on!(hear, it.on_show_table(table) => Event::Pair(pair::Event::TableWanted(table)));
    on!(hear, it.on_said_right(index) => Event::Pair(pair::Event::SaidRight(place(index))));
    on!(hear, it.on_correct(index) => Event::Pair(pair::Event::CorrectWanted(place(index))));
    on!(hear, it.on_open_visit(index) => Event::Pair(pair::Event::VisitOpened(place(index))));
    {
        // A choice or the key "keep" comes with the fields as they stand, or they would be lost.
        let (hear, weak) = (Rc::clone(hear), window.as_weak());
        it.on_choose(move |group, index| {
            typed(&weak, &hear);
            let group = match group {
                0 => pair::Group::Sex,
                1 => pair::Group::Way,
                2 => pair::Group::Reasons,
                3 => pair::Group::Risks,
                4 => pair::Group::Language,
                _ => pair::Group::Babies,
            };
            hear(Event::Pair(pair::Event::Chose(group, place(index))));
        });
    }
    let (hear, weak) = (Rc::clone(hear), window.as_weak());
    it.on_save(move || {
        typed(&weak, &hear);
        hear(Event::Pair(pair::Event::SaveWanted));
    });
}

/// Tells the form's fields as they stand.
fn typed(window: &slint::Weak<ui::AppWindow>, hear: &Hear) {
    let Some(window) = window.upgrade() else {
        return;
    };
    let it = ui::PairAdapter::get(&window);
    let fields = [
        (pair::Field::Bed, it.get_bed()),
        (pair::Field::Initials, it.get_initials()),
        (pair::Field::Birth, it.get_birth()),
        (pair::Field::Weight, it.get_weight()),
        (pair::Field::Gestation, it.get_gestation()),
        (pair::Field::MotherNumber, it.get_mother_number()),
        (pair::Field::BabyNumber, it.get_baby_number()),
    ];
    for (field, text) in fields {
        hear(Event::Pair(pair::Event::Typed(field, text.into())));
    }
}

fn before_feed(window: &ui::AppWindow, hear: &Hear) {
    let it = ui::BeforeAdapter::get(window);
    let count = |index| before::Count::ALL.get(place(index)).copied();
    let question = |index| before::Question::ALL.get(place(index)).copied();
    on!(hear, it.on_back() => Event::Before(before::Event::BackWanted));
    on!(hear, it.on_findings() => Event::Before(before::Event::FindingsWanted));
    on!(hear, it.on_start() => Event::Before(before::Event::Started));
    {
        let hear = Rc::clone(hear);
        it.on_count(move |index, by| {
            if let Some(count) = count(index) {
                hear(Event::Before(before::Event::Counted(count, by)));
            }
        });
    }
    {
        let hear = Rc::clone(hear);
        it.on_clear_count(move |index| {
            if let Some(count) = count(index) {
                hear(Event::Before(before::Event::CountCleared(count)));
            }
        });
    }
    {
        let hear = Rc::clone(hear);
        it.on_step_weight_earlier(move |index, by| {
            if let Some(part) = before::TimePart::ALL.get(place(index)).copied() {
                hear(Event::Before(before::Event::EarlierStepped(part, by)));
            }
        });
    }
    on!(hear, it.on_choose_weight_when(index) => Event::Before(before::Event::EarlierChosen(index == 1)));
    {
        let hear = Rc::clone(hear);
        it.on_choose(move |index, choice| {
            if let Some(question) = question(index) {
                hear(Event::Before(before::Event::Chose(question, place(choice))));
            }
        });
    }
    {
        // Breast and nipple of each side in turn.
        let hear = Rc::clone(hear);
        it.on_choose_breast(move |index, choice| {
            let side = Side::ALL.get(place(index) / 2).copied();
            if let Some(side) = side {
                hear(Event::Before(if index % 2 == 0 {
                    before::Event::BreastTold(side, place(choice))
                } else {
                    before::Event::NippleTold(side, place(choice))
                }));
            }
        });
    }
    on!(hear, it.on_choose_weight_step(index) => Event::Before(before::Event::StepChosen(place(index))));
    on!(hear, it.on_choose_weight_moment(index) => Event::Before(before::Event::MomentChosen(place(index))));
    on!(hear, it.on_said_right(index) => Event::Before(before::Event::SaidRight(place(index))));
    on!(hear, it.on_correct(index) => Event::Before(before::Event::CorrectWanted(place(index))));
    on!(hear, it.on_touch_nappy(index) => Event::Before(before::Event::NappyTouched(match index {
        0 => before::NappyKey::Wet,
        1 => before::NappyKey::Heavy,
        _ => before::NappyKey::Urates,
    })));
    on!(hear, it.on_touch_stool(index) => Event::Before(before::Event::NappyTouched(
        before::NappyKey::Stool(place(index))
    )));
    on!(hear, it.on_add_nappy() => Event::Before(before::Event::NappyAdded));
    on!(hear, it.on_choose_weight_how(index) => Event::Before(before::Event::Clothed(index == 1)));
    {
        let (hear, weak) = (Rc::clone(hear), window.as_weak());
        it.on_take_weight(move || {
            if let Some(window) = weak.upgrade() {
                let text = ui::BeforeAdapter::get(&window).get_weight();
                hear(Event::Before(before::Event::WeightTaken(text.into())));
            }
        });
    }
    on!(hear, it.on_choose_side(index) => Event::Before(before::Event::SideChosen(
        Side::ALL.get(place(index)).copied().unwrap_or(Side::Left)
    )));
    on!(hear, it.on_choose_hold(index) => Event::Before(before::Event::HoldChosen(place(index))));
}

fn at_the_bedside(window: &ui::AppWindow, hear: &Hear) {
    use bedside::{Act, PadKind};
    let it = ui::BedsideAdapter::get(window);
    let sign = |index| Sign::ALL.get(place(index)).copied();
    on!(hear, it.on_back() => Event::Bedside(bedside::Event::BackWanted));
    on!(hear, it.on_tapped(kind) => Event::Bedside(bedside::Event::Tapped(match kind {
        0 => PadKind::Suck,
        1 => PadKind::SuckSwallow,
        _ => PadKind::Swallow,
    })));
    {
        let hear = Rc::clone(hear);
        it.on_set_sign(move |index, state| {
            if let Some(sign) = sign(index) {
                hear(Event::Bedside(bedside::Event::SignSet(sign, state)));
            }
        });
    }
    {
        let hear = Rc::clone(hear);
        it.on_help(move |index| {
            if let Some(sign) = sign(index) {
                hear(Event::Bedside(bedside::Event::HelpWanted(sign)));
            }
        });
    }
    on!(hear, it.on_told_pain(pain) => Event::Bedside(bedside::Event::PainTold(pain)));
    on!(hear, it.on_act(act) => Event::Bedside(bedside::Event::Acted(match act {
        0 => Act::OtherBreast,
        1 => Act::OffOn,
        2 => Act::ChangeHold,
        3 => Act::TryChange,
        _ => Act::EndFeed,
    })));
    on!(hear, it.on_look_away() => Event::Bedside(bedside::Event::LookedAway));
    on!(hear, it.on_take_back() => Event::Bedside(bedside::Event::TakenBack));
    on!(hear, it.on_answered(resting) => Event::Bedside(bedside::Event::Answered(resting)));
    on!(hear, it.on_chose(index) => Event::Bedside(bedside::Event::Chose(place(index))));
    on!(hear, it.on_close_sheet() => Event::Bedside(bedside::Event::SheetClosed));
}

fn after_feed(window: &ui::AppWindow, hear: &Hear) {
    let it = ui::LookingBackAdapter::get(window);
    on!(hear, it.on_back() => Event::LookingBack(looking_back::Event::BackWanted));
    on!(hear, it.on_choose_feed(index) => Event::LookingBack(looking_back::Event::FeedChosen(place(index))));
    on!(hear, it.on_choose_after(index, choice) => Event::LookingBack(looking_back::Event::AfterTold(
        looking_back::After::ALL.get(place(index)).copied().unwrap_or(looking_back::After::Baby),
        place(choice),
    )));
    on!(hear, it.on_tell_pain(pain) => Event::LookingBack(looking_back::Event::PainTold(pain)));
    on!(hear, it.on_pick(at_s) => Event::LookingBack(looking_back::Event::Picked(at_s.into())));
    on!(hear, it.on_move_boundary(index, at_s) => Event::LookingBack(
        looking_back::Event::BoundaryPut(place(index), at_s.into())
    ));
    on!(hear, it.on_zoom(factor, about_s) => Event::LookingBack(
        looking_back::Event::Zoomed(factor.into(), about_s.into())
    ));
    on!(hear, it.on_pan(share) => Event::LookingBack(looking_back::Event::Panned(share.into())));
    on!(hear, it.on_strike() => Event::LookingBack(looking_back::Event::StrikeWanted));
    on!(hear, it.on_add(what) => Event::LookingBack(looking_back::Event::AddWanted(
        if what == 0 { TapWhat::Suck } else { TapWhat::SuckSwallow }
    )));
    on!(hear, it.on_acknowledge(index) => Event::LookingBack(looking_back::Event::Acknowledged(place(index))));
    on!(hear, it.on_want_entries(wanted) => Event::LookingBack(looking_back::Event::EntriesWanted(wanted)));
    on!(hear, it.on_strike_entry(index) => Event::LookingBack(looking_back::Event::EntryStruck(place(index))));
    on!(hear, it.on_watch_more() => Event::LookingBack(looking_back::Event::AnotherFeed));
    on!(hear, it.on_go_on() => Event::LookingBack(looking_back::Event::PlanWanted));
    let it = ui::PlanAdapter::get(window);
    on!(hear, it.on_back() => Event::Plan(plan::Event::BackWanted));
    on!(hear, it.on_choose(index) => Event::Plan(plan::Event::Chose(place(index))));
    on!(hear, it.on_choose_call(index) => Event::Plan(plan::Event::CallChosen(place(index))));
    on!(hear, it.on_weigh() => Event::Plan(plan::Event::WeighWanted));
    on!(hear, it.on_show_sheet(shown) => Event::Plan(plan::Event::SheetWanted(shown)));
    on!(hear, it.on_choose_next_look(index) => Event::Plan(plan::Event::NextLookChosen(place(index))));
    on!(hear, it.on_sign() => Event::Plan(plan::Event::SignWanted));
    {
        let (hear, weak) = (Rc::clone(hear), window.as_weak());
        it.on_add_note(move || {
            if let Some(window) = weak.upgrade() {
                let it = ui::PlanAdapter::get(&window);
                let text = it.get_note();
                it.set_note("".into());
                hear(Event::Plan(plan::Event::NoteAdded(text.into())));
            }
        });
    }
    let (hear, weak) = (Rc::clone(hear), window.as_weak());
    it.on_add_words(move || {
        if let Some(window) = weak.upgrade() {
            let it = ui::PlanAdapter::get(&window);
            let text = it.get_item_words();
            it.set_item_words("".into());
            hear(Event::Plan(plan::Event::WordsAdded(text.into())));
        }
    });
}

fn hand_over(window: &ui::AppWindow, hear: &Hear) {
    let it = ui::HandoverAdapter::get(window);
    on!(hear, it.on_back() => Event::Handover(handover::Event::BackWanted));
    on!(hear, it.on_previous() => Event::Handover(handover::Event::Previous));
    on!(hear, it.on_next() => Event::Handover(handover::Event::Next));
    on!(hear, it.on_choose_kind(index) => Event::Handover(handover::Event::KindChosen(
        handover::Kind::ALL.get(place(index)).copied().unwrap_or_default()
    )));
    on!(hear, it.on_key(key) => Event::Handover(handover::Event::Keyed(key.into())));
    on!(hear, it.on_amend() => Event::Handover(handover::Event::AmendWanted));
}

fn practising(window: &ui::AppWindow, hear: &Hear) {
    use practice::Event as It;
    let it = ui::PracticeAdapter::get(window);
    on!(hear, it.on_back() => Event::Practice(It::BackWanted));
    on!(hear, it.on_start() => Event::Practice(It::StartWanted));
    on!(hear, it.on_second() => Event::Practice(It::SecondWanted));
    on!(hear, it.on_another() => Event::Practice(It::AnotherWanted));
    on!(hear, it.on_stop() => Event::Practice(It::StopWanted));
    on!(hear, it.on_choose(group, index) => Event::Practice(match group {
        0 => It::BabyChosen(place(index)),
        1 => It::SpeedChosen(place(index)),
        _ => It::MinutesChosen(place(index)),
    }));
    on!(hear, it.on_tapped(pad) => Event::Practice(It::Tapped(match pad {
        0 => bedside::PadKind::Suck,
        1 => bedside::PadKind::SuckSwallow,
        _ => bedside::PadKind::Swallow,
    })));
}

fn preferences(window: &ui::AppWindow, hear: &Hear) {
    use settings::Event as It;
    let it = ui::SettingsAdapter::get(window);
    on!(hear, it.on_back() => Event::Settings(It::BackWanted));
    on!(hear, it.on_set_pin() => Event::Settings(It::PinWanted));
    on!(hear, it.on_lock() => Event::Settings(It::LockWanted));
    on!(hear, it.on_keep_desk_file() => Event::Settings(It::DeskFileKept));
    on!(hear, it.on_choose(group, index) => Event::Settings(match group {
        0 => It::LanguageChosen(place(index)),
        1 => It::NightChosen(index == 1),
        2 => It::LeftHandedChosen(index == 1),
        4 => It::TextChosen(place(index)),
        5 => It::MotionChosen(index == 0),
        6 => It::LockChosen(place(index)),
        7 => It::StayChosen(place(index)),
        _ => It::CapChosen(place(index)),
    }));
    {
        let (hear, weak) = (Rc::clone(hear), window.as_weak());
        it.on_save_specialist(move || {
            if let Some(window) = weak.upgrade() {
                let text = ui::SettingsAdapter::get(&window).get_specialist();
                hear(Event::Settings(It::SpecialistTyped(text.into())));
            }
        });
    }
    let (hear, weak) = (Rc::clone(hear), window.as_weak());
    it.on_save_desk_key(move || {
        if let Some(window) = weak.upgrade() {
            let text = ui::SettingsAdapter::get(&window).get_desk_key();
            hear(Event::Settings(It::DeskKeyTyped(text.into())));
        }
    });
}

fn last_days(window: &ui::AppWindow, hear: &Hear) {
    let it = ui::MonthAdapter::get(window);
    on!(hear, it.on_back() => Event::Month(month::Event::BackWanted));
}

fn at_the_lock(window: &ui::AppWindow, hear: &Hear) {
    use pin::Event as It;
    let it = ui::PinAdapter::get(window);
    on!(hear, it.on_back() => Event::Pin(It::BackWanted));
    let hear = Rc::clone(hear);
    it.on_key(move |key| match key.as_str() {
        "ok" => hear(Event::Pin(It::Done)),
        "⌫" => hear(Event::Pin(It::Deleted)),
        digit => {
            if let Ok(digit) = digit.parse() {
                hear(Event::Pin(It::Digit(digit)));
            }
        }
    });
}
