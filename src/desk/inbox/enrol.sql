INSERT INTO tablet (kid, public, name, enrolled_utc_ms, enrolled_offset_min)
VALUES (?1, ?2, ?3, ?4, ?5)
ON CONFLICT (kid) DO UPDATE SET
    name = excluded.name,
    -- One that was struck off is enrolled anew.
    enrolled_utc_ms = iif(
        struck_utc_ms IS NULL, enrolled_utc_ms, excluded.enrolled_utc_ms
    ),
    enrolled_offset_min = iif(
        struck_utc_ms IS NULL, enrolled_offset_min, excluded.enrolled_offset_min
    ),
    struck_utc_ms = NULL,
    struck_offset_min = NULL
