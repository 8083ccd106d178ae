DELETE FROM entry WHERE visit IN (SELECT number FROM visit WHERE pair = ?1)
