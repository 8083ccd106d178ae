//! Room to be built.
