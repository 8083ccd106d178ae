SELECT record FROM delivery WHERE place = ?1 AND record = ?2 AND state = 'sent'
