-- Tables of boards that were imported, by a mark of their content (SHA-256 of their new boards), so that the same file makes no board twice.
CREATE TABLE board_imports (
    mark TEXT PRIMARY KEY CHECK (length(mark) = 64),
    imported_at TEXT NOT NULL,
    boards INTEGER NOT NULL CHECK (boards > 0)
) STRICT;

PRAGMA user_version = 10;
