# SPDX-License-Identifier: Apache-2.0
"""The bundled series, built whole: every file judged by programs that know nothing of ours (libxml2 for SVG, qpdf and poppler
for PDF, ffprobe for pictures and film). HTML and WebVTT have their judges in tests/web/series.test.js."""

import json
import os
import re
import shutil
import signal
import subprocess
import tempfile
import time
import unittest

from program import BIN, SOURCE, Case, Run, said, tree

SERIES = os.path.join(SOURCE, "data/series")
NAMES = sorted(name[: -len(".lesson")] for name in os.listdir(SERIES) if name.endswith(".lesson"))
TEXTS = ["captions.vtt", "chapters.txt", "chapters.vtt", "description.txt", "index.html", "lesson.json", "script.md"]
PAPERS = ["handout-letter.pdf", "worksheet-letter.pdf"]
SHORT = """counterpoise lesson 1
title: {title}
puzzle: ..3.1......4.1..
teaches: {title}

== One
@board candidates none
@time 2s
Look at the board.
"""


def manifest(folder):
    with open(os.path.join(folder, "series.json"), encoding="utf-8") as file:
        return json.load(file)


class SeriesFilesTest(Case):
    @classmethod
    def setUpClass(cls):
        cls.shared = tempfile.mkdtemp(prefix="counterpoise-series-")
        cls.whole = os.path.join(cls.shared, "counterpoise-series")
        cls.run_all = Run("series", "build", "--json", "--paper", "letter", cwd=cls.shared,
                          *["--only", "page,figures,handout,captions,chapters,script,description"])

    @classmethod
    def tearDownClass(cls):
        shutil.rmtree(cls.shared)

    def setUp(self):
        super().setUp()
        self.ends(self.run_all, 0)

    def test_it_needs_no_name_and_is_the_one_in_the_sources(self):
        self.fits(self.run_all.json(), "series")
        named = Run("series", "check", SERIES, "--json")
        self.ends(named, 0)
        answer = self.run_all.json()
        self.assertEqual(answer.pop("page"), "counterpoise-series/index.html")
        self.assertEqual(answer, named.json())
        self.assertGreaterEqual(len(answer["lessons"]), 4)
        self.assertEqual(answer["gaps"], [])
        self.assertIn("balance", [row["name"] for row in answer["coverage"]])

    def test_every_file_is_named(self):
        self.fits(manifest(self.whole), "series_folder")
        self.assertEqual(tree(self.whole), sorted(manifest(self.whole)["files"] + ["series.json"]))
        self.assertGreaterEqual(len(NAMES), 4)
        for name in NAMES:
            inside = [path for path in tree(os.path.join(self.whole, name)) if not path.startswith("figures/")]
            self.assertEqual(inside, sorted(TEXTS + PAPERS))
            with open(os.path.join(self.whole, name, "lesson.json"), encoding="utf-8") as file:
                lesson = json.load(file)
            self.fits(lesson, "lesson_folder")
            self.assertEqual(tree(os.path.join(self.whole, name)), sorted(lesson["files"] + ["lesson.json"]))
        with open(os.path.join(self.whole, "index.html"), encoding="utf-8") as file:
            page = file.read()
        for name in NAMES:
            self.assertIn('href="' + name + '/index.html"', page)
            self.assertTrue(os.path.exists(os.path.join(self.whole, name, "index.html")))

    def test_figures_are_xml(self):
        figures = [os.path.join(self.whole, name) for name in tree(self.whole) if name.endswith(".svg")]
        self.assertGreater(len(figures), 100)
        said("xmllint", "--noout", *figures)

    def test_papers_are_sound(self):
        papers = [name for name in tree(self.whole) if name.endswith(".pdf")]
        self.assertEqual(len(papers), 2 * len(NAMES))
        for name in papers:
            path = os.path.join(self.whole, name)
            self.assertIn("No syntax or stream encoding errors", said("qpdf", "--check", path))
            facts = said("pdfinfo", path)
            self.assertRegex(facts, r"Tagged: +yes")
            self.assertRegex(facts, r"Page size: +612 x 792 pts \(letter\)")
            for font in said("pdffonts", path).splitlines()[2:]:
                self.assertRegex(font, r" yes +\w+ +yes +\d+ +\d+$")

    def test_no_page_of_a_handout_is_nearly_empty(self):
        for name in NAMES:
            pages = said("pdftotext", "-layout", os.path.join(self.whole, name, PAPERS[0]), "-").split("\f")[:-1]
            self.assertLessEqual(len(pages), 14, name)
            words = [len(page.split()) for page in pages]
            self.assertGreater(min(words), 40, f"{name}: {words}")

    def test_no_place_of_a_sentence_is_left_open(self):
        for name in tree(self.whole):
            if name.endswith((".md", ".txt", ".vtt")):
                with open(os.path.join(self.whole, name), encoding="utf-8") as file:
                    self.assertNotRegex(file.read(), r"\{[#^]?[a-z]+\}", name)

    def test_a_folder_with_other_things_is_left_alone(self):
        folder = self.path("mine")
        os.makedirs(os.path.join(folder, "ring"))
        self.path("mine/ring/notes.txt", "mine")
        run = Run("series", "build", "-o", folder)
        self.ends(run, 64, "holds 'ring", "no part of a series", "nothing was changed")
        self.assertEqual(tree(folder), ["ring/notes.txt"])

    def test_kinds_are_added_and_lessons_that_went_are_removed(self):
        lessons = self.path("lessons")
        os.mkdir(lessons)
        for title in ("one", "two"):
            self.path(f"lessons/{title}.lesson", SHORT.format(title=title))
        goal = self.path("goal")
        self.ends(Run("series", "build", lessons, "-o", goal, "--only", "page,chapters"), 0)
        self.ends(Run("series", "build", lessons, "-o", goal, "--only", "video,stills"), 0)
        self.assertIn("one/chapters.txt", tree(goal))
        self.assertIn("one/index.html", tree(goal))
        film = json.loads(said("ffprobe", "-v", "error", "-of", "json", "-show_streams", os.path.join(goal, "two/film.mp4")))
        self.assertIn("h264", [stream["codec_name"] for stream in film["streams"]])
        still = said("ffprobe", "-v", "error", "-of", "csv=p=0", "-show_entries", "stream=codec_name,width,height", os.path.join(goal, "one/stills/scene-01-1080.png"))
        self.assertEqual(still.strip(), "png,1920,1080")
        os.remove(os.path.join(lessons, "two.lesson"))
        self.ends(Run("series", "build", lessons, "-o", goal, "--only", "page"), 0)
        self.assertEqual(tree(goal), ["index.html", "one/index.html", "one/lesson.json", "series.json"])
        self.assertFalse(os.path.exists(os.path.join(goal, "two")))

    def test_a_kill_leaves_whole_files_and_the_next_run_tidies_up(self):
        lessons = self.path("lessons")
        os.mkdir(lessons)
        for title in ("one", "two"):
            self.path(f"lessons/{title}.lesson", SHORT.format(title=title))
        goal = self.path("goal")
        child = subprocess.Popen([BIN, "series", "build", lessons, "-o", goal, "--only", "page,stills,video", "--size", "2160"],
                                 stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL)
        for _ in range(1500):
            at_work = [name for name in tree(goal) if ".partial-" in name] if os.path.isdir(goal) else []
            if child.poll() is not None or (at_work and os.path.exists(os.path.join(goal, "one/index.html"))):
                break
            time.sleep(0.01)
        self.assertIsNone(child.poll(), "the work was over before it could be killed")
        child.send_signal(signal.SIGKILL)
        child.communicate(timeout=60)
        self.assertTrue(manifest(goal)["unfinished"])
        for name in tree(goal):
            if not any(part.startswith(".") for part in name.split("/")):
                with open(os.path.join(goal, name), "rb") as file:
                    end = file.read()[-12:]
                self.assertIn({"png": b"IEND", "html": b"</html>", "json": b"}", "mp4": b""}[name.rsplit(".", 1)[1]], end, name)
        self.ends(Run("series", "build", lessons, "-o", goal, "--only", "page"), 0)
        self.assertFalse([name for name in tree(goal) if ".partial-" in name])
        self.assertNotIn("unfinished", manifest(goal))
        self.assertEqual(tree(goal), sorted(manifest(goal)["files"] + ["series.json"]))

    def test_a_page_made_without_the_engine_says_so(self):
        alone = self.path("counterpoise")
        shutil.copy(BIN, alone)
        lesson = self.path("one.lesson", SHORT.format(title="one"))
        done = subprocess.run([alone, "lesson", "build", lesson, "-o", self.path("plain")], capture_output=True, timeout=60)
        self.assertEqual(done.returncode, 0)
        self.assertIn("the engine for pages was not found", done.stderr.decode())
        with open(self.path("plain/index.html"), encoding="utf-8") as file:
            self.assertIn("This page was made without the engine", file.read())


if __name__ == "__main__":
    unittest.main()
