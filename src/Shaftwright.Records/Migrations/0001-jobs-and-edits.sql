-- Jobs as they stand, the edits that made them, and edits that could not be applied.
CREATE TABLE jobs (
  id       TEXT    PRIMARY KEY,
  document TEXT    NOT NULL CHECK (json_valid(document)),
  revision INTEGER NOT NULL CHECK (revision > 0),
  updated  TEXT    NOT NULL
) STRICT, WITHOUT ROWID;

-- seq is the order of arrival and is never given twice, so that another device can ask for what came since.
CREATE TABLE edits (
  seq        INTEGER PRIMARY KEY AUTOINCREMENT,
  id         TEXT    NOT NULL UNIQUE,
  job        TEXT    NOT NULL REFERENCES jobs (id),
  at         TEXT    NOT NULL,
  device     TEXT    NOT NULL,
  path       TEXT    NOT NULL,
  value      TEXT    CHECK (value IS NULL OR json_valid(value)),
  was        TEXT    CHECK (was IS NULL OR json_valid(was)),
  revision   INTEGER NOT NULL,
  applied_at TEXT    NOT NULL
) STRICT;

CREATE INDEX edits_by_job ON edits (job, seq);

-- What somebody typed is kept even when it could not be taken. raw is what was sent; id is '' when none could be read.
CREATE TABLE refused (
  seq        INTEGER PRIMARY KEY AUTOINCREMENT,
  id         TEXT NOT NULL,
  job        TEXT,
  raw        TEXT NOT NULL,
  refusals   TEXT NOT NULL CHECK (json_valid(refusals)),
  refused_at TEXT NOT NULL
) STRICT;

CREATE UNIQUE INDEX refused_once ON refused (id, raw);
