# SPDX-License-Identifier: Apache-2.0
"""The files of a lesson, judged by programs that know nothing of ours: libxml2 and librsvg for SVG, qpdf and poppler for
PDF, ffprobe for the film. WebVTT and HTML have their judges in tests/web."""

import json
import os
import re
import shutil
import signal
import subprocess
import tempfile
import time
import unittest
import zlib

from program import BIN, STUCK, Case, Run, said, tree

# Two short scenes, for what takes long.
TWO = """counterpoise lesson 1
title: Two = scenes; #1
puzzle: ..3.1......4.1..

== One; and more
@board candidates none
@time 3s
Look at the board.

== Two
@board candidates all
@time 4s
Now look at it again.
"""

NEEDED = ("xmllint", "rsvg-convert", "qpdf", "pdfinfo", "pdftotext", "pdffonts", "ffmpeg", "ffprobe")
TEXTS = ["captions.vtt", "chapters.txt", "chapters.vtt", "description.txt", "script.md"]
PAPERS = ["handout-a4.pdf", "worksheet-a4.pdf"]


def pixels(path):
    """(width, height, channels, rows) of an unfiltered look at a PNG of 8 bits: what ffmpeg decodes, not what we wrote."""
    raw = subprocess.run(["ffmpeg", "-v", "error", "-i", path, "-f", "rawvideo", "-pix_fmt", "rgba", "-"], capture_output=True, timeout=60).stdout
    with open(path, "rb") as file:
        head = file.read(33)
    width, height = int.from_bytes(head[16:20], "big"), int.from_bytes(head[20:24], "big")
    assert zlib.crc32(head[12:29]) == int.from_bytes(head[29:33], "big")
    assert len(raw) == width * height * 4
    return width, height, raw


