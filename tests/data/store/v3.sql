-- The tablet's data as version 3 kept it: schema and rows. Never edited.
BEGIN;
CREATE TABLE pair (
    id BLOB NOT NULL PRIMARY KEY CHECK (length(id) = 16),
    mother_id BLOB CHECK (length(mother_id) = 16),
    bed TEXT NOT NULL CHECK (length(bed) BETWEEN 1 AND 40),
    initials TEXT NOT NULL CHECK (length(initials) BETWEEN 1 AND 40),
    mother_number TEXT CHECK (length(mother_number) BETWEEN 1 AND 40),
    baby_number TEXT CHECK (length(baby_number) BETWEEN 1 AND 40),
    birth_utc_ms INTEGER NOT NULL CHECK (birth_utc_ms BETWEEN 0 AND 7258118399999),
    birth_offset_min INTEGER NOT NULL CHECK (birth_offset_min BETWEEN -840 AND 840),
    sex TEXT NOT NULL CHECK (sex <> ''),
    gestation_days INTEGER CHECK (gestation_days BETWEEN 154 AND 314),
    birth_weight_g INTEGER CHECK (birth_weight_g BETWEEN 1 AND 30000),
    way_of_birth TEXT CHECK (way_of_birth <> ''),
    babies INTEGER NOT NULL CHECK (babies BETWEEN 0 AND 255),
    -- Stored words as JSON lists; words of other versions are kept.
    risk_notes TEXT NOT NULL CHECK (json_type(risk_notes) = 'array'),
    reasons TEXT NOT NULL CHECK (json_type(reasons) = 'array'),
    language TEXT CHECK (length(language) BETWEEN 2 AND 35)
, leaves INTEGER NOT NULL DEFAULT 0 CHECK (leaves IN (0, 1))) STRICT;

CREATE TABLE visit (
    -- In the order in which they were begun on this tablet.
    number INTEGER PRIMARY KEY,
    id BLOB NOT NULL UNIQUE CHECK (length(id) = 16),
    pair BLOB NOT NULL REFERENCES pair (id),
    began_utc_ms INTEGER NOT NULL CHECK (began_utc_ms BETWEEN 0 AND 7258118399999),
    began_offset_min INTEGER NOT NULL CHECK (began_offset_min BETWEEN -840 AND 840),
    specialist TEXT NOT NULL CHECK (length(specialist) BETWEEN 1 AND 40),
    -- The visit that this one amends.
    replaces BLOB REFERENCES visit (id) CHECK (replaces <> id),
    -- Taken from the journal whenever one of the entries that matter is added, for the Ward list.
    signed INTEGER NOT NULL DEFAULT 0 CHECK (signed IN (0, 1)),
    receipt INTEGER NOT NULL DEFAULT 0 CHECK (receipt IN (0, 1)),
    next_look_utc_ms INTEGER CHECK (next_look_utc_ms BETWEEN 0 AND 7258118399999),
    next_look_offset_min INTEGER CHECK (next_look_offset_min BETWEEN -840 AND 840), leaves INTEGER NOT NULL DEFAULT 0 CHECK (leaves IN (0, 1)),
    CHECK ((next_look_utc_ms IS NULL) = (next_look_offset_min IS NULL))
) STRICT;

CREATE INDEX visit_of_pair ON visit (pair, began_utc_ms, number);
CREATE INDEX visit_replaces ON visit (replaces) WHERE replaces IS NOT NULL;
CREATE INDEX visit_unsigned ON visit (number) WHERE signed = 0;

CREATE TABLE entry (
    visit INTEGER NOT NULL REFERENCES visit (number),
    seq INTEGER NOT NULL CHECK (seq BETWEEN 1 AND 4294967295),
    at_ms INTEGER NOT NULL CHECK (0 <= at_ms),
    utc_ms INTEGER NOT NULL CHECK (utc_ms BETWEEN 0 AND 7258118399999),
    offset_min INTEGER NOT NULL CHECK (offset_min BETWEEN -840 AND 840),
    kind TEXT NOT NULL CHECK (kind <> ''),
    body TEXT NOT NULL CHECK (json_valid(body)),
    PRIMARY KEY (visit, seq)
) STRICT, WITHOUT ROWID;

