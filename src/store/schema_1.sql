-- What was heard of one score: keyed by its bytes and by the terms under which they were judged.
CREATE TABLE score (
    id INTEGER PRIMARY KEY,
    content TEXT NOT NULL, -- SHA-256 of the file
    terms TEXT NOT NULL,   -- SHA-256 of edition, settings that bear on a verdict, year
    edition TEXT NOT NULL, -- of the program
    UNIQUE (content, terms)
);

-- Where scores lie. A file that can't be used has no score but a problem.
CREATE TABLE file (
    path TEXT PRIMARY KEY,    -- from the root
    content TEXT NOT NULL,
    terms TEXT NOT NULL,
    bytes INTEGER NOT NULL,
    changed INTEGER NOT NULL, -- nanoseconds since 1970; -1: too fresh to be trusted
    score INTEGER REFERENCES score ON DELETE CASCADE,
    problem TEXT,
    CHECK ((score IS NULL) <> (problem IS NULL))
) WITHOUT ROWID;
CREATE INDEX file_score ON file (score);

CREATE TABLE work (
    id INTEGER PRIMARY KEY,
    composer TEXT NOT NULL,
    name TEXT NOT NULL,
    UNIQUE (composer, name)
);

CREATE TABLE movement (
    id INTEGER PRIMARY KEY,
    score INTEGER NOT NULL REFERENCES score ON DELETE CASCADE,
    number INTEGER NOT NULL,  -- in its file, from 1
    work INTEGER NOT NULL REFERENCES work,
    title TEXT NOT NULL,
    year INTEGER,             -- of composition
    bars INTEGER NOT NULL,
    seconds REAL,             -- that it lasts by its tempo marks; NULL where it has none
    orchestras INTEGER NOT NULL,
    thirds INTEGER NOT NULL,  -- violins in three sections
    chamber INTEGER NOT NULL, -- every string part is one player's
    outcome TEXT NOT NULL,    -- judged, without strings, without violins
    confidence TEXT NOT NULL, -- firm, leaning, open
    margin REAL NOT NULL,
    arrangement TEXT,         -- recommended
    by_year INTEGER NOT NULL, -- the year of composition makes it so
    UNIQUE (score, number)
);
CREATE INDEX movement_work ON movement (work);

-- Instrumentation: each line of the score, as it was understood.
CREATE TABLE part (
    movement INTEGER NOT NULL REFERENCES movement ON DELETE CASCADE,
    number INTEGER NOT NULL,
    name TEXT NOT NULL,
    family TEXT NOT NULL,
    section TEXT,             -- of strings: Vn I, Vn II, Vn III, Va, Vc, Db
    also TEXT,                -- a second section that reads the same notes
    orchestra INTEGER NOT NULL, -- 0 where there is one
    role TEXT NOT NULL,
    PRIMARY KEY (movement, number)
) WITHOUT ROWID;

-- The least number of string players that a section needs.
CREATE TABLE need (
    movement INTEGER NOT NULL REFERENCES movement ON DELETE CASCADE,
    section TEXT NOT NULL,
    players INTEGER NOT NULL,
    bar TEXT,                 -- where; NULL: by its parts
    PRIMARY KEY (movement, section)
) WITHOUT ROWID;

CREATE TABLE passage (
    id INTEGER PRIMARY KEY,
    movement INTEGER NOT NULL REFERENCES movement ON DELETE CASCADE,
    number INTEGER NOT NULL,  -- in its movement, from 1
    kind TEXT NOT NULL,
    first_side TEXT NOT NULL, -- who calls, or the section divided
    second_side TEXT,         -- who answers
    first INTEGER NOT NULL,   -- bars, counted from 1
    last INTEGER NOT NULL,
    first_bar TEXT NOT NULL,  -- as printed
    last_bar TEXT NOT NULL,
    letter TEXT NOT NULL,
    strength REAL NOT NULL,
    turns INTEGER NOT NULL,   -- or lines of a divided section
    notes INTEGER,            -- of a call
    lag REAL,                 -- crotchets from the first entry to the second
    semitones INTEGER,        -- from the call to its answer
    steps INTEGER,            -- the same in steps of the staff
    inverted INTEGER,
    stretch INTEGER           -- 1 notes twice as long, -1 half as long
);
CREATE INDEX passage_movement ON passage (movement);
CREATE INDEX passage_kind ON passage (kind, first_side, second_side, strength);

CREATE TABLE entry (
    passage INTEGER NOT NULL REFERENCES passage ON DELETE CASCADE,
    number INTEGER NOT NULL,
    players TEXT NOT NULL,
    bar INTEGER NOT NULL,     -- counted from 1
    onset REAL NOT NULL,      -- crotchets from the start of the movement
    length REAL NOT NULL,     -- crotchets
    answer INTEGER NOT NULL,
    semitones INTEGER NOT NULL,
    steps INTEGER NOT NULL,
    PRIMARY KEY (passage, number)
) WITHOUT ROWID;

-- The movement in each arrangement, best first.
CREATE TABLE seat (
    id INTEGER PRIMARY KEY,
    movement INTEGER NOT NULL REFERENCES movement ON DELETE CASCADE,
    place INTEGER NOT NULL,
    arrangement TEXT NOT NULL,
    points REAL NOT NULL,
    lost REAL NOT NULL,       -- points less than the best
    weakens TEXT NOT NULL,    -- 'exchange Vn I Vn II 12-18, 40'; ';' between
    UNIQUE (movement, place)
);
CREATE INDEX seat_arrangement ON seat (arrangement);

CREATE TABLE term (
    seat INTEGER NOT NULL REFERENCES seat ON DELETE CASCADE,
    number INTEGER NOT NULL,
    kind TEXT NOT NULL,
    points REAL NOT NULL,
    evidence REAL NOT NULL,
    PRIMARY KEY (seat, number)
) WITHOUT ROWID;

-- Views for people who know SQL.
CREATE VIEW movements AS
    SELECT work.composer, work.name AS work, movement.title, movement.year, movement.bars, movement.seconds, movement.orchestras,
           movement.thirds, movement.confidence, movement.arrangement, file.path, movement.number, movement.id
    FROM movement JOIN work ON work.id = movement.work JOIN file ON file.score = movement.score;
CREATE VIEW passages AS
    SELECT work.composer, work.name AS work, movement.title, passage.kind, passage.first_side, passage.second_side, passage.first_bar,
           passage.last_bar, passage.letter, passage.strength, passage.turns, passage.semitones, passage.steps, passage.id
    FROM passage JOIN movement ON movement.id = passage.movement JOIN work ON work.id = movement.work;
CREATE VIEW seatings AS
    SELECT work.composer, work.name AS work, movement.title, seat.place, seat.arrangement, seat.points, seat.lost, seat.weakens
    FROM seat JOIN movement ON movement.id = seat.movement JOIN work ON work.id = movement.work;
