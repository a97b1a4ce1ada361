-- A book is a journal of entries, and projections that can be rebuilt from it.

-- What this file is and which device writes it.
CREATE TABLE book (
    only   INTEGER PRIMARY KEY CHECK (only = 1),
    id     BLOB NOT NULL CHECK (length(id) = 16),
    device INTEGER NOT NULL REFERENCES device (ref),
    -- The highest hybrid logical clock ever taken over from another device.
    heard  INTEGER NOT NULL DEFAULT 0
) STRICT;

CREATE TABLE device (
    ref INTEGER PRIMARY KEY,
    id  BLOB NOT NULL UNIQUE CHECK (length(id) = 16)
) STRICT;

-- The journal. Rows are only ever added.
CREATE TABLE entry (
    n           INTEGER PRIMARY KEY,              -- order of arrival in this file
    id          BLOB    NOT NULL UNIQUE CHECK (length(id) = 16),
    device      INTEGER NOT NULL REFERENCES device (ref),
    seq         INTEGER NOT NULL,                 -- 1, 2, 3 ... within the device
    act         INTEGER NOT NULL,                 -- seq of the first entry of the same tap
    hlc         INTEGER NOT NULL,                 -- hybrid logical clock: ms << 16 | counter
    kind        TEXT    NOT NULL,
    thing       BLOB    CHECK (thing IS NULL OR length(thing) = 16),
    body        TEXT    NOT NULL,                 -- a JSON object
    recorded_at INTEGER NOT NULL,                 -- ms since 1970 UTC
    happened_at INTEGER NOT NULL,
    day         INTEGER NOT NULL,                 -- the keeper's civil day, days since 1970-01-01
    zone        TEXT    NOT NULL,                 -- IANA name of the keeper's zone
    UNIQUE (device, seq)
) STRICT;

CREATE TRIGGER entry_is_never_changed BEFORE UPDATE ON entry
BEGIN SELECT RAISE (ABORT, 'entries are never changed'); END;
CREATE TRIGGER entry_is_never_deleted BEFORE DELETE ON entry
BEGIN SELECT RAISE (ABORT, 'entries are never deleted'); END;

-- Projections -------------------------------------------------------------------------------------

-- Amendments and retractions by the entry they correct, which may not have arrived yet.
CREATE TABLE correction (
    target BLOB    NOT NULL,
    hlc    INTEGER NOT NULL,
    entry  BLOB    NOT NULL,
    kind   TEXT    NOT NULL,
    body   TEXT    NOT NULL,
    PRIMARY KEY (target, hlc, entry)
) STRICT, WITHOUT ROWID;

-- What happened, after corrections, in history order.
CREATE TABLE fact (
    subject     BLOB    NOT NULL,
    happened_at INTEGER NOT NULL,
    hlc         INTEGER NOT NULL,
    entry       BLOB    NOT NULL,
    kind        TEXT    NOT NULL,
    day         INTEGER NOT NULL,
    body        TEXT    NOT NULL,
    PRIMARY KEY (subject, happened_at, hlc, entry)
) STRICT, WITHOUT ROWID;
CREATE INDEX fact_photo ON fact (happened_at) WHERE kind = 'photo';

-- Every value ever set; of those for one field the last in (hlc, entry) order counts, and the others
-- stay as its history.
CREATE TABLE field (
    thing BLOB    NOT NULL,
    name  TEXT    NOT NULL,
    hlc   INTEGER NOT NULL,
    entry BLOB    NOT NULL,
    type  TEXT    NOT NULL,
    value TEXT    NOT NULL,                       -- JSON
    PRIMARY KEY (thing, name, hlc, entry)
) STRICT, WITHOUT ROWID;

-- The folded state of a subject; its form is private to this version of the program.
CREATE TABLE digest (
    subject BLOB    PRIMARY KEY,
    last_at INTEGER NOT NULL,                     -- history position of the newest fact folded in
    last_hlc INTEGER NOT NULL,
    last_entry BLOB NOT NULL,
    state   BLOB    NOT NULL
) STRICT, WITHOUT ROWID;

CREATE TABLE subject (
    id          BLOB PRIMARY KEY,
    number      TEXT    NOT NULL,
    form        INTEGER NOT NULL,
    species     TEXT    NOT NULL,
    sex         INTEGER NOT NULL,
    hatched     INTEGER,
    acquired    INTEGER,
    source      TEXT    NOT NULL,
    standing    INTEGER NOT NULL,
    quarantined INTEGER NOT NULL,
    mature      INTEGER NOT NULL,
    enclosure   BLOB,
    place       TEXT    NOT NULL,
    mother      BLOB,
    father      BLOB,
    headcount   INTEGER NOT NULL,
    note        TEXT    NOT NULL
) STRICT, WITHOUT ROWID;
CREATE INDEX subject_number ON subject (number);

CREATE TABLE enclosure (
    id           BLOB PRIMARY KEY,
    name         TEXT NOT NULL,
    length_mm    REAL NOT NULL,
    width_mm     REAL NOT NULL,
    height_mm    REAL NOT NULL,
    substrate_mm REAL NOT NULL,
    place        TEXT NOT NULL,
    note         TEXT NOT NULL
) STRICT, WITHOUT ROWID;

CREATE TABLE tag (
    id        BLOB PRIMARY KEY,
    code      TEXT NOT NULL UNIQUE,
    side_mm   REAL NOT NULL,
    subject   BLOB,
    enclosure BLOB
) STRICT, WITHOUT ROWID;
CREATE INDEX tag_subject ON tag (subject) WHERE subject IS NOT NULL;
CREATE INDEX tag_enclosure ON tag (enclosure) WHERE enclosure IS NOT NULL;

-- Names of the room and its code, and the keeper's own rules.
CREATE TABLE setting (
    name  TEXT PRIMARY KEY,
    value TEXT NOT NULL
) STRICT, WITHOUT ROWID;
