-- Version 3: what the list is searched by, and what is to be sent where.

-- Apart from the records, so that a search reads a narrow table.
CREATE TABLE record_words (
    number BIGINT PRIMARY KEY REFERENCES record (number),
    -- Small letters, a space before each: number, bed, initials, specialist, receipt whole and in
    -- groups, day of the visit.
    words TEXT NOT NULL
);

INSERT INTO record_words (number, words)
SELECT
    number,
    ' ' || number || ' ' || lower(bed) || ' ' || lower(initials) || ' ' || lower(specialist) || ' '
    || receipt || ' ' || substr(receipt, 1, 3) || ' ' || substr(receipt, 4, 3) || ' '
    || substr(receipt, 7) || ' '
    || to_char(
        to_timestamp(began_utc_ms / 1000 + began_offset_min * 60) AT TIME ZONE 'UTC', 'YYYY-MM-DD'
    )
FROM record;

-- What was sent, or is to be sent, to a place outside: a line for each record and place.
CREATE TABLE delivery (
    place TEXT NOT NULL CHECK (length(place) BETWEEN 1 AND 400),
    record BIGINT NOT NULL REFERENCES record (number),
    -- `replaced`: a later record that stands for it is at the place already.
    state TEXT NOT NULL CHECK (state IN ('waiting', 'sent', 'dead', 'replaced')),
    tries BIGINT NOT NULL CHECK (0 <= tries),
    -- Not before this time. While it is on its way, when the sender is given up for dead.
    due_utc_ms BIGINT NOT NULL,
    -- Why the last try failed, a stable word, and the number that the other side gave with it.
    problem TEXT CHECK (problem <> ''),
    given BIGINT,
    changed_utc_ms BIGINT NOT NULL,
    PRIMARY KEY (place, record)
);

CREATE INDEX delivery_due ON delivery (place, record, due_utc_ms) WHERE state = 'waiting';

CREATE TRIGGER delivery_stays BEFORE DELETE OR TRUNCATE ON delivery
EXECUTE FUNCTION feedside_refuse();

CREATE TRIGGER what_was_sent_stays_sent BEFORE UPDATE ON delivery
FOR EACH ROW WHEN (OLD.state = 'sent') EXECUTE FUNCTION feedside_refuse();
