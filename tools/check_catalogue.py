#!/usr/bin/env python3
# SPDX-License-Identifier: Apache-2.0
"""Every technique in src/deduce/catalogue.def has its source, its cases, its
slow twin, its card and the figure of the card; none of these is there without its line; the lines are sorted."""

import os
import re

import house

CATALOGUE = "src/deduce/catalogue.def"
ENTRY = re.compile(r'^\s*[A-Z][A-Z_]*\(\s*"?([a-z0-9][a-z0-9_-]*)"?\s*[,)]')
PARTS = {
    "source": ("src/deduce/", ".cpp"),
    "cases": ("tests/cases/deduce/", ".case"),
    "slow twin": ("tests/oracle/definitions/", "_twin.cpp"),
    "card": ("docs/manual/techniques/", ".md"),
    "figure": ("docs/pictures/techniques/", ".svg"),
}
HYPHENS = ("card", "figure")  # named after the id as it is; the others with _ for -

report = house.Report("catalogue")


def stems(folder, ending):
    return {os.path.basename(path)[:-len(ending)]: path
            for path in house.files(folder, endings=(ending,)) if os.path.dirname(path) + "/" == folder}


def entries():
    found = []
    if house.exists(CATALOGUE):
        for number, line in enumerate(house.read(CATALOGUE).split("\n"), 1):
            match = ENTRY.match(line)
            if match:
                found.append((match.group(1), number))
            elif line.strip() and not line.lstrip().startswith(("//", "#", '"')) and line[0] not in " \t":
                report.add(CATALOGUE, number, "neither a comment nor an entry")
    return found


def check_entries(found, parts):
    last = None
    for name, number in found:
        if last and name == last:
            report.add(CATALOGUE, number, f"{name} is listed twice")
        elif last and name < last:
            report.add(CATALOGUE, number, f"{name} stands after {last}: keep the list sorted")
        last = max(last or name, name)
        for what, (folder, ending) in PARTS.items():
            stem = name if what in HYPHENS else name.replace("-", "_")
            if stem not in parts[what]:
                report.add(CATALOGUE, number, f"{name} has no {what}: {folder}{stem}{ending}")


def check_orphans(found, parts):
    for what, (folder, ending) in PARTS.items():
        listed = {name if what in HYPHENS else name.replace("-", "_") for name, _ in found}
        for stem, path in sorted(parts[what].items()):
            # A pair of source and header is shared by techniques, not one of them.
            if what == "source" and (stem == "catalogue" or house.exists(folder + stem + ".h")):
                continue
            if stem not in listed:
                report.add(path, 1, f"no entry for this {what} in {CATALOGUE}")


found = entries()
parts = {what: stems(*place) for what, place in PARTS.items()}
check_entries(found, parts)
check_orphans(found, parts)
report.done(f"{len(found)} techniques, each with source, cases, slow twin and card")
