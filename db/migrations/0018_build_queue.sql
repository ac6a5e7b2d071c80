-- The builds that wait, the most important first. A design is named by its reference, so that its current version is planned.
CREATE TABLE build_queue (
    id INTEGER PRIMARY KEY,
    position INTEGER NOT NULL CHECK (position >= 1),
    design TEXT NOT NULL CHECK (length(design) BETWEEN 1 AND 80),
    added_at TEXT NOT NULL
) STRICT;

PRAGMA user_version = 18;
