//! What looks at the screens as the rehearsal passes them: an album that takes pictures, or a test.

use crate::app::route::Route;

use super::RehearseError;
use super::ward::Tablet;

/// Looks at screens.
pub trait Eye {
    /// Looks at the screen that is seen, which goes by this name.
    ///
    /// # Errors
    /// It could not look, or does not like what it sees.
    fn look(&mut self, tablet: &mut Tablet, name: &str) -> Result<(), RehearseError>;
}

/// Has the screen that is seen looked at under its route's name.
pub(super) fn look(tablet: &mut Tablet, eye: &mut dyn Eye) -> Result<(), RehearseError> {
    let name = Route::ALL
        .iter()
        .find(|(route, _)| *route == tablet.shell.route())
        .map_or("", |(_, name)| *name);
    eye.look(tablet, name)
}
