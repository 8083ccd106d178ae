-- The first record behind a number that is due.
SELECT record, tries
FROM delivery
WHERE place = ?1 AND state = 'waiting' AND due_utc_ms <= ?2 AND ?3 < record
ORDER BY record
LIMIT 1
