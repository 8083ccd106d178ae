//! The story of the rehearsal from first touch to receipt, in the order of the real job.

use std::fs;
use std::path::Path;

use serde_json::Value;

use crate::app::around::Around;
use crate::app::bedside::PadKind;
use crate::app::clock::Clock;
use crate::app::event::Event;
use crate::app::handover::pack;
use crate::app::picture::Canvas;
use crate::app::preferences::Preferences;
use crate::app::{
    before, handover, looking_back, month, pair, pin, plan, practice, settings, ward as ward_screen,
};
use crate::desk::{As, Desk, Said, read};
use crate::findings::Policy;
use crate::handover::qr::QUIET_MODULES;
use crate::handover::{Code, DeskKeyPair};
use crate::practice::{Baby, HandLevel, Simulated, simulate, truth_json};
use crate::record::{Side, WallTime};
use crate::report::codes::Codes;
use crate::report::{Facts, pdf, sheet, visit_json};
use crate::rhythm::write_taps;
use crate::store::vault::RescueCode;
use crate::words::{Lang, Words};

use super::RehearseError;
use super::album::Album;
use super::bedside::watch;
use super::eye::{Eye, look};
use super::folder;
use super::timings;
use super::ward::{Tablet, set_up};

/// Length of the simulated feed, in minutes.
const FEED_MIN: u32 = 14;
/// Pixels of a module in the written pictures of codes.
const MODULE_PX: usize = 4;

/// Runs the rehearsal into a folder; gives the story in a dozen lines.
///
/// # Errors
/// The first step that does not come out as it has to.
pub fn run(out: &Path, seed: u64, measure: bool) -> Result<String, RehearseError> {
    folder::make_ready(out)?;
    let mut album = Album::new(Canvas::set_up()?, out.join("screens"));
    let Walked {
        mut tablet,
        mut desk,
        told: mut story,
    } = through(out, seed, &mut album)?;
    let mut tell = |line: String| {
        story.push_str(&line);
        story.push('\n');
    };
    tell(format!("Took {} pictures of the screens.", album.taken));
    if measure {
        let told = timings::measure(&mut tablet, &mut desk, &album, out)?;
        write_json(&out.join("timings.json"), &told)?;
        tell("Measured the figures: timings.json.".to_owned());
    }
    tell(format!("Everything lies in {}.", out.display()));
    Ok(story)
}

/// A rehearsal that came through.
pub struct Walked {
    /// The tablet as it was left.
    pub tablet: Tablet,
    /// The desk as it was left.
    pub desk: Desk,
    /// The story, a line for each step.
    pub told: String,
}

/// Walks through the whole job with an eye on every screen. The window system must have been set
/// up before.
///
/// # Errors
/// The first step that does not come out as it has to, or the eye's own.
pub fn walk(out: &Path, seed: u64, eye: &mut dyn Eye) -> Result<Walked, RehearseError> {
    folder::make_ready(out)?;
    through(out, seed, eye)
}

/// Walks through the whole job in a folder that is ready.
fn through(out: &Path, seed: u64, eye: &mut dyn Eye) -> Result<Walked, RehearseError> {
    let (mut tablet, mut desk) = set_up(&out.join("desk"), seed)?;
    let mut told = String::new();
    let mut tell = |line: String| {
        told.push_str(&line);
        told.push('\n');
    };

    tell(open_pair(&mut tablet, eye)?);
    tell(before_feed(&mut tablet, eye)?);
    let feed = simulate(Baby::FirstDays, HandLevel::Careful.hand(), seed, FEED_MIN);
    write_feed(out, &feed)?;
    let tapped = watch(&mut tablet, &feed.taps, eye)?;
    tell(format!(
        "Watched a simulated feed of {FEED_MIN} minutes (seed {seed}): {tapped} taps, {} of the baby's sucks.",
        feed.truth.sucks.len()
    ));
    tell(look_back(&mut tablet, eye)?);
    tell(agree(&mut tablet, eye)?);
    tell(show_codes(&mut tablet, eye, out)?);
    let wall = now(&tablet);
    let (receipt, number) = desk_reads(&mut desk, out, wall)?;
    tell(format!(
        "The desk read the pictures and keeps record {number}: receipt {receipt}."
    ));
    tell(type_receipt(&mut tablet, &receipt, out)?);
    tell(export(&desk, number, out)?);
    write_visit(&tablet, out)?;
    practise(&mut tablet, eye)?;
    month_screen(&mut tablet, eye)?;
    settings_screen(&mut tablet, eye)?;
    Ok(Walked { tablet, desk, told })
}

