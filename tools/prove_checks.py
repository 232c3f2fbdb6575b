#!/usr/bin/env python3
# SPDX-License-Identifier: Apache-2.0
"""Proves that the house rules bite: plants one violation after the other into a
small clean tree and wants each one reported at its place, and nothing else."""

import os
import shutil
import subprocess
import sys
import tempfile

TOOLS = os.path.dirname(os.path.abspath(__file__))
TOP = os.path.dirname(TOOLS)
LICENCE = "// SPDX-License-Identifier: Apache-2.0\n"

CLEAN = {
    "src/base/text.h": LICENCE + "#pragma once\n",
    "src/step/step.h": LICENCE + '#include "base/text.h"\n',
    "src/exact/solve.h": LICENCE + "#pragma once\n",
    "src/verify/judge.cpp": LICENCE + '#include "step/step.h"\nint judge() { return 1; }\n',
    "src/deduce/catalogue.def": LICENCE + "TECHNIQUE(naked-single, 1)\nTECHNIQUE(x-wing, 2)\n",
    "src/deduce/naked_single.cpp": LICENCE,
    "src/deduce/x_wing.cpp": LICENCE,
    "src/deduce/links.h": LICENCE,
    "src/deduce/links.cpp": LICENCE,
    "src/cli/main.cpp": LICENCE + "#include <iostream>\nint main() { std::cout << 1; }\n",
    "tests/cases/deduce/naked_single.case": "x\n",
    "tests/cases/deduce/x_wing.case": "x\n",
    "tests/oracle/definitions/naked_single_twin.cpp": LICENCE + '#include "step/step.h"\n',
    "tests/oracle/definitions/x_wing_twin.cpp": LICENCE,
    "docs/manual/techniques/naked-single.md": "# Naked single\n",
    "docs/manual/techniques/x-wing.md": "# X-wing\n",
    "docs/pictures/techniques/naked-single.svg": "<svg/>\n",
    "docs/pictures/techniques/x-wing.svg": "<svg/>\n",
    "README.md": "# Words\nSee [more](docs/more.md#two-words) and `[no](link)`.\n",
    "docs/more.md": "## Two words\n",
}


def long_function(lines):
    return LICENCE + "int grow(int a) {\n" + "  ++a;\n" * (lines - 3) + "  return a;\n}\n"


