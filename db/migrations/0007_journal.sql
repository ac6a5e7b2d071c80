-- The journal: one line for every change of the stock, never changed and never taken away, and with each line the state in which it
-- left every board that it touched (null: no longer in the inventory). The inventory is the last state of each board.
-- A line's number is one above the last, so that no line can be replaced or slipped in.
CREATE TABLE journal (
    line INTEGER PRIMARY KEY,
    at TEXT NOT NULL,
    kind TEXT NOT NULL CHECK (kind IN ('opening', 'log', 'import', 'edit', 'delete', 'accept', 'release', 'expire', 'close', 'undo')),
    undoes INTEGER UNIQUE REFERENCES journal (line),
    plan_id TEXT REFERENCES plan_runs (id),
    -- How far the build of the plan is after this line; null for a plan that is not accepted.
    build TEXT CHECK (json_valid(build)),
    CHECK ((undoes IS NOT NULL) = (kind = 'undo')),
    CHECK (build IS NULL OR plan_id IS NOT NULL)
) STRICT;

CREATE INDEX journal_of_plan ON journal (plan_id, line) WHERE plan_id IS NOT NULL;

CREATE TABLE journal_boards (
    line INTEGER NOT NULL REFERENCES journal (line),
    board_id TEXT NOT NULL,
    state TEXT CHECK (json_valid(state)),
    PRIMARY KEY (board_id, line)
) STRICT, WITHOUT ROWID;

CREATE INDEX journal_boards_of_line ON journal_boards (line);

CREATE TRIGGER journal_only_grows BEFORE INSERT ON journal
WHEN NEW.line <> (SELECT coalesce(max(line), 0) + 1 FROM journal)
BEGIN SELECT RAISE(ABORT, 'The journal only grows at its end.'); END;

CREATE TRIGGER journal_is_never_changed BEFORE UPDATE ON journal
BEGIN SELECT RAISE(ABORT, 'The journal is never changed.'); END;

CREATE TRIGGER journal_is_never_cut BEFORE DELETE ON journal
BEGIN SELECT RAISE(ABORT, 'The journal is never cut.'); END;

CREATE TRIGGER journal_boards_only_grow BEFORE INSERT ON journal_boards
WHEN NEW.line <> (SELECT max(line) FROM journal)
  OR EXISTS (SELECT 1 FROM journal_boards WHERE board_id = NEW.board_id AND line = NEW.line)
BEGIN SELECT RAISE(ABORT, 'The journal only grows at its end.'); END;

CREATE TRIGGER journal_boards_are_never_changed BEFORE UPDATE ON journal_boards
BEGIN SELECT RAISE(ABORT, 'The journal is never changed.'); END;

CREATE TRIGGER journal_boards_are_never_cut BEFORE DELETE ON journal_boards
BEGIN SELECT RAISE(ABORT, 'The journal is never cut.'); END;

-- The boards that were there before the journal.
INSERT INTO journal (line, at, kind)
SELECT 1, strftime('%Y-%m-%dT%H:%M:%S', 'now') || '.0000000Z', 'opening' WHERE EXISTS (SELECT 1 FROM boards);

INSERT INTO journal_boards (line, board_id, state)
SELECT 1, id, json_object(
    'row', json_object(
        'sequence', sequence, 'id', id, 'kind', kind, 'species', species,
        'thicknessTicks', thickness_ticks, 'widthTicks', width_ticks, 'lengthTicks', length_ticks,
        'quantity', quantity, 'surface', surface, 'appearance', appearance, 'batch', batch, 'leftEnd', left_end, 'rightEnd', right_end,
        'bowTicks', bow_ticks, 'crookTicks', crook_ticks, 'cupTicks', cup_ticks, 'twistTicks', twist_ticks,
        'place', place, 'source', source, 'note', note, 'status', status, 'loggedAt', logged_at),
    'defects', json((
        SELECT json_group_array(json_object(
            'boardSequence', board_sequence, 'ordinal', ordinal, 'kind', kind,
            'xTicks', x_ticks, 'yTicks', y_ticks, 'lengthTicks', length_ticks, 'widthTicks', width_ticks))
        FROM (SELECT * FROM board_defects WHERE board_sequence = boards.sequence ORDER BY ordinal))))
FROM boards;

PRAGMA user_version = 7;
