-- Which plan holds which board. A row of boards may stand for several alike: each of them has a number (copy), and only one plan can hold it.
-- A plan holds a board of its own for each that it cuts.
CREATE TABLE reservations (
    board_sequence INTEGER NOT NULL REFERENCES boards (sequence),
    copy INTEGER NOT NULL CHECK (copy >= 1),
    plan_id TEXT NOT NULL REFERENCES plan_runs (id),
    number INTEGER NOT NULL CHECK (number >= 1),
    PRIMARY KEY (board_sequence, copy),
    UNIQUE (plan_id, number)
) STRICT, WITHOUT ROWID;

CREATE TRIGGER no_more_reservations_than_boards BEFORE INSERT ON reservations
WHEN NEW.copy > (SELECT quantity FROM boards WHERE sequence = NEW.board_sequence)
BEGIN SELECT RAISE(ABORT, 'There are not so many of this board.'); END;

CREATE TRIGGER no_fewer_boards_than_reservations BEFORE UPDATE OF quantity ON boards
WHEN NEW.quantity < (SELECT max(copy) FROM reservations WHERE board_sequence = NEW.sequence)
BEGIN SELECT RAISE(ABORT, 'Plans hold more of this board.'); END;

-- Where a board comes from that a build brought onto the rack, and what it cost.
ALTER TABLE boards ADD COLUMN origin_plan TEXT REFERENCES plan_runs (id);
ALTER TABLE boards ADD COLUMN cut_from TEXT CHECK (cut_from IS NULL OR origin_plan IS NOT NULL);
ALTER TABLE boards ADD COLUMN price_minor_units INTEGER CHECK (price_minor_units >= 0);
ALTER TABLE boards ADD COLUMN price_currency TEXT CHECK ((price_currency IS NULL) = (price_minor_units IS NULL));

PRAGMA user_version = 8;
