UPDATE tablet SET struck_utc_ms = ?2, struck_offset_min = ?3
WHERE kid = ?1 AND struck_utc_ms IS NULL
