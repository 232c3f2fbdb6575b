# SPDX-License-Identifier: Apache-2.0
"""Lessons as text files: drafted, checked, built; series of them."""

import json
import os
import shutil
import unittest

from program import FOUR, MANY, SOURCE, STUCK, Case, Run, published, tree

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

    def test_a_file_that_cannot_be_written_has_its_own_name(self):
        nowhere = self.path("nowhere/x.lesson")
        run = Run("lesson", "draft", STUCK, "-o", nowhere)
        self.ends(run, 64, f"cannot write '{nowhere}': ")
        self.assertNotIn("partial", run.err)

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

    def test_only_keeps_files_of_the_same_text_alone(self):
        folder = self.path("built")

        def build(text, kinds):
            self.ends(Run("lesson", "build", self.write("my.lesson", HEAD + text), "-o", folder, "--only", kinds), 0)
            with open(os.path.join(folder, "lesson.json")) as file:
                manifest = json.load(file)
            self.fits(manifest, "lesson_folder")
            self.assertEqual(tree(folder), sorted(manifest["files"] + ["lesson.json"]))
            return manifest

        long, short = "\n== A\nOne.\n\n== B\nTwo.\n", "\n== A\nOne.\n"
        first = build(long, "chapters,description,page")
        self.assertEqual(build(long, "captions")["digest"], first["digest"])
        self.assertEqual(tree(folder), ["captions.vtt", "chapters.txt", "chapters.vtt", "description.txt", "index.html", "lesson.json"])
        self.assertNotEqual(build(short, "page")["digest"], first["digest"])
        self.assertEqual(tree(folder), ["index.html", "lesson.json"])

    def test_what_a_killed_run_left_of_another_text_is_not_kept(self):
        folder = self.path("built")
        manifest = os.path.join(folder, "lesson.json")
        lesson = self.write("my.lesson", HEAD + "\n== A\nOne.\n")
        self.ends(Run("lesson", "build", lesson, "-o", folder, "--only", "chapters"), 0)
        os.mkdir(os.path.join(folder, "index.html"))  # stops the next run while it writes the page
        self.write("my.lesson", HEAD + "\n== B\nOne.\n")
        self.ends(Run("lesson", "build", lesson, "-o", folder, "--only", "page"), 64)
        with open(manifest) as file:
            self.assertTrue(json.load(file)["unfinished"])
        os.rmdir(os.path.join(folder, "index.html"))
        self.ends(Run("lesson", "build", lesson, "-o", folder, "--only", "page"), 0)
        self.assertEqual(tree(folder), ["index.html", "lesson.json"])

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

    def test_a_changed_lesson_takes_its_old_files_along_and_no_others(self):
        folder = self.path("mine")
        os.mkdir(folder)
        for name in ("one", "two"):
            self.path(f"mine/{name}.lesson", HEAD + "\n== A\nwords\n")
        goal = self.path("goal")
        self.ends(Run("series", "build", folder, "-o", goal, "--only", "page,chapters"), 0)
        self.path("mine/one.lesson", HEAD + "\n== B\nwords\n")
        self.ends(Run("series", "build", folder, "-o", goal, "--only", "page"), 0)
        left = [f"one/{name}" for name in ("index.html", "lesson.json")] + [f"two/{name}" for name in ("chapters.txt", "chapters.vtt", "index.html", "lesson.json")]
        self.assertEqual(tree(goal), sorted(["index.html", *left, "series.json"]))
        with open(os.path.join(goal, "series.json")) as file:
            self.fits(json.load(file), "series_folder")

    def test_a_planned_course_needs_nothing_that_it_does_not_teach(self):
        records = self.path("records.jsonl")
        self.ends(Run("scan", os.path.join(SOURCE, "tests/data/puzzles.tsv"), "--depth", "basics", "--out", records), 0)
        for number, ideas in enumerate((("locked", "naked-pair", "hidden-pair"), ("locked", "subset"))):
            folder = self.path(f"course{number}")
            words = [word for idea in ideas for word in ("--idea", idea)]
            self.ends(Run("series", "plan", records, "--assume", "single", *words, "-o", folder), 0)
            self.assertEqual(len([name for name in os.listdir(folder) if name.endswith(".lesson")]), len(ideas))
            run = Run("series", "check", folder)
            self.ends(run, 0)
            self.assertIn("No lesson needs what was not taught before.", run.out)

    def test_a_plan_in_a_language_without_words_is_refused_at_once(self):
        folder = self.path("course")
        self.ends(Run("series", "plan", self.path("none.jsonl", ""), "--language", "fr", "-o", folder), 64, "--language", "there are no words in 'fr'", "en and de")
        self.assertFalse(os.path.exists(folder))

    def test_slips_in_what_a_series_says_of_itself(self):
        folder = self.path("mine")
        os.mkdir(folder)
        self.path("mine/one.lesson", HEAD + "needs: single, heron\n\n== A\nwords\n")
        self.path("mine/about.series", "counterpoise series 1\ntitle: T\nassumes: single, heron\n")
        self.ends(Run("series", "check", folder), 0)
        for text, *said in (("", "about.series:1:1: this is no series", "counterpoise series 1"),
                            ("counterpoise series 1\ntitel: x\nassumes: single\n", "about.series:2:1: 'titel' is not known here", "did you mean title?", "^^^^^"),
                            ("counterpoise series 1\ntitle T\n", "about.series:2:1: ", "after an empty line"),
                            ("counterpoise series 1\nlanguage: xx9!\n", "about.series:2:11: 'xx9!' is no name of a language"),
                            ("counterpoise series 1\nassumes: single, lockd\n", "about.series:2:18: 'lockd' is no technique", "did you mean locked?"),
                            ("counterpoise series 1\nassumes: single, hreon\n", "about.series:2:18: 'hreon' is no technique", "did you mean heron?")):
            self.path("mine/about.series", text)
            self.ends(Run("series", "check", folder), 64, *said)

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
