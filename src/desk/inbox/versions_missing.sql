SELECT number FROM record
WHERE NOT EXISTS (SELECT 1 FROM record_version AS v WHERE v.number = record.number)
ORDER BY number
