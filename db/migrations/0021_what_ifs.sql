-- What a plan was asked for: to be built, or only to know what would be. A what-if that is accepted is one to be built.
ALTER TABLE plan_runs ADD COLUMN purpose TEXT NOT NULL DEFAULT 'build' CHECK (purpose IN ('build', 'what-if'));

PRAGMA user_version = 21;
