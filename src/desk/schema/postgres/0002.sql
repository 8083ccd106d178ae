-- Version 2: keys that are no longer given out, tablets that are no longer taken from.

-- A retired key goes on opening what was sealed to it.
CREATE TABLE desk_key_retired (
    kid BYTEA NOT NULL PRIMARY KEY REFERENCES desk_key (kid),
    retired_utc_ms BIGINT NOT NULL CHECK (retired_utc_ms BETWEEN 0 AND 7258118399999),
    retired_offset_min BIGINT NOT NULL CHECK (retired_offset_min BETWEEN -840 AND 840)
);

CREATE TRIGGER desk_key_retired_stays BEFORE UPDATE OR DELETE OR TRUNCATE ON desk_key_retired
EXECUTE FUNCTION feedside_refuse();

-- When the tablet was struck off; nothing while it is enrolled.
ALTER TABLE tablet ADD COLUMN struck_utc_ms BIGINT
    CHECK (struck_utc_ms BETWEEN 0 AND 7258118399999);
ALTER TABLE tablet ADD COLUMN struck_offset_min BIGINT
    CHECK (struck_offset_min BETWEEN -840 AND 840);

-- Its records name it.
CREATE TRIGGER tablet_stays BEFORE DELETE OR TRUNCATE ON tablet
EXECUTE FUNCTION feedside_refuse();
