-- The newest visit of the pair that is not marked yet: an amendment before what it amends.
UPDATE visit SET leaves = 1
WHERE number = (SELECT max(number) FROM visit WHERE pair = ?1 AND leaves = 0)
