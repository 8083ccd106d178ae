//! All that can happen on the Pair screen.

use crate::app::keeper::Story;

/// A typed field of the form.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Field {
    /// Bay and bed.
    Bed,
    /// Initials.
    Initials,
    /// Date and time of birth.
    Birth,
    /// Birth weight.
    Weight,
    /// Gestation.
    Gestation,
    /// The mother's number on the ward.
    MotherNumber,
    /// The baby's number on the ward.
    BabyNumber,
}

/// A group of choices of the form.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Group {
    /// Sex.
    Sex,
    /// Way of birth.
    Way,
    /// Reasons for the call.
    Reasons,
    /// Risk notes.
    Risks,
    /// The mother's language.
    Language,
    /// How many babies were born together.
    Babies,
}

/// An event.
#[derive(Debug)]
pub enum Event {
    /// A pair's story came from the store.
    Came(Box<Story>),
    /// The form for a new pair.
    NewWanted,
    /// The form for the pair shown.
    EditWanted,
    /// A field as it stands.
    Typed(Field, String),
    /// A choice was touched.
    Chose(Group, usize),
    /// The form for another baby of the same mother.
    TwinWanted,
    /// The drawings or the table.
    TableWanted(bool),
    /// A weight that is asked about is right.
    SaidRight(usize),
    /// A visit was opened, on any screen.
    VisitCame,
    /// A weight that is asked about is to be corrected.
    CorrectWanted(usize),
    /// Keep the form.
    SaveWanted,
    /// Begin a visit, or go on with the open one.
    BeginWanted,
    /// An earlier visit was touched.
    VisitOpened(usize),
    /// Back.
    BackWanted,
}
