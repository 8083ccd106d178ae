-- Version 2. Never edited once released: a change is a new script.

-- What was worked out from a visit's journal, so that the Ward list reads no journals. It may be
-- thrown away at any time and made again.
CREATE TABLE gist (
    visit INTEGER NOT NULL PRIMARY KEY REFERENCES visit (number),
    -- The visit's last entry when it was made; with any later one it no longer holds.
    seq INTEGER NOT NULL CHECK (seq BETWEEN 0 AND 4294967295),
    body TEXT NOT NULL CHECK (json_valid(body))
) STRICT;
