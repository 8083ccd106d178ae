//! All that Looking back remembers besides the visit itself.

/// The model.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct Model {
    /// Which feed is shown, counted from the first; the last one if there are fewer.
    pub feed: Option<usize>,
}
