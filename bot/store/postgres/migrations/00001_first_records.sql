-- +goose Up
-- Times are milliseconds since 1970 in UTC; documents are JSON objects.

CREATE TABLE settings (
	scope    TEXT    NOT NULL,
	id       TEXT    NOT NULL,
	document TEXT    NOT NULL,
	changed  BIGINT  NOT NULL,
	PRIMARY KEY (scope, id)
);

CREATE TABLE conversations (
	id     TEXT    NOT NULL PRIMARY KEY,
	person TEXT    NOT NULL,
	state  TEXT    NOT NULL,
	at     BIGINT  NOT NULL
);
CREATE INDEX conversations_of_person ON conversations (person);
CREATE INDEX conversations_by_age ON conversations (at);

CREATE TABLE seen (
	id       TEXT    NOT NULL PRIMARY KEY,
	claimant TEXT    NOT NULL,
	at       BIGINT  NOT NULL
);
CREATE INDEX seen_by_age ON seen (at);

CREATE TABLE leases (
	name    TEXT    NOT NULL PRIMARY KEY,
	holder  TEXT    NOT NULL,
	token   BIGINT  NOT NULL,
	expires BIGINT  NOT NULL,
	ttl     BIGINT  NOT NULL
);
