-- Designs, versioned by content: a version is the hash of what it says and never changes.
CREATE TABLE designs (
    sequence INTEGER PRIMARY KEY,
    reference TEXT NOT NULL UNIQUE CHECK (length(reference) BETWEEN 1 AND 80),
    current_version TEXT NOT NULL
) STRICT;

CREATE TABLE design_versions (
    sequence INTEGER PRIMARY KEY,
    design_sequence INTEGER NOT NULL REFERENCES designs (sequence) ON DELETE CASCADE,
    version TEXT NOT NULL UNIQUE CHECK (length(version) = 12),
    content TEXT NOT NULL CHECK (json_valid(content)),
    created_at TEXT NOT NULL
) STRICT;

CREATE INDEX design_versions_of_design ON design_versions (design_sequence);

PRAGMA user_version = 3;
