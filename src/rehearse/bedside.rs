//! The watched feed of the rehearsal: simulated taps, and what the specialist does between them.

use crate::app::bedside::{Act, Event as Bedside, PadKind};
use crate::app::event::Event;
use crate::record::{Adjustment, Sign, Tap, TapWhat};

use super::RehearseError;
use super::eye::{Eye, look};
use super::ward::Tablet;

/// When the picture of the bedside is taken, in milliseconds of the feed.
const PICTURE_MS: u64 = 402_000;

/// What the specialist does besides tapping, each at its time in milliseconds of the feed.
fn script() -> Vec<(u64, Bedside)> {
    let sign = |at_s: u64, sign, state| (at_s * 1000, Bedside::SignSet(sign, state));
    let mut script = vec![
        sign(12, Sign::NoseToNipple, 1),
        (25_000, Bedside::PainTold(5)),
        sign(40, Sign::HeadFree, 3),
        sign(70, Sign::InLine, 1),
        sign(90, Sign::CanBeKeptUp, 2),
        sign(128, Sign::Close, 1),
        sign(134, Sign::MouthWide, 1),
        sign(136, Sign::ChinIn, 1),
        sign(138, Sign::NoseClear, 1),
        sign(140, Sign::LowerLipOut, 1),
        sign(185, Sign::Quiet, 1),
        (200_000, Bedside::Acted(Act::TryChange)),
    ];
    let free_head = Adjustment::ALL
        .iter()
        .position(|it| *it == Adjustment::FreeHead)
        .unwrap_or(0);
    script.push((202_000, Bedside::Chose(free_head)));
    script.push(sign(230, Sign::HeadFree, 1));
    script.push((240_000, Bedside::PainTold(2)));
    script.push((560_000, Bedside::PainTold(1)));
    script
}

/// One thing that happens.
enum Step {
    Tap(TapWhat),
    Act(Bedside),
    Picture,
}

/// Watches the feed through the real screen; says how many taps there were.
pub fn watch(tablet: &mut Tablet, taps: &[Tap], eye: &mut dyn Eye) -> Result<usize, RehearseError> {
    let base_ms = tablet_ms(tablet);
    let mut steps: Vec<(u64, Step)> = taps
        .iter()
        .filter(|tap| !matches!(tap.what, TapWhat::On | TapWhat::End) || 0 < tap.at.as_ms())
        .map(|tap| (tap.at.as_ms(), Step::Tap(tap.what)))
        .chain(
            script()
                .into_iter()
                .map(|(at, event)| (at, Step::Act(event))),
        )
        .chain([(PICTURE_MS, Step::Picture)])
        .collect();
    steps.sort_by_key(|(at, _)| *at);
    let last_ms = taps.last().map_or(0, |tap| tap.at.as_ms());
    let mut tapped = 0;
    for (at_ms, step) in steps.into_iter().filter(|(at, _)| *at <= last_ms) {
        tablet.clock.set_after(tablet.start, base_ms + at_ms);
        match step {
            Step::Tap(what) => {
                if let Some(event) = event_of(what) {
                    tapped += usize::from(matches!(event, Bedside::Tapped(_)));
                    tablet.hear(Event::Bedside(event));
                }
            }
            Step::Act(event) => tablet.hear(Event::Bedside(event)),
            Step::Picture => {
                tablet.hear(Event::Ticked);
                look(tablet, eye)?;
            }
        }
    }
    tablet.hear(Event::Bedside(Bedside::Acted(Act::EndFeed)));
    tablet.hear(Event::Bedside(Bedside::Chose(0)));
    Ok(tapped)
}

/// Milliseconds since the rehearsal began.
fn tablet_ms(tablet: &Tablet) -> u64 {
    use crate::app::clock::Clock;
    tablet.clock.now().boot_ms - tablet.start.boot_ms
}

/// What the hand does on the screen for a tap of the simulation.
fn event_of(what: TapWhat) -> Option<Bedside> {
    Some(match what {
        TapWhat::Suck => Bedside::Tapped(PadKind::Suck),
        TapWhat::SuckSwallow => Bedside::Tapped(PadKind::SuckSwallow),
        TapWhat::Swallow => Bedside::Tapped(PadKind::Swallow),
        TapWhat::Unwatched | TapWhat::Watched => Bedside::LookedAway,
        TapWhat::Off | TapWhat::On => Bedside::Acted(Act::OffOn),
        TapWhat::End => return None,
    })
}
