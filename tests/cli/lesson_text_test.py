# SPDX-License-Identifier: Apache-2.0
"""Lessons as text files: drafted, checked, built; series of them."""

import json
import os
import shutil
import unittest

from program import FOUR, MANY, SOURCE, STUCK, Case, Run, published

SERIES = os.path.join(SOURCE, "data/series")
HEAD = "counterpoise lesson 1\ntitle: Small\npuzzle: " + FOUR + "\n"


class LessonTextTest(Case):
    def write(self, name, text):
        with open(self.path(name), "w") as file:
            file.write(text)
        return self.path(name)

    def test_a_draft_is_checked_and_built(self):
        draft = self.path("my.lesson")
        run = Run("lesson", "draft", STUCK, "-o", draft)
        self.ends(run, 0)
        self.assertIn("The draft is in " + draft, run.out)
        checked = Run("lesson", "check", draft, "--json")
        self.ends(checked, 0)
        self.fits(checked.json(), "lesson_check")
        self.assertEqual(sum(scene["seconds"] for scene in checked.json()["scenes"]), checked.json()["seconds"])
        folder = self.path("built")
        built = Run("lesson", "build", draft, "-o", folder)
        self.ends(built, 0)
        with open(os.path.join(folder, "index.html")) as file:
            self.assertIn('<html lang="en">', file.read())
        with open(os.path.join(folder, "lesson.json")) as file:
            self.fits(json.load(file), "lesson_folder")

    def test_what_weigh_shows_with_an_empty_pan_can_be_taught(self):
        puzzle = next(puzzle for name, puzzle, _ in published() if name == "gecode5")
        first = Run("weigh", puzzle, "--limit", "1", "--json").json()["balances"][0]
        self.assertEqual(first["right"], [])
        for language in ("en", "de"):
            draft = self.path(language + ".lesson")
            self.ends(Run("lesson", "draft", puzzle, "--left", "r3", "--right", "none", "--language", language, "-o", draft), 0)
            with open(draft, encoding="utf-8") as file:
                self.assertIn("@balance left r3 right none name key", file.read())
            self.ends(Run("lesson", "check", draft), 0)
        self.ends(Run("lesson", "draft", puzzle, "--left", "none", "--right", "none"), 64)

    def test_a_draft_does_not_write_over_what_was_edited(self):
        draft = self.write("my.lesson", "mine\n")
        run = Run("lesson", "draft", STUCK, "-o", draft)
        self.ends(run, 64)
        with open(draft) as file:
            self.assertEqual(file.read(), "mine\n")
        self.ends(Run("lesson", "draft", STUCK, "-o", draft, "--replace"), 0)

    def test_the_same_puzzle_gives_the_same_draft(self):
        self.assertEqual(Run("lesson", "draft", STUCK).out, Run("lesson", "draft", STUCK).out)

    def test_a_draft_in_german(self):
        run = Run("lesson", "draft", STUCK, "--language", "de")
        self.ends(run, 0)
        self.assertIn("language: de\n", run.out)
        words = [line for line in run.out.split("\n") if line[:1] not in ("@", "%") and ": " not in line[:12]]
        for english in (" the ", " and ", " of ", "Weigh", " cells"):
            self.assertFalse([line for line in words if english in line], english)
        self.ends(Run("lesson", "check", "-", stdin=run.out), 0)

    def test_a_technique_as_the_idea(self):
        run = Run("lesson", "draft", STUCK, "--idea", "pointing")
        self.ends(run, 0)
        self.assertIn("idea: pointing\n", run.out)
        self.ends(Run("lesson", "check", "-", stdin=run.out), 0)
        self.ends(Run("lesson", "draft", STUCK, "--idea", "ponting"), 64)
        self.ends(Run("lesson", "draft", FOUR, "--idea", "jellyfish"), 2)

    def test_what_is_false_or_open_stops_with_its_place(self):
        false = self.write("false.lesson", HEAD + "\n== A\nwords\n@claim r1c1 = 1 and r1c2 = 1\n")
        run = Run("lesson", "check", false)
        self.ends(run, 1)
        self.assertIn("false.lesson:7:8: in the scene 'A': this claim is false", run.err)
        self.assertIn("^", run.err)
        self.ends(Run("lesson", "build", false, "-o", self.path("out")), 1)
        self.assertFalse(os.path.exists(self.path("out")))
        opened = self.write("open.lesson", HEAD + "\n== A\n@claim r1c1 = r1c1 and r1c1 != r1c2 footing digits\n")
        self.ends(Run("lesson", "check", opened), 2)
        bad = self.write("bad.lesson", HEAD + "\n== A\n@dance\n")
        run = Run("lesson", "check", bad, "--json")
        self.ends(run, 64)
        self.assertEqual(run.json()["error"]["line"] if "line" in run.json()["error"] else 6, 6)
        self.assertIn("there is no directive @dance", run.err)
        self.assertIn("bad.lesson:6:1", run.err)

    def test_only_proper_puzzles(self):
        self.ends(Run("lesson", "draft", MANY), 64)

    def test_missing_words_are_named(self):
        run = Run("lesson", STUCK)
        self.ends(run, 64)
        self.assertIn("--output", run.err)
        self.ends(Run("lesson"), 64)
        self.ends(Run("lesson", "check"), 64)
        self.ends(Run("series"), 64)
        self.ends(Run("lesson", "check", self.path("nothing.lesson")), 64)


class SeriesTest(Case):
    def test_what_was_not_taught_is_a_gap(self):
        folder = self.path("mine")
        shutil.copytree(SERIES, folder)
        os.remove(os.path.join(folder, "about.series"))
        run = Run("series", "check", folder)
        self.ends(run, 1)
        self.assertIn("Gap: ", run.out)
        empty = self.path("empty")
        os.mkdir(empty)
        self.ends(Run("series", "check", empty), 64)

    def test_the_lesson_that_does_not_build_is_named(self):
        folder = self.path("mine")
        os.mkdir(folder)
        with open(os.path.join(folder, "one.lesson"), "w") as file:
            file.write(HEAD + "\n== A\n@claim r1c1 = 1 and r1c2 = 1\n")
        run = Run("series", "check", folder)
        self.ends(run, 1)
        self.assertIn("one.lesson:6:8", run.err)


if __name__ == "__main__":
    unittest.main()
