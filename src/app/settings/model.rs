//! All that the settings screen remembers besides the settings themselves.

use crate::app::desk_key_file::Offered;
use crate::handover::HandoverError;

/// The model.
#[derive(Debug, Clone, Default)]
pub struct Model {
    /// The desk's key as typed and refused, and why.
    pub refused: Option<(String, HandoverError)>,
    /// A key from a file, not looked at yet.
    pub offered: Option<Offered>,
}
