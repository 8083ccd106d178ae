-- Only by the sender that holds it: another one that took it over counted one more try.
UPDATE delivery
SET state = ?4, due_utc_ms = ?5, problem = ?6, given = ?7, changed_utc_ms = ?8
WHERE place = ?1 AND record = ?2 AND tries = ?3 AND state = 'waiting'
