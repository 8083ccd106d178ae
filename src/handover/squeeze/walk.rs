//! A wire value to decisions and back: one walk for both ways.
//!
//! Each value is told by its type; a whole number by its size and then its bits; text by its bytes
//! and an end. What a value is likely to be is asked by where it stands, by what stood before it,
//! by what stands in its row, and by the first values of the lists around it.

use super::super::HandoverError;
use super::super::cbor::{self, Item};
use super::super::limit::{DEPTH_MOST, INFLATED_BYTES_MOST, ITEMS_MOST};
use super::model::{INPUTS, KNOWN, Model, mix};
use super::range::Port;

/// The kinds of decisions, the first of each.
const TYPE: usize = 0;
const SIZE: usize = 4;
const BITS: usize = 12;
const TEXT: usize = 28;
const BYTES: usize = 40;
const SAME: usize = 50;

/// Ends a text: a byte that UTF-8 never has.
const END: u8 = 0xff;
/// Indices in lists that are told apart.
const INDEX_MOST: usize = 8;
/// Remembered last values by place: two to this power.
const LAST_BITS: u32 = 12;

/// What is known of a value's surroundings.
#[derive(Clone, Copy)]
struct Place {
    /// Where: keys and indices on the way.
    path: u32,
    /// The same without indices.
    column: u32,
    /// The first scalar in the list or map that it stands in, and in the one around that.
    head: u32,
    outer_head: u32,
    /// What stands in the same row in the nearest column before, and in the one before that.
    above: u32,
    above_2: u32,
}

/// The lists beside each other in one list or map: the tokens of their values.
#[derive(Default)]
struct Columns {
    all: Vec<Vec<u32>>,
}

/// How many columns are looked back at.
const COLUMNS_MOST: usize = 4;

impl Columns {
    /// The nearest two values in the same row.
    fn above(&self, row: usize) -> [Option<u32>; 2] {
        let columns = self.all.iter().rev().take(COLUMNS_MOST);
        let mut near = columns.filter_map(|column| column.get(row).copied());
        let mut next = || near.by_ref().find(|token| *token != NONE);
        [next(), next()]
    }
}

pub(super) struct Walk<'m, P> {
    model: &'m mut Model,
    port: P,
    before: [u32; 2],
    last: Vec<u32>,
    items_left: usize,
    bytes_left: usize,
    decisions: usize,
}

/// Tokens of what is no number.
const NONE: u32 = 1;
const NULL: u32 = 2;
const NO: u32 = 3;
const YES: u32 = 4;
const SOME_BYTES: u32 = 5;

/// A number as a context: itself when small, else its size and its first bits.
const fn token(value: i64) -> u32 {
    if -1024 < value && value < 1024 {
        return (value + 4096) as u32;
    }
    let size = 64 - value.unsigned_abs().leading_zeros();
    let first = (value.unsigned_abs() >> (size - 4)) as u32 & 7;
    1 << 16 | ((value < 0) as u32) << 12 | size << 4 | first
}

type Walked<T> = Result<T, HandoverError>;

impl<'m, P: Port> Walk<'m, P> {
    pub(super) fn new(model: &'m mut Model, port: P) -> Self {
        Self {
            model,
            port,
            before: [NONE; 2],
            last: vec![NONE; 1 << LAST_BITS],
            items_left: ITEMS_MOST,
            bytes_left: INFLATED_BYTES_MOST,
            decisions: 0,
        }
    }

    /// Walks one whole value; gives it back, the port, and how many decisions it took.
    pub(super) fn whole(mut self, told: Option<&Item>) -> Walked<(Item, P, usize)> {
        let place = Place {
            path: 1,
            column: 1,
            head: NONE,
            outer_head: NONE,
            above: NONE,
            above_2: NONE,
        };
        let (item, _) = self.item(told, &place, &mut Columns::default(), 0)?;
        Ok((item, self.port, self.decisions))
    }

