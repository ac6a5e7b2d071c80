-- What designs came to when they were last planned to be ranked. A cache: it may be emptied at any time, and only the rows used last are kept.
CREATE TABLE fit_outcomes (
    -- A hash of the design, the shop, the offers and all else but the boards that the plan depends on.
    mark TEXT PRIMARY KEY CHECK (length(mark) = 64),
    -- The boards that the design could touch, one a line: id, quantity and a hash of the wood.
    seen TEXT NOT NULL,
    outcome TEXT NOT NULL CHECK (json_valid(outcome)),
    used_at TEXT NOT NULL
) STRICT;

CREATE INDEX fit_outcomes_by_use ON fit_outcomes (used_at);

PRAGMA user_version = 19;
