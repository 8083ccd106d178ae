//! Ids of things that are kept: made outside, passed in, never reused.

use serde::{Deserialize, Serialize};
use uuid::Uuid;

macro_rules! id {
    ($(#[$meta:meta])* $name:ident) => {
        $(#[$meta])*
        #[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord, Serialize, Deserialize)]
        #[serde(transparent)]
        pub struct $name(Uuid);

        impl $name {
            /// Wraps an id that was made outside.
            pub const fn of(uuid: Uuid) -> Self {
                Self(uuid)
            }

            /// Makes a random (version 4) id from 16 random bytes passed in.
            pub fn from_random(bytes: [u8; 16]) -> Self {
                Self(uuid::Builder::from_random_bytes(bytes).into_uuid())
            }

            /// The id as it is.
            pub const fn uuid(self) -> Uuid {
                self.0
            }
        }

        impl std::fmt::Display for $name {
            fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
                self.0.fmt(f)
            }
        }
    };
}

id!(
    /// One mother and one baby.
    PairId
);
id!(
    /// One visit; an amendment has an id of its own.
    VisitId
);
id!(
    /// One tablet.
    TabletId
);
