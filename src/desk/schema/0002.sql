-- Version 2 of the inbox: keys that are no longer given out, tablets that are no longer taken from.

-- A retired key goes on opening what was sealed to it.
CREATE TABLE desk_key_retired (
    kid BLOB NOT NULL PRIMARY KEY REFERENCES desk_key (kid),
    retired_utc_ms INTEGER NOT NULL CHECK (retired_utc_ms BETWEEN 0 AND 7258118399999),
    retired_offset_min INTEGER NOT NULL CHECK (retired_offset_min BETWEEN -840 AND 840)
) STRICT, WITHOUT ROWID;

CREATE TRIGGER desk_key_retired_is_never_changed BEFORE UPDATE ON desk_key_retired
BEGIN SELECT RAISE(ABORT, 'a retired key stays retired'); END;

CREATE TRIGGER desk_key_retired_is_never_deleted BEFORE DELETE ON desk_key_retired
BEGIN SELECT RAISE(ABORT, 'a retired key stays retired'); END;

-- When the tablet was struck off; nothing while it is enrolled.
ALTER TABLE tablet ADD COLUMN struck_utc_ms INTEGER
    CHECK (struck_utc_ms BETWEEN 0 AND 7258118399999);
ALTER TABLE tablet ADD COLUMN struck_offset_min INTEGER
    CHECK (struck_offset_min BETWEEN -840 AND 840);

-- Its records name it.
CREATE TRIGGER tablet_is_never_deleted BEFORE DELETE ON tablet
BEGIN SELECT RAISE(ABORT, 'a tablet is struck off, not deleted'); END;
