INSERT INTO delivery (place, record, state, tries, due_utc_ms, changed_utc_ms)
SELECT ?1, r.number, 'waiting', 0, ?2, ?2
FROM record AS r
WHERE r.is_signed = 1
    AND NOT EXISTS (SELECT 1 FROM delivery AS d WHERE d.place = ?1 AND d.record = r.number)
ON CONFLICT (place, record) DO NOTHING
