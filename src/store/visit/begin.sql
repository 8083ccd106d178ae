INSERT INTO visit (id, pair, began_utc_ms, began_offset_min, specialist, replaces)
VALUES (?1, ?2, ?3, ?4, ?5, ?6)
