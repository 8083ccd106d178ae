SELECT opened, desk, sealed_sha256, transfer FROM record WHERE number = ?1