    fn contexts(&self, salt: u32, at: &Place) -> [u32; INPUTS] {
        let [before, before_2] = self.before;
        let last = self.last[(at.column >> (32 - LAST_BITS)) as usize];
        let (path, column) = (mix(at.path, salt), mix(at.column, salt));
        [
            mix(path, 0),
            mix(mix(path, before), 1),
            mix(mix(mix(path, before), before_2), 2),
            mix(mix(path, at.above), 3),
            mix(mix(mix(path, at.above), before), 4),
            mix(mix(column, last), 5),
            mix(mix(mix(path, at.head), at.outer_head), 6),
            mix(mix(column, at.above_2), 7),
            mix(mix(mix(column, at.outer_head), before), 8),
            mix(mix(mix(column, at.head), last), 9),
        ]
    }

    fn decide(
        &mut self,
        contexts: &[u32; INPUTS],
        node: u32,
        set: (usize, u32),
        told: bool,
    ) -> bool {
        self.decisions += 1;
        self.model.decide(&mut self.port, contexts, node, set, told)
    }

    /// The bits of a symbol, highest first.
    fn symbol(
        &mut self,
        contexts: &[u32; INPUTS],
        (kind, place): (usize, u32),
        bits: u32,
        told: u32,
    ) -> u32 {
        let mut node = 1;
        for bit in (0..bits).rev() {
            let yes = told >> bit & 1 == 1;
            let set = (kind + (bits - 1 - bit) as usize, place);
            let yes = self.decide(contexts, node, set, yes);
            node = node << 1 | u32::from(yes);
        }
        node - (1 << bits)
    }

    /// A whole number: sign and size in seven bits, then the bits behind the first one.
    fn number(&mut self, salt: u32, at: &Place, told: i64) -> i64 {
        let contexts = self.contexts(salt, at);
        let magnitude = told.unsigned_abs();
        let size = 64 - magnitude.leading_zeros();
        let place = mix(at.path, salt) >> 24;
        let class = self.symbol(&contexts, (SIZE, place), 7, size | u32::from(told < 0) << 6);
        // Seven bits hold sizes to 63; the one number of 64 bits is told as below zero of size 0.
        if class == 64 {
            return i64::MIN;
        }
        let (negative, size) = (64 <= class, class & 63);
        if size == 0 {
            return 0;
        }
        let mut value = 1u64;
        for bit in (0..size - 1).rev() {
            let done = size - 1 - bit;
            let node = if value < 1 << 12 {
                mix(class << 16 | value as u32, 77)
            } else {
                mix(class << 8 | bit, 78)
            };
            let set = (BITS + done.min(15) as usize, place);
            let yes = magnitude >> bit & 1 == 1;
            let yes = self.decide(&contexts, node, set, yes);
            value = value << 1 | u64::from(yes);
        }
        if negative {
            -(value as i64)
        } else {
            value as i64
        }
    }

    fn stop(&self) -> Walked<()> {
        if self.port.is_spent() {
            return Err(HandoverError::CannotUnpack);
        }
        if self.port.decisions_most() < self.decisions {
            return Err(HandoverError::TooLarge);
        }
        Ok(())
    }

    fn spend(&mut self, bytes: usize) -> Walked<()> {
        let left = self.bytes_left.checked_sub(bytes);
        self.bytes_left = left.ok_or(HandoverError::TooLarge)?;
        self.stop()
    }

    fn seen(&mut self, at: &Place, token: u32) {
        self.before = [token, self.before[0]];
        self.last[(at.column >> (32 - LAST_BITS)) as usize] = token;
    }

