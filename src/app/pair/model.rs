//! All that the Pair screen shows.

use crate::app::keeper::Story;
use crate::record::{PairId, WallTime};

use super::{Form, FormTrouble};

/// The model: a story, and over it perhaps a form.
#[derive(Debug, Clone, Default)]
pub struct Model {
    /// The pair that is shown.
    pub story: Option<Box<Story>>,
    /// The form, while it is open.
    pub form: Option<Form>,
    /// What is wrong with the form.
    pub trouble: Option<FormTrouble>,
    /// Whether the numbers are shown as a table instead of drawn.
    pub table: bool,
    /// Weights said to be right, of any pair, while no visit of that pair was open: they go into the
    /// journal of the next one that is.
    pub right: Vec<(PairId, WallTime)>,
}
