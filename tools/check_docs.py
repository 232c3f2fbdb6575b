#!/usr/bin/env python3
# SPDX-License-Identifier: Apache-2.0
"""Links inside the documents lead somewhere; the first pages stay short."""

import os
import re

import house

LIMITS = {"README.md": 120, "ARCHITECTURE.md": 200, "CONTRIBUTING.md": 100}
LINK = re.compile(r"!?\[[^\]]*\]\(\s*<?([^)\s>]+)>?(?:\s+\"[^\"]*\")?\s*\)")
REFERENCE = re.compile(r"^\[[^\]]+\]:\s*(\S+)")

report = house.Report("docs")


def without_code(text):
    """Code blocks and code spans hold no links; line numbers stay."""
    text = re.sub(r"^(```|~~~).*?^\1", lambda m: "\n" * m.group(0).count("\n"), text, flags=re.M | re.S)
    return re.sub(r"`[^`\n]*`", "``", text)


def anchors(path):
    """The names under which the headings of a document can be reached."""
    found, text = set(), re.sub(r"^(```|~~~).*?^\1", "", house.read(path), flags=re.M | re.S)
    for heading in re.findall(r"^#{1,6}\s+(.*?)\s*#*$", text, flags=re.M):
        slug = re.sub(r"[^\w\- ]", "", heading.lower()).replace(" ", "-")
        count = 0
        while slug + (f"-{count}" if count else "") in found:
            count += 1
        found.add(slug + (f"-{count}" if count else ""))
    return found


def check_link(path, number, target):
    if re.match(r"[a-z][a-z0-9+.-]*:", target):
        return 0
    place, _, anchor = target.partition("#")
    goal = os.path.normpath(os.path.join(os.path.dirname(path), place)) if place else path
    if goal.startswith("..") or place.startswith("/"):
        report.add(path, number, f"the link leaves the tree: {target}")
    elif not house.exists(goal):
        report.add(path, number, f"the link leads nowhere: {target}")
    elif anchor and goal.endswith(".md") and anchor not in anchors(goal):
        report.add(path, number, f"{goal} has no heading #{anchor}")
    return 1


links = 0
documents = house.files(endings=(".md",))
for path in documents:
    text = house.read(path)
    length = len(text.splitlines())
    if length > LIMITS.get(path, length):
        report.add(path, LIMITS[path] + 1, f"{length} lines, at most {LIMITS[path]} are allowed")
    for number, line in enumerate(without_code(text).split("\n"), 1):
        for target in LINK.findall(line) + REFERENCE.findall(line):
            links += check_link(path, number, target)
report.done(f"{len(documents)} documents, {links} links inside the tree, all lead somewhere")