    /// One value; with it its token, where it is a scalar. `beside` are the lists beside it.
    fn item(
        &mut self,
        told: Option<&Item>,
        at: &Place,
        beside: &mut Columns,
        depth: usize,
    ) -> Walked<(Item, Option<u32>)> {
        if DEPTH_MOST < depth {
            return Err(HandoverError::NotReadable);
        }
        self.items_left = self
            .items_left
            .checked_sub(1)
            .ok_or(HandoverError::TooLarge)?;
        self.spend(1)?;
        let kind = match told {
            None | Some(Item::Int(_)) => 0,
            Some(Item::List(_)) => 1,
            Some(Item::Map(_)) => 2,
            Some(Item::Text(_)) => 3,
            Some(Item::Bytes(_)) => 4,
            Some(Item::Null) => 5,
            Some(Item::Bool(false)) => 6,
            Some(Item::Bool(true)) => 7,
        };
        let contexts = self.contexts(101, at);
        let kind = self.symbol(&contexts, (TYPE, mix(at.path, 101) >> 24), 3, kind);
        let (item, token) = match kind {
            0 => {
                let told = if let Some(Item::Int(value)) = told {
                    *value
                } else {
                    0
                };
                let value = self.number(102, at, told);
                (Item::Int(value), token(value))
            }
            1 => {
                let told = if let Some(Item::List(items)) = told {
                    Some(items)
                } else {
                    None
                };
                return Ok((self.list(told, at, beside, depth)?, None));
            }
            2 => {
                let told = if let Some(Item::Map(pairs)) = told {
                    Some(pairs)
                } else {
                    None
                };
                return Ok((self.map(told, at, depth)?, None));
            }
            3 => {
                let told = if let Some(Item::Text(text)) = told {
                    text
                } else {
                    ""
                };
                let text = self.text(told, at)?;
                let token = text.bytes().fold(7, |token, byte| mix(token, byte.into()));
                (Item::Text(text), token | 1 << 31)
            }
            4 => {
                let told = if let Some(Item::Bytes(bytes)) = told {
                    bytes.as_slice()
                } else {
                    &[]
                };
                (Item::Bytes(self.bytes(told, at)?), SOME_BYTES)
            }
            5 => (Item::Null, NULL),
            6 => (Item::Bool(false), NO),
            _ => (Item::Bool(true), YES),
        };
        self.seen(at, token);
        Ok((item, Some(token)))
    }

    fn count(&mut self, salt: u32, at: &Place, told: usize) -> Walked<usize> {
        let count = self.number(salt, at, told as i64);
        usize::try_from(count)
            .ok()
            .filter(|count| *count <= self.items_left.max(self.bytes_left))
            .ok_or(HandoverError::TooLarge)
    }

    fn list(
        &mut self,
        told: Option<&Vec<Item>>,
        at: &Place,
        beside: &mut Columns,
        depth: usize,
    ) -> Walked<Item> {
        let length = told.map_or(0, Vec::len);
        let same = match beside.all.last().map(Vec::len) {
            None => None,
            Some(before) => {
                let contexts = self.contexts(103, at);
                let set = (SAME, mix(at.path, 103) >> 24);
                let same = before == length;
                let same = self.decide(&contexts, 1, set, same);
                same.then_some(before)
            }
        };
        let count = match same {
            Some(count) => count,
            None => self.count(104, at, length)?,
        };
        let mut items = Vec::new();
        let mut tokens = Vec::new();
        let mut columns = Columns::default();
        for index in 0..count {
            let step = if count <= INDEX_MOST {
                index as u32
            } else {
                99
            };
            let [above, above_2] = beside.above(index);
            let inner = Place {
                path: mix(at.path, 200 + step),
                column: mix(at.column, 200),
                head: tokens.first().copied().unwrap_or(NONE),
                outer_head: at.head,
                above: above.unwrap_or(at.above),
                above_2: above_2.unwrap_or(at.above_2),
            };
            let told = told.and_then(|items| items.get(index));
            let (item, token) = self.item(told, &inner, &mut columns, depth + 1)?;
            tokens.push(token.unwrap_or(NONE));
            items.push(item);
        }
        beside.all.push(tokens);
        Ok(Item::List(items))
    }

