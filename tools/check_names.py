#!/usr/bin/env python3
# SPDX-License-Identifier: Apache-2.0
"""File names in src/ and tests/: snake_case, and no name twice, so that a
message, a search or a stack trace needs no path."""

import os
import re

import house

SNAKE = re.compile(r"[a-z0-9]+(_[a-z0-9]+)*(\.[a-z0-9_]+)*")
NUMBERED = re.compile(r"[0-9]{4}-[a-z0-9-]+\.[a-z]+")  # tests/cases/regress/0001-what-broke.case
FOREIGN = ("tests/web/", "src/wasm/")  # named by their own tools' customs

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
report.done(f"{len(paths)} names, all different")
