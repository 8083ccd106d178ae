//! All that can happen on the Ward screen.

use crate::app::keeper::WardLine;

/// An event.
#[derive(Debug)]
pub enum Event {
    /// The list came from the store.
    Came(Vec<WardLine>),
    /// A pair was touched.
    Opened(usize),
    /// A new pair.
    NewWanted,
    /// Practice.
    PracticeWanted,
    /// Settings.
    SettingsWanted,
    /// The last days in figures.
    MonthWanted,
    /// The invented ward.
    DemoWanted,
}
