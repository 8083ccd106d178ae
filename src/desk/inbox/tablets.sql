SELECT
    public, name, enrolled_utc_ms, enrolled_offset_min, struck_utc_ms, struck_offset_min
FROM tablet
ORDER BY enrolled_utc_ms, kid
