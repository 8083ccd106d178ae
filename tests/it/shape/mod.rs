//! The house keeps its shape: these tests read the project's own files.

mod layers;
mod manifest;
mod messages;
mod paths;
mod screens;
mod source;
mod tidy;
mod translations;
