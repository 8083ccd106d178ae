//! Tests of the room `app`.
#![cfg(feature = "app")]

mod bedside;
mod by_label;
mod contrast;
mod cut;
mod eyes;
mod hand;
mod looking_closer;
mod never_lost;
mod pages;
mod practice;
mod tablet;
mod toolkit;
mod touch;
mod ward_list;
mod ward_policy;
