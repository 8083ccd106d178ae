SELECT d.place, d.record, d.state, d.tries, d.due_utc_ms, d.problem, d.given
FROM delivery AS d
WHERE d.state IN ('waiting', 'dead')
ORDER BY d.place, d.record
