INSERT INTO entry (visit, seq, at_ms, utc_ms, offset_min, kind, body)
SELECT number, ?2, ?3, ?4, ?5, ?6, ?7 FROM visit WHERE id = ?1
