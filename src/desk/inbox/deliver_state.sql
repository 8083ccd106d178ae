SELECT state, tries FROM delivery WHERE place = ?1 AND record = ?2
