//! What the ward's feeds looked like over the last days: counts, shares and spreads over visits,
//! and the same in words.
//!
//! Three steps, a file or two each: what one visit adds ([`VisitSum`]), the sums of all visits taken
//! together ([`Month`]), and cards of rows to be shown ([`cards`]). Nothing told never counts as
//! fine: what a count is out of holds only what was told. Deliberately knows no disk, no clock and
//! no person: now is an argument, and a sum holds no name, number or free text. It judges nothing
//! and nobody.

mod card;
mod counted;
mod counting;
mod feed_sum;
mod row;
mod share;
mod spread;
mod visit_sum;

pub use card::{Card, Row, cards};
pub use counted::{DAYS, FLOW_WATCHED_LEAST_MS, Month, PAIN_FROM_SCORE};
pub use counting::is_within;
pub use share::{PERCENT_LEAST, Share};
pub use spread::{Quartiles, SPREAD_LEAST, Spread};
pub use visit_sum::VisitSum;
