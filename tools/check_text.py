#!/usr/bin/env python3
# SPDX-License-Identifier: Apache-2.0
"""Plain hygiene of text files: blanks, tabs, ASCII, licence line, and nothing
that only means something on the machine it was written on."""

import os
import re

import house

BINARY = (".png", ".pdf", ".woff2", ".woff", ".ttf", ".wasm", ".ico", ".sqlite", ".gz")
WITH_LICENCE_LINE = house.CPP + (".py", ".sh", ".cmake", ".ts", ".js", ".mjs", ".svelte", ".css", ".sql")
SCRIPTS = ("run", "test", ".ci/run", "tools/check")
# Written by programs, compared byte for byte: blanks there mean something.
VERBATIM = ("tests/golden/", "tests/data/")
FOREIGN = ("LICENSE", "third_party/")

# Spelt in pieces so that this file passes its own check.
BANNED = [
    (r"(?<![\w.)}$*-])/(wo" r"rk|tm" r"p|ro" r"ot)/", "a path of one machine"),
    (r"\.lib" r"rary/", "a path of one machine"),
    (r"(?i)\btrans" r"cripts?\b", "a word about how this was made"),
    (r"(?i)\bseed" r"[ _-]documents?\b", "a word about how this was made"),
    (r"(?i)\bsub-?ag" r"ents?\b|\bag" r"ents?\b", "a word about how this was made"),
    (r"(?i)\blanguage mo" r"del\b|\bLL" r"Ms?\b", "a word about how this was made"),
    (r"\b(?:registry\.npm" r"js|(?:deb|snapshot|security)\.deb" r"ian|py" r"pi|deb\.node"
     r"source|proxy\.go" r"lang)\.(?:org|com)\b", "the host of a package registry"),
]
BANNED_HERE = [(re.compile(pattern), what) for pattern, what in BANNED]
# Browsers have their own use for this word.
SITTING = re.compile(r"(?i)\bses" r"sions?\b")
WEB = (".ts", ".js", ".mjs", ".svelte", ".html")

report = house.Report("text")


def check_licence_line(path, lines):
    name = os.path.basename(path)
    wanted = path.endswith(WITH_LICENCE_LINE) or path in SCRIPTS or name == "CMakeLists.txt"
    if wanted and not any("SPDX-License-Identifier: Apache-2.0" in line for line in lines[:3]):
        report.add(path, 1, "no line SPDX-License-Identifier: Apache-2.0 among the first three")


def check_lines(path, lines):
    cpp = path.endswith(house.CPP)
    verbatim = path.startswith(VERBATIM)
    for number, line in enumerate(lines, 1):
        if line != line.rstrip() and not verbatim:
            report.add(path, number, "blanks at the end of the line" if not line.endswith("\r") else "a carriage return")
        if cpp and "\t" in line:
            report.add(path, number, "a tab")
        if cpp and not line.isascii():
            letter = next(letter for letter in line if not letter.isascii())
            report.add(path, number, f"not ASCII: U+{ord(letter):04X}; write it as an escape")
        for pattern, what in BANNED_HERE:
            match = pattern.search(line)
            if match:
                report.add(path, number, f"{what}: {match.group(0)}")
        match = SITTING.search(line)
        if match and not path.endswith(WEB):
            report.add(path, number, f"a word about how this was made: {match.group(0)}")


checked = 0
for path in house.files():
    if path.endswith(BINARY) or path.startswith(FOREIGN):
        continue
    text = house.read(path)
    if text is None:
        report.add(path, 1, "not a text file; name its ending in tools/check_text.py if that is meant")
        continue
    checked += 1
    lines = text.split("\n")
    check_licence_line(path, lines)
    if text and not text.endswith("\n") and not path.startswith(VERBATIM):
        report.add(path, len(lines), "no line end at the end of the file")
    check_lines(path, lines)
report.done(f"{checked} files are clean")
