# SPDX-License-Identifier: Apache-2.0
"""The folder of a lesson: whole or not there, never over foreign files."""

import json
import os
import unittest

from program import SOURCE, STUCK, FOUR, MANY, NONE, Case, Run, published, tree


class LessonFolderTest(Case):
    def make(self, folder, *words, puzzle=STUCK):
        return Run("lesson", puzzle, "-o", folder, *words)

    def test_a_lesson_is_written(self):
        folder = self.path("lesson")
        run = self.make(folder)
        self.ends(run, 0)
        self.assertIn(os.path.join(folder, "index.html"), run.out)
        self.assertIn("r1, r3 against c4, b3", run.out)
        with open(os.path.join(folder, "lesson.json")) as file:
            manifest = json.load(file)
        self.fits(manifest, "lesson_folder")
        self.assertEqual(tree(folder), sorted(manifest["files"] + ["lesson.json"]))
        with open(os.path.join(folder, "index.html")) as file:
            page = file.read()
        self.assertTrue(page.startswith("<!DOCTYPE html>") and page.endswith("</html>\n"))
        self.assertNotIn("http://", page.replace("http://www.w3.org/", ""))

    def test_the_same_puzzle_gives_the_same_bytes(self):
        for name in ("a", "b"):
            self.ends(self.make(self.path(name)), 0)
        for name in tree(self.path("a")):
            with open(os.path.join(self.path("a"), name), "rb") as a, open(os.path.join(self.path("b"), name), "rb") as b:
                self.assertEqual(a.read(), b.read(), name)

    def test_title_and_notes(self):
        folder = self.path("lesson")
        self.ends(self.make(folder, "--title", "Rows & <columns>", "--notes"), 0)
        with open(os.path.join(folder, "index.html")) as file:
            page = file.read()
        self.assertIn("Rows &amp; &lt;columns&gt;", page)
        self.assertIn("Note for the teacher", page)
        self.ends(self.make(folder), 0)
        with open(os.path.join(folder, "index.html")) as file:
            self.assertNotIn("Note for the teacher", file.read())

    def test_an_earlier_lesson_is_replaced_whole(self):
        folder = self.path("lesson")
        self.ends(self.make(folder), 0)
        before = tree(folder)
        easy = next(puzzle for name, puzzle, _ in published() if name == "gecode4")
        self.ends(self.make(folder, puzzle=easy), 0)
        with open(os.path.join(folder, "lesson.json")) as file:
            self.assertEqual(tree(folder), sorted(json.load(file)["files"] + ["lesson.json"]))
        self.ends(self.make(folder), 0)
        self.assertEqual(tree(folder), before)

    def test_foreign_files_are_left_alone(self):
        for name in ("notes.txt", "index.html", os.path.join("figures", "mine.svg")):
            folder = self.path("folder-" + os.path.basename(name))
            os.makedirs(os.path.dirname(os.path.join(folder, name)))
            self.path(os.path.join(folder, name), "mine")
            self.ends(self.make(folder), 64, f"holds '{name}'", "nothing was changed")
            self.assertEqual(tree(folder), [name])

    def test_hidden_files_do_not_matter(self):
        folder = self.path("lesson")
        os.makedirs(folder)
        self.path(os.path.join(folder, ".hidden"), "x")
        self.ends(self.make(folder), 0)
        self.assertIn(".hidden", tree(folder))

    def test_folders_that_cannot_be_used(self):
        taken = self.path("file", "x")
        self.ends(self.make(taken), 64, "there is a file of that name")
        self.ends(self.make(os.path.join(taken, "below")), 64, "cannot write")
        if os.path.isdir("/proc/self"):
            self.ends(self.make("/proc/self/lesson"), 64, "cannot write")

    def test_a_manifest_cannot_remove_files_elsewhere(self):
        folder = self.path("lesson")
        self.ends(self.make(folder), 0)
        precious = self.path("precious.txt", "x")
        manifest = os.path.join(folder, "lesson.json")
        with open(manifest) as file:
            content = json.load(file)
        content["files"] += ["../precious.txt", precious]
        with open(manifest, "w") as file:
            json.dump(content, file)
        self.ends(self.make(folder), 0)
        self.assertTrue(os.path.exists(precious))

    def test_puzzles_without_a_lesson(self):
        folder = self.path("lesson")
        self.ends(self.make(folder, puzzle=MANY), 64, "more than one solution")
        self.ends(self.make(folder, puzzle=NONE), 64, "no solution", "holds 1 twice")
        solved = Run("check", FOUR, "--json").json()["solution"]
        self.ends(self.make(folder, puzzle=solved), 2, "no balance")
        self.assertFalse(os.path.exists(folder))

    def test_a_list_is_too_much(self):
        self.ends(self.make(self.path("lesson"), puzzle=self.path("list.txt", f"{FOUR}\n{STUCK}\n")), 64, "several puzzles")

    def test_an_easy_puzzle_says_that_the_balance_is_no_need(self):
        folder = self.path("lesson")
        easy = next(puzzle for name, puzzle, _ in published() if name == "gecode4")
        run = self.make(folder, "--json", puzzle=easy)
        self.ends(run, 0)
        self.assertFalse(run.json()["key"]["needed"])
        self.assertTrue(run.json()["key"]["left"] and run.json()["key"]["right"])
        with open(os.path.join(folder, "index.html")) as file:
            self.assertIn("another way to see it, not a need", file.read())

    def test_the_demo(self):
        run = Run("demo", cwd=self.folder)
        self.ends(run, 0)
        self.assertIn("counterpoise-lesson/index.html", run.out)
        self.assertIn("Look at", run.out)
        self.assertTrue(os.path.exists(self.path("counterpoise-lesson/index.html")))
        self.assertIn("counterpoise-series/index.html", run.out)
        self.assertIn("counterpoise lesson draft", run.out)
        for name in os.listdir(os.path.join(SOURCE, "data/series")):
            if name.endswith(".lesson"):
                self.assertTrue(os.path.exists(self.path(f"counterpoise-series/{name[: -len('.lesson')]}/index.html")))
        self.ends(Run("demo", "--output", self.path("elsewhere"), "--json", cwd=self.folder), 0)
        with open(self.path("elsewhere/lesson.json")) as a, open(self.path("counterpoise-lesson/lesson.json")) as b:
            self.assertEqual(a.read(), b.read())


if __name__ == "__main__":
    unittest.main()
