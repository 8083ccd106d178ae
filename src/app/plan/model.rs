//! All that the plan screen remembers besides the visit itself.

use crate::findings::CallWhom;

/// The offers for the next look, in hours from now (common practice: from the next feed to the next
/// day).
pub const NEXT_LOOK_HOURS: [i64; 6] = [2, 3, 4, 8, 12, 24];

/// Who can be called if it gets worse, in the order shown.
pub const CALLS: [CallWhom; 4] = [
    CallWhom::BabyDoctor,
    CallWhom::MotherDoctor,
    CallWhom::MidwifeInCharge,
    CallWhom::FeedingTeam,
];

/// Why the visit cannot be signed yet.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum SignTrouble {
    /// A feed still runs.
    Running,
    /// Medical review now is not acknowledged.
    Review,
    /// There is no sign to sign with.
    Specialist,
}

/// The model.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct Model {
    /// Why the last try to sign failed.
    pub trouble: Option<SignTrouble>,
    /// Whether the mother's sheet is shown.
    pub sheet: bool,
}
