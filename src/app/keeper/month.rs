//! The last days of the ward: what each of their visits adds, worked out once and kept beside it.
//!
//! A few visits at a time, so that an entry never waits for it; whoever asks, asks again until none is
//! left. Knows no figure of the month and no screen.

use super::looked::{About, Looked, by_pair, looked_at, weighings_of};
use crate::findings::Policy;
use crate::record::WallTime;
use crate::report::month::{Month, is_within};
use crate::store::{Store, StoreError, VisitHead};

/// How many visits are worked out before it answers: at some 15 ms each, an entry waits for no more
/// than a thirtieth of a second.
const VISITS_AT_ONCE: u32 = 2;

/// The month as far as it is worked out, and how many visits are left.
pub(super) fn month(
    store: &Store,
    policy: &Policy,
    now: WallTime,
) -> Result<(Month, u32), StoreError> {
    let mut of_pair = by_pair(store)?;
    let (mut sums, mut to_keep) = (Vec::new(), Vec::new());
    let (mut done, mut left) = (0, 0);
    for row in store.ward()? {
        let pair = row.pair;
        // One that is ahead of now, as after a clock was set back, may follow others.
        let is_recent =
            |last: VisitHead| now.utc_ms() < last.began.utc_ms() || is_within(last.began, now);
        if !row.last.is_some_and(is_recent) {
            continue;
        }
        let recent: Vec<_> = store
            .visits_of(pair.id)?
            .into_iter()
            .filter(|head| is_within(head.began, now))
            .map(|head| head.id)
            .collect();
        let mut looked = looked_at(store, of_pair.remove(&pair.id).unwrap_or_default())?;
        let weighings = weighings_of(&looked);
        let about = About::of(&pair, &weighings, &looked);
        for it in looked.iter_mut().filter(|it| recent.contains(&it.id())) {
            if it.kept_sum(&about, policy).is_none() {
                if done == VISITS_AT_ONCE {
                    left += 1;
                    continue;
                }
                done += 1;
            }
            sums.push(it.sum(store, &about, policy)?);
        }
        to_keep.extend(looked.iter().filter_map(Looked::to_keep));
    }
    store.keep_gists(&to_keep)?;
    Ok((Month::of(&sums, now), left))
}
