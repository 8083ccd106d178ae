INSERT INTO record_words (number, words) VALUES (?1, ?2)