class LessonFilesTest(Case):
    @classmethod
    def setUpClass(cls):
        cls.missing = [name for name in NEEDED if shutil.which(name) is None]
        if cls.missing:
            return
        cls.shared = tempfile.mkdtemp(prefix="counterpoise-files-")
        cls.lesson = os.path.join(cls.shared, "lesson")
        cls.run_all = Run("lesson", STUCK, "-o", cls.lesson, "--json",
                          "--only", "page,figures,handout,stills,captions,chapters,script,description")

    @classmethod
    def tearDownClass(cls):
        if not cls.missing:
            shutil.rmtree(cls.shared)

    def setUp(self):
        super().setUp()
        self.assertEqual(self.missing, [], "./test installs these programs")
        self.ends(self.run_all, 0)

    def at(self, name):
        return os.path.join(self.lesson, name)

    def text(self, name):
        with open(self.at(name), encoding="utf-8") as file:
            return file.read()

    def scenes(self):
        return re.findall(r"<h2[^>]*>([^<]*)</h2>", self.text("index.html"))

    def test_every_file_is_named(self):
        made = self.run_all.json()
        self.fits(made, "lesson")
        with open(self.at("lesson.json")) as file:
            manifest = json.load(file)
        self.fits(manifest, "lesson_folder")
        self.assertNotIn("unfinished", manifest)
        self.assertEqual(tree(self.lesson), sorted(manifest["files"] + ["lesson.json"]))
        stills = [f"stills/scene-{i + 1:02}-1080.png" for i in range(len(self.scenes()))]
        self.assertEqual(sorted(os.path.relpath(path, self.lesson) for path in made["files"]), sorted(TEXTS + PAPERS + stills))

    def test_figures_are_xml_and_can_be_drawn(self):
        figures = [name for name in tree(self.lesson) if name.endswith(".svg")]
        self.assertGreater(len(figures), 10)
        said("xmllint", "--noout", *[self.at(name) for name in figures])
        for name in figures[:4] + figures[-1:]:
            said("rsvg-convert", "--width", "200", "-o", self.path("figure.png"), self.at(name))

    def test_papers_are_sound(self):
        for name in PAPERS:
            self.assertIn("No syntax or stream encoding errors", said("qpdf", "--check", self.at(name)))
            facts = said("pdfinfo", self.at(name))
            self.assertRegex(facts, r"Tagged: +yes")
            self.assertRegex(facts, r"Page size: +595.28 x 841.89 pts \(A4\)")
            self.assertRegex(facts, r"CreationDate: +Sat Jan +1 00:00:00 2000")
            self.assertRegex(facts, r"Creator: +Counterpoise")
            fonts = said("pdffonts", self.at(name)).splitlines()[2:]
            self.assertGreater(len(fonts), 1)
            for font in fonts:
                embedded, _, unicode = re.search(r" (yes|no) +(yes|no) +(yes|no) +\d+ +\d+$", font).groups()
                self.assertEqual((embedded, unicode), ("yes", "yes"), font)

    def test_the_handout_says_everything_in_order(self):
        text = " ".join(said("pdftotext", self.at("handout-a4.pdf"), "-").split())
        at = text.index(STUCK)
        for number, heading in enumerate(self.scenes(), 1):
            heading = heading.replace("&amp;", "&")
            place = text.find(f"{number}. {heading}", at)
            self.assertGreater(place, at, heading)
            at = place

    def test_the_worksheet_gives_nothing_away(self):
        text = said("pdftotext", self.at("worksheet-a4.pdf"), "-")
        self.assertIn(STUCK, text)
        for words in ("Solution", "The solution", "Answers", "The argument"):
            self.assertNotIn(words, text)

    def test_the_handout_can_be_walked_and_heard(self):
        data = json.loads(said("qpdf", "--json", self.at("handout-a4.pdf")))
        titles = json.dumps(data["outlines"], ensure_ascii=False)
        for heading in self.scenes():
            self.assertIn(heading.replace("&amp;", "&"), titles)
        objects = list(data["objects"].values()) if "objects" in data else [entry.get("value") for entry in data["qpdf"][1].values()]
        pieces = [entry for entry in objects if isinstance(entry, dict) and entry.get("/Type") == "/StructElem"]
        figures = [entry for entry in pieces if entry["/S"] == "/Figure"]
        self.assertGreater(len(figures), 5)
        self.assertTrue(all(len(entry.get("/Alt", "")) > 20 for entry in figures))
        roots = [entry for entry in objects if isinstance(entry, dict) and entry.get("/Type") == "/StructTreeRoot"]
        self.assertEqual([entry["/S"] for entry in pieces].count("/Document"), 1)
        self.assertEqual(len(roots), 1)

    def test_figures_are_described_by_what_they_show(self):
        data = json.loads(said("qpdf", "--json", self.at("handout-a4.pdf")))
        objects = list(data["objects"].values()) if "objects" in data else [entry.get("value") for entry in data["qpdf"][1].values()]
        figures = [entry["/Alt"] for entry in objects if isinstance(entry, dict) and entry.get("/S") == "/Figure"]
        self.assertTrue(any("The puzzle" in text for text in figures[:1]), figures[0][:100])
        self.assertTrue(any("Solution" in text for text in figures[-1:]), figures[-1][:100])

    def test_letter_paper(self):
        folder = self.path("letter")
        self.ends(Run("lesson", STUCK, "-o", folder, "--only", "handout", "--paper", "letter"), 0)
        self.assertRegex(said("pdfinfo", os.path.join(folder, "handout-letter.pdf")), r"Page size: +612 x 792 pts \(letter\)")

    def test_stills_have_their_size_and_their_ground(self):
        width, height, raw = pixels(self.at("stills/scene-01-1080.png"))
        self.assertEqual((width, height), (1920, 1080))
        self.assertEqual(set(raw[3::4]), {255})
        self.assertGreater(len(set(raw[0::4])), 20)

    def test_transparent_stills_of_the_large_size(self):
        folder = self.path("clear")
        self.ends(Run("lesson", "build", self.path("two.lesson", TWO), "-o", folder, "--only", "stills", "--size", "2160", "--transparent"), 0)
        width, height, raw = pixels(os.path.join(folder, "stills/scene-02-2160-clear.png"))
        self.assertEqual((width, height), (3840, 2160))
        self.assertEqual(raw[3], 0)
        self.assertEqual(raw[(1080 * 3840 + 700) * 4 + 3], 255)  # within the board

    def test_texts_agree_with_one_another(self):
        starts = [line.split(" ", 1) for line in self.text("chapters.txt").splitlines()]
        self.assertEqual([heading for _, heading in starts], [heading.replace("&amp;", "&") for heading in self.scenes()])
        self.assertEqual(starts[0][0], "0:00")
        self.assertEqual(len(re.findall(" --> ", self.text("chapters.vtt"))), len(starts))
        self.assertIn(STUCK, self.text("description.txt"))
        self.assertEqual(re.findall(r"^## ", self.text("script.md"), re.M), ["## "] * len(starts))

    def test_the_same_puzzle_gives_the_same_bytes(self):
        folder = self.path("again")
        self.ends(Run("lesson", STUCK, "-o", folder, "--only", "handout,captions,script"), 0)
        for name in PAPERS + ["captions.vtt", "script.md"]:
            with open(self.at(name), "rb") as a, open(os.path.join(folder, name), "rb") as b:
                self.assertEqual(a.read(), b.read(), name)

    def test_only_adds_to_the_same_lesson_and_replaces_another(self):
        folder = self.path("lesson")
        self.ends(Run("lesson", STUCK, "-o", folder), 0)
        self.ends(Run("lesson", STUCK, "-o", folder, "--only", "captions"), 0)
        self.assertIn("index.html", tree(folder))
        self.assertIn("captions.vtt", tree(folder))
        self.ends(Run("lesson", STUCK, "-o", folder, "--only", "script", "--title", "Another"), 0)
        self.assertEqual(tree(folder), ["lesson.json", "script.md"])

    def test_wishes_that_mean_nothing(self):
        folder = self.path("lesson")
        self.ends(Run("lesson", STUCK, "-o", folder, "--only", "page,hadnout"), 64, "'hadnout' is no kind of file", "did you mean handout?", "^^^^^^^")
        self.ends(Run("lesson", STUCK, "-o", folder, "--paper", "a3"), 64, "--paper: 'a3' is no size of paper", "a4 and letter")
        self.ends(Run("lesson", STUCK, "-o", folder, "--size", "720"), 64, "--size: '720' is no size of stills", "1080 and 2160")
        self.assertFalse(os.path.exists(folder))

    def test_without_ffmpeg_nothing_is_begun(self):
        folder = self.path("lesson")
        done = subprocess.run([BIN, "lesson", STUCK, "-o", folder, "--only", "page,video"], capture_output=True, env={"PATH": self.folder}, timeout=60)
        self.assertEqual(done.returncode, 64)
        self.assertIn("ffmpeg", done.stderr.decode())
        self.assertFalse(os.path.exists(folder))

    def test_the_film(self):
        folder = self.path("film")
        self.ends(Run("lesson", "build", self.path("two.lesson", TWO), "-o", folder, "--only", "video,chapters"), 0)
        self.assertEqual(tree(folder), ["chapters.txt", "chapters.vtt", "film.mp4", "lesson.json"])
        facts = json.loads(said("ffprobe", "-v", "error", "-of", "json", "-show_streams", "-show_chapters", "-show_format", os.path.join(folder, "film.mp4")))
        video = next(stream for stream in facts["streams"] if stream["codec_type"] == "video")
        self.assertEqual((video["codec_name"], video["width"], video["height"]), ("h264", 1920, 1080))
        self.assertTrue(any(stream["codec_name"] == "mov_text" for stream in facts["streams"]))
        with open(os.path.join(folder, "chapters.txt"), encoding="utf-8") as file:
            lines = [line.rstrip("\n").split(" ", 1) for line in file]
        self.assertEqual([chapter["tags"]["title"] for chapter in facts["chapters"]], [heading for _, heading in lines])
        wanted = [sum(60 ** i * int(part) for i, part in enumerate(reversed(clock.split(":")))) for clock, _ in lines]
        self.assertEqual([round(float(chapter["start_time"])) for chapter in facts["chapters"]], wanted)
        self.assertEqual(wanted, [0, 3])
        self.assertEqual(facts["format"]["tags"]["title"], "Two = scenes; #1")
        self.assertAlmostEqual(float(facts["format"]["duration"]), float(facts["chapters"][-1]["end_time"]), delta=1.0)

    def kill(self, folder, how, waits):
        child = subprocess.Popen([BIN, "lesson", STUCK, "-o", folder, "--only", "page,stills,handout,video", "--size", "2160"],
                                 stdout=subprocess.DEVNULL, stderr=subprocess.PIPE)
        for _ in range(1200):
            if waits(folder) or child.poll() is not None:
                break
            time.sleep(0.02)
        self.assertIsNone(child.poll(), "the work was over before it could be killed")
        child.send_signal(how)
        complaint = child.communicate(timeout=60)[1].decode()
        self.assertEqual(child.returncode, -how)
        return complaint

    def whole_or_absent(self, folder):
        for name in tree(folder):
            if os.path.basename(name).startswith(".") or os.path.dirname(name).startswith("."):
                continue
            with open(os.path.join(folder, name), "rb") as file:
                end = file.read()[-12:]
            wanted = {"png": b"IEND", "pdf": b"%%EOF", "html": b"</html>", "json": b"}"}[name.rsplit(".", 1)[1]]
            self.assertIn(wanted, end, name)

    def test_a_stop_leaves_whole_files_and_says_so(self):
        folder = self.path("stopped")
        complaint = self.kill(folder, signal.SIGTERM, lambda at: os.path.exists(os.path.join(at, "stills/scene-01-2160.png")))
        self.assertIn("stopped", complaint)
        self.assertFalse([name for name in tree(folder) if ".partial-" in name])
        self.whole_or_absent(folder)
        with open(os.path.join(folder, "lesson.json")) as file:
            self.assertTrue(json.load(file)["unfinished"])

    def test_a_kill_leaves_whole_files_and_the_next_run_tidies_up(self):
        folder = self.path("killed")

        def is_at_work(at):
            return os.path.exists(os.path.join(at, "handout-a4.pdf")) and any(".partial-" in name for name in tree(at))

        self.kill(folder, signal.SIGKILL, is_at_work)
        self.whole_or_absent(folder)
        self.ends(Run("lesson", STUCK, "-o", folder, "--only", "captions"), 0)
        self.assertFalse([name for name in tree(folder) if ".partial-" in name])
        with open(os.path.join(folder, "lesson.json")) as file:
            manifest = json.load(file)
        self.assertNotIn("unfinished", manifest)
        self.assertIn("handout-a4.pdf", manifest["files"])
        self.assertEqual(tree(folder), sorted(manifest["files"] + ["lesson.json"]))


if __name__ == "__main__":
    unittest.main()
