//! Forward and back over a row of items, each with a hidden state: how probable each state is at
//! each item, given all of them; and the one most probable course of states. Knows nothing of
//! sucks: what the states are, how they change and how well an item fits them is asked for.
//!
//! The forward-backward and Viterbi algorithms as in Rabiner 1989, Proc IEEE 77:257, with the
//! weights scaled to one where they have strayed far from it.

use std::ops::Range;

/// A row of items with hidden states.
pub trait Hidden<const STATES: usize> {
    /// How many items there are.
    fn count(&self) -> usize;
    /// The probability of each state at the first item, before it is seen.
    fn start(&self) -> [f64; STATES];
    /// Lets the states change from the item before `to` to `to`.
    fn forward(&self, to: usize, states: &mut [f64; STATES]);
    /// The same backward: what each state at the item before makes of the weights at `to`.
    fn backward(&self, to: usize, weights: &mut [f64; STATES]);
    /// The same for the one best way into each state: its weight, and the state that it comes from.
    fn best(&self, to: usize, states: &mut [f64; STATES]) -> [usize; STATES];
    /// How well it fits each state that the row ends after the last item; all alike if it does not
    /// say anything.
    fn end(&self) -> [f64; STATES] {
        [1.0; STATES]
    }
    /// How well an item fits each state, up to a factor whose logarithm is given.
    fn fit(&self, at: usize) -> ([f64; STATES], f64);
}

/// A weight less than this cannot be told from nothing.
const LEAST: f64 = 1e-280;
/// Weights whose sum lies outside of this are scaled. Not at every item: none then waits for the sum of
/// the one before.
const UNSCALED: Range<f64> = 1e-30..1e30;

/// Scales to a sum of one and gives the sum. What has become too unlikely to tell starts evenly.
pub(super) fn normalise<const STATES: usize>(states: &mut [f64; STATES]) -> f64 {
    let sum: f64 = states.iter().sum();
    if LEAST < sum && sum.is_finite() {
        let scale = 1.0 / sum;
        for state in states {
            *state *= scale;
        }
        sum
    } else {
        *states = [1.0 / STATES as f64; STATES];
        LEAST
    }
}

/// Weighs each state by how well something fits it.
pub(super) fn weigh<const STATES: usize>(states: &mut [f64; STATES], fit: &[f64; STATES]) {
    for (state, fit) in states.iter_mut().zip(fit) {
        *state *= fit;
    }
}

/// Tells `each` the probabilities of the states at each item, from the last to the first, and
/// gives the logarithm of how well the items fit altogether. `room` is kept between calls.
pub fn posterior<const STATES: usize, M: Hidden<STATES>>(
    model: &M,
    room: &mut Vec<[f64; STATES]>,
    mut each: impl FnMut(usize, &[f64; STATES]),
) -> f64 {
    room.clear();
    let mut states = model.start();
    let mut logarithm = 0.0;
    for at in 0..model.count() {
        if 0 < at {
            model.forward(at, &mut states);
        }
        let (fit, scale) = model.fit(at);
        weigh(&mut states, &fit);
        logarithm += scale;
        if is_far_from_one(&states) {
            logarithm += normalise(&mut states).ln();
        }
        room.push(states);
    }
    let mut after = model.end();
    if !room.is_empty() {
        weigh(&mut states, &after);
        logarithm += normalise(&mut states).ln();
    }
    for (at, states) in room.iter().enumerate().rev() {
        let mut both = *states;
        weigh(&mut both, &after);
        normalise(&mut both);
        each(at, &both);
        if 0 < at {
            weigh(&mut after, &model.fit(at).0);
            model.backward(at, &mut after);
            if is_far_from_one(&after) {
                normalise(&mut after);
            }
        }
    }
    logarithm
}

fn is_far_from_one<const STATES: usize>(states: &[f64; STATES]) -> bool {
    !UNSCALED.contains(&states.iter().sum())
}

/// The most probable course of states, and the logarithm of its weight.
pub fn course<const STATES: usize, M: Hidden<STATES>>(model: &M) -> (Vec<usize>, f64) {
    let count = model.count();
    let mut from: Vec<[usize; STATES]> = Vec::with_capacity(count);
    let mut states = model.start();
    let mut logarithm = 0.0;
    for at in 0..count {
        from.push(if 0 < at {
            model.best(at, &mut states)
        } else {
            [0; STATES]
        });
        let (fit, scale) = model.fit(at);
        weigh(&mut states, &fit);
        logarithm += scale + normalise(&mut states).ln();
    }
    weigh(&mut states, &model.end());
    let Some(mut state) = (0..STATES).max_by(|a, b| states[*a].total_cmp(&states[*b])) else {
        return (Vec::new(), logarithm);
    };
    if count == 0 {
        return (Vec::new(), 0.0);
    }
    logarithm += states[state].ln();
    let mut course = vec![state; count];
    for at in (1..count).rev() {
        state = from[at][state];
        course[at - 1] = state;
    }
    (course, logarithm)
}
