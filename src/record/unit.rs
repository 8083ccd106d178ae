//! Weights, volumes and temperatures with their units in the type.

use serde::{Deserialize, Serialize};

use super::RecordError;
use super::error::in_range;

macro_rules! unit {
    ($(#[$meta:meta])* $name:ident, $inner:ty, $what:literal, $low:literal, $high:literal) => {
        $(#[$meta])*
        #[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord, Serialize, Deserialize)]
        #[serde(try_from = "i64", into = "i64")]
        pub struct $name($inner);

        impl $name {
            #[doc = concat!("A value from ", stringify!($low), " to ", stringify!($high), ".")]
            ///
            /// # Errors
            /// Outside that range.
            pub fn new(value: i64) -> Result<Self, RecordError> {
                in_range($what, value, $low, $high)?;
                <$inner>::try_from(value).map(Self).map_err(|_| RecordError::OutOfRange {
                    what: $what, given: value, low: $low, high: $high,
                })
            }

            /// The number alone.
            pub const fn value(self) -> $inner {
                self.0
            }
        }

        impl TryFrom<i64> for $name {
            type Error = RecordError;
            fn try_from(value: i64) -> Result<Self, RecordError> {
                Self::new(value)
            }
        }

        impl From<$name> for i64 {
            fn from(value: $name) -> Self {
                value.0.into()
            }
        }
    };
}

unit!(
    /// A weight in whole grams. The range is what a ward scale can show, not what is likely:
    /// an unlikely weight is asked about, not refused.
    Grams, u32, "weight in grams", 1, 30_000
);
unit!(
    /// A volume in whole millilitres.
    Millilitres, u32, "volume in millilitres", 0, 5_000
);
unit!(
    /// The step of a scale in whole grams.
    ScaleStep, u16, "scale step in grams", 1, 200
);
unit!(
    /// A body temperature in tenths of a degree Celsius.
    TenthsCelsius, u16, "temperature in tenths of a degree Celsius", 200, 450
);
