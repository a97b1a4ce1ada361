-- Finding what is written anywhere by the words in it. Projections: filled anew after this step.

-- The texts: one row for each subject and enclosure, and for each fact with a note.
CREATE TABLE searchable (
    n      INTEGER PRIMARY KEY,                   -- of this file alone, without a meaning
    kind   INTEGER NOT NULL,                      -- 0 subject, 1 enclosure, 2 fact
    origin BLOB    NOT NULL,                      -- the subject, the enclosure, or the entry of the fact
    about  BLOB    NOT NULL,                      -- the subject or the enclosure
    at     INTEGER NOT NULL,                      -- when the fact happened, ms since 1970 UTC; else 0
    number TEXT    NOT NULL,
    place  TEXT    NOT NULL,                      -- and the name of the enclosure
    source TEXT    NOT NULL,
    note   TEXT    NOT NULL,
    UNIQUE (origin, kind)
) STRICT;

-- Which words stand in which of them. Nobody asks for words next to each other, so where in a text a word
-- stands is not kept. SQLite knows the characters of Unicode 6.1, and takes later ones for letters: those
-- pictures that keepers put between words are named here, and in WordSplitter.
CREATE VIRTUAL TABLE word_index USING fts5 (
    number, place, source, note,
    content = 'searchable', content_rowid = 'n',
    tokenize = "unicode61 remove_diacritics 2 separators '🕷🕸🦂🦗🪳🪲🐛'",
    detail = column, columnsize = 0
);
