INSERT INTO record_version (number, occasion, signed_utc_ms, last_ms) VALUES (?1, ?2, ?3, ?4)
ON CONFLICT (number) DO NOTHING
