INSERT INTO key_material (name, bytes) VALUES (?1, ?2)
ON CONFLICT (name) DO UPDATE SET bytes = excluded.bytes
