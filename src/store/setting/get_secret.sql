SELECT bytes FROM key_material WHERE name = ?1
