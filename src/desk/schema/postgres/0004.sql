-- Version 4: which version of its visit a record holds, so that the one that stands is known in
-- whatever order they arrived. Taken from the record; of older ones it is written at the next start.

CREATE TABLE record_version (
    number BIGINT PRIMARY KEY REFERENCES record (number),
    -- The same for a visit and all its amendments.
    occasion BYTEA NOT NULL CHECK (length(occasion) = 16),
    -- When it was signed, by the tablet's clock; nothing if it was not.
    signed_utc_ms BIGINT,
    -- When its last entry was made, in milliseconds of the visit.
    last_ms BIGINT NOT NULL CHECK (0 <= last_ms)
);

CREATE INDEX record_version_of ON record_version (occasion, number);
