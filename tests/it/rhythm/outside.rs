//! The arithmetic under the rhythm against libraries that are not ours, on stored vectors.

use feedside::rhythm::{Hidden, course, posterior};

/// A small model with fixed tables.
struct Small {
    seen: &'static [usize],
    end: [f64; 3],
}

impl Small {
    fn of(seen: &'static [usize]) -> Self {
        let end = [1.0; 3];
        Self { seen, end }
    }
}

const START: [f64; 3] = [0.7, 0.2, 0.1];
const CHANGE: [[f64; 3]; 3] = [[0.90, 0.08, 0.02], [0.05, 0.92, 0.03], [0.01, 0.04, 0.95]];
const FIT: [[f64; 4]; 3] = [
    [0.50, 0.30, 0.15, 0.05],
    [0.10, 0.45, 0.35, 0.10],
    [0.05, 0.10, 0.25, 0.60],
];

impl Hidden<3> for Small {
    fn count(&self) -> usize {
        self.seen.len()
    }

    fn start(&self) -> [f64; 3] {
        START
    }

    fn forward(&self, _: usize, states: &mut [f64; 3]) {
        *states = std::array::from_fn(|to| (0..3).map(|it| states[it] * CHANGE[it][to]).sum());
    }

    fn backward(&self, _: usize, weights: &mut [f64; 3]) {
        *weights = std::array::from_fn(|it| (0..3).map(|to| CHANGE[it][to] * weights[to]).sum());
    }

    fn best(&self, _: usize, states: &mut [f64; 3]) -> [usize; 3] {
        let from = std::array::from_fn(|to| {
            let way = |it: &usize| states[*it] * CHANGE[*it][to];
            (0..3).max_by(|a, b| way(a).total_cmp(&way(b))).unwrap()
        });
        *states = std::array::from_fn(|to| states[from[to]] * CHANGE[from[to]][to]);
        from
    }

    fn end(&self) -> [f64; 3] {
        self.end
    }

    fn fit(&self, at: usize) -> ([f64; 3], f64) {
        (FIT.map(|row| row[self.seen[at]]), 0.0)
    }
}

/// What was seen.
const SEEN: [usize; 24] = [
    0, 0, 1, 0, 2, 1, 1, 2, 1, 2, 1, 1, 3, 2, 2, 1, 3, 3, 2, 3, 3, 3, 0, 3,
];

// hmmlearn 0.3.3: `CategoricalHMM(n_components=3)` with startprob_, transmat_ and emissionprob_ set
// to the tables above; `score_samples` gave the first number and the table, `decode` the rest.
const SCORE: f64 = -28.871525593722414;
const COURSE_SCORE: f64 = -31.05443040765255;
const COURSE: [usize; 24] = [
    0, 0, 0, 0, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 2, 2, 2, 2, 2, 2, 2, 2,
];
const POSTERIOR: [[f64; 3]; 24] = [
    [0.979661807995227, 0.0198532819405198, 0.000484910064251204],
    [0.957044605123379, 0.042563241934701, 0.000392152941919809],
    [0.836416983914961, 0.162796376482063, 0.000786639602976854],
    [0.767663548107582, 0.230894703382475, 0.00144174850994467],
    [0.394077545758478, 0.600734715182098, 0.00518773905942443],
    [0.243350604269132, 0.754175131315431, 0.00247426441543822],
    [0.14556120378961, 0.851766234027262, 0.00267256218312714],
    [0.0800948571222304, 0.913619593001665, 0.00628554987610687],
    [0.0566261028172618, 0.935696223585027, 0.00767767359771023],
    [0.0391528119726663, 0.94100350009898, 0.0198436879283527],
    [0.0382595627063357, 0.928461680029811, 0.0332787572638543],
    [0.035005896294828, 0.867261038045334, 0.0977330656598369],
    [0.0127980400007903, 0.605006239886475, 0.382195720112733],
    [0.0109946020366, 0.569172551618354, 0.419832846345045],
    [0.0123745762891139, 0.513022113889347, 0.474603309821537],
    [0.0177663759964976, 0.430080397944557, 0.552153226058947],
    [0.00273793021140358, 0.0817204849639979, 0.915541584824599],
    [0.000676964838482489, 0.0255399772531357, 0.973783057908382],
    [0.000611314656889833, 0.0183133960475069, 0.981075289295603],
    [0.000153574292048058, 0.00405955825037298, 0.995786867457579],
    [0.000183152473695196, 0.00221805712178758, 0.997598790404519],
    [0.00118969470234013, 0.00468509957246414, 0.994125205725196],
    [0.0132384265080544, 0.01975306455182, 0.967008508940126],
    [0.0104456302936497, 0.0245158324187452, 0.965038537287604],
];

