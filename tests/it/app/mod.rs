//! Tests of the room `app`.
#![cfg(feature = "app")]

mod analysed;
mod bedside;
mod before;
mod by_label;
mod chart_labels;
mod contrast;
pub(crate) mod cut;
mod desk_key_file;
mod eyes;
pub(crate) mod golden;
mod hand;
mod looking_back;
mod looking_closer;
mod month;
mod never_lost;
mod no_feed;
mod pages;
mod pin;
mod practice;
mod rehearsal;
mod stands;
mod started;
mod strip_by_hand;
pub(crate) mod tablet;
mod take_back;
mod toolkit;
mod touch;
mod ward_list;
mod ward_policy;
mod ward_says;
