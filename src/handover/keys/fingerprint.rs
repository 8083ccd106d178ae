//! Six short words that name a key, to be read aloud and compared on both sides.
//!
//! A list of 512 plain words, so six words carry 54 bits. The same words in every language: they
//! are compared, not understood.

use sha2::{Digest, Sha256};

/// How many words name a key.
pub const FINGERPRINT_WORDS: usize = 6;

const LIST: &str = include_str!("words.txt");
const LIST_LEN: usize = 512;
/// Bits that one word carries.
const BITS: usize = 9;

/// The words of a public key.
pub(super) fn words_of(kind: &str, public: &[u8; 32]) -> [&'static str; FINGERPRINT_WORDS] {
    let digest = Sha256::new()
        .chain_update("words for ")
        .chain_update(kind)
        .chain_update(public)
        .finalize();
    let list: Vec<&'static str> = LIST.split_whitespace().collect();
    debug_assert_eq!(list.len(), LIST_LEN);
    std::array::from_fn(|word| {
        let place = (0..BITS).fold(0usize, |place, at| {
            let bit = word * BITS + at;
            place << 1 | usize::from(digest[bit / 8] >> (7 - bit % 8) & 1)
        });
        list[place % list.len()]
    })
}
