-- The shop, and the species that it adds to the reference list. Both are kept as JSON in the shape of the wire.
CREATE TABLE shop (
    only_row INTEGER PRIMARY KEY CHECK (only_row = 1),
    content TEXT NOT NULL CHECK (json_valid(content))
) STRICT;

CREATE TABLE species (
    sequence INTEGER PRIMARY KEY,
    id TEXT NOT NULL UNIQUE CHECK (length(id) BETWEEN 1 AND 80),
    content TEXT NOT NULL CHECK (json_valid(content))
) STRICT;

PRAGMA user_version = 2;
