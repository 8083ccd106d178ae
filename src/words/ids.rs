//! The ids of all messages, written by the build script from `translations/en`.

include!(concat!(env!("OUT_DIR"), "/ids.rs"));
