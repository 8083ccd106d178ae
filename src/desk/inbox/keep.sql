INSERT INTO record (
    sealed_sha256, transfer, sealed, opened, receipt, tablet, desk, arrived_utc_ms,
    arrived_offset_min, visit, replaces, began_utc_ms, began_offset_min, bed, initials, specialist,
    is_signed, reviews_now
)
VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7, ?8, ?9, ?10, ?11, ?12, ?13, ?14, ?15, ?16, ?17, ?18)
ON CONFLICT (sealed_sha256) DO NOTHING
RETURNING number
