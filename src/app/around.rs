//! What a screen's update may read besides its own model. Nothing here can be changed by it.

use super::clock::Now;
use super::open_visit::OpenVisit;
use super::preferences::Preferences;
use crate::findings::Policy;

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
}
