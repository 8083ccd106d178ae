SELECT number FROM record WHERE sealed_sha256 = ?1
