SELECT public, name FROM tablet WHERE kid = ?1
