UPDATE pair SET leaves = 1 WHERE id = ?1
