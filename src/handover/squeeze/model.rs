//! How likely the next decision is yes, learned from all decisions before it. Whole numbers only,
//! so that every machine says the same.
//!
//! Each decision is asked under ten contexts. Each context has a slot in a table of its own, found
//! by a hash (eight more bits of it tell contexts apart that share one; the newer takes it over): a chance and how often it was asked.
//! The ten chances, stretched to logits, are weighed and summed; the sum, squashed back, is the
//! chance that is coded with. Then slots and weights learn what it was.

use super::range::Port;

/// Contexts of a decision.
pub(super) const INPUTS: usize = 10;
/// Slots of each context's table: two to this power.
const SLOT_BITS: u32 = 18;
/// How often a slot was asked, as far as weights tell it apart.
const TRUST: usize = 6;
/// Sets of weights by the kind of decision, and by the place in the record.
pub(super) const KINDS: usize = 64;
const PLACES: usize = 256;
/// The place of decisions whose weights are told apart by how many contexts are known.
pub(super) const KNOWN: u32 = u32::MAX;

/// A slot holds, from the highest bit: a chance in 18 bits, a count in 6, and 8 bits of the hash.
const CHECK_BITS: u32 = 8;
const COUNT_BITS: u32 = 6;
const CHANCE_BITS: u32 = 18;
const CHANCE_SHIFT: u32 = CHECK_BITS + COUNT_BITS;
const COUNT_MOST: u32 = 60;
const FRESH: u32 = 1 << 31;

const fn count_of(held: u32) -> u32 {
    held >> CHECK_BITS & ((1 << COUNT_BITS) - 1)
}

/// A weight of one, of the sum of both sets.
const ONE: i32 = 1 << 16;
const START: i32 = ONE * 3 / 20;
const LEARN_SHIFT: u32 = 18;
const LEARN_RATE: i64 = 4;

/// Logits are in 256ths, up to 11.
const LOGIT_MOST: i32 = 2_815;
/// 65536 / (1 + e^-x) for x from -11 to 11 by halves.
const SQUASH: [i32; 45] = [
    1, 2, 3, 5, 8, 13, 22, 36, 60, 98, 162, 267, 439, 720, 1179, 1921, 3108, 4971, 7812, 11955,
    17625, 24743, 32768, 40793, 47911, 53581, 57724, 60565, 62428, 63615, 64357, 64816, 65097,
    65269, 65374, 65438, 65476, 65500, 65514, 65523, 65528, 65531, 65533, 65534, 65535,
];

/// A logit to a chance of 1 to 65535.
fn squash(logit: i32) -> i32 {
    let at = logit.clamp(-LOGIT_MOST, LOGIT_MOST) + 11 * 256;
    let (place, part) = ((at >> 7) as usize, at & 127);
    let (low, high) = (SQUASH[place], SQUASH[place + 1]);
    ((low * (128 - part) + high * part + 64) >> 7).clamp(1, 65_535)
}

/// What is the same for all models.
struct Tables {
    /// Logits of chances in 4096ths: the inverse of [`squash`].
    stretch: Vec<i16>,
    /// How far a slot moves that was asked so often, in 65536ths.
    rate: Vec<u32>,
}

fn tables() -> &'static Tables {
    static TABLES: std::sync::OnceLock<Tables> = std::sync::OnceLock::new();
    TABLES.get_or_init(|| {
        let mut stretch = Vec::with_capacity(4096);
        for logit in -LOGIT_MOST..=LOGIT_MOST {
            while stretch.len() as i32 <= squash(logit) >> 4 {
                stretch.push(logit as i16);
            }
        }
        stretch.resize(4096, LOGIT_MOST as i16);
        let rate = (0..=COUNT_MOST).map(|count| 2 * 65_536 / (2 * count + 3));
        Tables {
            stretch,
            rate: rate.collect(),
        }
    })
}

/// Two numbers to one that looks like neither.
pub(super) const fn mix(a: u32, b: u32) -> u32 {
    let h = (a ^ b).wrapping_mul(0x9e37_79b1);
    (h ^ h >> 15).wrapping_mul(0x85eb_ca77)
}

/// Slots as they were before, so that a model can be used again without copying all of it.
#[derive(Clone, Default)]
struct Undo {
    on: bool,
    slots: Vec<(u32, u32)>,
}

/// Changes that are noted at most: 16 MB. Past it the model is copied afresh.
const UNDO_MOST: usize = 2_000_000;

