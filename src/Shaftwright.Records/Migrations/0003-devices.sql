-- Phones that may reach this book over the network. The token itself is never kept, only its hash: a copy of the file lets nobody in.
-- plain: paired over an unencrypted connection; such a token is good there only, and for a short time.
CREATE TABLE devices (
  id         TEXT    PRIMARY KEY,
  token_hash TEXT    NOT NULL UNIQUE,
  name       TEXT    NOT NULL,
  plain      INTEGER NOT NULL CHECK (plain IN (0, 1)),
  paired_at  TEXT    NOT NULL,
  last_seen  TEXT    NOT NULL,
  revoked_at TEXT
) STRICT, WITHOUT ROWID;
