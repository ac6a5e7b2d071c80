-- Which sides of a board were only estimated (1): plans count on less of them.
ALTER TABLE boards ADD COLUMN thickness_estimated INTEGER NOT NULL DEFAULT 0 CHECK (thickness_estimated IN (0, 1));
ALTER TABLE boards ADD COLUMN width_estimated INTEGER NOT NULL DEFAULT 0 CHECK (width_estimated IN (0, 1));
ALTER TABLE boards ADD COLUMN length_estimated INTEGER NOT NULL DEFAULT 0 CHECK (length_estimated IN (0, 1));

PRAGMA user_version = 9;
