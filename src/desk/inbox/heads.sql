SELECT
    r.number, r.receipt, r.arrived_utc_ms, r.arrived_offset_min, r.visit, r.replaces,
    r.began_utc_ms, r.began_offset_min, r.bed, r.initials, r.specialist, r.is_signed,
    r.reviews_now, t.name,
    (SELECT max(number) FROM record WHERE visit = r.visit),
    (SELECT max(number) FROM record WHERE replaces = r.visit)
FROM record AS r
JOIN tablet AS t ON t.kid = r.tablet
