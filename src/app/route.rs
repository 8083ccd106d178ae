//! The screens there are.

/// One screen.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Route {
    /// Pairs by what is due.
    Ward,
    /// One pair's story, or its form.
    Pair,
    /// Before the feed.
    Before,
    /// The bedside.
    Bedside,
    /// Looking back.
    LookingBack,
    /// The plan and the signature.
    Plan,
    /// The codes and the receipt.
    Handover,
    /// Practice with a simulated feed.
    Practice,
    /// Settings.
    Settings,
    /// A PIN to be set.
    Pin,
    /// The ward's last days in figures.
    Month,
}

impl Route {
    /// All screens, each with the word used in file names.
    pub const ALL: [(Self, &'static str); 11] = [
        (Self::Ward, "ward"),
        (Self::Pair, "pair"),
        (Self::Before, "before"),
        (Self::Bedside, "bedside"),
        (Self::LookingBack, "looking-back"),
        (Self::Plan, "plan"),
        (Self::Handover, "handover"),
        (Self::Practice, "practice"),
        (Self::Settings, "settings"),
        (Self::Pin, "pin"),
        (Self::Month, "month"),
    ];
}
