-- The plan that a run starts from. Runs are never deleted, so it stays what it was.
ALTER TABLE plan_runs ADD COLUMN earlier_id TEXT REFERENCES plan_runs (id);

PRAGMA user_version = 11;
