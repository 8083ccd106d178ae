//! The far end of what the desk sends.

pub mod http;
pub mod mllp;
