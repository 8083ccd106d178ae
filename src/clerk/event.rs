//! All that can happen at the desk's window.

use super::worker::Told;

/// An event. Keys come by themselves, as `update::pressed` answers them at once.
#[derive(Debug)]
pub enum Event {
    /// The window came to the front or left it.
    InFront(bool),
    /// Time passed: the clock's milliseconds.
    Ticked(u64),
    /// The desk answered.
    Told(Told),
    /// A record is to be searched.
    SearchWanted,
    /// The whole list again.
    SearchLeft,
    /// A record of the list is to be read, by its place.
    Opened(usize),
    /// Back to the list.
    PageLeft,
    /// The page is to be printed.
    PrintWanted,
    /// The record is to be written to a file, in the form of this place.
    ExportWanted(usize),
    /// The six words are the same on the tablet.
    WordsAreSame,
    /// They are not.
    WordsDiffer,
}
