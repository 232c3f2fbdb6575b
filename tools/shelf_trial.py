#!/usr/bin/env python3
# SPDX-License-Identifier: Apache-2.0
"""Puts a shelf to the test from end to end and says what it measured.

    tools/shelf_trial.py PROGRAM COUNT FOLDER [--survey N] [--report docs/shelf_trial.md] [--lines FILE]

Makes COUNT random minimal puzzles (or takes FILE, which holds them), mixes in repeats and lines that are no puzzles, imports them once in
peace and once with the import killed twice on the way (signal 9), and compares the two shelves line by line. Then surveys
N puzzles, killing that once as well, times queries, plans a series and drafts its first lesson. Ends with 1 when anything is
not as it should be. With --report the figures take the place of those that stand between two marks in a document."""

import argparse
import gzip
import hashlib
import json
import os
import platform
import re
import signal
import sqlite3
import statistics
import subprocess
import sys
import time

SEED = 20261126
BEGIN, END = "<!-- measured -->", "<!-- end of what was measured -->"  # what stands around them in a document is kept
QUERIES = (
    "proper and needs balance slack <= 1 over rows columns and no uniqueness and tail singles and givens <= 26 and unused",
    "proper and balance slack <= 1 over rows columns and tail singles and givens <= 26 and unused",
    "uses x-wing and givens <= 24",
    "tag rare and proper",
    "proper and givens <= 21",
    "stuck and unused",
    "solved and stuck",
)


