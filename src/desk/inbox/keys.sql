SELECT
    k.secret, k.made_utc_ms, k.made_offset_min, r.retired_utc_ms, r.retired_offset_min
FROM desk_key AS k
LEFT JOIN desk_key_retired AS r ON r.kid = k.kid
ORDER BY k.number
