-- Boards on the rack. Lengths are whole ticks of 3.125 micrometres (see Offcuts.Domain.Length); 32000000 ticks are 100 m.
CREATE TABLE board_sequence (
    only_row INTEGER PRIMARY KEY CHECK (only_row = 1),
    next INTEGER NOT NULL CHECK (next > 0)
) STRICT;

INSERT INTO board_sequence (only_row, next) VALUES (1, 1);

CREATE TABLE boards (
    sequence INTEGER PRIMARY KEY,
    id TEXT NOT NULL UNIQUE,
    kind TEXT NOT NULL CHECK (kind IN ('solid', 'sheet')),
    species TEXT NOT NULL CHECK (length(species) BETWEEN 1 AND 80),
    thickness_ticks INTEGER NOT NULL CHECK (thickness_ticks BETWEEN 1 AND 32000000),
    width_ticks INTEGER NOT NULL CHECK (width_ticks BETWEEN 1 AND 32000000),
    length_ticks INTEGER NOT NULL CHECK (length_ticks BETWEEN 1 AND 32000000),
    quantity INTEGER NOT NULL CHECK (quantity BETWEEN 1 AND 10000),
    surface TEXT NOT NULL CHECK (surface IN ('rough', 'surfaced')),
    appearance TEXT NOT NULL CHECK (appearance IN ('clear', 'sound-knots', 'paint')),
    place TEXT CHECK (length(place) <= 200),
    source TEXT CHECK (length(source) <= 200),
    note TEXT CHECK (length(note) <= 2000),
    status TEXT NOT NULL CHECK (status IN ('free', 'reserved', 'used', 'gone')),
    logged_at TEXT NOT NULL
) STRICT;

CREATE TABLE board_defects (
    board_sequence INTEGER NOT NULL REFERENCES boards (sequence) ON DELETE CASCADE,
    ordinal INTEGER NOT NULL CHECK (ordinal >= 0),
    kind TEXT NOT NULL CHECK (length(kind) BETWEEN 1 AND 80),
    x_ticks INTEGER NOT NULL CHECK (x_ticks >= 0),
    y_ticks INTEGER NOT NULL CHECK (y_ticks >= 0),
    length_ticks INTEGER NOT NULL CHECK (length_ticks > 0),
    width_ticks INTEGER NOT NULL CHECK (width_ticks > 0),
    PRIMARY KEY (board_sequence, ordinal)
) STRICT;

PRAGMA user_version = 1;
