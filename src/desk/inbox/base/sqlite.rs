//! Statements in a SQLite file.

use rusqlite::types::{ToSqlOutput, ValueRef};
use rusqlite::{Connection, ToSql, params_from_iter};

use super::{Cells, Value};
use crate::store::StoreError;

impl ToSql for Value {
    fn to_sql(&self) -> rusqlite::Result<ToSqlOutput<'_>> {
        Ok(ToSqlOutput::Borrowed(match self {
            Self::Null => ValueRef::Null,
            Self::Whole(it) => ValueRef::Integer(*it),
            Self::Text(it) => ValueRef::Text(it.as_bytes()),
            Self::Bytes(it) => ValueRef::Blob(it),
        }))
    }
}

pub(super) fn change(
    connection: &Connection,
    sql: &str,
    values: &[Value],
) -> Result<u64, StoreError> {
    let changed = connection
        .prepare_cached(sql)?
        .execute(params_from_iter(values))?;
    Ok(u64::try_from(changed).unwrap_or(u64::MAX))
}

pub(super) fn rows(
    connection: &Connection,
    sql: &str,
    values: &[Value],
) -> Result<Vec<Cells>, StoreError> {
    let mut statement = connection.prepare_cached(sql)?;
    let columns = statement.column_count();
    let mut rows = statement.query(params_from_iter(values))?;
    let mut all = Vec::new();
    while let Some(row) = rows.next()? {
        let mut cells = Vec::with_capacity(columns);
        for column in 0..columns {
            cells.push(match row.get_ref(column)? {
                ValueRef::Null => Value::Null,
                ValueRef::Integer(it) => Value::Whole(it),
                ValueRef::Blob(it) => Value::Bytes(it.to_vec()),
                ValueRef::Text(it) => Value::Text(String::from_utf8_lossy(it).into_owned()),
                // No table of ours has one.
                ValueRef::Real(_) => return Err(StoreError::Refused),
            });
        }
        all.push(Cells::new(cells));
    }
    Ok(all)
}
