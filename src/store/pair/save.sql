INSERT INTO pair (
    id, mother_id, bed, initials, mother_number, baby_number, birth_utc_ms, birth_offset_min, sex,
    gestation_days, birth_weight_g, way_of_birth, babies, risk_notes, reasons, language
)
VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7, ?8, ?9, ?10, ?11, ?12, ?13, ?14, ?15, ?16)
ON CONFLICT (id) DO UPDATE SET
    mother_id = excluded.mother_id,
    bed = excluded.bed,
    initials = excluded.initials,
    mother_number = excluded.mother_number,
    baby_number = excluded.baby_number,
    birth_utc_ms = excluded.birth_utc_ms,
    birth_offset_min = excluded.birth_offset_min,
    sex = excluded.sex,
    gestation_days = excluded.gestation_days,
    birth_weight_g = excluded.birth_weight_g,
    way_of_birth = excluded.way_of_birth,
    babies = excluded.babies,
    risk_notes = excluded.risk_notes,
    reasons = excluded.reasons,
    language = excluded.language
