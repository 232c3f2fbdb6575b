# SPDX-License-Identifier: Apache-2.0
"""PUZZLE may be a text, a file or standard input; files are read by their content (docs/formats/position.md)."""

import subprocess
import unittest

from program import BIN, STUCK, FOUR, MANY, Case, Run, published

GRID = "\n".join(STUCK[9 * row:9 * row + 9] for row in range(9)) + "\n"
DRAWN = "\n".join(" ".join(STUCK[9 * row:9 * row + 9]) + ("\n------+-------+------" if row in (2, 5) else "") for row in range(9)) + "\n"


class InputTest(Case):
    def check(self, text):
        return Run("check", self.path("in.txt", text), "--json")

    def test_one_puzzle_in_one_line(self):
        run = self.check(STUCK + "\n")
        self.ends(run, 0)
        self.assertNotIn("line", run.json())

    def test_one_puzzle_over_several_lines(self):
        for text in (GRID, DRAWN, GRID.replace("\n", "\r\n"), "\ufeff" + GRID, "# a comment\n\n" + GRID):
            run = self.check(text)
            self.ends(run, 0)
            self.assertEqual(run.json()["givens"], 24)

    def test_a_grid_of_candidates(self):
        text = Run("weigh", STUCK, "--left", "r1,r3", "--right", "c4,b3", "--after-basics", "--json").json()["position"]
        run = self.check(text)
        self.ends(run, 0)
        self.assertEqual(run.json()["solutions"], "one")

    def test_a_large_grid_in_sixteen_lines(self):
        rows = ["123456789ABCDEFG"] + ["." * 16] * 15
        run = self.check("\n".join(rows) + "\n")
        self.ends(run, 1)
        self.assertEqual(run.json()["shape"], "16x16")

    def test_sixteen_small_puzzles_are_a_list(self):
        run = self.check((FOUR + "\n") * 16)
        self.ends(run, 0)
        self.assertEqual([answer["line"] for answer in run.lines()], list(range(1, 17)))

    def test_a_list_with_names_comments_and_blank_lines(self):
        run = self.check(f"# ours\nfirst\t{FOUR}\n\nsecond one\t{STUCK}\tmore\twords\n{MANY}\n")
        self.ends(run, 1)
        self.assertEqual([(answer["line"], answer.get("name")) for answer in run.lines()], [(2, "first"), (4, "second one"), (5, None)])

    def test_a_bad_line_does_not_stop_the_others(self):
        run = self.check(f"{FOUR}\nbad\t12x4\n{STUCK}\n")
        self.ends(run, 64, ":2:7: 'x' cannot stand in a puzzle", "\n  bad 12x4\n        ^\n")
        answers = run.lines()
        self.assertEqual([answer["line"] for answer in answers], [1, 2, 3])
        self.fits(answers[1], "error")
        self.assertEqual(answers[1]["error"]["where"], {"field": "puzzle", "line": 2, "column": 7, "offset": 6, "length": 1})
        self.fits(answers[2], "check")

    def test_standard_input(self):
        run = Run("check", "-", "--json", stdin=f"{FOUR}\r\nnamed\t{STUCK}")
        self.ends(run, 0)
        self.assertEqual([answer["line"] for answer in run.lines()], [1, 2])
        self.ends(Run("check", "-", stdin=""), 64, "standard input holds no puzzle")
        self.ends(Run("check", "-", stdin="\n# x\n"), 64, "standard input holds no puzzle")

    def test_exit_codes_of_a_list(self):
        self.ends(Run("check", "-", stdin=f"{FOUR}\n{MANY}\n{FOUR}\n"), 1)
        self.ends(Run("check", "-", stdin=f"{MANY}\nx\n{FOUR}\n"), 64)

    def test_each_line_is_answered_as_it_comes(self):
        with subprocess.Popen([BIN, "check", "-", "--json"], stdin=subprocess.PIPE, stdout=subprocess.PIPE, text=True, bufsize=1) as program:
            for puzzle in (FOUR, STUCK, MANY):
                program.stdin.write(puzzle + "\n")
                program.stdin.flush()
                self.assertIn('"line":', program.stdout.readline())
            program.stdin.close()
            self.assertEqual(program.wait(timeout=60), 1)

    def test_the_published_list_is_read_as_it_is(self):
        run = Run("check", self.path("list.tsv", "".join("\t".join(row) + "\n" for row in published())), "--json")
        self.ends(run, 0)
        self.assertEqual([answer["name"] for answer in run.lines()], [name for name, _, _ in published()])

    def test_lists_for_people(self):
        run = Run("check", "-", stdin=f"a\t{FOUR}\n{MANY}\n")
        self.ends(run, 1)
        self.assertIn("line 1 (a):\nProper", run.out)
        self.assertIn("line 2:\nThere is more than one solution.", run.out)


if __name__ == "__main__":
    unittest.main()
