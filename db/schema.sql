CREATE TRIGGER journal_boards_are_never_changed BEFORE UPDATE ON journal_boards
BEGIN SELECT RAISE(ABORT, 'The journal is never changed.'); END;

CREATE TRIGGER journal_boards_are_never_cut BEFORE DELETE ON journal_boards
BEGIN SELECT RAISE(ABORT, 'The journal is never cut.'); END;

CREATE TRIGGER journal_boards_only_grow BEFORE INSERT ON journal_boards
WHEN NEW.line <> (SELECT max(line) FROM journal)
  OR EXISTS (SELECT 1 FROM journal_boards WHERE board_id = NEW.board_id AND line = NEW.line)
BEGIN SELECT RAISE(ABORT, 'The journal only grows at its end.'); END;

CREATE TRIGGER journal_is_never_changed BEFORE UPDATE ON journal
BEGIN SELECT RAISE(ABORT, 'The journal is never changed.'); END;

CREATE TRIGGER journal_is_never_cut BEFORE DELETE ON journal
BEGIN SELECT RAISE(ABORT, 'The journal is never cut.'); END;

CREATE TRIGGER journal_only_grows BEFORE INSERT ON journal
WHEN NEW.line <> (SELECT coalesce(max(line), 0) + 1 FROM journal)
BEGIN SELECT RAISE(ABORT, 'The journal only grows at its end.'); END;

CREATE TRIGGER no_fewer_boards_than_reservations BEFORE UPDATE OF quantity ON boards
WHEN NEW.quantity < (SELECT max(copy) FROM reservations WHERE board_sequence = NEW.sequence)
BEGIN SELECT RAISE(ABORT, 'Plans hold more of this board.'); END;

CREATE TRIGGER no_more_reservations_than_boards BEFORE INSERT ON reservations
WHEN NEW.copy > (SELECT quantity FROM boards WHERE sequence = NEW.board_sequence)
BEGIN SELECT RAISE(ABORT, 'There are not so many of this board.'); END;

CREATE TABLE "board_defects" (
    board_sequence INTEGER NOT NULL REFERENCES "boards" (sequence) ON DELETE CASCADE,
    ordinal INTEGER NOT NULL CHECK (ordinal >= 0),
    kind TEXT NOT NULL CHECK (length(kind) BETWEEN 1 AND 80),
    x_ticks INTEGER NOT NULL CHECK (x_ticks >= 0),
    y_ticks INTEGER NOT NULL CHECK (y_ticks >= 0),
    length_ticks INTEGER NOT NULL CHECK (length_ticks > 0),
    width_ticks INTEGER NOT NULL CHECK (width_ticks > 0),
    PRIMARY KEY (board_sequence, ordinal)
) STRICT;

CREATE TABLE board_imports (
    mark TEXT PRIMARY KEY CHECK (length(mark) = 64),
    imported_at TEXT NOT NULL,
    boards INTEGER NOT NULL CHECK (boards > 0)
) STRICT;

CREATE TABLE board_sequence (
    only_row INTEGER PRIMARY KEY CHECK (only_row = 1),
    next INTEGER NOT NULL CHECK (next > 0)
) STRICT;

