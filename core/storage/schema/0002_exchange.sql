-- Books that unite: entries of other devices, and which values were known to those who wrote a value.

-- A phone restored from a copy goes on counting where the copy stood, so two entries may carry the same
-- number of the same device. Both are kept.
CREATE TABLE entry_next (
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
    zone        TEXT    NOT NULL                  -- IANA name of the keeper's zone
) STRICT;
INSERT INTO entry_next SELECT n, id, device, seq, act, hlc, kind, thing, body, recorded_at,
    happened_at, day, zone FROM entry ORDER BY n;
DROP TABLE entry;
ALTER TABLE entry_next RENAME TO entry;
-- With the id, so that what a device has is read from the index alone.
CREATE INDEX entry_of_device ON entry (device, seq, id);

-- What came from other books, one row for each merge that added anything. The newest can be taken back.
CREATE TABLE arrival (
    number     INTEGER PRIMARY KEY,
    at         INTEGER NOT NULL,                  -- ms since 1970 UTC
    source     TEXT    NOT NULL,                  -- name of the file, for the keeper
    device     BLOB,                              -- that wrote the file, where it says so
    first_n    INTEGER NOT NULL,                  -- entries first_n to last_n
    last_n     INTEGER NOT NULL,
    entries    INTEGER NOT NULL,
    taken_back INTEGER                            -- when, ms since 1970 UTC
) STRICT;

-- The arrival that is being taken back in this transaction.
ALTER TABLE book ADD COLUMN taking_back INTEGER REFERENCES arrival (number);

CREATE TRIGGER entry_is_never_changed BEFORE UPDATE ON entry
BEGIN SELECT RAISE (ABORT, 'entries are never changed'); END;
CREATE TRIGGER entry_is_never_deleted BEFORE DELETE ON entry
WHEN NOT EXISTS (SELECT 1 FROM book JOIN arrival a ON a.number = book.taking_back
                 WHERE old.n BETWEEN a.first_n AND a.last_n AND a.taken_back IS NULL
                 AND a.number = (SELECT max(number) FROM arrival))
BEGIN SELECT RAISE (ABORT, 'entries are never deleted'); END;

-- Projections: filled anew after this step ---------------------------------------------------------

DROP TABLE correction;
CREATE TABLE correction (
    target BLOB    NOT NULL,
    hlc    INTEGER NOT NULL,
    entry  BLOB    NOT NULL,
    kind   TEXT    NOT NULL,
    body   TEXT    NOT NULL,
    device BLOB    NOT NULL,
    seq    INTEGER NOT NULL,
    PRIMARY KEY (target, hlc, entry)
) STRICT, WITHOUT ROWID;

-- Every value ever set. Those that no other one replaced are the heads; of several the last in
-- (hlc, entry) order counts, and the keeper is asked.
DROP TABLE field;
CREATE TABLE field (
    thing     BLOB    NOT NULL,
    name      TEXT    NOT NULL,
    hlc       INTEGER NOT NULL,
    entry     BLOB    NOT NULL,
    type      TEXT    NOT NULL,
    value     TEXT    NOT NULL,                   -- JSON
    device    BLOB    NOT NULL,
    seq       INTEGER NOT NULL,
    over      TEXT,                               -- JSON array: entries whose values it replaced
    retracted INTEGER NOT NULL,                   -- still says what its entry replaced
    PRIMARY KEY (thing, name, hlc, entry)
) STRICT, WITHOUT ROWID;

-- Where several heads say different things: fields of a thing, amendments of a fact.
CREATE TABLE difference (
    kind  INTEGER NOT NULL,                       -- 0 field, 1 amendment, 2 its confidential part
    about BLOB    NOT NULL,                       -- the thing or the fact
    type  TEXT    NOT NULL,                       -- of the thing, else empty
    name  TEXT    NOT NULL,                       -- of the field, else empty
    PRIMARY KEY (kind, about, type, name)
) STRICT, WITHOUT ROWID;

-- Entries that are left out of files for others unless asked for.
CREATE TABLE confidential (
    entry BLOB PRIMARY KEY
) STRICT, WITHOUT ROWID;

-- Numbers that a device gave twice.
CREATE TABLE fork (
    device BLOB    NOT NULL,
    seq    INTEGER NOT NULL,
    PRIMARY KEY (device, seq)
) STRICT, WITHOUT ROWID;
-- What other devices have, and what has come and gone through shared folders.

-- What the last file from each other device said its book holds, so that the next file for it holds
-- only the rest.
CREATE TABLE peer (
    device     BLOB    PRIMARY KEY CHECK (length(device) = 16),
    written_at INTEGER NOT NULL,                  -- when that file was written, ms since 1970 UTC
    vector     TEXT    NOT NULL                   -- JSON, as in the file
) STRICT, WITHOUT ROWID;

-- Photos that an arrival brought: they go with it when it is taken back.
CREATE TABLE arrived_photo (
    arrival INTEGER NOT NULL,                     -- its number
    picture BLOB    NOT NULL CHECK (length(picture) = 32),
    reduced INTEGER NOT NULL,                     -- 1 for the smaller copy
    PRIMARY KEY (arrival, picture, reduced)
) STRICT, WITHOUT ROWID;

-- A folder that a file-sync engine or a stick carries between the devices.
CREATE TABLE shared_folder (
    ref          INTEGER PRIMARY KEY,
    path         TEXT    NOT NULL UNIQUE,
    confidential INTEGER NOT NULL,                -- 1 where nothing was left out
    newest       BLOB,                            -- the last entry that was looked at
    vector       TEXT    NOT NULL                 -- JSON: what the files in the folder hold together
) STRICT;

-- Files in it that were taken in, or written by this device.
CREATE TABLE shared_file (
    folder INTEGER NOT NULL REFERENCES shared_folder (ref),
    device BLOB    NOT NULL CHECK (length(device) = 16),
    name   TEXT    NOT NULL,
    PRIMARY KEY (folder, device, name)
) STRICT, WITHOUT ROWID;
