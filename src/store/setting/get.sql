SELECT value FROM setting WHERE name = ?1
