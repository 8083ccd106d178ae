INSERT INTO tablet (kid, public, name, enrolled_utc_ms, enrolled_offset_min)
VALUES (?1, ?2, ?3, ?4, ?5)
ON CONFLICT (kid) DO UPDATE SET
    name = excluded.name,
    -- One that was struck off is enrolled anew.
    enrolled_utc_ms = CASE
        WHEN tablet.struck_utc_ms IS NULL THEN tablet.enrolled_utc_ms
        ELSE excluded.enrolled_utc_ms
    END,
    enrolled_offset_min = CASE
        WHEN tablet.struck_utc_ms IS NULL THEN tablet.enrolled_offset_min
        ELSE excluded.enrolled_offset_min
    END,
    struck_utc_ms = NULL,
    struck_offset_min = NULL
