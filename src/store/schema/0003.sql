-- Version 3. Never edited once released: a change is a new script.
--
-- A pair leaves the tablet whole, and only once the desk has all of it. The file itself sees to it:
-- its visits are marked, the newest first; then the pair; then all of it may go. A mark stays.

DROP TRIGGER entry_is_never_deleted;
DROP TRIGGER visit_is_never_deleted;
DROP TRIGGER pair_is_never_deleted;

ALTER TABLE visit ADD COLUMN leaves INTEGER NOT NULL DEFAULT 0 CHECK (leaves IN (0, 1));
ALTER TABLE pair ADD COLUMN leaves INTEGER NOT NULL DEFAULT 0 CHECK (leaves IN (0, 1));

-- Marks.

-- After all that replace it, and for its own receipt or theirs (they have one, or they could not
-- have been marked). What stood there before counts, not what the same change brings.
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

-- What a mark rests on cannot be made up or exchanged.

CREATE TRIGGER receipt_stands_in_the_journal BEFORE UPDATE OF receipt ON visit
WHEN NEW.receipt = 1 AND OLD.receipt = 0
    AND NOT EXISTS (SELECT 1 FROM entry WHERE visit = OLD.number AND kind = 'receipt_taken')
BEGIN SELECT RAISE(ABORT, 'a receipt stands in the journal'); END;

-- The second part is for INSERT OR REPLACE, which would take a visit's row away unasked.
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

-- Going, of a marked pair, whose visits are all marked: entries, then visits, then the pair, so that
-- nothing is left that belongs to nobody, even where a program does not ask for foreign keys.

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
