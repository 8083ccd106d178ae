DELETE FROM visit WHERE pair = ?1
