//! Settings and key material by name. What a name means is known to whoever asks.

use rusqlite::OptionalExtension;

use super::{Store, StoreError};

impl Store {
    /// A setting, if it was ever set.
    ///
    /// # Errors
    /// As [`StoreError`].
    pub fn setting(&self, name: &str) -> Result<Option<String>, StoreError> {
        Ok(self
            .connection
            .prepare_cached(include_str!("get.sql"))?
            .query_row([name], |row| row.get(0))
            .optional()?)
    }

    /// Sets a setting.
    ///
    /// # Errors
    /// As [`StoreError`].
    pub fn set_setting(&self, name: &str, value: &str) -> Result<(), StoreError> {
        self.connection
            .prepare_cached(include_str!("set.sql"))?
            .execute([name, value])?;
        Ok(())
    }

    /// Key material, if it was ever kept.
    ///
    /// # Errors
    /// As [`StoreError`].
    pub fn secret(&self, name: &str) -> Result<Option<Vec<u8>>, StoreError> {
        Ok(self
            .connection
            .prepare_cached(include_str!("get_secret.sql"))?
            .query_row([name], |row| row.get(0))
            .optional()?)
    }

    /// Keeps key material under a name; what was there is overwritten on the disk.
    ///
    /// # Errors
    /// As [`StoreError`].
    pub fn set_secret(&self, name: &str, bytes: &[u8]) -> Result<(), StoreError> {
        self.connection
            .prepare_cached(include_str!("set_secret.sql"))?
            .execute((name, bytes))?;
        Ok(())
    }

    /// The names under which key material is kept that begin so, in order (as `desk-` for the
    /// desks' public keys).
    ///
    /// # Errors
    /// As [`StoreError`].
    pub fn secret_names(&self, beginning: &str) -> Result<Vec<String>, StoreError> {
        let mut statement = self
            .connection
            .prepare_cached(include_str!("secret_names.sql"))?;
        let names = statement.query_map([beginning], |row| row.get(0))?;
        Ok(names.collect::<Result<_, _>>()?)
    }
}
