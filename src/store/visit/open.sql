SELECT id FROM visit WHERE signed = 0 ORDER BY number DESC LIMIT 1