impl Undo {
    fn note(&mut self, slot: usize, held: u32) {
        if self.on && self.slots.len() <= UNDO_MOST {
            self.slots.push((slot as u32, held));
        }
    }
}

/// What was learned.
#[derive(Clone)]
pub(super) struct Model {
    slots: Vec<u32>,
    kinds: Vec<i32>,
    places: Vec<i32>,
    undo: Undo,
}

impl Model {
    /// One that has learned nothing.
    pub(super) fn new() -> Self {
        Self {
            slots: vec![FRESH; INPUTS << SLOT_BITS],
            kinds: vec![START; KINDS * INPUTS * TRUST],
            places: vec![START; PLACES * INPUTS * TRUST],
            undo: Undo::default(),
        }
    }

    /// Notes changes from here on, for [`Self::back_to`].
    pub(super) const fn note_changes(&mut self) {
        self.undo.on = true;
    }

    /// Becomes what it was when it began to note changes: what `like` is.
    pub(super) fn back_to(&mut self, like: &Self) {
        if UNDO_MOST < self.undo.slots.len() {
            self.slots.copy_from_slice(&like.slots);
            self.undo.slots = Vec::new();
        }
        while let Some((slot, held)) = self.undo.slots.pop() {
            self.slots[slot as usize] = held;
        }
        self.kinds.copy_from_slice(&like.kinds);
        self.places.copy_from_slice(&like.places);
    }

    /// Codes one decision under its contexts, and learns it. `kind` is below [`KINDS`].
    pub(super) fn decide(
        &mut self,
        port: &mut impl Port,
        contexts: &[u32; INPUTS],
        node: u32,
        (kind, place): (usize, u32),
        told: bool,
    ) -> bool {
        let tables = tables();
        let mut slots = [(0usize, 0u32); INPUTS];
        let mut known = 0;
        for (input, context) in contexts.iter().enumerate() {
            let hash = mix(*context, node);
            let slot = input << SLOT_BITS | (hash >> (32 - SLOT_BITS)) as usize;
            let check = hash & ((1 << CHECK_BITS) - 1);
            let mut held = self.slots[slot];
            if held & ((1 << CHECK_BITS) - 1) != check {
                held = FRESH | check;
            }
            known += u32::from(count_of(held) != 0);
            slots[input] = (slot, held);
        }
        let place = if place == KNOWN {
            known
        } else {
            16 + place % (PLACES as u32 - 16)
        };
        let (kind, place) = (kind % KINDS, place as usize);
        let mut logits = [0i32; INPUTS];
        let mut weights = [(0usize, 0usize); INPUTS];
        let mut sum = 0i64;
        for input in 0..INPUTS {
            let (_, held) = slots[input];
            let logit = i32::from(tables.stretch[(held >> 20) as usize]);
            let trust = match count_of(held) {
                0 => 0,
                1 => 1,
                2..=3 => 2,
                4..=8 => 3,
                9..=30 => 4,
                _ => 5,
            };
            let weight = |set: usize| (set * INPUTS + input) * TRUST + trust;
            logits[input] = logit;
            weights[input] = (weight(kind), weight(place));
            let both = self.kinds[weight(kind)] + self.places[weight(place)];
            sum += i64::from(both) * i64::from(logit);
        }
        let sum = (sum >> 16).clamp(-4_000, 4_000) as i32;
        let chance = squash(sum);
        let yes = port.decide(told, chance as u32);

        let off = i64::from((i32::from(yes) << 16) - chance) * LEARN_RATE;
        for input in 0..INPUTS {
            let step = ((i64::from(logits[input]) * off) >> LEARN_SHIFT) as i32;
            let (kind, place) = weights[input];
            self.kinds[kind] = (self.kinds[kind] + step).clamp(-8 * ONE, 8 * ONE);
            self.places[place] = (self.places[place] + step).clamp(-8 * ONE, 8 * ONE);
            let (slot, held) = slots[input];
            let (chance, count) = (held >> CHANCE_SHIFT, count_of(held));
            let goal = if yes { (1 << CHANCE_BITS) - 1 } else { 0 };
            let rate = i64::from(tables.rate[count as usize]);
            let moved = i64::from(chance) + (((goal - i64::from(chance)) * rate) >> 16);
            self.undo.note(slot, self.slots[slot]);
            self.slots[slot] = (moved as u32) << CHANCE_SHIFT
                | (count + 1).min(COUNT_MOST) << CHECK_BITS
                | held & ((1 << CHECK_BITS) - 1);
        }
        yes
    }
}
