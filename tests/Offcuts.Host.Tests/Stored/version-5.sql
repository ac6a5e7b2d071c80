-- A database as the program left it at schema version 5, before warp, tolerances, layers and recipes; written by sqlite3's dump.
PRAGMA foreign_keys = OFF;
BEGIN TRANSACTION;
CREATE TABLE [SchemaVersions] (
    SchemaVersionID INTEGER CONSTRAINT [PK_SchemaVersions_Id] PRIMARY KEY AUTOINCREMENT NOT NULL,
    ScriptName TEXT NOT NULL,
    Applied DATETIME NOT NULL
);
INSERT INTO "SchemaVersions" VALUES(1,'0001_boards.sql','2026-11-25 19:24:12.030969');
INSERT INTO "SchemaVersions" VALUES(2,'0002_shop_and_species.sql','2026-11-25 19:24:12.0360242');
INSERT INTO "SchemaVersions" VALUES(3,'0003_designs.sql','2026-11-25 19:24:12.0366953');
INSERT INTO "SchemaVersions" VALUES(4,'0004_offers.sql','2026-11-25 19:24:12.0374405');
INSERT INTO "SchemaVersions" VALUES(5,'0005_plan_runs.sql','2026-11-25 19:24:12.0383525');
CREATE TABLE board_defects (
    board_sequence INTEGER NOT NULL REFERENCES boards (sequence) ON DELETE CASCADE,
    ordinal INTEGER NOT NULL CHECK (ordinal >= 0),
    kind TEXT NOT NULL CHECK (length(kind) BETWEEN 1 AND 80),
    x_ticks INTEGER NOT NULL CHECK (x_ticks >= 0),
    y_ticks INTEGER NOT NULL CHECK (y_ticks >= 0),
    length_ticks INTEGER NOT NULL CHECK (length_ticks > 0),
    width_ticks INTEGER NOT NULL CHECK (width_ticks > 0),
    PRIMARY KEY (board_sequence, ordinal)
) STRICT;
INSERT INTO "board_defects" VALUES(1,0,'knot',6400,3200,9600,9600);
CREATE TABLE board_sequence (
    only_row INTEGER PRIMARY KEY CHECK (only_row = 1),
    next INTEGER NOT NULL CHECK (next > 0)
) STRICT;
INSERT INTO "board_sequence" VALUES(1,2);
CREATE TABLE boards (
    sequence INTEGER PRIMARY KEY,
    id TEXT NOT NULL UNIQUE,
    kind TEXT NOT NULL CHECK (kind IN ('solid', 'sheet')),
    species TEXT NOT NULL CHECK (length(species) BETWEEN 1 AND 80),
    thickness_ticks INTEGER NOT NULL CHECK (thickness_ticks BETWEEN 1 AND 32000000),
    width_ticks INTEGER NOT NULL CHECK (width_ticks BETWEEN 1 AND 32000000),
    length_ticks INTEGER NOT NULL CHECK (length_ticks BETWEEN 1 AND 32000000),
    quantity INTEGER NOT NULL CHECK (quantity BETWEEN 1 AND 10000),
    surface TEXT NOT NULL CHECK (surface IN ('rough', 'surfaced')),
    appearance TEXT NOT NULL CHECK (appearance IN ('clear', 'sound-knots', 'paint')),
    place TEXT CHECK (length(place) <= 200),
    source TEXT CHECK (length(source) <= 200),
    note TEXT CHECK (length(note) <= 2000),
    status TEXT NOT NULL CHECK (status IN ('free', 'reserved', 'used', 'gone')),
    logged_at TEXT NOT NULL
) STRICT;
INSERT INTO "boards" VALUES(1,'333','solid','white-ash',8320,48000,448000,1,'rough','clear',NULL,NULL,NULL,'free','2026-11-25T19:24:15.3541925Z');
CREATE TABLE design_versions (
    sequence INTEGER PRIMARY KEY,
    design_sequence INTEGER NOT NULL REFERENCES designs (sequence) ON DELETE CASCADE,
    version TEXT NOT NULL UNIQUE CHECK (length(version) = 12),
    content TEXT NOT NULL CHECK (json_valid(content)),
    created_at TEXT NOT NULL
) STRICT;
INSERT INTO "design_versions" VALUES(1,1,'00a8d878e75b','{"name":"Coat Rack","description":null,"parts":[{"name":"rail","thicknessMm":19,"widthMm":90,"lengthMm":600,"quantity":2,"species":["white-ash"],"appearance":"sound-knots","grain":"fixed","group":null},{"name":"peg","thicknessMm":12,"widthMm":12,"lengthMm":70,"quantity":2,"species":[],"appearance":"sound-knots","grain":"free","group":"show"}],"panels":[],"groups":[{"name":"show","oneSpecies":true,"species":["white-ash"]}],"items":[{"name":"screws","unitPrice":3.50,"quantity":2,"supplier":null}]}','2026-11-25T19:24:15.4788333Z');
CREATE TABLE designs (
    sequence INTEGER PRIMARY KEY,
    reference TEXT NOT NULL UNIQUE CHECK (length(reference) BETWEEN 1 AND 80),
    current_version TEXT NOT NULL
) STRICT;
INSERT INTO "designs" VALUES(1,'coat-rack','00a8d878e75b');
CREATE TABLE offers (
    sequence INTEGER PRIMARY KEY,
    id TEXT NOT NULL UNIQUE CHECK (length(id) BETWEEN 1 AND 160),
    supplier TEXT NOT NULL REFERENCES price_lists (supplier) ON DELETE CASCADE,
    species TEXT NOT NULL CHECK (length(species) BETWEEN 1 AND 80),
    kind TEXT NOT NULL CHECK (kind IN ('solid', 'sheet')),
    thickness_ticks INTEGER NOT NULL CHECK (thickness_ticks BETWEEN 1 AND 32000000),
    content TEXT NOT NULL CHECK (json_valid(content))
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
    plan TEXT CHECK (json_valid(plan)),
    CHECK ((finished_at IS NULL) = (state IN ('queued', 'planning'))),
    CHECK ((failure IS NOT NULL) = (state = 'failed')),
    CHECK (state <> 'failed' OR plan IS NULL),
    CHECK (state <> 'done' OR plan IS NOT NULL)
) STRICT;
INSERT INTO "plan_runs" VALUES(1,'h36dktac','done','2026-11-25T19:24:15.5636589Z','2026-11-25T19:24:16.0242354Z','Coat Rack','00a8d878e75b','coat-rack',2000,3,'2421 1795634651','{"stock":[{"id":"333","species":"white-ash","thicknessMm":26,"widthMm":150,"lengthMm":1400,"kind":"solid","quantity":1,"surface":"rough","appearance":"clear","defects":[{"kind":"knot","xMm":20,"yMm":10,"lengthMm":30,"widthMm":30}],"place":null,"loggedAt":"2026-11-25T19:24:15.3541925+00:00"}],"offers":[],"shop":{"unit":"millimetre","currency":"EUR","kerfMm":3,"rough":{"lengthMm":12.7,"widthMm":6.35,"thicknessMm":4.7625},"surfaced":{"lengthMm":12.7,"widthMm":3.175,"thicknessMm":1.5875},"sheet":{"lengthMm":0,"widthMm":0,"thicknessMm":0},"panelOversizeMm":6.35,"seamAllowanceMm":3.175,"planerWidthMm":304.8,"jointerWidthMm":203.2,"narrowestStripMm":38.1,"widestStripMm":152.4,"keep":{"thicknessMm":6.35,"widthMm":50.8,"lengthMm":304.8},"shortestAtPlanerMm":304.8,"shortestAtJointerMm":304.8,"recut":true},"design":{"name":"Coat Rack","description":null,"parts":[{"name":"rail","thicknessMm":19,"widthMm":90,"lengthMm":600,"quantity":2,"species":["white-ash"],"appearance":"sound-knots","grain":"fixed","group":null},{"name":"peg","thicknessMm":12,"widthMm":12,"lengthMm":70,"quantity":2,"species":["white-ash"],"appearance":"sound-knots","grain":"free","group":"show"}],"panels":[],"groups":[{"name":"show","oneSpecies":true,"species":["white-ash"]}],"items":[{"name":"screws","unitPrice":3.50,"quantity":2,"supplier":null}]},"rates":{"otherwise":6.00,"perBoardFoot":{}},"today":"2026-11-25"}','{"elapsedMs":437,"woodCost":0.00,"woodBound":0.00,"gap":0}',NULL,'{"status":"proved","currency":"EUR","totalCost":7.00,"woodCost":0.00,"itemCost":7.00,"woodBound":0.00,"gap":0,"worthConsumed":8.46,"worthReturned":0.00,"boards":[{"number":1,"boardId":"333","offerId":null,"copy":1,"kind":"solid","species":"white-ash","surface":"rough","size":{"thicknessMm":26,"widthMm":150,"lengthMm":1400},"place":null,"defects":[{"kind":"knot","xMm":20,"yMm":10,"lengthMm":30,"widthMm":30}],"firstCut":"rip","pieces":[{"kind":"part","xMm":50,"yMm":0,"lengthMm":612.7,"widthMm":96.35,"name":"rail","copy":1,"turned":false,"subPanel":null,"order":null,"netWidthMm":null},{"kind":"part","xMm":665.7,"yMm":0,"lengthMm":612.7,"widthMm":96.35,"name":"rail","copy":2,"turned":false,"subPanel":null,"order":null,"netWidthMm":null},{"kind":"part","xMm":1281.4,"yMm":0,"lengthMm":82.7,"widthMm":18.35,"name":"peg","copy":1,"turned":false,"subPanel":null,"order":null,"netWidthMm":null},{"kind":"part","xMm":1281.4,"yMm":21.35,"lengthMm":82.7,"widthMm":18.35,"name":"peg","copy":2,"turned":false,"subPanel":null,"order":null,"netWidthMm":null},{"kind":"waste","xMm":0,"yMm":0,"lengthMm":47,"widthMm":150,"name":null,"copy":null,"turned":null,"subPanel":null,"order":null,"netWidthMm":null},{"kind":"waste","xMm":50,"yMm":99.35,"lengthMm":1350,"widthMm":50.65,"name":null,"copy":null,"turned":null,"subPanel":null,"order":null,"netWidthMm":null},{"kind":"waste","xMm":1367.1,"yMm":0,"lengthMm":32.9,"widthMm":96.35,"name":null,"copy":null,"turned":null,"subPanel":null,"order":null,"netWidthMm":null},{"kind":"waste","xMm":1281.4,"yMm":42.7,"lengthMm":82.7,"widthMm":53.65,"name":null,"copy":null,"turned":null,"subPanel":null,"order":null,"netWidthMm":null}],"cuts":[{"order":1,"direction":"crosscut","xMm":47,"yMm":0,"lengthMm":3,"widthMm":150},{"order":2,"direction":"rip","xMm":50,"yMm":96.35,"lengthMm":1350,"widthMm":3},{"order":3,"direction":"crosscut","xMm":662.7,"yMm":0,"lengthMm":3,"widthMm":96.35},{"order":4,"direction":"crosscut","xMm":1278.4,"yMm":0,"lengthMm":3,"widthMm":96.35},{"order":5,"direction":"crosscut","xMm":1364.1,"yMm":0,"lengthMm":3,"widthMm":96.35},{"order":6,"direction":"rip","xMm":1281.4,"yMm":18.35,"lengthMm":82.7,"widthMm":3},{"order":7,"direction":"rip","xMm":1281.4,"yMm":39.7,"lengthMm":82.7,"widthMm":3}],"speciesName":"white ash"}],"glueUps":[],"purchases":[],"shoppingLists":[{"supplier":null,"wood":[],"items":[{"name":"screws","unitPrice":3.50,"quantity":2,"supplier":null}],"total":7.00,"supplierName":null}],"missing":[],"warnings":[{"code":"short-for-jointer","subject":"peg","text":"The blank of peg (82.7 mm long) is shorter than the 304.8 mm that the shop takes as safe at the jointer: mill it in one piece with another part or by hand, and go by the machine\u0027s manual.","valueMm":82.7,"limitMm":304.8},{"code":"short-for-planer","subject":"peg","text":"The blank of peg (82.7 mm long) is shorter than the 304.8 mm that the shop takes as safe at the planer: mill it in one piece with another part or by hand, and go by the machine\u0027s manual.","valueMm":82.7,"limitMm":304.8},{"code":"defects","subject":"333","text":"Board 333 has recorded defects, so only its largest clear rectangle is used: look it over for splits, knots and metal before you cut.","valueMm":null,"limitMm":null}],"run":{"seed":3,"budgetMs":2000,"elapsedMs":437,"firstPlanAfterMs":141,"finished":true,"plannerVersion":"1"}}');
CREATE TABLE price_lists (
    supplier TEXT PRIMARY KEY CHECK (length(supplier) BETWEEN 1 AND 80),
    updated_at TEXT NOT NULL
) STRICT;
CREATE TABLE shop (
    only_row INTEGER PRIMARY KEY CHECK (only_row = 1),
    content TEXT NOT NULL CHECK (json_valid(content))
) STRICT;
INSERT INTO "shop" VALUES(1,'{"unit":"millimetre","currency":"EUR","kerfMm":3,"rough":{"lengthMm":12.7,"widthMm":6.35,"thicknessMm":4.7625},"surfaced":{"lengthMm":12.7,"widthMm":3.175,"thicknessMm":1.5875},"sheet":{"lengthMm":0,"widthMm":0,"thicknessMm":0},"panelOversizeMm":6.35,"seamAllowanceMm":3.175,"planerWidthMm":304.8,"jointerWidthMm":203.2,"narrowestStripMm":38.1,"widestStripMm":152.4,"keep":{"thicknessMm":6.35,"widthMm":50.8,"lengthMm":304.8},"shortestAtPlanerMm":304.8,"shortestAtJointerMm":304.8,"recut":true}');
CREATE TABLE species (
    sequence INTEGER PRIMARY KEY,
    id TEXT NOT NULL UNIQUE CHECK (length(id) BETWEEN 1 AND 80),
    content TEXT NOT NULL CHECK (json_valid(content))
) STRICT;
CREATE INDEX design_versions_of_design ON design_versions (design_sequence);
CREATE INDEX offers_of_supplier ON offers (supplier);
CREATE INDEX plan_runs_under_way ON plan_runs (state) WHERE state IN ('queued', 'planning');
DELETE FROM "sqlite_sequence";
INSERT INTO "sqlite_sequence" VALUES('SchemaVersions',5);
PRAGMA user_version = 5;
COMMIT;
