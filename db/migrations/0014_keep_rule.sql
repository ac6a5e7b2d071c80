-- What the shop keeps, as JSON in the shape of the wire.
CREATE TABLE keep_rule (
    only_row INTEGER PRIMARY KEY CHECK (only_row = 1),
    content TEXT NOT NULL CHECK (json_valid(content))
) STRICT;

PRAGMA user_version = 14;
