-- The condition of a board: warp as measured over the whole board, the state of its ends, skip-planed stock; and its batch.
-- The CHECK on the surface changes, so both tables are made anew. The defects go first: dropping their boards would take them along.
CREATE TABLE new_boards (
    sequence INTEGER PRIMARY KEY,
    id TEXT NOT NULL UNIQUE,
    kind TEXT NOT NULL CHECK (kind IN ('solid', 'sheet')),
    species TEXT NOT NULL CHECK (length(species) BETWEEN 1 AND 80),
    thickness_ticks INTEGER NOT NULL CHECK (thickness_ticks BETWEEN 1 AND 32000000),
    width_ticks INTEGER NOT NULL CHECK (width_ticks BETWEEN 1 AND 32000000),
    length_ticks INTEGER NOT NULL CHECK (length_ticks BETWEEN 1 AND 32000000),
    quantity INTEGER NOT NULL CHECK (quantity BETWEEN 1 AND 10000),
    surface TEXT NOT NULL CHECK (surface IN ('rough', 'skip-planed', 'surfaced')),
    appearance TEXT NOT NULL CHECK (appearance IN ('clear', 'sound-knots', 'paint')),
    batch TEXT CHECK (length(batch) <= 80),
    left_end TEXT NOT NULL DEFAULT 'unknown' CHECK (left_end IN ('unknown', 'checked', 'sound')),
    right_end TEXT NOT NULL DEFAULT 'unknown' CHECK (right_end IN ('unknown', 'checked', 'sound')),
    bow_ticks INTEGER NOT NULL DEFAULT 0 CHECK (bow_ticks BETWEEN 0 AND length_ticks),
    crook_ticks INTEGER NOT NULL DEFAULT 0 CHECK (crook_ticks BETWEEN 0 AND length_ticks),
    cup_ticks INTEGER NOT NULL DEFAULT 0 CHECK (cup_ticks BETWEEN 0 AND width_ticks),
    twist_ticks INTEGER NOT NULL DEFAULT 0 CHECK (twist_ticks BETWEEN 0 AND width_ticks),
    place TEXT CHECK (length(place) <= 200),
    source TEXT CHECK (length(source) <= 200),
    note TEXT CHECK (length(note) <= 2000),
    status TEXT NOT NULL CHECK (status IN ('free', 'reserved', 'used', 'gone')),
    logged_at TEXT NOT NULL
) STRICT;

INSERT INTO new_boards (sequence, id, kind, species, thickness_ticks, width_ticks, length_ticks, quantity, surface,
                        appearance, place, source, note, status, logged_at)
SELECT sequence, id, kind, species, thickness_ticks, width_ticks, length_ticks, quantity, surface,
       appearance, place, source, note, status, logged_at
FROM boards;

CREATE TABLE new_board_defects (
    board_sequence INTEGER NOT NULL REFERENCES new_boards (sequence) ON DELETE CASCADE,
    ordinal INTEGER NOT NULL CHECK (ordinal >= 0),
    kind TEXT NOT NULL CHECK (length(kind) BETWEEN 1 AND 80),
    x_ticks INTEGER NOT NULL CHECK (x_ticks >= 0),
    y_ticks INTEGER NOT NULL CHECK (y_ticks >= 0),
    length_ticks INTEGER NOT NULL CHECK (length_ticks > 0),
    width_ticks INTEGER NOT NULL CHECK (width_ticks > 0),
    PRIMARY KEY (board_sequence, ordinal)
) STRICT;

INSERT INTO new_board_defects SELECT board_sequence, ordinal, kind, x_ticks, y_ticks, length_ticks, width_ticks FROM board_defects;

DROP TABLE board_defects;
DROP TABLE boards;
ALTER TABLE new_boards RENAME TO boards;
ALTER TABLE new_board_defects RENAME TO board_defects;

PRAGMA user_version = 6;
