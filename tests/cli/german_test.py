# SPDX-License-Identifier: Apache-2.0
"""A lesson in German has no English sentence of the program: pages, figures, handouts, scripts, captions, judged against the
English catalogue and against English words that no German text has."""

import glob
import html
import os
import re
import subprocess
import unittest

from program import DEMO, SOURCE, Case, Run, published

# Words of English sentences that are no German words and no marks of this program.
ENGLISH = re.compile(r"\b(the|and|leaves?|sees?|with|cells?|column|columns|row|rows|box|boxes|digits?|only|left|right|open|holds?|both|than|then|that|which|these|pan|pans|remainder|here|from|has|have|one|two|three|naked|hidden|pair|chain|page|scene)\b")


def english_pieces():
    """The fixed pieces of the English sentences that have a word or two to tell by, without those that German shares."""
    def read(name):
        with open(os.path.join(SOURCE, "src/speak", name), encoding="utf-8") as file:
            return dict(re.findall(r"^([a-z0-9.-]+) = (.*)$", file.read(), re.M))
    english, german = read("english.words"), read("german.words")
    pieces = set()
    for key, text in english.items():
        for piece in re.split(r"[{}:?*]", text):
            piece = piece.strip()
            if len(piece) >= 12 and " " in piece and piece not in german.get(key, ""):
                pieces.add(piece)
    return pieces


def visible(page):
    page = re.sub(r"<(script|style)\b.*?</\1>", " ", page, flags=re.S)
    return html.unescape(re.sub(r"<[^>]+>", " ", page))


class GermanTest(Case):
    def check(self, puzzle, *words):
        draft, folder = self.path("probe.lesson"), self.path("probe")
        run = Run("lesson", "draft", puzzle, "--language", "de", "--replace", "-o", draft, *words)
        self.ends(run, 0)
        self.ends(Run("lesson", "build", draft, "-o", folder, "--notes", "--only", "page,figures,handout,script,description,captions,chapters"), 0)
        texts = {}
        for name in ("script.md", "description.txt", "captions.vtt", "chapters.txt"):
            with open(os.path.join(folder, name), encoding="utf-8") as file:
                texts[name] = file.read()
        for path in [os.path.join(folder, "index.html"), *glob.glob(os.path.join(folder, "figures/*.svg"))]:
            with open(path, encoding="utf-8") as file:
                texts[os.path.basename(path)] = visible(file.read())
        for name in ("handout-a4.pdf", "worksheet-a4.pdf"):
            texts[name] = subprocess.run(["pdftotext", os.path.join(folder, name), "-"], capture_output=True, timeout=60).stdout.decode()
        pieces = english_pieces()
        self.assertGreater(len(pieces), 150)
        for name, text in texts.items():
            flat = " ".join(text.split())
            self.assertEqual([piece for piece in pieces if piece in flat], [], name)
            # A claim is written in the language of claims.
            plain = re.sub(r"(?:\S+ ){1,40}(hold|in|footing) [\d,]+", " ", flat)
            plain = re.sub(r"\{key\.(left|right)\}|\bkey\b", " ", plain)
            self.assertEqual(sorted(set(match.group(0) for match in ENGLISH.finditer(plain))), [], name)
        return texts

    def test_a_balance(self):
        texts = self.check(DEMO)
        self.assertIn("Waage", texts["script.md"])
        self.assertIn("Seite 1 von", texts["handout-a4.pdf"])

    def test_a_hard_path_with_chains_told_link_by_link(self):
        hard = next(puzzle for name, puzzle, _ in published() if name == "gecode7")
        texts = self.check(hard, "--idea", "xy-chain")
        self.assertRegex(texts["script.md"], r"Angenommen, in r\dc\d steht die \d\. Dann ")

    def test_a_pattern_as_the_idea(self):
        self.check(next(puzzle for name, puzzle, _ in published() if name == "gecode14"), "--idea", "x-wing")


if __name__ == "__main__":
    unittest.main()
