#!/usr/bin/env python3
# SPDX-License-Identifier: Apache-2.0
"""File names in src/ and tests/: snake_case, and no name twice, so that a
message, a search or a stack trace needs no path. Types of src/: no two of
one full name, which no compiler reports and which the linker mixes up."""

import os
import re

import house

SNAKE = re.compile(r"[a-z0-9]+(_[a-z0-9]+)*(\.[a-z0-9_]+)*")
NUMBERED = re.compile(r"[0-9]{4}-[a-z0-9-]+\.[a-z]+")  # tests/cases/regress/0001-what-broke.case
FOREIGN = ("tests/web/", "src/wasm/")  # named by their own tools' customs

NAMESPACE = re.compile(r"^\s*(?:inline\s+)?namespace\b\s*([\w:]*)\s*$")
TYPE = re.compile(r"\b(?:struct|class|union|enum(?:\s+class)?)\s+(\w+)\s*(?:final\b\s*)?(?::[^:].*)?$", re.S)


def types(text):
    """Yields (full name, line) of the types that other files could mean: none in a nameless namespace, a function or
    another type."""
    code = re.sub(r"^[ \t]*#(?:[^\n\\]|\\.|\\\n)*", lambda m: "\n" * m.group(0).count("\n"), house.code_only(text), flags=re.M)
    outer, head, line = [], "", 1  # outer: the namespace a brace opens, None where nothing in it counts
    for letter in code:
        line += letter == "\n"
        if letter == "{":
            named, shape = NAMESPACE.match(head), TYPE.search(head)
            if shape and "(" not in head and None not in outer:
                yield "::".join([*outer, shape.group(1)]), line
            outer.append(named.group(1) or None if named else None)
            head = ""
        elif letter == "}":
            if outer:
                outer.pop()
            head = ""
        elif letter == ";":
            head = ""
        else:
            head += letter


report = house.Report("names")
first_seen = {}
paths = [path for path in house.files("src", "tests") if not path.startswith(FOREIGN)]
for path in paths:
    name = os.path.basename(path)
    if not SNAKE.fullmatch(name) and not ("/regress/" in path and NUMBERED.fullmatch(name)):
        report.add(path, 1, "the name is not snake_case")
    if name in first_seen:
        report.add(path, 1, f"the name is taken: {first_seen[name]}")
    first_seen.setdefault(name, path)
first_type = {}
for path in house.files("src", endings=(".h", ".cpp")):
    for name, line in types(house.read(path)):
        if name in first_type:
            report.add(path, line, f"the type {name} is taken: {first_type[name]}")
        first_type.setdefault(name, path)
report.done(f"{len(paths)} names of files and {len(first_type)} of types, all different")
