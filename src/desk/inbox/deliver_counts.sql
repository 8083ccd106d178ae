SELECT
    coalesce(sum(CASE WHEN state = 'waiting' THEN 1 ELSE 0 END), 0),
    min(CASE WHEN state = 'waiting' THEN due_utc_ms END),
    coalesce(sum(CASE WHEN state = 'sent' THEN 1 ELSE 0 END), 0),
    coalesce(sum(CASE WHEN state = 'dead' THEN 1 ELSE 0 END), 0)
FROM delivery
WHERE place = ?1
