-- Every pair, the visit that counts for it now (the one begun last, an amendment after what it
-- amends), and how many of its signed visits still wait for a receipt (one that a signed
-- amendment replaces waits no more).
SELECT
    p.id, p.mother_id, p.bed, p.initials, p.mother_number, p.baby_number, p.birth_utc_ms,
    p.birth_offset_min, p.sex, p.gestation_days, p.birth_weight_g, p.way_of_birth, p.babies,
    p.risk_notes, p.reasons, p.language,
    v.id, v.pair, v.began_utc_ms, v.began_offset_min, v.specialist, v.replaces, v.signed, v.receipt,
    v.next_look_utc_ms, v.next_look_offset_min, e.utc_ms, e.offset_min,
    (
        SELECT count(*) FROM visit AS w
        WHERE w.pair = p.id AND w.signed = 1 AND w.receipt = 0
            AND NOT EXISTS (SELECT 1 FROM visit AS a WHERE a.replaces = w.id AND a.signed = 1)
    ) AS waiting
FROM pair AS p
LEFT JOIN visit AS v ON v.number = (
    SELECT number FROM visit WHERE pair = p.id ORDER BY began_utc_ms DESC, number DESC LIMIT 1
)
LEFT JOIN entry AS e
    ON e.visit = v.number AND e.seq = (SELECT max(seq) FROM entry WHERE visit = v.number)
ORDER BY v.next_look_utc_ms IS NULL, v.next_look_utc_ms, p.bed, p.initials, p.id
