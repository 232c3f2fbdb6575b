#!/usr/bin/env python3
# SPDX-License-Identifier: Apache-2.0
"""tools/new_technique.py ID   begins a technique, for example: law-of-leftovers

Writes its source, its cases, its slow twin and its card, and one line in the catalogue.
All of it builds; the cases and the definition audit fail until you fill it in."""

import os
import re
import sys

TOP = os.path.dirname(os.path.dirname(os.path.abspath(__file__)))
CATALOGUE = "src/deduce/catalogue.def"

SOURCE = """// SPDX-License-Identifier: Apache-2.0
// @Name@: the pattern in words. Why it is sound, in two or three sentences. What it costs, what it does not find; the
// order of the steps.
#include "deduce/technique.h"

namespace cp::techniques {

void @stem@(const Position& position, StepSink& sink) {
  static_cast<void>(position);  // guards that return early; instances; the decision; sink.take({"@id@", ...})
  static_cast<void>(sink);
}

}  // namespace cp::techniques
"""

TWIN = """// SPDX-License-Identifier: Apache-2.0
// The definition in one sentence.
#include "oracle/definitions/plain_definition.h"

namespace cp::oracle {

Conclusions @stem@_twin(const Position& position) {
  Conclusions found;
  static_cast<void>(position);  // plain loops over sets; at most 30 lines; nothing from src/deduce
  return found;
}

}  // namespace cp::oracle
"""

CASES = """# SPDX-License-Identifier: Apache-2.0
# The pattern in one sentence. The format: docs/formats/case.md.
# Wanted: three cases that fire, three near misses, one that fires on a grid that is not 9x9.

case @id@-to-be-written
show   this case fails until the technique and its cases are there
grid   empty 4x4
expect r1c1 != 1
"""

CARD = """# @Name@

## What it is

The pattern, in two to six sentences to be read aloud.

## Why it holds

The argument.

## What to look for

How a person finds it.
"""

ENTRY = 'CP_TECHNIQUE("@id@", "@name@", "family", 100, kNoAssumption, @stem@)'


def filled(text, name_id):
    name = name_id.replace("-", " ")
    return (text.replace("@id@", name_id).replace("@stem@", name_id.replace("-", "_"))
            .replace("@name@", name).replace("@Name@", name[0].upper() + name[1:]))


def with_entry(text, name_id):
    """The catalogue with one more line in its sorted place; None if it is there."""
    lines = text.split("\n")
    places = [(match.group(1), number) for number, line in enumerate(lines)
              for match in [re.match(r'CP_TECHNIQUE\("([^"]+)"', line)] if match]
    if name_id in (listed for listed, _ in places):
        return None
    at = next((number for listed, number in places if listed > name_id), places[-1][1] + 1)
    lines.insert(at, filled(ENTRY, name_id))
    return "\n".join(lines)


def refuse(message):
    print(f"new_technique: {message}", file=sys.stderr)
    sys.exit(64)


def main():
    if len(sys.argv) != 2 or not re.fullmatch(r"[a-z][a-z0-9]*(-[a-z0-9]+)*", sys.argv[1]):
        refuse("wanted one id of small letters and hyphens, for example: tools/new_technique.py law-of-leftovers")
    name_id = sys.argv[1]
    stem = name_id.replace("-", "_")
    wanted = {
        f"src/deduce/{stem}.cpp": SOURCE,
        f"tests/cases/deduce/{stem}.case": CASES,
        f"tests/oracle/definitions/{stem}_twin.cpp": TWIN,
        f"docs/manual/techniques/{name_id}.md": CARD,
    }
    for path in wanted:
        if os.path.exists(os.path.join(TOP, path)):
            refuse(f"{path} is already there")
    with open(os.path.join(TOP, CATALOGUE), encoding="utf-8") as file:
        catalogue = with_entry(file.read(), name_id)
    if catalogue is None:
        refuse(f"{name_id} already stands in {CATALOGUE}")

    for path, text in wanted.items():
        with open(os.path.join(TOP, path), "w", encoding="utf-8") as file:
            file.write(filled(text, name_id))
        print(f"wrote {path}")
    with open(os.path.join(TOP, CATALOGUE), "w", encoding="utf-8") as file:
        file.write(catalogue)
    print(f"added a line to {CATALOGUE}: please set its family and cost")
    print("Next: the cases, then the twin, then the technique; a line in CHANGELOG.md; ./test -R deduce;")
    print("then the card, and tools/write_cards.py BUILD " + name_id + " for its example and figure")


main()