CREATE TABLE setting (
    name TEXT NOT NULL PRIMARY KEY CHECK (name <> ''),
    value TEXT NOT NULL
) STRICT, WITHOUT ROWID;

-- The tablet's own keys and the desks' public ones.
CREATE TABLE key_material (
    name TEXT NOT NULL PRIMARY KEY CHECK (name <> ''),
    bytes BLOB NOT NULL
) STRICT, WITHOUT ROWID;

-- Entries are only ever added, one after the other.
CREATE TABLE gist (
    visit INTEGER NOT NULL PRIMARY KEY REFERENCES visit (number),
    -- The visit's last entry when it was made; with any later one it no longer holds.
    seq INTEGER NOT NULL CHECK (seq BETWEEN 0 AND 4294967295),
    body TEXT NOT NULL CHECK (json_valid(body))
) STRICT;

CREATE TRIGGER entry_is_never_changed BEFORE UPDATE ON entry
BEGIN SELECT RAISE(ABORT, 'an entry is never changed'); END;

CREATE TRIGGER entry_follows_the_last BEFORE INSERT ON entry
WHEN NEW.seq <> 1 + coalesce((SELECT max(seq) FROM entry WHERE visit = NEW.visit), 0)
BEGIN SELECT RAISE(ABORT, 'an entry follows the last one'); END;

CREATE TRIGGER entry_of_a_signed_visit BEFORE INSERT ON entry
WHEN NEW.kind NOT IN ('shown_as_code', 'receipt_taken')
    AND (SELECT signed FROM visit WHERE number = NEW.visit) = 1
BEGIN SELECT RAISE(ABORT, 'the visit is signed'); END;

CREATE TRIGGER visit_stays_what_it_is
BEFORE UPDATE OF number, id, pair, began_utc_ms, began_offset_min, specialist, replaces ON visit
BEGIN SELECT RAISE(ABORT, 'a visit stays what it is'); END;

CREATE TRIGGER visit_stays_signed BEFORE UPDATE OF signed ON visit
WHEN OLD.signed = 1 AND NEW.signed = 0
BEGIN SELECT RAISE(ABORT, 'a signed visit stays signed'); END;

CREATE TRIGGER visit_leaves_after_its_receipt BEFORE UPDATE OF leaves ON visit
WHEN NEW.leaves = 1 AND (
    OLD.signed = 0
    OR EXISTS (SELECT 1 FROM visit WHERE replaces = OLD.id AND leaves = 0)
    OR (OLD.receipt = 0 AND NOT EXISTS (SELECT 1 FROM visit WHERE replaces = OLD.id))
)
BEGIN SELECT RAISE(ABORT, 'a visit leaves after its receipt'); END;

CREATE TRIGGER pair_leaves_with_all_its_visits BEFORE UPDATE OF leaves ON pair
WHEN NEW.leaves = 1 AND (
    NOT EXISTS (SELECT 1 FROM visit WHERE pair = OLD.id)
    OR EXISTS (SELECT 1 FROM visit WHERE pair = OLD.id AND leaves = 0)
)
BEGIN SELECT RAISE(ABORT, 'a pair leaves with all its visits'); END;

CREATE TRIGGER visit_goes_on_leaving BEFORE UPDATE OF leaves ON visit
WHEN OLD.leaves = 1 AND NEW.leaves = 0
BEGIN SELECT RAISE(ABORT, 'a visit that leaves is not called back'); END;

CREATE TRIGGER pair_goes_on_leaving BEFORE UPDATE OF leaves ON pair
WHEN OLD.leaves = 1 AND NEW.leaves = 0
BEGIN SELECT RAISE(ABORT, 'a pair that leaves is not called back'); END;

CREATE TRIGGER receipt_stands_in_the_journal BEFORE UPDATE OF receipt ON visit
WHEN NEW.receipt = 1 AND OLD.receipt = 0
    AND NOT EXISTS (SELECT 1 FROM entry WHERE visit = OLD.number AND kind = 'receipt_taken')
