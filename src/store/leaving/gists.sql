DELETE FROM gist WHERE visit IN (SELECT number FROM visit WHERE pair = ?1)
