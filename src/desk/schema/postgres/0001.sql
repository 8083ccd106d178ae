-- The inbox on a PostgreSQL server, as of version 1: the same tables and columns as in the file.
-- Never edited once released: a change is a new script.

CREATE TABLE feedside_inbox (version BIGINT NOT NULL);
INSERT INTO feedside_inbox (version) VALUES (0);

-- Old keys stay, so that records sealed to them can still be opened.
CREATE TABLE desk_key (
    number BIGINT GENERATED ALWAYS AS IDENTITY PRIMARY KEY,
    kid BYTEA NOT NULL UNIQUE CHECK (length(kid) = 8),
    secret BYTEA NOT NULL CHECK (length(secret) = 32),
    made_utc_ms BIGINT NOT NULL CHECK (made_utc_ms BETWEEN 0 AND 7258118399999),
    made_offset_min BIGINT NOT NULL CHECK (made_offset_min BETWEEN -840 AND 840)
);

CREATE TABLE tablet (
    kid BYTEA NOT NULL PRIMARY KEY CHECK (length(kid) = 8),
    public BYTEA NOT NULL CHECK (length(public) = 32),
    name TEXT NOT NULL CHECK (length(name) BETWEEN 1 AND 40),
    enrolled_utc_ms BIGINT NOT NULL CHECK (enrolled_utc_ms BETWEEN 0 AND 7258118399999),
    enrolled_offset_min BIGINT NOT NULL CHECK (enrolled_offset_min BETWEEN -840 AND 840)
);

CREATE TABLE record (
    -- Rising, but a number may be left out where two desks were given the same record at once.
    number BIGINT GENERATED ALWAYS AS IDENTITY PRIMARY KEY,
    sealed_sha256 BYTEA NOT NULL UNIQUE CHECK (length(sealed_sha256) = 32),
    transfer BIGINT NOT NULL CHECK (transfer BETWEEN 0 AND 4294967295),
    -- As it came.
    sealed BYTEA NOT NULL CHECK (length(sealed) BETWEEN 1 AND 60000),
    -- As it was opened: the record with the tablet's signature, readable without the desk's key.
    opened BYTEA NOT NULL CHECK (length(opened) BETWEEN 1 AND 60000),
    receipt TEXT NOT NULL CHECK (receipt ~ '^[0-9]{10}$'),
    tablet BYTEA NOT NULL REFERENCES tablet (kid),
    desk BYTEA NOT NULL REFERENCES desk_key (kid),
    arrived_utc_ms BIGINT NOT NULL CHECK (arrived_utc_ms BETWEEN 0 AND 7258118399999),
    arrived_offset_min BIGINT NOT NULL CHECK (arrived_offset_min BETWEEN -840 AND 840),
    -- Taken from the record, for the list.
    visit BYTEA NOT NULL CHECK (length(visit) = 16),
    replaces BYTEA CHECK (length(replaces) = 16),
    began_utc_ms BIGINT NOT NULL CHECK (began_utc_ms BETWEEN 0 AND 7258118399999),
    began_offset_min BIGINT NOT NULL CHECK (began_offset_min BETWEEN -840 AND 840),
    bed TEXT NOT NULL CHECK (length(bed) BETWEEN 1 AND 40),
    initials TEXT NOT NULL CHECK (length(initials) BETWEEN 1 AND 40),
    specialist TEXT NOT NULL CHECK (length(specialist) BETWEEN 1 AND 40),
    is_signed BIGINT NOT NULL CHECK (is_signed IN (0, 1)),
    -- Findings that ask for a medical review now.
    reviews_now BIGINT NOT NULL CHECK (0 <= reviews_now)
);

CREATE INDEX record_of_visit ON record (visit, number);
CREATE INDEX record_replaces ON record (replaces, number) WHERE replaces IS NOT NULL;

CREATE FUNCTION feedside_refuse() RETURNS trigger LANGUAGE plpgsql AS
$$ BEGIN RAISE EXCEPTION 'what is kept is never changed or deleted'; END $$;

CREATE TRIGGER record_stays BEFORE UPDATE OR DELETE OR TRUNCATE ON record
EXECUTE FUNCTION feedside_refuse();

CREATE TRIGGER desk_key_stays BEFORE UPDATE OR DELETE OR TRUNCATE ON desk_key
EXECUTE FUNCTION feedside_refuse();

CREATE TRIGGER tablet_key_stays BEFORE UPDATE OF kid, public ON tablet
EXECUTE FUNCTION feedside_refuse();
