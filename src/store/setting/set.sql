INSERT INTO setting (name, value) VALUES (?1, ?2)
ON CONFLICT (name) DO UPDATE SET value = excluded.value
