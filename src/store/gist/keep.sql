INSERT INTO gist (visit, seq, body)
SELECT number, ?2, ?3 FROM visit WHERE id = ?1
ON CONFLICT (visit) DO UPDATE SET seq = excluded.seq, body = excluded.body