CREATE TABLE "boards" (
    sequence INTEGER PRIMARY KEY,
    id TEXT NOT NULL UNIQUE,
    kind TEXT NOT NULL CHECK (kind IN ('solid', 'sheet')),
    species TEXT NOT NULL CHECK (length(species) BETWEEN 1 AND 80),
    thickness_ticks INTEGER NOT NULL CHECK (thickness_ticks BETWEEN 1 AND 32000000),
    width_ticks INTEGER NOT NULL CHECK (width_ticks BETWEEN 1 AND 32000000),
    length_ticks INTEGER NOT NULL CHECK (length_ticks BETWEEN 1 AND 32000000),
    quantity INTEGER NOT NULL CHECK (quantity BETWEEN 1 AND 10000),
    surface TEXT NOT NULL CHECK (surface IN ('rough', 'skip-planed', 'surfaced')),
    appearance TEXT NOT NULL CHECK (appearance IN ('clear', 'sound-knots', 'paint')),
    batch TEXT CHECK (length(batch) <= 80),
    left_end TEXT NOT NULL DEFAULT 'unknown' CHECK (left_end IN ('unknown', 'checked', 'sound')),
    right_end TEXT NOT NULL DEFAULT 'unknown' CHECK (right_end IN ('unknown', 'checked', 'sound')),
    bow_ticks INTEGER NOT NULL DEFAULT 0 CHECK (bow_ticks BETWEEN 0 AND length_ticks),
    crook_ticks INTEGER NOT NULL DEFAULT 0 CHECK (crook_ticks BETWEEN 0 AND length_ticks),
    cup_ticks INTEGER NOT NULL DEFAULT 0 CHECK (cup_ticks BETWEEN 0 AND width_ticks),
    twist_ticks INTEGER NOT NULL DEFAULT 0 CHECK (twist_ticks BETWEEN 0 AND width_ticks),
    place TEXT CHECK (length(place) <= 200),
    source TEXT CHECK (length(source) <= 200),
    note TEXT CHECK (length(note) <= 2000),
    status TEXT NOT NULL CHECK (status IN ('free', 'reserved', 'used', 'gone')),
    logged_at TEXT NOT NULL
, origin_plan TEXT REFERENCES plan_runs (id), cut_from TEXT CHECK (cut_from IS NULL OR origin_plan IS NOT NULL), price_minor_units INTEGER CHECK (price_minor_units >= 0), price_currency TEXT CHECK ((price_currency IS NULL) = (price_minor_units IS NULL)), thickness_estimated INTEGER NOT NULL DEFAULT 0 CHECK (thickness_estimated IN (0, 1)), width_estimated INTEGER NOT NULL DEFAULT 0 CHECK (width_estimated IN (0, 1)), length_estimated INTEGER NOT NULL DEFAULT 0 CHECK (length_estimated IN (0, 1)), moisture_tenths INTEGER CHECK (moisture_tenths BETWEEN 1 AND 3000), moisture_on TEXT CHECK ((moisture_on IS NULL) = (moisture_tenths IS NULL) AND (moisture_on IS NULL OR date(moisture_on) = moisture_on))) STRICT;

CREATE TABLE build_queue (
    id INTEGER PRIMARY KEY,
    position INTEGER NOT NULL CHECK (position >= 1),
    design TEXT NOT NULL CHECK (length(design) BETWEEN 1 AND 80),
    added_at TEXT NOT NULL
) STRICT;

CREATE TABLE design_versions (
    sequence INTEGER PRIMARY KEY,
    design_sequence INTEGER NOT NULL REFERENCES designs (sequence) ON DELETE CASCADE,
    version TEXT NOT NULL UNIQUE CHECK (length(version) = 12),
    content TEXT NOT NULL CHECK (json_valid(content)),
    created_at TEXT NOT NULL
) STRICT;

CREATE TABLE designs (
    sequence INTEGER PRIMARY KEY,
    reference TEXT NOT NULL UNIQUE CHECK (length(reference) BETWEEN 1 AND 80),
    current_version TEXT NOT NULL
) STRICT;

CREATE TABLE fit_outcomes (
    -- A hash of the design, the shop, the offers and all else but the boards that the plan depends on.
    mark TEXT PRIMARY KEY CHECK (length(mark) = 64),
    -- The boards that the design could touch, one a line: id, quantity and a hash of the wood.
    seen TEXT NOT NULL,
    outcome TEXT NOT NULL CHECK (json_valid(outcome)),
    used_at TEXT NOT NULL
) STRICT;

CREATE TABLE journal (
    line INTEGER PRIMARY KEY,
    at TEXT NOT NULL,
    kind TEXT NOT NULL CHECK (kind IN ('opening', 'log', 'import', 'edit', 'delete', 'accept', 'release', 'expire', 'close', 'undo')),
    undoes INTEGER UNIQUE REFERENCES journal (line),
    plan_id TEXT REFERENCES plan_runs (id),
    -- How far the build of the plan is after this line; null for a plan that is not accepted.
    build TEXT CHECK (json_valid(build)), stock_take INTEGER REFERENCES stock_takes (number),
    CHECK ((undoes IS NOT NULL) = (kind = 'undo')),
    CHECK (build IS NULL OR plan_id IS NOT NULL)
) STRICT;

CREATE TABLE journal_boards (
    line INTEGER NOT NULL REFERENCES journal (line),
    board_id TEXT NOT NULL,
    state TEXT CHECK (json_valid(state)),
    PRIMARY KEY (board_id, line)
) STRICT, WITHOUT ROWID;

CREATE TABLE keep_rule (
    only_row INTEGER PRIMARY KEY CHECK (only_row = 1),
    content TEXT NOT NULL CHECK (json_valid(content))
) STRICT;

