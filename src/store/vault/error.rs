//! What can go wrong with the lock. Data only; the words come at the edge.

/// Why the file's key was not given, or the PIN not set.
#[derive(Debug, Clone, Copy, PartialEq, Eq, thiserror::Error)]
pub enum VaultError {
    /// What was typed does not open it.
    #[error("it does not open; wait {wait_ms} ms")]
    Wrong {
        /// How long nothing can be tried now, in milliseconds; 0 where it can at once.
        wait_ms: u64,
    },
    /// It is too early to try again; nothing was tried.
    #[error("too early by {wait_ms} ms")]
    Wait {
        /// How long still, in milliseconds.
        wait_ms: u64,
    },
    /// This device's secret is gone, without which no PIN opens; the rescue code does.
    #[error("the device's secret is gone")]
    DeviceGone,
    /// An encrypted database without its keys. It was left as it is.
    #[error("the keys are gone")]
    KeysGone,
    /// The keys cannot be read. They and the database were left as they are.
    #[error("the keys cannot be read")]
    KeysDamaged,
    /// The folder cannot be read or written to.
    #[error("the folder cannot be read or written to")]
    NoAccess,
    /// There is no room left.
    #[error("there is no room left on the disk")]
    Full,
    /// The system gave no random bytes.
    #[error("the system gave no random bytes")]
    NoRandom,
}

impl From<std::io::Error> for VaultError {
    fn from(error: std::io::Error) -> Self {
        match error.kind() {
            std::io::ErrorKind::StorageFull => Self::Full,
            _ => Self::NoAccess,
        }
    }
}

/// Why digits are no PIN.
#[derive(Debug, Clone, Copy, PartialEq, Eq, thiserror::Error)]
pub enum PinFault {
    /// Fewer than six digits, more than twelve, or something that is no digit.
    #[error("it does not have six to twelve digits")]
    Length,
    /// One that is tried first by whoever guesses: a run such as 123456, or of two digits only.
    #[error("it is too easily guessed")]
    Easy,
}
