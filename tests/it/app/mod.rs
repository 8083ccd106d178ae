//! Tests of the room `app`.
#![cfg(feature = "app")]

mod bedside;
mod contrast;
mod practice;
