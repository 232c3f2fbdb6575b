#!/usr/bin/env python3
# SPDX-License-Identifier: Apache-2.0
"""Who may include whom. The arrows are the table in CMakeLists.txt; the bans
below hold whatever that table says, because trust rests on them."""

import re

import house

# room: what it must never see, and why
BANS = {
    "deduce": ({"exact"}, "a technique never sees the solution"),
    "balance": ({"exact"}, "a balance never sees the solution"),
    "path": ({"exact"}, "the path driver hands positions to techniques, not truth"),
    "speak": ({"exact"}, "words are made from reasons alone"),
    "exact": ({"step"}, "the exact search does not know what was claimed"),
    "verify": ({"deduce", "balance", "exact", "path"}, "the judge does not know the parties"),
}
ORACLE_MAY_SEE = {"oracle", "grid", "step", "base"}
WORKS_IN_PARALLEL = {"compose"}  # may start threads; what it answers must not depend on them (docs/adr/0019)
SHELLS = {"cli", "stream", "store", "shelf", "sweep", "ranks", "serve"}  # the rooms that may touch the world outside
CATCHES = {"cli", "store", "api"}  # where libraries that throw are fenced in
DECIDES = {"grid", "step", "exact", "deduce", "balance", "verify", "claim"}

OUTSIDE_HEADERS = {
    "iostream", "fstream", "filesystem", "chrono", "cstdio", "stdio.h", "ctime", "time.h",
    "print", "random", "thread", "unistd.h", "sys/stat.h", "fcntl.h"}
OUTSIDE_WORDS = re.compile(
    r"\b(printf|fprintf|puts|fopen|getenv|std::cout|std::cerr|std::clog|std::exit|std::abort"
    r"|random_device|system_clock|steady_clock)\b")
INCLUDE = re.compile(r'^\s*#\s*include\s+(?:"([^"]+)"|<([^>]+)>)')

report = house.Report("layers")
table = house.room_table()


def reachable(room):
    seen, waiting = set(), list(table[room][0])
    while waiting:
        need = waiting.pop()
        if need in table and need not in seen:
            seen.add(need)
            waiting += table[need][0]
    return seen


def check_table():
    above = set()
    for room, (needs, line) in table.items():
        for need in needs:
            if need not in above:
                report.add("CMakeLists.txt", line, f"{room} needs {need}, which is not listed above it")
        above.add(room)
        banned, why = BANS.get(room, (set(), ""))
        for need in sorted(reachable(room) & banned):
            report.add("CMakeLists.txt", line, f"{room} reaches {need}: {why}")


def includes(path):
    for number, line in enumerate(house.read(path).split("\n"), 1):
        match = INCLUDE.match(line)
        if match:
            yield number, match.group(1), match.group(2)


def check_room_file(path, room):
    allowed = reachable(room) | {room}
    if room == "cli":
        allowed = {"cli", "api", "print", "base", "serve", "shelf", "store", "stream", "scan", "sweep", "course"}  # a thin shell: one door, a press, the shelf and what goes over collections, and the page server
    if room == "wasm":
        allowed = {"wasm", "api", "base"}
    banned, why = BANS.get(room, (set(), ""))
    for number, own, other in includes(path):
        if own:
            target = own.split("/")[0]
            if not house.exists("src/" + own):
                report.add(path, number, f'"{own}" is not a file below src/')
            elif target in banned:
                report.add(path, number, f"{room} may not include {target}: {why}")
            elif target not in allowed:
                report.add(path, number, f"{room} may not include {target}")
        elif re.match(r"sqlite3|SQLiteCpp", other) and room != "store":
            report.add(path, number, "SQLite belongs to store alone")
        elif re.match(r"cairo|pango/|librsvg/|glib", other) and room != "print":
            report.add(path, number, "cairo, pango and librsvg belong to print alone")
        elif other == "thread" and room in WORKS_IN_PARALLEL:
            pass
        elif other == "mpi.h" and room != "ranks":
            report.add(path, number, "MPI belongs to ranks alone")
        elif other in OUTSIDE_HEADERS and room not in SHELLS:
            report.add(path, number, f"<{other}>: streams, files, clocks and chance belong to cli and store")
        elif other.startswith("unordered_") and room in DECIDES:
            report.add(path, number, f"<{other}>: the order of iteration must be defined; use map, set or a sorted vector")


def check_room_words(path, room):
    for number, line in enumerate(house.code_only(house.read(path)).split("\n"), 1):
        match = OUTSIDE_WORDS.search(line)
        if match and room not in SHELLS:
            report.add(path, number, f"{match.group(0)}: only cli and store talk to the world outside")
        match = re.search(r"\b(throw|try|catch)\b", line)
        if match and room not in CATCHES:
            report.add(path, number, f"{match.group(0)}: errors travel as Result<T> below api")
        match = re.search(r"\b(float|double)\b", line)
        if match and room in DECIDES:
            report.add(path, number, f"{match.group(0)}: where something is decided there are integers only")


def check_oracle(path):
    for number, own, other in includes(path):
        if own and own.split("/")[0] not in ORACLE_MAY_SEE:
            report.add(path, number, f"the oracle may include grid, step and base only, not {own}")


check_table()
sources = house.files("src", endings=house.CPP)
for path in sources:
    parts = path.split("/")
    if len(parts) < 3 or parts[1] not in table:
        report.add(path, 1, "this folder is no room: add it to the table in CMakeLists.txt")
        continue
    check_room_file(path, parts[1])
    check_room_words(path, parts[1])
oracles = house.files("tests/oracle", endings=house.CPP)
for path in oracles:
    check_oracle(path)
report.done(f"{len(sources)} sources in {len(table)} rooms, {len(oracles)} oracle files, every arrow points down")