    fn map(&mut self, told: Option<&Vec<(Item, Item)>>, at: &Place, depth: usize) -> Walked<Item> {
        let count = self.count(105, at, told.map_or(0, Vec::len))?;
        let mut pairs: Vec<(Item, Item)> = Vec::new();
        let mut key_before = NONE;
        let mut written_before = Vec::new();
        let mut head = NONE;
        let mut beside = Columns::default();
        for index in 0..count {
            let told = told.and_then(|pairs| pairs.get(index));
            let place = Place {
                path: mix(at.path, 300),
                column: mix(at.column, 300),
                head: key_before,
                outer_head: at.head,
                above: at.above,
                above_2: key_before,
            };
            let before = self.before;
            let (key, token) = self.item(
                told.map(|it| &it.0),
                &place,
                &mut Columns::default(),
                depth + 1,
            )?;
            self.before = before;
            key_before = token.ok_or(HandoverError::NotReadable)?;
            let written = cbor::to_bytes(&key)?;
            if 0 < index && written <= written_before {
                return Err(HandoverError::NotReadable);
            }
            written_before = written;
            let place = Place {
                path: mix(mix(at.path, 301), key_before),
                column: mix(mix(at.column, 301), key_before),
                head,
                outer_head: at.head,
                above: at.above,
                above_2: at.above_2,
            };
            let (value, token) = self.item(told.map(|it| &it.1), &place, &mut beside, depth + 1)?;
            if head == NONE {
                head = token.unwrap_or(NONE);
            }
            pairs.push((key, value));
        }
        Ok(Item::Map(pairs))
    }

    fn bytes(&mut self, told: &[u8], at: &Place) -> Walked<Vec<u8>> {
        let count = self.count(106, at, told.len())?;
        self.spend(count)?;
        let mut bytes = Vec::new();
        for index in 0..count {
            let before = bytes.last().copied().unwrap_or(0);
            let step = Place {
                path: mix(at.path, 400 + index.min(40) as u32),
                above: u32::from(before) + 16,
                ..*at
            };
            let contexts = self.contexts(107, &step);
            let told = told.get(index).copied().unwrap_or(0);
            let byte = self.symbol(&contexts, (BYTES, 0), 8, told.into());
            bytes.push(byte as u8);
            self.stop()?;
        }
        Ok(bytes)
    }

    fn text(&mut self, told: &str, at: &Place) -> Walked<String> {
        let mut written: Vec<u8> = Vec::new();
        let mut told = told.bytes().chain([END]);
        let (mut prefix, mut word, mut word_before) = (mix(at.path, 108), 0, 0);
        let mut orders = [0u32; 7];
        loop {
            let column = mix(at.column, 109);
            let contexts = [
                mix(prefix, 0),
                mix(orders[1], 1),
                mix(orders[2], 2),
                mix(orders[3], 3),
                mix(orders[4], 4),
                mix(orders[5], 5),
                mix(orders[6], 6),
                mix(word, 7),
                mix(mix(word, word_before), 8),
                mix(column, 9),
            ];
            let set = (TEXT, KNOWN);
            let byte = self.symbol(&contexts, set, 8, told.next().unwrap_or(END).into()) as u8;
            if byte == END {
                break;
            }
            self.spend(1)?;
            written.push(byte);
            prefix = mix(prefix, byte.into());
            for (order, last_few) in orders.iter_mut().enumerate().skip(1) {
                let from = written.len().saturating_sub(order);
                *last_few = written[from..]
                    .iter()
                    .fold(order as u32, |hash, byte| mix(hash, u32::from(*byte) + 1));
            }
            if byte.is_ascii_alphabetic() || 128 <= byte {
                word = mix(word, byte.to_ascii_lowercase().into());
            } else if word != 0 {
                (word_before, word) = (word, 0);
            }
        }
        String::from_utf8(written).map_err(|_| HandoverError::NotReadable)
    }
}
