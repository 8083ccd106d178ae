SELECT occasion FROM record_version WHERE number = ?1