fn write(file: &Path, bytes: impl AsRef<[u8]>) -> Result<(), RehearseError> {
    fs::write(file, bytes).map_err(|error| RehearseError::file(file, error))
}

fn write_json(file: &Path, value: &Value) -> Result<(), RehearseError> {
    write(file, format!("{value:#}\n"))
}

fn now(tablet: &Tablet) -> WallTime {
    tablet.clock.now().wall
}

/// Checks that a step came out as it has to.
fn hold(holds: bool, otherwise: &'static str) -> Result<(), RehearseError> {
    if holds {
        Ok(())
    } else {
        Err(RehearseError::Step(otherwise))
    }
}

fn open_pair(tablet: &mut Tablet, eye: &mut dyn Eye) -> Result<String, RehearseError> {
    tablet.hear(Event::Arrived);
    tablet.hear(Event::Ward(ward_screen::Event::DemoWanted));
    look(tablet, eye)?;
    // The first on the list: marked for a doctor.
    tablet.hear(Event::Ward(ward_screen::Event::Opened(0)));
    look(tablet, eye)?;
    tablet.hear(Event::Pair(pair::Event::TableWanted(true)));
    eye.look(tablet, "pair-table")?;
    tablet.hear(Event::Pair(pair::Event::TableWanted(false)));
    tablet.hear(Event::Pair(pair::Event::EditWanted));
    eye.look(tablet, "pair-form")?;
    tablet.hear(Event::Pair(pair::Event::BackWanted));
    tablet.hear(Event::Pair(pair::Event::BeginWanted));
    let bed = tablet
        .shell
        .open()
        .map(|open| open.pair.bed.as_str().to_owned())
        .ok_or(RehearseError::Step("no visit could be begun"))?;
    Ok(format!(
        "Filled the ward with invented pairs and began a visit at {bed}."
    ))
}

fn before_feed(tablet: &mut Tablet, eye: &mut dyn Eye) -> Result<String, RehearseError> {
    use before::{Count, Event as Before, Question};
    tablet.clock.forward_ms(60_000);
    let mut hear = |event| tablet.hear(Event::Before(event));
    for (count, touches) in [
        (Count::Feeds, 8),
        (Count::Wet, 4),
        (Count::Dirty, 3),
        (Count::HoursSinceWet, 4),
        (Count::Temperature, 2),
    ] {
        for _ in 0..touches {
            hear(Before::Counted(count, 1));
        }
    }
    // "None of these" stands past the last danger sign.
    hear(Before::Chose(Question::BabyDanger, usize::MAX));
    hear(Before::Chose(Question::MotherDanger, usize::MAX));
    hear(Before::Chose(Question::Stool, 1));
    hear(Before::Chose(Question::Urates, 1));
    hear(Before::Chose(Question::Sleepy, 1));
    hear(Before::Chose(Question::Jaundice, 0));
    hear(Before::BreastTold(Side::Left, 1));
    hear(Before::NippleTold(Side::Left, 3));
    hear(Before::StepChosen(2));
    // A slip of a digit, kept all the same: it is asked about.
    hear(Before::WeightTaken("2255".to_owned()));
    hear(Before::WeightTaken("2255".to_owned()));
    hear(Before::NappyTouched(before::NappyKey::Wet));
    hear(Before::NappyTouched(before::NappyKey::Stool(1)));
    hear(Before::SideChosen(Side::Left));
    hear(Before::HoldChosen(1));
    look(tablet, eye)?;
    let mut hear = |event| tablet.hear(Event::Before(event));
    hear(Before::NappyAdded);
    hear(Before::CorrectWanted(0));
    hear(Before::WeightTaken("3255".to_owned()));
    tablet.clock.forward_ms(120_000);
    tablet.hear(Event::Before(Before::Started));
    hold(
        tablet
            .shell
            .open()
            .is_some_and(|open| open.folded.running().is_some()),
        "the feed did not start",
    )?;
    Ok(
        "Asked about the last 24 hours, weighed, and the baby went on at the left breast."
            .to_owned(),
    )
}

