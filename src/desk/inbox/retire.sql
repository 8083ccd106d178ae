INSERT INTO desk_key_retired (kid, retired_utc_ms, retired_offset_min) VALUES (?1, ?2, ?3)
ON CONFLICT (kid) DO NOTHING
