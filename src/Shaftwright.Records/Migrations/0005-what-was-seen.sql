-- What a device saw when it made an edit: that nothing stood there, which entries of lists it meant, which conflicts it settles.
ALTER TABLE edits ADD COLUMN was_empty INTEGER NOT NULL DEFAULT 0 CHECK (was_empty IN (0, 1));
ALTER TABLE edits ADD COLUMN entries TEXT CHECK (entries IS NULL OR json_valid(entries));
ALTER TABLE edits ADD COLUMN settles TEXT CHECK (settles IS NULL OR json_valid(settles));