fn write_feed(out: &Path, feed: &Simulated) -> Result<(), RehearseError> {
    let mut csv = Vec::new();
    let file = out.join("taps.csv");
    write_taps(&feed.taps, &mut csv).map_err(|error| RehearseError::file(&file, error))?;
    write(&file, csv)?;
    write_json(&out.join("truth.json"), &truth_json(&feed.truth))
}

fn look_back(tablet: &mut Tablet, eye: &mut dyn Eye) -> Result<String, RehearseError> {
    use looking_back::{After, Event as Back};
    tablet.clock.forward_ms(30_000);
    for (after, choice) in [(After::Nipple, 0), (After::Breast, 0), (After::Baby, 0)] {
        tablet.hear(Event::LookingBack(Back::AfterTold(after, choice)));
    }
    tablet.hear(Event::LookingBack(Back::PainTold(0)));
    look(tablet, eye)?;
    let open = tablet
        .shell
        .open()
        .ok_or(RehearseError::Step("the visit was lost"))?;
    let judged = open.judged(&Policy::built_in(), now(tablet));
    let to_acknowledge = judged.findings.len();
    let told = format!(
        "Looked back: {} findings, {} rules could not be judged for want of facts.",
        judged.findings.len(),
        judged.unjudged.len()
    );
    // Those that ask for it are acknowledged, as the real screen would have her do.
    for place in 0..to_acknowledge {
        let review = tablet.shell.open().is_some_and(|open| {
            open.judged(&Policy::built_in(), now(tablet))
                .findings
                .get(place)
                .is_some_and(|finding| finding.level == crate::findings::Level::MedicalReviewNow)
        });
        if review {
            tablet.hear(Event::LookingBack(Back::Acknowledged(place)));
        }
    }
    tablet.hear(Event::LookingBack(Back::PlanWanted));
    Ok(told)
}

fn agree(tablet: &mut Tablet, eye: &mut dyn Eye) -> Result<String, RehearseError> {
    use plan::Event as Plan;
    tablet.clock.forward_ms(60_000);
    for choice in [1, 3, 4] {
        tablet.hear(Event::Plan(Plan::Chose(choice)));
    }
    tablet.hear(Event::Plan(Plan::NextLookChosen(1)));
    tablet.hear(Event::Plan(Plan::NoteAdded(
        "Comfortable once the hand moved down from the head to the shoulders.".to_owned(),
    )));
    look(tablet, eye)?;
    tablet.hear(Event::Plan(Plan::SheetWanted(true)));
    eye.look(tablet, "plan-sheet")?;
    tablet.hear(Event::Plan(Plan::SheetWanted(false)));
    tablet.hear(Event::Plan(Plan::SignWanted));
    hold(
        tablet
            .shell
            .open()
            .is_some_and(|open| open.folded.signed.is_some()),
        "the visit could not be signed",
    )?;
    Ok("Agreed a plan and the next look, and signed.".to_owned())
}

fn show_codes(tablet: &mut Tablet, eye: &mut dyn Eye, out: &Path) -> Result<String, RehearseError> {
    let shown = tablet
        .shell
        .handover()
        .shown
        .clone()
        .ok_or(RehearseError::Step("the codes could not be made"))?;
    look(tablet, eye)?;
    let count = shown.record.len();
    for (index, code) in (1..).zip(&shown.record) {
        save_code(
            &out.join(format!("codes/record-{index}-of-{count}.png")),
            code,
        )?;
    }
    save_code(&out.join("codes/note.png"), &shown.note)?;
    Ok(format!(
        "Sealed the record for the desk in {count} codes (version {}), and read each one back.",
        shown.record.first().map_or(0, Code::version)
    ))
}

