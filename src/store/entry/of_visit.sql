SELECT e.seq, e.at_ms, e.utc_ms, e.offset_min, e.kind, e.body
FROM visit AS v
JOIN entry AS e ON e.visit = v.number
WHERE v.id = ?1
ORDER BY e.seq
