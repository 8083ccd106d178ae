INSERT INTO tablet (kid, public, name, enrolled_utc_ms, enrolled_offset_min)
VALUES (?1, ?2, ?3, ?4, ?5)
ON CONFLICT (kid) DO UPDATE SET name = excluded.name
