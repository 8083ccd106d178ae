//! What a screen's update may read besides its own model. Nothing here can be changed by it.

use super::clock::Now;
use super::open_visit::OpenVisit;
use super::preferences::Preferences;
use crate::findings::Policy;
use crate::record::Label;

/// The surroundings of an update or a render.
#[derive(Clone, Copy)]
pub struct Around<'a> {
    /// The time.
    pub now: Now,
    /// The open visit, if one is.
    pub open: Option<&'a OpenVisit>,
    /// The settings.
    pub preferences: &'a Preferences,
    /// The ward policy.
    pub policy: &'a Policy,
    /// Whether a PIN is set.
    pub has_pin: bool,
}

impl Around<'_> {
    /// Who answers for what is said of a visit: the name in the settings, or else the one under
    /// which the visit was begun.
    pub fn who(&self, open: &OpenVisit) -> Label {
        Label::new(&self.preferences.specialist).unwrap_or_else(|_| open.visit.specialist.clone())
    }
}
