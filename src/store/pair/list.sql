SELECT
    id, mother_id, bed, initials, mother_number, baby_number, birth_utc_ms, birth_offset_min, sex,
    gestation_days, birth_weight_g, way_of_birth, babies, risk_notes, reasons, language
FROM pair
ORDER BY bed, initials, id
