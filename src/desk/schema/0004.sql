-- Version 4: which version of its visit a record holds, so that the one that stands is known in
-- whatever order they arrived. Taken from the record; of older ones it is written at the next start.

CREATE TABLE record_version (
    number INTEGER PRIMARY KEY REFERENCES record (number),
    -- The same for a visit and all its amendments.
    occasion BLOB NOT NULL CHECK (length(occasion) = 16),
    -- When it was signed, by the tablet's clock; nothing if it was not.
    signed_utc_ms INTEGER,
    -- When its last entry was made, in milliseconds of the visit.
    last_ms INTEGER NOT NULL CHECK (0 <= last_ms)
) STRICT;

CREATE INDEX record_version_of ON record_version (occasion, number);
