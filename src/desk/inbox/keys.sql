SELECT secret, made_utc_ms, made_offset_min FROM desk_key ORDER BY number
