# SPDX-License-Identifier: Apache-2.0
"""The shelf as a person uses it; imports that are killed on the way."""

import csv
import gzip
import json
import os
import signal
import subprocess
import time
import unittest

from program import BIN, DEMO, FOUR, MANY, NONE, STUCK, Case, Run, published


def relabelled(puzzle, shift):
    """The same puzzle with its digits renamed in a circle."""
    return "".join(letter if letter == "." else str((int(letter) - 1 + shift) % 9 + 1) for letter in puzzle)


class ShelfTest(Case):
    def shelf_of(self, *lines, words=()):
        shelf = self.path("a.shelf")
        self.ends(Run("shelf", "import", shelf, self.path("lines.txt", "\n".join(lines) + "\n"), *words), 0)
        return shelf

    def test_import_tells_of_faults_and_repeats_and_goes_on(self):
        shelf = self.path("a.shelf")
        lines = self.path("lines.txt", "\n".join([DEMO, "nonsense", relabelled(DEMO, 4), DEMO, STUCK]) + "\n")
        run = Run("shelf", "import", shelf, lines)
        self.ends(run, 0, "lines.txt:2:1: 'n' cannot stand in a puzzle", "lines.txt:3 is puzzle 1 up to symmetry", "lines.txt:4 is puzzle 1")
        self.assertIn("five lines: two new puzzles, two repeats, one fault", run.out)
        about = Run("shelf", "about", shelf, "--faults", "--repeats")
        self.assertIn("line 2: 'n' cannot", about.out)
        self.assertIn("line 3: puzzle 1 up to symmetry", about.out)
        again = Run("shelf", "import", shelf, lines, "--json").json()
        self.assertEqual((again["resumed"], again["new"], again["done"]), (True, 2, True))
        changed = self.path("lines.txt", STUCK + "\n" + DEMO + "\n" + DEMO + "\n" + DEMO + "\n" + DEMO + "\n")
        self.ends(Run("shelf", "import", shelf, changed), 64, "is not what it was", "hint: ")
        self.ends(Run("shelf", "import", shelf, changed, "--again", "--quiet"), 0)
        self.ends(Run("shelf", "import", shelf, "-", stdin=FOUR + "\n"), 0)
        self.assertEqual(Run("shelf", "about", shelf, "--json").json()["puzzles"], 3)

    def test_find_answers_in_words_and_in_json(self):
        shelf = self.shelf_of(DEMO, STUCK, FOUR, MANY, NONE, words=("--source", "own", "--tag", "first"))
        found = Run("shelf", "find", shelf, "proper and tag first", "--json").json()
        self.fits(found, "shelf_find")
        self.assertEqual([puzzle["number"] for puzzle in found["puzzles"]], [1, 2, 3])
        self.assertIn("several solutions", Run("shelf", "find", shelf, "not proper").out)
        page = Run("shelf", "find", shelf, "source own", "--limit", "2").out
        self.assertIn("and more; --skip 2", page)
        self.assertEqual(Run("shelf", "find", shelf, "tag last").out, "Nothing on the shelf fits.\n")
        explained = Run("shelf", "find", shelf, "tag first and proper", "--explain").out
        self.assertIn("SEARCH d USING PRIMARY KEY (facet=?)", explained)
        self.assertNotIn("SCAN p", explained)

    def test_what_is_wrong_with_a_query_is_pointed_at(self):
        self.ends(Run("shelf", "find", "none.shelf", "proper and uses xwing"), 64, "\n  proper and uses xwing\n                  ^^^^^\n", "hint: ")
        self.ends(Run("shelf", "find", "none.shelf", "givens < few"), 64, "'few' stands where", "hint: write for example givens <= 3")
        self.ends(Run("shelf", "tag", "none.shelf", "few", "--find", "givens < few"), 64, "--find: 'few' stands where", "\n           ^^^\n")
        self.ends(Run("shelf", "find", "none.shelf", "proper"), 64, "there is no shelf 'none.shelf'", "hint: ")
        self.ends(Run("shelf", "find", "none.shelf", "proper", "--by", "beauty"), 64, "the orders are number")
        place = Run("shelf", "find", "none.shelf", "proper or", "--json").json()["error"]["where"]
        self.assertEqual((place["field"], place["column"]), ("query", 10))
        self.ends(Run("shelf", "find", self.path("text.shelf", "x" * 4000), "proper"), 64, "is no shelf")
        self.ends(Run("shelf", "import", self.path("b.shelf"), "gone.txt"), 64, "there is no file 'gone.txt'")
        self.assertFalse(os.path.exists(self.path("b.shelf")))

    def test_tags_notes_and_lessons_are_kept_and_exported(self):
        shelf = self.shelf_of(DEMO, STUCK, FOUR)
        self.ends(Run("shelf", "tag", shelf, "fish", "1", "2"), 0)
        self.ends(Run("shelf", "tag", shelf, "small", "--find", "givens <= 5"), 0)
        self.ends(Run("shelf", "note", shelf, "2", "ask about the fin, \"slowly\""), 0)
        self.ends(Run("shelf", "use", shelf, "spring course", "2"), 0)
        self.ends(Run("shelf", "tag", shelf, "fish", "9"), 64, "no puzzle number 9", "hint: ")
        self.ends(Run("shelf", "tag", shelf, "fish"), 64, "no puzzle is named")
        self.ends(Run("shelf", "tag", shelf, "a;b", "1"), 64, "semicolon")
        self.assertEqual(Run("shelf", "export", shelf, "tag fish and unused").out, DEMO + "\n")
        self.assertEqual(Run("shelf", "export", shelf, "used in \"spring course\"").out, STUCK + "\n")
        rows = list(csv.DictReader(Run("shelf", "export", shelf, "--as", "table").out.splitlines()))
        self.assertEqual([(row["tags"], row["lessons"], row["note"]) for row in rows], [("fish", "", ""), ("fish", "spring course", "ask about the fin, \"slowly\""), ("small", "", "")])
        lines = [json.loads(line) for line in Run("shelf", "export", shelf, "--as", "json").out.splitlines()]
        self.assertEqual([line["puzzle"] for line in lines], [DEMO, STUCK, FOUR])
        table = self.path("again.csv", Run("shelf", "export", shelf, "--as", "table").out)
        other = self.path("other.shelf")
        self.ends(Run("shelf", "import", other, table), 0)
        self.assertEqual(Run("shelf", "export", other, "--as", "json").out, Run("shelf", "export", shelf, "--as", "json").out)
        self.ends(Run("shelf", "tag", shelf, "fish", "1", "--drop"), 0)
        self.ends(Run("shelf", "note", shelf, "2", "--drop"), 0)
        self.assertEqual(Run("shelf", "export", shelf, "tag fish or note fin").out, STUCK + "\n")

    def test_a_tag_that_no_query_could_name_stays_out_and_an_older_one_may_go(self):
        shelf, lines = self.path("a.shelf"), self.path("lines.txt", DEMO + "\n")
        for tag in ("a;b", 'so "called"', " "):
            self.ends(Run("shelf", "import", shelf, lines, "--tag", tag), 64, "--tag: the name", "hint: ")
        self.assertFalse(os.path.exists(shelf))
        self.ends(Run("shelf", "import", shelf, lines, "--tag", "older"), 0)
        import sqlite3
        other = sqlite3.connect(shelf, isolation_level=None)  # as imports let it in before
        other.execute("UPDATE words SET text = 'a;b'")
        other.execute("UPDATE facet_names SET name = 'a;b'")
        other.close()
        self.ends(Run("shelf", "tag", shelf, "a;b", "1"), 64, "semicolon")
        self.ends(Run("shelf", "tag", shelf, "a;b", "1", "--drop"), 0)
        self.assertEqual(json.loads(Run("shelf", "export", shelf, "--as", "json").out)["tags"], [])

    def test_a_refused_table_leaves_no_new_shelf_and_says_what_to_write(self):
        shelf = self.path("a.shelf")
        table = self.path("in.csv", "title,grid\nfirst," + DEMO + "\n")
        for words in ([], ["--columns", "puzzle=gri"], ["--columns", "puzzle"]):
            self.ends(Run("shelf", "import", shelf, table, *words), 64, "hint: ")
            self.ends(Run("shelf", "import", shelf, "-", *words, stdin="title,grid\nfirst," + DEMO + "\n"), 64)
            self.assertFalse(os.path.exists(shelf))
        self.ends(Run("shelf", "import", shelf, table), 64, "--columns puzzle=NAME; the columns are title and grid")
        run = Run("shelf", "import", shelf, table, "--columns", "puzzle=grid,name=title")
        self.ends(run, 0)
        self.assertIn("one new puzzle", run.out)
        self.assertIn("in.csv (name=title,puzzle=grid)", Run("shelf", "about", shelf).out)

    def test_notes_keep_their_line_ends(self):
        shelf = self.shelf_of(DEMO)
        self.ends(Run("shelf", "note", shelf, "1", "first line\nsecond line"), 0)
        self.ends(Run("shelf", "note", shelf, "1", "another"), 0)
        self.assertIn("   note: first line\n         second line\n   note: another\n", Run("shelf", "find", shelf, "").out)
        with open(self.path("out.csv", Run("shelf", "export", shelf, "--as", "table").out), newline="", encoding="utf-8") as file:
            self.assertEqual([row["note"] for row in csv.DictReader(file)], ["first line\nsecond line\nanother"])

    def test_reading_while_another_writes(self):
        shelf = self.shelf_of(DEMO)
        import sqlite3
        other = sqlite3.connect(shelf, isolation_level=None)
        other.execute("BEGIN IMMEDIATE")
        self.assertEqual(Run("shelf", "export", shelf).out, DEMO + "\n")
        other.execute("ROLLBACK")
        other.close()

    def test_a_killed_import_goes_on_and_ends_like_a_calm_one(self):
        """Killed with signal 9 at several moments, found by looking at the file, not by waiting a fixed time."""
        puzzles = [relabelled(puzzle[:27 * turn] + puzzle[27 * turn:], turn) for turn in range(9) for _, puzzle, _ in published()]
        more = [puzzle[:9 * row] + puzzle[9 * row:9 * row + 9][::-1] + puzzle[9 * row + 9:] for puzzle in puzzles for row in range(9)]
        packed = self.path("lines.gz", gzip.compress("\n".join(puzzles + more + ["broken"]).encode(), mtime=0))
        calm, stormy = self.path("calm.shelf"), self.path("stormy.shelf")
        self.ends(Run("shelf", "import", calm, packed, "--quiet", "--name", "x"), 0)
        kills = 0
        for _ in range(60):
            child = subprocess.Popen([BIN, "shelf", "import", stormy, packed, "--quiet", "--name", "x", "--block", "20"], stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL)
            if kills < 4:
                self.wait_for_growth(stormy, child)
                if child.poll() is None:
                    child.send_signal(signal.SIGKILL)
            if child.wait(timeout=120) == -signal.SIGKILL:
                kills += 1
            else:
                break
        self.assertGreaterEqual(kills, 2)
        self.assertEqual(Run("shelf", "about", stormy, "--everything").out, Run("shelf", "about", calm, "--everything").out)

    def wait_for_growth(self, shelf, child):
        """Until the journal beside the file has grown since the child began."""
        def size():
            try:
                return os.path.getsize(shelf + "-wal")
            except OSError:
                return 0
        before, changes, end = size(), 0, time.monotonic() + 60
        while child.poll() is None and changes < 3 and time.monotonic() < end:
            now = size()
            changes += now != before
            before = now
            time.sleep(0.001)


if __name__ == "__main__":
    unittest.main()