fn save_code(file: &Path, code: &Code) -> Result<(), RehearseError> {
    let (side, luma) = code.to_luma(MODULE_PX, QUIET_MODULES);
    let side = u32::try_from(side).unwrap_or(0);
    image::GrayImage::from_raw(side, side, luma)
        .ok_or(RehearseError::Step("a code has no picture"))?
        .save(file)
        .map_err(|error| RehearseError::file(file, error))
}

/// The desk reads the pictures; gives the receipt and the record's number.
fn desk_reads(desk: &mut Desk, out: &Path, wall: WallTime) -> Result<(String, i64), RehearseError> {
    let folder = out.join("codes");
    let mut files: Vec<_> = fs::read_dir(&folder)
        .map_err(|error| RehearseError::file(&folder, error))?
        .filter_map(Result::ok)
        .map(|entry| entry.path())
        .filter(|file| {
            file.file_name()
                .is_some_and(|name| name.to_string_lossy().starts_with("record-"))
        })
        .collect();
    // Last to first: the order of scans does not matter.
    files.sort();
    files.reverse();
    let mut kept = None;
    for file in files {
        let bytes = fs::read(&file).map_err(|error| RehearseError::file(&file, error))?;
        let name = file.display().to_string();
        for text in read::texts_in(&read::picture(&bytes, &name)?) {
            for said in desk.take(&text, wall) {
                match said {
                    Said::Kept(it) => kept = Some(it),
                    Said::Refused(error) => return Err(error.into()),
                    _ => {}
                }
            }
        }
    }
    let kept = kept.ok_or(RehearseError::Step("the desk did not get the whole record"))?;
    Ok((kept.head.receipt, kept.head.number))
}

fn type_receipt(tablet: &mut Tablet, receipt: &str, out: &Path) -> Result<String, RehearseError> {
    for figure in receipt.chars().filter(char::is_ascii_digit) {
        tablet.hear(Event::Handover(handover::Event::Keyed(figure.to_string())));
    }
    tablet.hear(Event::Handover(handover::Event::Keyed("ok".to_owned())));
    let taken = tablet
        .shell
        .open()
        .and_then(|open| open.folded.receipt.clone());
    hold(taken.is_some(), "the tablet did not take the receipt")?;
    write(
        &out.join("receipt.txt"),
        format!("{receipt}\nThe tablet took this receipt.\n"),
    )?;
    Ok("Typed the receipt into the tablet: it took it.".to_owned())
}

fn export(desk: &Desk, number: i64, out: &Path) -> Result<String, RehearseError> {
    for (form, file) in [
        (As::Fhir, "visit.fhir.json"),
        (As::FhirDocument, "visit.document.json"),
        (As::Hl7v2, "visit.hl7"),
        (As::Csv, "visit.csv"),
        (As::Note, "visit.txt"),
    ] {
        write(&out.join("exports").join(file), desk.export(number, form)?)?;
    }
    let (codes, words) = (Codes::built_in(), Words::new(Lang::En));
    let page = desk.export_with(number, As::Pdf, &codes, &words)?;
    write(&out.join("exports/visit.pdf"), page)?;
    Ok(
        "The desk exported the visit as FHIR, as HL7 version 2, as a table, as PDF and as a note."
            .to_owned(),
    )
}

fn write_visit(tablet: &Tablet, out: &Path) -> Result<(), RehearseError> {
    let open = tablet
        .shell
        .open()
        .ok_or(RehearseError::Step("the visit was lost"))?;
    let (preferences, policy) = (Preferences::default(), Policy::built_in());
    let around = Around {
        now: tablet.clock.now(),
        open: Some(open),
        preferences: &preferences,
        policy: &policy,
        has_pin: false,
    };
    let judged = open.judged(&policy, around.now.wall);
    let facts = pack::facts(open, &judged, &around, around.now.wall);
    write_sheets(&facts, out)?;
    write_json(&out.join("visit.json"), &visit_json(&facts))
}

