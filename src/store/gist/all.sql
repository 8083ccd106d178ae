-- Every visit that no amendment replaces, each pair's earliest first, with its gist where it holds.
SELECT v.id, v.pair, coalesce(e.seq, 0), g.body
FROM visit AS v
LEFT JOIN entry AS e
    ON e.visit = v.number AND e.seq = (SELECT max(seq) FROM entry WHERE visit = v.number)
LEFT JOIN gist AS g ON g.visit = v.number AND g.seq = coalesce(e.seq, 0)
WHERE NOT EXISTS (SELECT 1 FROM visit AS a WHERE a.replaces = v.id)
ORDER BY v.pair, v.began_utc_ms, v.number
