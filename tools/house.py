# SPDX-License-Identifier: Apache-2.0
"""What the check_*.py scripts share: finding files, reading C++, reporting."""

import os
import re
import sys

SKIPPED_FOLDERS = {".git", "build", "node_modules", "__pycache__", ".cache", "dist", "generated"}
CPP = (".cpp", ".h", ".def")


def root():
    """The tree to look at: --root DIR, or the one this file lies in."""
    if len(sys.argv) == 3 and sys.argv[1] == "--root":
        return os.path.abspath(sys.argv[2])
    return os.path.dirname(os.path.dirname(os.path.abspath(__file__)))


ROOT = root()


def files(*folders, endings=None):
    """Paths relative to the tree, sorted, below the given folders ('' = all)."""
    found = []
    for folder in folders or ("",):
        for at, below, names in os.walk(os.path.join(ROOT, folder)):
            below[:] = sorted(set(below) - SKIPPED_FOLDERS)
            for name in names:
                if endings is None or name.endswith(endings):
                    found.append(os.path.relpath(os.path.join(at, name), ROOT))
    return sorted(found)


def exists(path):
    return os.path.exists(os.path.join(ROOT, path))


def read(path):
    """The text of a file; None when it is not text."""
    with open(os.path.join(ROOT, path), "rb") as file:
        data = file.read()
    if b"\0" in data:
        return None
    return data.decode("utf-8", errors="replace")


_BLANKED = re.compile(
    r'//[^\n]*'
    r'|/\*.*?\*/'
    r'|R"([^()\\ ]{0,16})\(.*?\)\1"'
    r'|"(?:\\.|[^"\\\n])*"'
    r"|(?<![0-9a-fA-F])'(?:\\.|[^'\\\n])+'", re.S)


def code_only(text):
    """C++ with comments and literals blanked; every line keeps its number."""
    def blank(match):
        piece = match.group(0)
        lines = "\n" * piece.count("\n")
        return lines + " " if piece[0] == "/" else '""' + lines
    return _BLANKED.sub(blank, text)


def room_table():
    """{room: (rooms it names, line)} from the cp_room, cp_program, cp_ranks_program and cp_module calls in
    CMakeLists.txt, in order; the build uses the very same lines."""
    text = read("CMakeLists.txt")
    table = {}
    for match in re.finditer(r"^cp_(room|program|module|ranks_program)\(([^)]*)\)", text, re.M):
        words = match.group(2).split()
        name = words[0]
        if match.group(1) != "room":
            name = words[words.index("FROM") + 1]
        needs, keyword = [], None
        for word in words[1:]:
            if word in ("NEEDS", "LIBS", "PACKAGES", "FROM", "QUICK", "CALM", "SHELL", "HEAVY"):
                keyword = word
            elif keyword == "NEEDS":
                needs.append(word)
        table[name] = (needs, text.count("\n", 0, match.start()) + 1)
    return table


class Report:
    def __init__(self, what):
        self.what = what
        self.count = 0

    def add(self, path, line, message):
        print(f"{path}:{line}: {message}")
        self.count += 1

    def done(self, summary):
        """Ends the script: 1 with findings, else one line and 0."""
        if self.count:
            sys.exit(1)
        print(f"{self.what}: {summary}")
        sys.exit(0)
