-- Photos, each under the hash of its own bytes: sent twice it is one, and what a record names is what is here.
CREATE TABLE photos (
  sha256     TEXT    NOT NULL PRIMARY KEY CHECK (length(sha256) = 64),
  jpeg       BLOB    NOT NULL,
  width      INTEGER NOT NULL,
  height     INTEGER NOT NULL,
  arrived_at TEXT    NOT NULL
) STRICT;
