-- Price lists. The columns hold what offers are filtered by; the whole offer is JSON in the shape of the wire.
CREATE TABLE price_lists (
    supplier TEXT PRIMARY KEY CHECK (length(supplier) BETWEEN 1 AND 80),
    updated_at TEXT NOT NULL
) STRICT;

CREATE TABLE offers (
    sequence INTEGER PRIMARY KEY,
    id TEXT NOT NULL UNIQUE CHECK (length(id) BETWEEN 1 AND 160),
    supplier TEXT NOT NULL REFERENCES price_lists (supplier) ON DELETE CASCADE,
    species TEXT NOT NULL CHECK (length(species) BETWEEN 1 AND 80),
    kind TEXT NOT NULL CHECK (kind IN ('solid', 'sheet')),
    thickness_ticks INTEGER NOT NULL CHECK (thickness_ticks BETWEEN 1 AND 32000000),
    content TEXT NOT NULL CHECK (json_valid(content))
) STRICT;

CREATE INDEX offers_of_supplier ON offers (supplier);

PRAGMA user_version = 4;
