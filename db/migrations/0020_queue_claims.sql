-- Stored designs that a plan of several builds, in its order; null for a plan of one, and for runs from before.
ALTER TABLE plan_runs ADD COLUMN designs TEXT CHECK (json_valid(designs));

-- Which waiting builds an accepted plan builds. It holds as long as the plan is accepted; once the plan is built, what it builds whole waits no more.
CREATE TABLE queue_claims (
    plan_id TEXT NOT NULL REFERENCES plan_runs (id),
    entry_id INTEGER NOT NULL REFERENCES build_queue (id) ON DELETE CASCADE,
    -- How many boards the plan cuts: it is built when so many are closed.
    boards INTEGER NOT NULL CHECK (boards >= 0),
    -- Whether the plan has all pieces of this build.
    is_whole INTEGER NOT NULL CHECK (is_whole IN (0, 1)),
    PRIMARY KEY (plan_id, entry_id)
) STRICT, WITHOUT ROWID;

PRAGMA user_version = 20;