CREATE TABLE offers (
    sequence INTEGER PRIMARY KEY,
    id TEXT NOT NULL UNIQUE CHECK (length(id) BETWEEN 1 AND 160),
    supplier TEXT NOT NULL REFERENCES price_lists (supplier) ON DELETE CASCADE,
    species TEXT NOT NULL CHECK (length(species) BETWEEN 1 AND 80),
    kind TEXT NOT NULL CHECK (kind IN ('solid', 'sheet')),
    thickness_ticks INTEGER NOT NULL CHECK (thickness_ticks BETWEEN 1 AND 32000000),
    content TEXT NOT NULL CHECK (json_valid(content))
) STRICT;

CREATE TABLE places (
    name TEXT PRIMARY KEY CHECK (length(name) BETWEEN 1 AND 200),
    reach TEXT NOT NULL CHECK (reach IN ('easy', 'behind', 'buried')),
    limit_cubic_mm INTEGER CHECK (limit_cubic_mm > 0),
    note TEXT CHECK (length(note) <= 2000)
) STRICT;

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
    plan TEXT CHECK (json_valid(plan)), earlier_id TEXT REFERENCES plan_runs (id), made_with TEXT CHECK (json_valid(made_with)), designs TEXT CHECK (json_valid(designs)), purpose TEXT NOT NULL DEFAULT 'build' CHECK (purpose IN ('build', 'what-if')),
    CHECK ((finished_at IS NULL) = (state IN ('queued', 'planning'))),
    CHECK ((failure IS NOT NULL) = (state = 'failed')),
    CHECK (state <> 'failed' OR plan IS NULL),
    CHECK (state <> 'done' OR plan IS NOT NULL)
) STRICT;

CREATE TABLE price_lists (
    supplier TEXT PRIMARY KEY CHECK (length(supplier) BETWEEN 1 AND 80),
    updated_at TEXT NOT NULL
, terms TEXT CHECK (json_valid(terms)), currency TEXT CHECK (length(currency) = 3)) STRICT;

CREATE TABLE queue_claims (
    plan_id TEXT NOT NULL REFERENCES plan_runs (id),
    entry_id INTEGER NOT NULL REFERENCES build_queue (id) ON DELETE CASCADE,
    -- How many boards the plan cuts: it is built when so many are closed.
    boards INTEGER NOT NULL CHECK (boards >= 0),
    -- Whether the plan has all pieces of this build.
    is_whole INTEGER NOT NULL CHECK (is_whole IN (0, 1)),
    PRIMARY KEY (plan_id, entry_id)
) STRICT, WITHOUT ROWID;

CREATE TABLE reservations (
    board_sequence INTEGER NOT NULL REFERENCES boards (sequence),
    copy INTEGER NOT NULL CHECK (copy >= 1),
    plan_id TEXT NOT NULL REFERENCES plan_runs (id),
    number INTEGER NOT NULL CHECK (number >= 1),
    PRIMARY KEY (board_sequence, copy),
    UNIQUE (plan_id, number)
) STRICT, WITHOUT ROWID;

CREATE TABLE shop (
    only_row INTEGER PRIMARY KEY CHECK (only_row = 1),
    content TEXT NOT NULL CHECK (json_valid(content))
) STRICT;

CREATE TABLE sightings (
    stock_take INTEGER NOT NULL REFERENCES stock_takes (number),
    board_id TEXT NOT NULL,
    finding TEXT NOT NULL CHECK (finding IN ('confirmed', 'left')),
    at TEXT NOT NULL,
    PRIMARY KEY (stock_take, board_id)
) STRICT, WITHOUT ROWID;

CREATE TABLE species (
    sequence INTEGER PRIMARY KEY,
    id TEXT NOT NULL UNIQUE CHECK (length(id) BETWEEN 1 AND 80),
    content TEXT NOT NULL CHECK (json_valid(content))
) STRICT;

CREATE TABLE stock_takes (
    number INTEGER PRIMARY KEY,
    place TEXT NOT NULL CHECK (length(place) BETWEEN 1 AND 200),
    started_at TEXT NOT NULL,
    finished_at TEXT
) STRICT;

CREATE INDEX design_versions_of_design ON design_versions (design_sequence);

CREATE INDEX fit_outcomes_by_use ON fit_outcomes (used_at);

CREATE INDEX journal_boards_of_line ON journal_boards (line);

CREATE INDEX journal_of_plan ON journal (plan_id, line) WHERE plan_id IS NOT NULL;

CREATE INDEX journal_of_stock_take ON journal (stock_take, line) WHERE stock_take IS NOT NULL;

CREATE INDEX offers_of_supplier ON offers (supplier);

CREATE UNIQUE INDEX one_open_stock_take_of_a_place ON stock_takes (place) WHERE finished_at IS NULL;

CREATE INDEX plan_runs_under_way ON plan_runs (state) WHERE state IN ('queued', 'planning');
