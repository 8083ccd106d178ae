-- Version 1 of the inbox. Never edited once released: a change is a new script.

-- Old keys stay, so that records sealed to them can still be opened.
CREATE TABLE desk_key (
    number INTEGER PRIMARY KEY,
    kid BLOB NOT NULL UNIQUE CHECK (length(kid) = 8),
    secret BLOB NOT NULL CHECK (length(secret) = 32),
    made_utc_ms INTEGER NOT NULL CHECK (made_utc_ms BETWEEN 0 AND 7258118399999),
    made_offset_min INTEGER NOT NULL CHECK (made_offset_min BETWEEN -840 AND 840)
) STRICT;

CREATE TABLE tablet (
    kid BLOB NOT NULL PRIMARY KEY CHECK (length(kid) = 8),
    public BLOB NOT NULL CHECK (length(public) = 32),
    name TEXT NOT NULL CHECK (length(name) BETWEEN 1 AND 40),
    enrolled_utc_ms INTEGER NOT NULL CHECK (enrolled_utc_ms BETWEEN 0 AND 7258118399999),
    enrolled_offset_min INTEGER NOT NULL CHECK (enrolled_offset_min BETWEEN -840 AND 840)
) STRICT, WITHOUT ROWID;

CREATE TABLE record (
    number INTEGER PRIMARY KEY AUTOINCREMENT,
    sealed_sha256 BLOB NOT NULL UNIQUE CHECK (length(sealed_sha256) = 32),
    transfer INTEGER NOT NULL CHECK (transfer BETWEEN 0 AND 4294967295),
    -- As it came.
    sealed BLOB NOT NULL CHECK (length(sealed) BETWEEN 1 AND 60000),
    -- As it was opened: the record with the tablet's signature, readable without the desk's key.
    opened BLOB NOT NULL CHECK (length(opened) BETWEEN 1 AND 60000),
    receipt TEXT NOT NULL CHECK (length(receipt) = 10 AND receipt NOT GLOB '*[^0-9]*'),
    tablet BLOB NOT NULL REFERENCES tablet (kid),
    desk BLOB NOT NULL REFERENCES desk_key (kid),
    arrived_utc_ms INTEGER NOT NULL CHECK (arrived_utc_ms BETWEEN 0 AND 7258118399999),
    arrived_offset_min INTEGER NOT NULL CHECK (arrived_offset_min BETWEEN -840 AND 840),
    -- Taken from the record, for the list.
    visit BLOB NOT NULL CHECK (length(visit) = 16),
    replaces BLOB CHECK (length(replaces) = 16),
    began_utc_ms INTEGER NOT NULL CHECK (began_utc_ms BETWEEN 0 AND 7258118399999),
    began_offset_min INTEGER NOT NULL CHECK (began_offset_min BETWEEN -840 AND 840),
    bed TEXT NOT NULL CHECK (length(bed) BETWEEN 1 AND 40),
    initials TEXT NOT NULL CHECK (length(initials) BETWEEN 1 AND 40),
    specialist TEXT NOT NULL CHECK (length(specialist) BETWEEN 1 AND 40),
    is_signed INTEGER NOT NULL CHECK (is_signed IN (0, 1)),
    -- Findings that ask for a medical review now.
    reviews_now INTEGER NOT NULL CHECK (0 <= reviews_now)
) STRICT;

CREATE INDEX record_of_visit ON record (visit, number);
CREATE INDEX record_replaces ON record (replaces, number) WHERE replaces IS NOT NULL;

CREATE TRIGGER record_is_never_changed BEFORE UPDATE ON record
BEGIN SELECT RAISE(ABORT, 'a record is never changed'); END;

CREATE TRIGGER record_is_never_deleted BEFORE DELETE ON record
BEGIN SELECT RAISE(ABORT, 'a record is never deleted'); END;

CREATE TRIGGER desk_key_is_never_changed BEFORE UPDATE ON desk_key
BEGIN SELECT RAISE(ABORT, 'a key is never changed'); END;

CREATE TRIGGER desk_key_is_never_deleted BEFORE DELETE ON desk_key
BEGIN SELECT RAISE(ABORT, 'a key is never deleted'); END;

CREATE TRIGGER tablet_key_stays BEFORE UPDATE OF kid, public ON tablet
BEGIN SELECT RAISE(ABORT, 'a tablet keeps its key'); END;
