INSERT INTO desk_key (kid, secret, made_utc_ms, made_offset_min) VALUES (?1, ?2, ?3, ?4)
ON CONFLICT (kid) DO NOTHING
