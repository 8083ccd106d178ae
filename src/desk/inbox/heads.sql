SELECT
    r.number, r.receipt, r.arrived_utc_ms, r.arrived_offset_min, r.visit, r.replaces,
    r.began_utc_ms, r.began_offset_min, r.bed, r.initials, r.specialist, r.is_signed,
    r.reviews_now, t.name,
    v.occasion, (SELECT count(*) FROM record_version WHERE occasion = v.occasion)
FROM record AS r
JOIN tablet AS t ON t.kid = r.tablet
LEFT JOIN record_version AS v ON v.number = r.number
