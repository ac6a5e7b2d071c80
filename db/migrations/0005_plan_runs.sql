-- Planning runs. A run holds all that it was made from, so that later changes to boards, offers or designs never touch it.
CREATE TABLE plan_runs (
    sequence INTEGER PRIMARY KEY,
    id TEXT NOT NULL UNIQUE CHECK (length(id) = 8),
    state TEXT NOT NULL CHECK (state IN ('queued', 'planning', 'done', 'cancelled', 'failed', 'interrupted')),
    requested_at TEXT NOT NULL,
    finished_at TEXT,
    design_name TEXT NOT NULL,
    design_version TEXT NOT NULL,
    design_reference TEXT,
    budget_ms INTEGER NOT NULL CHECK (budget_ms BETWEEN 100 AND 300000),
    seed INTEGER NOT NULL CHECK (seed >= 0),
    -- The process that plans it: another may share the database.
    owner TEXT NOT NULL,
    problem TEXT NOT NULL CHECK (json_valid(problem)),
    progress TEXT CHECK (json_valid(progress)),
    failure TEXT CHECK (json_valid(failure)),
    plan TEXT CHECK (json_valid(plan)),
    CHECK ((finished_at IS NULL) = (state IN ('queued', 'planning'))),
    CHECK ((failure IS NOT NULL) = (state = 'failed')),
    CHECK (state <> 'failed' OR plan IS NULL),
    CHECK (state <> 'done' OR plan IS NOT NULL)
) STRICT;

CREATE INDEX plan_runs_under_way ON plan_runs (state) WHERE state IN ('queued', 'planning');

PRAGMA user_version = 5;