BEGIN SELECT RAISE(ABORT, 'a receipt stands in the journal'); END;

CREATE TRIGGER visit_begins_anew BEFORE INSERT ON visit
WHEN NEW.receipt = 1 OR NEW.leaves = 1
    OR EXISTS (SELECT 1 FROM visit WHERE id = NEW.id OR number = NEW.number)
    OR EXISTS (SELECT 1 FROM pair WHERE id = NEW.pair AND leaves = 1)
BEGIN SELECT RAISE(ABORT, 'a visit begins anew, of a pair that stays'); END;

CREATE TRIGGER pair_begins_anew BEFORE INSERT ON pair
WHEN NEW.leaves = 1
BEGIN SELECT RAISE(ABORT, 'a pair comes to stay'); END;

CREATE TRIGGER pair_keeps_its_id BEFORE UPDATE OF id ON pair
BEGIN SELECT RAISE(ABORT, 'a pair keeps its id'); END;

CREATE TRIGGER entry_of_a_leaving_visit BEFORE INSERT ON entry
WHEN (SELECT leaves FROM visit WHERE number = NEW.visit) = 1
BEGIN SELECT RAISE(ABORT, 'the visit is leaving'); END;

CREATE TRIGGER entry_leaves_with_its_visit BEFORE DELETE ON entry
WHEN NOT EXISTS (
    SELECT 1 FROM visit AS v JOIN pair AS p ON p.id = v.pair
    WHERE v.number = OLD.visit AND p.leaves = 1
)
BEGIN SELECT RAISE(ABORT, 'an entry leaves with its visit'); END;

CREATE TRIGGER visit_leaves_with_its_pair BEFORE DELETE ON visit
WHEN NOT EXISTS (SELECT 1 FROM pair WHERE id = OLD.pair AND leaves = 1)
    OR EXISTS (SELECT 1 FROM entry WHERE visit = OLD.number)
    OR EXISTS (SELECT 1 FROM gist WHERE visit = OLD.number)
BEGIN SELECT RAISE(ABORT, 'a visit leaves with its pair'); END;

CREATE TRIGGER pair_leaves_last BEFORE DELETE ON pair
WHEN OLD.leaves = 0 OR EXISTS (SELECT 1 FROM visit WHERE pair = OLD.id)
BEGIN SELECT RAISE(ABORT, 'a pair leaves after its visits'); END;

INSERT INTO pair VALUES (
    X'00000000000000000000000000001001', X'00000000000000000000000000000007', 'Bay 2 bed 001', 'Q. Z.',
    'M-0001', NULL, 1772204400000, 60, 'female', 270, 3180, 'caesarean', 1,
    '["early_term","from_a_later_version"]', '["pain"]', 'pt-BR', 0
);
INSERT INTO visit VALUES (
    1, X'00000000000000000000000000002001', X'00000000000000000000000000001001', 1772334000000, 60,
    'feeding lead', NULL, 0, 0, NULL, NULL, 0
);
INSERT INTO entry VALUES (1, 1, 700, 1772334000700, 60, 'suck_swallow', 'null');
INSERT INTO entry VALUES (1, 2, 1400, 1772334001400, 60, 'unwatched_from', '{"from":900}');
INSERT INTO entry VALUES (1, 3, 2100, 1772334002100, 60, 'latch_photographed', '{"frames": [1, 2]}');
INSERT INTO entry VALUES (1, 4, 2800, 1772334002800, 60, 'next_look', '{"due":"2026-03-01T07:00:00.000+01:00"}');
INSERT INTO entry VALUES (1, 5, 3500, 1772334003500, 60, 'signed', '{"by":"feeding lead"}');
UPDATE visit SET signed = 1, next_look_utc_ms = 1772344800000, next_look_offset_min = 60;
INSERT INTO setting VALUES ('language', 'de');
INSERT INTO key_material VALUES ('tablet', X'03030303');
PRAGMA application_id = 0x46647364;
INSERT INTO gist VALUES (1, 5, '{"weighings":[]}');
PRAGMA user_version = 3;
COMMIT;
