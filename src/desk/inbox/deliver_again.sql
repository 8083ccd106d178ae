UPDATE delivery SET state = 'waiting', tries = 0, due_utc_ms = ?2, changed_utc_ms = ?2
WHERE record = ?1 AND state = 'dead'