class Trial:
    def __init__(self, program, folder, count):
        self.program, self.folder, self.figures = program, folder, {}
        self.block = min(4096, max(16, count // 100))  # so that a kill falls into the middle
        os.makedirs(folder, exist_ok=True)

    def path(self, name):
        return os.path.join(self.folder, name)

    def run(self, *words):
        """Standard output and seconds; any other exit code than 0 ends the trial."""
        began = time.monotonic()
        done = subprocess.run([self.program, *words], capture_output=True, text=True)
        if done.returncode != 0:
            sys.exit(f"shelf_trial: {' '.join(words)} ended with {done.returncode}: {done.stderr[-500:]}")
        return done.stdout, time.monotonic() - began

    def must(self, holds, what):
        if not holds:
            sys.exit(f"shelf_trial: {what}")

    # ---- the lines -------------------------------------------------------------

    def make_lines(self, count, ready):
        """The stream: puzzles, and every 500th time an earlier one in other clothes, every 700th a line that is none."""
        began = time.monotonic()
        source = open(ready) if ready else None
        maker = None if ready else subprocess.Popen([self.program, "shelf", "random", str(count), "--seed", str(SEED)], stdout=subprocess.PIPE, text=True)
        repeats = faults = made = 0
        with gzip.open(self.path("lines.gz"), "wt", compresslevel=1) as out:
            for puzzle in source or maker.stdout:
                puzzle = puzzle.rstrip("\n")
                made += 1
                out.write(puzzle + "\n")
                if made % 500 == 0:
                    out.write(in_other_clothes(puzzle, made) + "\n")
                    repeats += 1
                if made % 700 == 0:
                    out.write(puzzle[:40] + "?" + puzzle[41:] + "\n")
                    faults += 1
                if made == count:
                    break
        if maker:
            self.must(maker.wait() == 0, "shelf random failed")
        self.must(made == count, f"only {made} puzzles were made")
        self.figures["made"] = None if ready else count / (time.monotonic() - began)
        return repeats, faults

    # ---- imports ------------------------------------------------------------------

    def import_words(self, shelf):
        return [self.program, "shelf", "import", self.path(shelf), self.path("lines.gz"), "--name", "trial", "--source", "random", "--quiet", "--json",
                "--block", str(self.block)]

    def import_in_peace(self):
        out, seconds = self.run(*self.import_words("calm.shelf")[1:])
        state = json.loads(out)
        self.figures["import"] = state["lines"] / seconds
        self.figures["import_seconds"] = seconds
        self.figures["file_bytes"] = os.path.getsize(self.path("calm.shelf"))
        return state

    def import_with_kills(self, lines):
        kills = []
        for goal in (lines // 3, 2 * lines // 3):
            child = subprocess.Popen(self.import_words("stormy.shelf"), stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL)
            while child.poll() is None and self.number("stormy.shelf", "SELECT line FROM imports") < goal:
                time.sleep(0.002)
            child.send_signal(signal.SIGKILL)
            if child.wait() == -signal.SIGKILL:
                kills.append(self.number("stormy.shelf", "SELECT line FROM imports"))
        began = time.monotonic()
        state = json.loads(self.run(*self.import_words("stormy.shelf")[1:])[0])
        self.figures["last_part_seconds"] = time.monotonic() - began
        self.must(state["resumed"] and state["done"], "the import was not gone on with")
        self.figures["kills"] = kills
        return state

    def number(self, shelf, sql):
        """Read beside the program; 0 while there is nothing."""
        try:
            with sqlite3.connect(f"file:{self.path(shelf)}?mode=ro", uri=True, timeout=5) as reader:
                row = reader.execute(sql).fetchone()
                return row[0] if row else 0
        except sqlite3.OperationalError:
            return 0

    def digest(self, shelf):
        """Everything the shelf holds, line by line, without the place where it lies."""
        child = subprocess.Popen([self.program, "shelf", "about", self.path(shelf), "--everything"], stdout=subprocess.PIPE)
        total, lines = hashlib.sha256(), 0
        for line in child.stdout:
            total.update(line)
            lines += 1
        self.must(child.wait() == 0, "shelf about failed")
        return total.hexdigest(), lines

    # ---- surveys, queries, series ----------------------------------------------------

    def survey(self, count, depth):
        words = ["shelf", "survey", self.path("calm.shelf"), "--limit", str(count), "--depth", depth]
        child = subprocess.Popen([self.program, *words], stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL)
        while child.poll() is None and self.number("calm.shelf", "SELECT count(*) FROM surveys") < count // 4:
            time.sleep(0.05)
        child.send_signal(signal.SIGKILL)
        child.wait()
        before = self.number("calm.shelf", "SELECT count(*) FROM surveys")
        _, seconds = self.run(*words[:3], "--limit", str(max(1, count - before)), "--depth", depth)
        surveyed = self.number("calm.shelf", "SELECT count(*) FROM surveys")
        self.must(surveyed >= count or surveyed >= self.number("calm.shelf", "SELECT count(*) FROM puzzles WHERE solutions = 1"), "puzzles were left without a survey")
        self.figures["survey"] = (surveyed - before) / seconds if surveyed > before else 0
        self.figures["surveyed"] = surveyed
        self.figures["survey_killed_at"] = before

    def ask(self):
        shelf = self.path("calm.shelf")
        self.run("shelf", "tag", shelf, "rare", "5", "77", "1234")
        rows = []
        for query in QUERIES:
            times = []
            for _ in range(5):
                out, seconds = self.run("shelf", "find", shelf, query, "--json")
                times.append(seconds)
            answer = json.loads(out)
            plan = json.loads(self.run("shelf", "find", shelf, query, "--explain", "--json")[0])["plan"]
            self.must(not any(re.match(r"SCAN p(?! USING .*puzzles_not_proper)", line) for line in plan), f"{query} reads all puzzles: {plan}")
            rows.append((query, len(answer["puzzles"]), answer["has_more"], statistics.median(times), answer["leader"]))
        self.figures["queries"] = rows
        self.figures["empty_start"] = statistics.median(self.run("--version")[1] for _ in range(5))


    def series(self):
        """A course from what was surveyed, and its first lesson checked. Leaves a note when the program has no planner."""
        if "plan" not in self.run("series", "--help")[0]:
            return
        records, _ = self.run("shelf", "export", self.path("calm.shelf"), "solved", "--as", "records")
        with open(self.path("records.jsonl"), "w") as file:
            file.write(records)
        self.figures["series_from"] = records.count("\n")
        goal = self.path(f"course-{int(time.time())}")
        done = subprocess.run([self.program, "series", "plan", self.path("records.jsonl"), "--assume", "single", "--lessons", "6", "-o", goal, "--json"], capture_output=True, text=True)
        self.must(done.returncode in (0, 2), f"series plan failed: {done.stderr}")
        lessons = json.loads(done.stdout)["lessons"]
        self.must(lessons and "file" in lessons[0], f"no first lesson was drafted: {done.stdout[:500]}")
        self.run("lesson", "check", lessons[0]["file"])
        self.figures["series"] = [(lesson["idea"], lesson["effort"], lesson["why"]) for lesson in lessons]


def in_other_clothes(puzzle, number):
    """The puzzle turned over its diagonal, two rows of a band changed, digits renamed in a circle."""
    rows = [puzzle[9 * row:9 * row + 9] for row in range(9)]
    rows = ["".join(column) for column in zip(*rows)]
    rows[0], rows[2] = rows[2], rows[0]
    return "".join(letter if letter == "." else str((int(letter) + number) % 9 + 1) for letter in "".join(rows))


def processor():
    with open("/proc/cpuinfo") as file:
        names = [line.split(":")[1].strip() for line in file if line.startswith("model name")]
    return f"{names[0]}, {os.cpu_count()} cores" if names else platform.machine()


def report(trial, count, lines):
    f = trial.figures
    text = [f"Measured by `tools/shelf_trial.py` with {count:,} puzzles on {processor()}; seed {SEED}.", "",
            "| step | measured |", "|---|---|"]
    if f["made"]:
        text.append(f"| random minimal puzzles made | {f['made']:,.0f} a second |")
    text += [f"| lines in the stream | {lines:,}, of which {f['repeats']:,} repeat an earlier puzzle in other clothes and {f['faults']:,} are no puzzles |",
             f"| import in peace | {f['import_seconds']:,.1f} s, {f['import']:,.0f} lines a second |",
             f"| file | {f['file_bytes'] / 1e6:,.0f} MB, {f['file_bytes'] / count:,.0f} bytes a puzzle |",
             f"| import killed (signal 9) after lines | {' and '.join(f'{kill:,}' for kill in f['kills'])} |",
             f"| last part after the second kill | {f['last_part_seconds']:,.1f} s |",
             f"| the two shelves | equal in all {f['digest_lines']:,} lines of `shelf about --everything`; SHA-256 {f['digest'][:16]}... |",
             f"| surveyed, depth `{f['depth']}` | {f['surveyed']:,} puzzles, {f['survey']:,.0f} a second; killed after {f['survey_killed_at']:,} and gone on with |",
             "", "Queries through the program, start and printing included (median of five; the program alone starts and ends in " f"{f['empty_start'] * 1000:.0f} ms):", "",
             "| query | found | ms | led by |", "|---|---|---|---|"]
    for query, found, more, seconds, leader in f["queries"]:
        text.append(f"| `{query}` | {found}{' and more' if more else ''} | {seconds * 1000:.0f} | {leader.replace('|', '/')} |")
    if "series" in f:
        text += ["", f"A series planned from the {f['series_from']:,} surveyed puzzles that are solved within the depth (`series plan --assume single`); the draft of its first lesson was written, and `lesson check` proves it:", ""]
        text += [f"{number}. {idea}, effort {effort}: {why}" for number, (idea, effort, why) in enumerate(f["series"], 1)]
    return "\n".join(text) + "\n"


def main():
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("program")
    parser.add_argument("count", type=int)
    parser.add_argument("folder")
    parser.add_argument("--survey", type=int, default=500)
    parser.add_argument("--depth", default="balances")
    parser.add_argument("--lines")
    parser.add_argument("--report")
    parser.add_argument("--series-only", action="store_true", help="FOLDER holds a finished trial: plan a series from it again")
    words = parser.parse_args()
    if words.report:
        with open(words.report, encoding="utf-8") as file:
            if around(file.read()) is None:
                sys.exit(f"shelf_trial: {words.report} has no {BEGIN} and {END} behind it")
    trial = Trial(os.path.abspath(words.program), words.folder, words.count)
    f = trial.figures
    if words.series_only:
        with open(trial.path("figures.json")) as file:
            f.update(json.load(file))
        trial.series()
        return tell(trial, words, f["lines"])
    f["repeats"], f["faults"] = trial.make_lines(words.count, words.lines)
    calm = trial.import_in_peace()
    lines = words.count + f["repeats"] + f["faults"]
    trial.must((calm["lines"], calm["new"], calm["faults"]) == (lines, words.count - (calm["repeats"] - f["repeats"]), f["faults"]), f"the import miscounted: {calm}")
    trial.must(calm["repeats"] >= f["repeats"], "repeats were not found")
    stormy = trial.import_with_kills(lines)
    trial.must(len(f["kills"]) == 2 and 0 < f["kills"][0] < f["kills"][1] < lines, f"the import was not killed twice on its way: {f['kills']}")
    f["digest"], f["digest_lines"] = trial.digest("calm.shelf")
    trial.must((f["digest"], f["digest_lines"]) == trial.digest("stormy.shelf"), "the killed import made another shelf")
    trial.must(stormy["new"] == calm["new"], "the killed import counted otherwise")
    f["depth"] = words.depth
    trial.survey(words.survey, words.depth)
    trial.ask()
    trial.series()
    f["lines"] = lines
    with open(trial.path("figures.json"), "w") as file:
        json.dump(f, file)
    tell(trial, words, lines)


def around(document):
    """What stands before and behind the measured part; nothing when the marks are not there."""
    before, begin, rest = document.partition(BEGIN)
    _, end, behind = rest.partition(END)
    return (before, behind) if begin and end else None


def tell(trial, words, lines):
    text = report(trial, words.count, lines)
    print(text, end="")
    if words.report:
        with open(words.report, "r+", encoding="utf-8") as file:
            before, behind = around(file.read())
            file.seek(0)
            file.truncate()
            file.write(f"{before}{BEGIN}\n\n{text}\n{END}{behind}")


main()
