-- Which book this is: a device keeps entries for one book and must not send them to another that answers at the same address.
CREATE TABLE book (id TEXT NOT NULL) STRICT;
INSERT INTO book (id) VALUES (lower(hex(randomblob(16))));
