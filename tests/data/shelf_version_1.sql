-- SPDX-License-Identifier: Apache-2.0
-- A shelf of version 1 as that version wrote it. Never edited: files like it are out there.
CREATE TABLE sources(
  id INTEGER PRIMARY KEY,
  name TEXT NOT NULL,
  licence TEXT NOT NULL,
  UNIQUE(name, licence));
CREATE TABLE puzzles(
  id INTEGER PRIMARY KEY,
  canonical BLOB NOT NULL UNIQUE,
  givens INTEGER NOT NULL,
  solutions INTEGER NOT NULL,
  used INTEGER NOT NULL DEFAULT 0,
  source INTEGER NOT NULL REFERENCES sources,
  import INTEGER NOT NULL REFERENCES imports,
  line INTEGER NOT NULL,
  text TEXT NOT NULL,
  name TEXT NOT NULL);
CREATE INDEX puzzles_givens ON puzzles(givens);
CREATE INDEX puzzles_source ON puzzles(source);
CREATE INDEX puzzles_not_proper ON puzzles(solutions) WHERE solutions <> 1;
CREATE INDEX puzzles_used ON puzzles(used) WHERE used > 0;
CREATE TABLE imports(
  id INTEGER PRIMARY KEY,
  label TEXT NOT NULL,
  byte INTEGER NOT NULL DEFAULT 0,
  line INTEGER NOT NULL DEFAULT 0,
  bytes_check INTEGER NOT NULL DEFAULT 0,
  is_done INTEGER NOT NULL DEFAULT 0,
  fresh INTEGER NOT NULL DEFAULT 0,
  repeats INTEGER NOT NULL DEFAULT 0,
  faults INTEGER NOT NULL DEFAULT 0);
CREATE INDEX imports_label ON imports(label);
CREATE TABLE repeats(
  import INTEGER NOT NULL,
  line INTEGER NOT NULL,
  puzzle INTEGER NOT NULL,
  is_same INTEGER NOT NULL,
  PRIMARY KEY(import, line)) WITHOUT ROWID;
CREATE TABLE faults(
  import INTEGER NOT NULL,
  line INTEGER NOT NULL,
  place INTEGER NOT NULL,
  message TEXT NOT NULL,
  PRIMARY KEY(import, line)) WITHOUT ROWID;
CREATE TABLE facet_names(
  id INTEGER PRIMARY KEY,
  kind TEXT NOT NULL,
  name TEXT NOT NULL,
  total INTEGER NOT NULL DEFAULT 0,
  UNIQUE(kind, name));
CREATE TABLE facets(
  facet INTEGER NOT NULL,
  puzzle INTEGER NOT NULL,
  PRIMARY KEY(facet, puzzle)) WITHOUT ROWID;
CREATE TABLE words(
  puzzle INTEGER NOT NULL REFERENCES puzzles,
  kind TEXT NOT NULL,
  text TEXT NOT NULL,
  PRIMARY KEY(puzzle, kind, text)) WITHOUT ROWID;
CREATE TABLE notes(
  id INTEGER PRIMARY KEY,
  puzzle INTEGER NOT NULL REFERENCES puzzles,
  text TEXT NOT NULL);
CREATE INDEX notes_puzzle ON notes(puzzle);
PRAGMA application_id = 1129345896;
PRAGMA user_version = 1;
INSERT INTO sources VALUES(1, 'own', 'Apache-2.0');
INSERT INTO imports VALUES(1, 'first.txt', 17, 1, 5, 1, 1, 0, 0);
INSERT INTO puzzles VALUES(1, x'0012030000040100', 4, 1, 1, 1, 1, 1, '..3.1......4.1..', 'four');
INSERT INTO facet_names VALUES(1, 'tag', 'small', 1), (2, 'lesson', 'first', 1);
INSERT INTO facets VALUES(1, 1), (2, 1);
INSERT INTO words VALUES(1, 'tag', 'small'), (1, 'lesson', 'first');
INSERT INTO notes VALUES(1, 1, 'for the youngest');
