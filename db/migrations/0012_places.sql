-- What the shop has said of the places that boards name. A place that is not here is easy to get at and has no limit.
CREATE TABLE places (
    name TEXT PRIMARY KEY CHECK (length(name) BETWEEN 1 AND 200),
    reach TEXT NOT NULL CHECK (reach IN ('easy', 'behind', 'buried')),
    limit_cubic_mm INTEGER CHECK (limit_cubic_mm > 0),
    note TEXT CHECK (length(note) <= 2000)
) STRICT;

PRAGMA user_version = 12;