const NEAR: f64 = 1e-9;

#[test]
fn the_probability_of_each_state_is_that_of_hmmlearn() {
    let mut given = vec![[0.0; 3]; SEEN.len()];
    let mut room = Vec::new();
    let score = posterior(&Small::of(&SEEN), &mut room, |at, states| {
        given[at] = *states
    });
    assert!((score - SCORE).abs() < NEAR, "{score}");
    for (given, expected) in given.iter().flatten().zip(POSTERIOR.iter().flatten()) {
        assert!((given - expected).abs() < NEAR, "{given} {expected}");
    }
}

#[test]
fn the_most_probable_course_is_that_of_hmmlearn() {
    let (given, score) = course(&Small::of(&SEEN));
    assert_eq!(given, COURSE);
    assert!((score - COURSE_SCORE).abs() < NEAR, "{score}");
}

#[test]
fn a_long_row_neither_vanishes_nor_overflows() {
    let seen: &'static [usize] = Box::leak(SEEN.repeat(2_000).into_boxed_slice());
    let mut count = 0;
    let score = posterior(&Small::of(seen), &mut Vec::new(), |_, states| {
        count += 1;
        assert!((states.iter().sum::<f64>() - 1.0).abs() < NEAR);
    });
    assert_eq!(count, 48_000);
    assert!(score.is_finite() && course(&Small::of(seen)).1 <= score);
}

#[test]
fn nothing_has_no_course() {
    assert_eq!(course(&Small::of(&[])), (Vec::new(), 0.0));
    assert_eq!(posterior(&Small::of(&[]), &mut Vec::new(), |_, _| {}), 0.0);
}

#[test]
fn a_row_that_says_how_it_ends_is_judged_by_all_its_courses() {
    // The definition itself, with no recursion: every course of states is weighed.
    const COUNT: usize = 6;
    let small = Small {
        seen: &SEEN[..COUNT],
        end: [0.2, 0.5, 1.0],
    };
    let (mut all, mut of_state) = (0.0, [[0.0; 3]; COUNT]);
    let mut best = (Vec::new(), 0.0);
    for number in 0..3_usize.pow(COUNT as u32) {
        let states: Vec<usize> = (0..COUNT as u32)
            .map(|it| number / 3_usize.pow(it) % 3)
            .collect();
        let mut weight = START[states[0]] * small.end[states[COUNT - 1]];
        for (at, state) in states.iter().enumerate() {
            weight *= FIT[*state][SEEN[at]];
        }
        for pair in states.windows(2) {
            weight *= CHANGE[pair[0]][pair[1]];
        }
        all += weight;
        for (at, state) in states.iter().enumerate() {
            of_state[at][*state] += weight;
        }
        if best.1 < weight {
            best = (states, weight);
        }
    }
    let score = posterior(&small, &mut Vec::new(), |at, states| {
        for (given, expected) in states.iter().zip(of_state[at]) {
            assert!((given - expected / all).abs() < NEAR, "{given} {expected}");
        }
    });
    assert!((score - f64::ln(all)).abs() < NEAR, "{score}");
    let (given, score) = course(&small);
    assert_eq!(given, best.0);
    assert!((score - best.1.ln()).abs() < NEAR, "{score}");
}