# (script, file, text or None to delete, what must be reported: place and words)
PLANTED = [
    ("layers", "src/base/text.h", LICENCE + '#include "step/step.h"\n', "src/base/text.h:2: base may not include step"),
    ("layers", "src/deduce/x_wing.cpp", LICENCE + '#include "exact/solve.h"\n', "src/deduce/x_wing.cpp:2: deduce may not include exact"),
    ("layers", "src/balance/find.cpp", LICENCE + '#include "exact/solve.h"\n', "src/balance/find.cpp:2: balance may not include exact"),
    ("layers", "src/verify/judge.cpp", LICENCE + '#include "deduce/links.h"\n', "src/verify/judge.cpp:2: verify may not include deduce"),
    ("layers", "src/cli/main.cpp", LICENCE + '#include "exact/solve.h"\n', "src/cli/main.cpp:2: cli may not include exact"),
    ("layers", "src/step/step.h", LICENCE + '#include "base/gone.h"\n', 'src/step/step.h:2: "base/gone.h" is not a file'),
    ("layers", "src/step/step.h", LICENCE + "#include <fstream>\n", "src/step/step.h:2: <fstream>"),
    ("layers", "src/lesson/keep.cpp", LICENCE + "#include <sqlite3.h>\n", "src/lesson/keep.cpp:2: SQLite"),
    ("layers", "src/lesson/keep.cpp", LICENCE + "#include <cairo.h>\n", "src/lesson/keep.cpp:2: cairo"),
    ("layers", "src/verify/judge.cpp", LICENCE + "// throw\nvoid f() { throw 1; }\n", "src/verify/judge.cpp:3: throw"),
    ("layers", "src/verify/judge.cpp", LICENCE + "double share = 0;\n", "src/verify/judge.cpp:2: double"),
    ("layers", "src/verify/judge.cpp", LICENCE + 'void f() { printf("x"); }\n', "src/verify/judge.cpp:2: printf"),
    ("layers", "src/exact/solve.h", LICENCE + "#include <unordered_map>\n", "src/exact/solve.h:2: <unordered_map>"),
    ("layers", "src/attic/old.h", LICENCE, "src/attic/old.h:1: this folder is no room"),
    ("layers", "tests/oracle/plain.cpp", LICENCE + '#include "exact/solve.h"\n', "tests/oracle/plain.cpp:2: the oracle"),
    ("sizes", "src/base/text.h", LICENCE + "int a;\n" * 600, "src/base/text.h:1: file has 601 lines"),
    ("sizes", "src/verify/judge.cpp", LICENCE + "int a;\n" * 300, "src/verify/judge.cpp:1: file has 301 lines"),
    ("sizes", "src/base/text.h", long_function(81), "src/base/text.h:2: function grow has 81 lines"),
    ("sizes", "src/verify/judge.cpp", long_function(41), "src/verify/judge.cpp:2: function grow has 41 lines"),
    ("sizes", "tools/sizes.allow", "src/base/text.h 700\n", "tools/sizes.allow:1: wanted"),
    ("sizes", "tools/sizes.allow", "src/base/text.h 700 because\n", "tools/sizes.allow:1: src/base/text.h needs no waiver"),
    ("names", "src/step/text.h", LICENCE, "src/step/text.h:1: the name is taken: src/base/text.h"),
    ("names", "src/step/TwoWords.h", LICENCE, "src/step/TwoWords.h:1: the name is not snake_case"),
    ("names", "src/step/move.h", LICENCE + "namespace cp {\nstruct Twice {\n  int b;\n};\nclass Twice : Once {\n};\n}\n",
     "src/step/move.h:6: the type cp::Twice is taken: src/step/move.h"),
    ("text", "src/base/text.h", LICENCE + "int a; \n", "src/base/text.h:2: blanks at the end"),
    ("text", "src/base/text.h", LICENCE + "\tint a;\n", "src/base/text.h:2: a tab"),
    ("text", "src/base/text.h", LICENCE + "// \u2260\n", "src/base/text.h:2: not ASCII: U+2260"),
    ("text", "src/base/text.h", LICENCE + "int a;", "src/base/text.h:2: no line end"),
    ("text", "src/base/text.h", "int a;\n", "src/base/text.h:1: no line SPDX"),
    ("text", "README.md", "Look into /tm" "p/there.\n", "README.md:1: a path of one machine"),
    ("text", "README.md", "From a trans" "cript.\n", "README.md:1: a word about how this was made"),
    ("text", "README.md", "From a ses" "sion.\n", "README.md:1: a word about how this was made"),
    ("text", "README.md", "https://registry.npm" "js.org/x\n", "README.md:1: the host of a package registry"),
    ("catalogue", "src/deduce/x_wing.cpp", None, "src/deduce/catalogue.def:3: x-wing has no source"),
    ("catalogue", "tests/cases/deduce/x_wing.case", None, "src/deduce/catalogue.def:3: x-wing has no cases"),
    ("catalogue", "tests/oracle/definitions/x_wing_twin.cpp", None, "src/deduce/catalogue.def:3: x-wing has no slow twin"),
    ("catalogue", "docs/manual/techniques/x-wing.md", None, "src/deduce/catalogue.def:3: x-wing has no card"),
    ("catalogue", "docs/pictures/techniques/x-wing.svg", None, "src/deduce/catalogue.def:3: x-wing has no figure"),
    ("catalogue", "src/deduce/odd.cpp", LICENCE, "src/deduce/odd.cpp:1: no entry"),
    ("catalogue", "tests/cases/deduce/odd.case", "x\n", "tests/cases/deduce/odd.case:1: no entry"),
    ("catalogue", "src/deduce/catalogue.def", LICENCE + "TECHNIQUE(x-wing, 2)\nTECHNIQUE(naked-single, 1)\n", "src/deduce/catalogue.def:3: naked-single stands after"),
    ("docs", "README.md", "# a\n[x](docs/gone.md)\n", "README.md:2: the link leads nowhere"),
    ("docs", "README.md", "[x](docs/more.md#three)\n", "README.md:1: docs/more.md has no heading"),
    ("docs", "README.md", "a\n" * 121, "README.md:121: 121 lines"),
]


def write(tree, path, text):
    place = os.path.join(tree, path)
    os.makedirs(os.path.dirname(place), exist_ok=True)
    with open(place, "w", encoding="utf-8") as file:
        file.write(text)


def run(script, tree):
    command = [sys.executable, os.path.join(TOOLS, f"check_{script}.py"), "--root", tree]
    done = subprocess.run(command, capture_output=True, text=True)
    return done.returncode, (done.stdout + done.stderr).strip().split("\n")


def plant(tree, script, path, text, wanted):
    place = os.path.join(tree, path)
    kept = CLEAN.get(path)
    if text is None:
        os.remove(place)
    else:
        write(tree, path, text)
    code, said = run(script, tree)
    if kept is None:
        os.remove(place)
    else:
        write(tree, path, kept)
    if code == 1 and len(said) == 1 and said[0].startswith(wanted):
        return True
    print(f"check_{script}.py, {path}: wanted 1 and '{wanted}', got {code} and {said}")
    return False


def main():
    tree = tempfile.mkdtemp()
    try:
        shutil.copy(os.path.join(TOP, "CMakeLists.txt"), tree)
        for path, text in CLEAN.items():
            write(tree, path, text)
        good = True
        for script in sorted({script for script, *_ in PLANTED}):
            code, said = run(script, tree)
            if code != 0 or len(said) != 1:
                print(f"check_{script}.py finds fault with a clean tree: {said}")
                good = False
        caught = sum(plant(tree, *planted) for planted in PLANTED)
        print(f"{caught} of {len(PLANTED)} planted violations caught")
        return 0 if good and caught == len(PLANTED) else 1
    finally:
        shutil.rmtree(tree)


sys.exit(main())
