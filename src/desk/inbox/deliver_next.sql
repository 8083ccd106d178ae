-- The first record that is due, and no earlier record of its visit or of the visit that it amends
-- is still waiting: a place gets the versions of a visit in their order.
SELECT d.record
FROM delivery AS d
JOIN record AS r ON r.number = d.record
WHERE d.place = ?1 AND d.state = 'waiting' AND d.due_utc_ms <= ?2
    AND NOT EXISTS (
        SELECT 1
        FROM record AS o
        JOIN delivery AS e ON e.place = ?1 AND e.record = o.number
        WHERE o.visit IN (r.visit, r.replaces) AND o.number < r.number AND e.state = 'waiting'
    )
ORDER BY d.record
LIMIT 1
