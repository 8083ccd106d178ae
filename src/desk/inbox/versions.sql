SELECT r.number, r.visit, r.replaces, v.signed_utc_ms, v.last_ms
FROM record_version AS v
JOIN record AS r ON r.number = v.number
WHERE v.occasion = ?1
