-- Walks through one place at a time, to make the book say what is there.
CREATE TABLE stock_takes (
    number INTEGER PRIMARY KEY,
    place TEXT NOT NULL CHECK (length(place) BETWEEN 1 AND 200),
    started_at TEXT NOT NULL,
    finished_at TEXT
) STRICT;
CREATE UNIQUE INDEX one_open_stock_take_of_a_place ON stock_takes (place) WHERE finished_at IS NULL;

-- Boards that were seen just as the book has them, and those that were left in it unseen: no change of the stock, so no line of the journal.
CREATE TABLE sightings (
    stock_take INTEGER NOT NULL REFERENCES stock_takes (number),
    board_id TEXT NOT NULL,
    finding TEXT NOT NULL CHECK (finding IN ('confirmed', 'left')),
    at TEXT NOT NULL,
    PRIMARY KEY (stock_take, board_id)
) STRICT, WITHOUT ROWID;

-- What a stock-take changed is told by the journal.
ALTER TABLE journal ADD COLUMN stock_take INTEGER REFERENCES stock_takes (number);
CREATE INDEX journal_of_stock_take ON journal (stock_take, line) WHERE stock_take IS NOT NULL;

PRAGMA user_version = 15;
