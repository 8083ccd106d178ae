SELECT name FROM key_material WHERE substr(name, 1, length(?1)) = ?1 ORDER BY name
