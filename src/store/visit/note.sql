UPDATE visit
SET signed = ?2, receipt = ?3, next_look_utc_ms = ?4, next_look_offset_min = ?5
WHERE id = ?1
