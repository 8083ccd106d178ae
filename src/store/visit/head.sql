SELECT
    v.id, v.pair, v.began_utc_ms, v.began_offset_min, v.specialist, v.replaces, v.signed, v.receipt,
    v.next_look_utc_ms, v.next_look_offset_min, e.utc_ms, e.offset_min
FROM visit AS v
LEFT JOIN entry AS e
    ON e.visit = v.number AND e.seq = (SELECT max(seq) FROM entry WHERE visit = v.number)
WHERE v.pair = ?1
ORDER BY v.began_utc_ms, v.number
