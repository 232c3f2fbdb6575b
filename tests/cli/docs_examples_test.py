# SPDX-License-Identifier: Apache-2.0
"""Every example in the documents is run and compared.

A block marked ```console holds commands ("$ counterpoise ...") and what they print, standard error included. "..." as a
line stands for any lines, inside a line for any text. Commands run in a folder that holds data/demo.txt,
data/series, data/plans and tests/data/puzzles.tsv; each block starts afresh."""

import os
import re
import shutil
import subprocess
import unittest

from program import BIN, SOURCE, Case

BLOCK = re.compile(r"^```console\n(.*?)^```$", re.M | re.S)
FOLDERS = ("docs/manual", "docs/formats")
OTHERS = ("README.md", "docs/words.md")


def documents():
    for folder in FOLDERS:
        for name in sorted(os.listdir(os.path.join(SOURCE, folder))):
            if name.endswith(".md"):
                yield f"{folder}/{name}"
    for name in OTHERS:
        if os.path.exists(os.path.join(SOURCE, name)):
            yield name


def examples(text):
    """(command, wanted output) of a block."""
    found = []
    for line in text.splitlines():
        if line.startswith("$ "):
            found.append([line[2:], []])
        elif found:
            if found[-1][0].endswith("\\"):
                found[-1][0] = found[-1][0][:-1] + line.strip()
            else:
                found[-1][1].append(line)
    return found


def pattern(lines):
    parts = []
    for line in lines:
        if line.strip() == "...":
            parts.append(r"(?:.*\n)*?")
        else:
            parts.append(".*?".join(re.escape(part) for part in line.rstrip().split("...")) + r"[ ]*\n")
    return re.compile("".join(parts))


class DocsExamplesTest(Case):
    def run_block(self, path, number, block):
        folder = self.path(f"{path.replace('/', '-')}-{number}")
        for name in ("data/demo.txt", "tests/data/puzzles.tsv"):
            os.makedirs(os.path.dirname(os.path.join(folder, name)))
            shutil.copy(os.path.join(SOURCE, name), os.path.join(folder, name))
        for data in ("series", "plans"):
            shutil.copytree(os.path.join(SOURCE, "data", data), os.path.join(folder, "data", data))
        surroundings = {**os.environ, "PATH": os.path.dirname(BIN) + ":" + os.environ["PATH"]}
        self.assertIn("counterpoise ", block, path)
        count = 0
        for command, wanted in examples(block):
            command = command.replace("./run ", "counterpoise ")
            done = subprocess.run(["sh", "-c", command], stdout=subprocess.PIPE, stderr=subprocess.STDOUT, cwd=folder,
                                  env=surroundings, timeout=120)
            said = done.stdout.decode()
            self.assertRegex(said, re.compile(r"\A" + pattern(wanted).pattern + r"\Z"), f"{path}: $ {command}")
            count += 1
        return count

    def test_all_examples(self):
        total = 0
        for path in documents():
            with open(os.path.join(SOURCE, path), encoding="utf-8") as file:
                blocks = BLOCK.findall(file.read())
            with self.subTest(document=path):
                total += sum(self.run_block(path, number, block) for number, block in enumerate(blocks))
        self.assertGreater(total, 25)

    def test_every_command_has_a_page_with_an_example(self):
        for command in ("desk", "demo", "lesson", "series", "weigh", "path", "survey", "needed", "alternatives", "claim", "claims", "check", "compose", "count", "bench"):
            with open(os.path.join(SOURCE, f"docs/manual/{command}.md"), encoding="utf-8") as file:
                self.assertRegex(file.read(), rf"(?m)^\$ counterpoise {command}\b")

    def test_differences_are_noticed(self):
        self.assertIsNone(pattern(["a ... c"]).fullmatch("a b d\n"))
        self.assertIsNotNone(pattern(["a", "...", "c"]).fullmatch("a\nx\ny\nc\n"))
        self.assertIsNone(pattern(["a", "c"]).fullmatch("a\nx\nc\n"))


if __name__ == "__main__":
    unittest.main()
