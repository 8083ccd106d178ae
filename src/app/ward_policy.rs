//! Which ward policy counts on this tablet: a file in the data folder that is new and good is kept in
//! the store and counts from then on; one that is wrong changes nothing, and that is told.
//!
//! Judges nothing and holds no threshold.

use std::path::Path;

use crate::fault;
use crate::findings::{Policy, PolicyError};
use crate::store::{Store, StoreError};
use crate::words::Words;

/// The file that is looked for in the data folder at each start.
pub const FILE: &str = "ward-policy.toml";
/// The setting under which the text of the policy that counts is kept.
const SETTING: &str = "ward_policy";

/// Why a policy's file was not taken up.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
pub enum NotTakenUp {
    /// It cannot be read as text.
    #[error("the file cannot be read as text")]
    Unreadable,
    /// It is wrong.
    #[error(transparent)]
    Wrong(#[from] PolicyError),
}

/// The policy that counts, and what to tell of a file that was not taken up.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Counting {
    /// The policy.
    pub policy: Policy,
    /// Why the file is not it.
    pub refused: Option<NotTakenUp>,
}

/// Takes up the data folder's policy file, if there is one.
///
/// # Errors
/// The store's; a wrong file is no error.
pub fn at_start(store: &Store, data: &Path) -> Result<Counting, StoreError> {
    let kept = store.setting(SETTING)?;
    let refused = match in_folder(data) {
        Some(Ok((policy, text))) => {
            if kept.as_deref() != Some(text.as_str()) {
                store.set_setting(SETTING, &text)?;
            }
            return Ok(Counting {
                policy,
                refused: None,
            });
        }
        Some(Err(refused)) => Some(refused),
        None => None,
    };
    // What was kept was good when it was kept; should a later version refuse it, that is told, too.
    Ok(match kept.as_deref().map(Policy::from_toml) {
        None => Counting {
            policy: Policy::built_in(),
            refused,
        },
        Some(Ok(policy)) => Counting { policy, refused },
        Some(Err(error)) => Counting {
            policy: Policy::built_in(),
            refused: refused.or_else(|| Some(error.into())),
        },
    })
}

/// The policy of the data folder's file and its text, if there is a file.
fn in_folder(data: &Path) -> Option<Result<(Policy, String), NotTakenUp>> {
    let text = match std::fs::read(data.join(FILE)) {
        Err(error) if error.kind() == std::io::ErrorKind::NotFound => return None,
        Err(_) => Err(NotTakenUp::Unreadable),
        Ok(bytes) => String::from_utf8(bytes).map_err(|_| NotTakenUp::Unreadable),
    };
    Some(text.and_then(|text| Ok((Policy::from_toml(&text)?, text))))
}

/// What to tell of a file that was not taken up, with the policy that counts instead.
pub fn told(counting: &Counting, words: &Words) -> Option<String> {
    let why = match counting.refused.as_ref()? {
        NotTakenUp::Unreadable => words.say("settings-policy-unreadable"),
        NotTakenUp::Wrong(error) => fault::policy(error, words).to_string(),
    };
    let mark = counting.policy.mark();
    let counts = [
        ("file", FILE.into()),
        ("why", why.into()),
        ("name", mark.name.into()),
        ("version", mark.version.into()),
    ];
    Some(words.say_with("settings-policy-refused", &counts))
}