/// The mother's sheet in each language.
fn write_sheets(facts: &Facts, out: &Path) -> Result<(), RehearseError> {
    for lang in Lang::ALL {
        let page = sheet::page(facts, &Words::new(*lang));
        let pdf = pdf::write(&page)
            .map_err(|_| RehearseError::Step("the mother's sheet could not be written"))?;
        let file = format!("mother-sheet-{}.pdf", lang.tag());
        write(&out.join("exports").join(file), pdf.bytes)?;
    }
    Ok(())
}

/// Two observers tap along with one practice feed, the second less steady and missing more.
fn practise(tablet: &mut Tablet, eye: &mut dyn Eye) -> Result<(), RehearseError> {
    use practice::{Event as Practice, Stage};
    tablet.hear(Event::Handover(handover::Event::BackWanted));
    tablet.hear(Event::Ward(ward_screen::Event::PracticeWanted));
    look(tablet, eye)?;
    tablet.hear(Event::Practice(Practice::StartWanted));
    for (missed_each, late_ms) in [(15, 120), (6, 210)] {
        let Stage::Watching(watched) = tablet.shell.practice().stage.clone() else {
            return Err(RehearseError::Step("no practice feed is played"));
        };
        let start = tablet.clock.now();
        for (place, (at, swallow)) in watched.truth.sucks.iter().enumerate() {
            if place % missed_each == 1 {
                continue;
            }
            tablet.clock.set_after(start, at.as_ms() + late_ms);
            let pad = if *swallow && place % 9 != 0 {
                PadKind::SuckSwallow
            } else {
                PadKind::Suck
            };
            tablet.hear(Event::Practice(Practice::Tapped(pad)));
            if place == 60 && missed_each == 15 {
                eye.look(tablet, "practice-watching")?;
            }
        }
        tablet.clock.set_after(start, watched.end.as_ms());
        tablet.hear(Event::Ticked);
        tablet.hear(Event::Practice(Practice::SecondWanted));
    }
    eye.look(tablet, "practice-told")?;
    tablet.hear(Event::Practice(Practice::BackWanted));
    tablet.hear(Event::Practice(Practice::BackWanted));
    Ok(())
}

fn month_screen(tablet: &mut Tablet, eye: &mut dyn Eye) -> Result<(), RehearseError> {
    tablet.hear(Event::Ward(ward_screen::Event::MonthWanted));
    look(tablet, eye)?;
    tablet.hear(Event::Month(month::Event::BackWanted));
    Ok(())
}

fn settings_screen(tablet: &mut Tablet, eye: &mut dyn Eye) -> Result<(), RehearseError> {
    tablet.hear(Event::Ward(ward_screen::Event::SettingsWanted));
    look(tablet, eye)?;
    // Another key than the desk's, so that there is something to compare. Nobody keeps it.
    let other = DeskKeyPair::from_random([9; 32])?.public();
    tablet.shell.offer_desk_key(Some(Ok(other)));
    tablet.hear(Event::Ticked);
    eye.look(tablet, "settings-desk-file")?;
    tablet.shell.offer_desk_key(None);
    tablet.hear(Event::Settings(settings::Event::PinWanted));
    // One that is too easy, so that the screen has something to say.
    for digit in [1, 2, 3, 4, 5, 6] {
        tablet.hear(Event::Pin(pin::Event::Digit(digit)));
    }
    tablet.hear(Event::Pin(pin::Event::Done));
    look(tablet, eye)?;
    // The rehearsal's store is gone with it and has no lock: the code is an invented one.
    let code = RescueCode::from_random([7; 16]);
    tablet.hear(Event::Pin(pin::Event::Set(code)));
    eye.look(tablet, "pin-rescue")?;
    tablet.hear(Event::Pin(pin::Event::Done));
    tablet.hear(Event::Settings(settings::Event::BackWanted));
    Ok(())
}
