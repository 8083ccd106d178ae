//! All that the Pair screen shows.

use crate::app::keeper::Story;

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
}
