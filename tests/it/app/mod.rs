//! Tests of the room `app`.
#![cfg(feature = "app")]

mod bedside;
mod contrast;
mod looking_closer;
mod never_lost;
mod practice;
mod tablet;
mod toolkit;
mod touch;
