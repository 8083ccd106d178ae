SELECT id, pair, began_utc_ms, began_offset_min, specialist, replaces
FROM visit
WHERE id = ?1
