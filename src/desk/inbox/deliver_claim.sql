UPDATE delivery SET tries = tries + 1, due_utc_ms = ?4, changed_utc_ms = ?5
WHERE place = ?1 AND record = ?2 AND state = 'waiting' AND due_utc_ms <= ?3
RETURNING tries
