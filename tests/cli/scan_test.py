# SPDX-License-Identifier: Apache-2.0
"""scan: lines in the order of the input, nothing lost when it is killed, the same lines from any number of threads or ranks."""

import gzip
import json
import os
import shutil
import signal
import subprocess
import time
import unittest

from program import BIN, STUCK, Case, Run, published

RANKS = os.path.join(os.path.dirname(BIN), "counterpoise_ranks")
CAN_RUN_RANKS = os.path.exists(RANKS) and shutil.which("mpirun") is not None
PUZZLES = [puzzle for _, puzzle, _ in published()]


def renamed(puzzle, shift):
    """The same puzzle with other digits: another puzzle for a scan, the same form."""
    return "".join(str((int(digit) - 1 + shift) % 9 + 1) if digit.isdigit() and digit != "0" else digit for digit in puzzle)


def collection(copies):
    lines = ["puzzle,source", "# a note", ""]
    for shift in range(copies):
        lines += [f"{renamed(puzzle, shift)},ours" for puzzle in PUZZLES]
        lines += ["not a puzzle,ours"]
    return "\n".join(lines) + "\n"


def ranked(count, *words):
    surroundings = {**os.environ, "OMPI_ALLOW_RUN_AS_ROOT": "1", "OMPI_ALLOW_RUN_AS_ROOT_CONFIRM": "1"}
    return subprocess.Popen(["mpirun", "--oversubscribe", "-n", str(count), BIN, "scan", *words, "--ranks"], env=surroundings,
                            stdout=subprocess.PIPE, stderr=subprocess.STDOUT, start_new_session=True)


def children_of(process):
    """The ids of the ranks below mpirun, by their rank."""
    found = {}
    for entry in os.listdir("/proc"):
        try:
            with open(f"/proc/{entry}/stat") as stat, open(f"/proc/{entry}/environ", "rb") as environ:
                parent = int(stat.read().rsplit(")", 1)[1].split()[1])
                words = environ.read().split(b"\0")
        except (OSError, ValueError, IndexError):
            continue
        own = [word for word in words if word.startswith(b"OMPI_COMM_WORLD_RANK=")]
        if parent == process.pid and own:
            found[int(own[0].split(b"=")[1])] = int(entry)
    return found


class NothingForTheBasics(Case):
    def test_a_path_without_a_step_is_told_where_no_single_is_left(self):
        """Counted here without the program: no open cell has one candidate, no digit one place in a house."""
        puzzle = next(puzzle for name, puzzle, _ in published() if name == "gecode17")
        houses = [[9 * r + c for c in range(9)] for r in range(9)] + [[9 * r + c for r in range(9)] for c in range(9)]
        houses += [[27 * band + 3 * stack + 9 * r + c for r in range(3) for c in range(3)] for band in range(3) for stack in range(3)]
        left = {cell: set("123456789") - {puzzle[other] for house in houses if cell in house for other in house} for cell in range(81) if puzzle[cell] == "."}
        self.assertTrue(all(len(digits) > 1 for digits in left.values()))
        for house in houses:
            for digit in "123456789":
                self.assertNotEqual(sum(digit in left.get(cell, ()) for cell in house), 1)
        run = subprocess.run([BIN, "scan", "-", "--depth", "basics"], input=puzzle + "\n", capture_output=True, text=True, check=True)
        record = json.loads(run.stdout)
        self.assertEqual((record["path"]["end"], record["path"]["steps"], record["path"]["techniques"]), ("stuck", 0, []))
        self.assertEqual(record["open_after_basics"], len(left))


class ScanTest(Case):
    def scanned(self, *words, code=0):
        run = Run("scan", *words)
        self.ends(run, code)
        return run

    def wait_for_place(self, out, process, lines=20):
        """Until some lines are written and the job is not done."""
        for _ in range(600):
            if process.poll() is not None:
                self.fail("the scan was over before it could be disturbed: " + (process.stdout.read().decode() if process.stdout else ""))
            if os.path.exists(out + ".place"):
                with open(out + ".place") as file:
                    count = [line for line in file if line.startswith("count ")]
                if count and int(count[0].split()[1]) >= lines:
                    return
            time.sleep(0.02)
        self.fail("the scan made no progress")

    def test_lines_follow_the_input_and_faults_stop_nothing(self):
        run = self.scanned(self.path("all.csv", collection(2)), "--depth", "form")
        lines = run.lines()
        self.assertEqual(len(lines), 2 * (len(PUZZLES) + 1))
        self.assertEqual([line["line"] for line in lines], list(range(4, 4 + len(lines))))
        for line in lines:
            self.fits(line, "scan")
        faults = [line["line"] for line in lines if "error" in line]
        self.assertEqual(faults, [4 + len(PUZZLES), 4 + 2 * len(PUZZLES) + 1])
        first, second = lines[:len(PUZZLES)], lines[len(PUZZLES) + 1:-1]
        self.assertEqual([line["canonical"] for line in first], [line["canonical"] for line in second])
        self.assertIn("2 lines that are none", run.err)

    def test_depth_balances_tells_path_needs_and_balances(self):
        lines = Run("scan", "-", "--depth", "balances", stdin="\n".join(PUZZLES[:6] + [STUCK]) + "\n").lines()
        for line in lines:
            self.fits(line, "scan")
        for line in lines:
            path = json.loads(Run("path", line["puzzle"], "--json", "--only", "single", "--only", "locked", "--only", "subset", "--only", "fish").out)
            if path["solved"]:
                self.assertEqual((line["path"]["end"], line["path"]["steps"]), ("solved", len(path["steps"])))
                self.assertEqual(line["balances"], [])
            else:
                self.assertTrue(line["open_after_basics"] > 0)
        self.assertTrue(any(line["balances"] for line in lines))

    def test_packed_input_and_any_number_of_threads_give_the_same_bytes(self):
        text = collection(1)
        plain = self.scanned(self.path("all.txt", text), "--depth", "basics", "--threads", "1").out
        packed = self.scanned(self.path("all.gz", gzip.compress(text.encode())), "--depth", "basics", "--threads", "3").out
        self.assertEqual(plain, packed)

    def test_a_killed_scan_goes_on_and_ends_equal(self):
        source = self.path("all.csv", collection(40))  # more than one piece of 64 KiB in each part
        whole = self.path("whole.jsonl")
        self.scanned(source, "--out", whole, "--depth", "basics")
        self.assertFalse(os.path.exists(whole + ".place"))
        out = self.path("killed.jsonl")
        slow = self.path("slow")
        os.mkfifo(slow)
        with open(source, "rb") as file:
            text = file.read()
        for ending in (signal.SIGKILL, signal.SIGTERM):
            words = [BIN, "scan", slow, "--out", out, "--depth", "basics", "--threads", "1"] + (["--resume"] if os.path.exists(out + ".place") else [])
            process = subprocess.Popen(words, stderr=subprocess.PIPE)
            with open(slow, "wb", buffering=0) as pipe:
                pipe.write(text[:len(text) // 2 if ending == signal.SIGKILL else 3 * len(text) // 4])
                time.sleep(1.5)  # a place is noted once a second
                self.assertIsNone(process.poll())
                process.send_signal(ending)
                if ending == signal.SIGKILL:
                    process.wait(timeout=20)
            process.wait(timeout=20)
            process.stderr.close()
            self.assertTrue(os.path.exists(out + ".place"))
        refused = Run("scan", source, "--out", out, "--depth", "basics")
        self.ends(refused, 64)
        self.assertIn("unfinished", refused.err)
        other = Run("scan", source, "--out", out, "--depth", "form", "--resume")
        self.ends(other, 64)
        process = subprocess.Popen([BIN, "scan", slow, "--out", out, "--depth", "basics", "--resume"], stderr=subprocess.PIPE)
        with open(slow, "wb") as pipe:
            pipe.write(text)
        said = process.communicate(timeout=60)[1].decode()
        self.assertEqual(process.returncode, 0, said)
        self.assertFalse(os.path.exists(out + ".place"))
        with open(whole, "rb") as one, open(out, "rb") as two:
            self.assertEqual(one.read(), two.read())

    def test_a_changed_input_is_noticed(self):
        source = self.path("all.txt", "\n".join(PUZZLES * 2) + "\n")
        out = self.path("out.jsonl", "")
        self.path("out.jsonl.place", f"counterpoise scan 1\ninput {source}\ndepth form\nplace 82 1 12345\nbytes 0\ncount 1 0\n")
        run = Run("scan", source, "--out", out, "--depth", "form", "--resume")
        self.ends(run, 64)

    def test_nothing_is_written_over_unasked(self):
        text = "\n".join(PUZZLES) + "\n"
        source = self.path("all.txt", text)
        link = self.path("link.txt")
        os.symlink(source, link)

        def held(name):
            with open(name) as file:
                return file.read()

        for out in (source, link):
            for words in ([], ["--replace"]):
                self.ends(Run("scan", source, "--depth", "form", "--out", out, *words), 64, "is the input of the scan")
        with open(source, "rb") as stdin:
            self.assertEqual(subprocess.run([BIN, "scan", "-", "--out", source, "--replace"], stdin=stdin, capture_output=True).returncode, 64)
        self.assertEqual(held(source), text)
        self.assertFalse(os.path.exists(source + ".place"))
        precious = self.path("precious.txt", "mine\n")
        refused = Run("scan", source, "--depth", "form", "--out", precious)
        self.ends(refused, 64, "there is a file")
        self.assertIn("--replace", refused.err)
        self.assertEqual(held(precious), "mine\n")
        self.scanned(source, "--depth", "form", "--out", precious, "--replace")
        records = held(precious)
        self.assertEqual(len(records.splitlines()), len(PUZZLES))
        self.ends(Run("scan", source, "--depth", "form", "--out", precious), 64)  # its own result, too
        self.ends(Run("scan", source, "--depth", "form", "--out", precious, "--replace", "--resume"), 64)
        self.assertEqual(held(precious), records)
        self.path("precious.txt.place", f"counterpoise scan 1\ninput {source}\ndepth form\nplace 0 0 0\nbytes 0\ncount 0 0\n")
        self.scanned(source, "--depth", "form", "--out", precious, "--replace")  # begun again, not gone on with
        self.assertEqual(held(precious), records)
        self.assertFalse(os.path.exists(precious + ".place"))

    def test_a_portrait_is_a_page_and_replaces_nothing_unasked(self):
        records = self.path("records.jsonl", Run("scan", "-", "--depth", "basics", stdin=PUZZLES[0] + "\n").out)
        drawing = self.path("x.svg")
        self.ends(Run("portrait", records, "-o", drawing), 64, "no name for a page")
        self.assertFalse(os.path.exists(drawing))
        page, figures = self.path("mine.html", "mine"), self.path("figures")
        self.ends(Run("portrait", records, "-o", page, "--figures", figures), 64, "--replace")
        with open(page) as file:
            self.assertEqual(file.read(), "mine")
        self.ends(Run("portrait", records, "-o", page, "--figures", figures, "--replace"), 0)
        fresh = self.path("fresh.HTM")
        self.ends(Run("portrait", records, "-o", fresh, "--figures", figures), 64, "there is a file")  # a figure
        self.assertFalse(os.path.exists(fresh))
        self.ends(Run("portrait", records, "-o", fresh), 0)

    def test_one_is_one(self):
        run = Run("scan", "-", "--depth", "form", stdin=PUZZLES[0] + "\nnone\n")
        self.assertIn("1 puzzle, 1 line that is none,", run.err)
        self.assertIn("the puzzle has 1 cell, ", Run("scan", "-", "--depth", "form", stdin="1\n").out)

    def test_what_excludes_one_another(self):
        self.ends(Run("scan", "-", "--depth", "deep"), 64)
        self.ends(Run("scan", "-", "--needed"), 64)
        self.ends(Run("scan", "-", "--resume"), 64)
        self.ends(Run("scan", "-", "--threads", "-1"), 64)
        self.ends(Run("scan", self.path("absent.txt")), 64)

    def test_lines_that_can_not_be_written_end_with_64_as_the_help_says(self):
        self.assertIn("64: bad input, or the lines can not be written", Run("scan", "--help").out)
        self.ends(Run("scan", "-", "--out", self.path("absent/out.jsonl"), stdin=STUCK + "\n"), 64, "cannot write")
        self.assertIn("64: bad input, or a file can not be written", Run("portrait", "--help").out)
        records = self.path("records.jsonl", Run("scan", "-", "--depth", "form", stdin=STUCK + "\n").out)
        self.ends(Run("portrait", records, "-o", self.path("absent/portrait.html")), 64)

    def test_a_name_that_no_file_can_have_is_refused(self):
        for words in ([], ["--resume"]):
            self.ends(Run("scan", "-", "--out", self.path("x" * 300), *words, stdin=STUCK + "\n"), 64, "cannot write")

    @unittest.skipUnless(CAN_RUN_RANKS, "MPI is not installed (libopenmpi-dev, openmpi-bin), so ranks are not tested")
    def test_ranks_end_with_64_as_well(self):
        process = ranked(1, self.path("one.txt", STUCK + "\n"), "--out", self.path("absent/out.jsonl"), "--depth", "form")
        said = process.communicate(timeout=100)[0].decode()
        self.assertEqual(process.returncode, 64, said)
        self.assertIn("cannot write", said)

    @unittest.skipUnless(CAN_RUN_RANKS, "MPI is not installed (libopenmpi-dev, openmpi-bin), so ranks are not tested")
    def test_ranks_give_the_same_bytes(self):
        source = self.path("all.csv", collection(2))
        self.scanned(source, "--out", self.path("threads.jsonl"), "--depth", "basics")
        for ranks in (1, 4):
            out = self.path(f"ranks-{ranks}.jsonl")
            process = ranked(ranks, source, "--out", out, "--depth", "basics")
            said = process.communicate(timeout=100)[0].decode()
            self.assertEqual(process.returncode, 0, said)
            self.assertIn(f"{ranks} ranks", said)
            with open(out) as one, open(self.path("threads.jsonl")) as two:
                self.assertEqual(one.read(), two.read())

    @unittest.skipUnless(CAN_RUN_RANKS, "MPI is not installed (libopenmpi-dev, openmpi-bin), so ranks are not tested")
    def test_a_rank_that_falls_silent_loses_its_blocks_to_others(self):
        source = self.path("all.csv", collection(90))
        self.scanned(source, "--out", self.path("threads.jsonl"), "--depth", "basics")
        out = self.path("ranks.jsonl")
        process = ranked(3, source, "--out", out, "--depth", "basics", "--patience", "3")
        try:
            self.wait_for_place(out, process)
            os.kill(children_of(process)[2], signal.SIGSTOP)
            said = process.communicate(timeout=100)[0].decode()
        finally:
            if process.poll() is None:
                os.killpg(process.pid, signal.SIGKILL)
        with open(out) as one, open(self.path("threads.jsonl")) as two:
            self.assertEqual(one.read(), two.read(), said)
        self.assertIn("rank 2 does not answer; lines", said)

    @unittest.skipUnless(CAN_RUN_RANKS, "MPI is not installed (libopenmpi-dev, openmpi-bin), so ranks are not tested")
    def test_a_rank_that_dies_ends_the_job_and_resume_deals_the_rest(self):
        source = self.path("all.csv", collection(90))
        self.scanned(source, "--out", self.path("threads.jsonl"), "--depth", "basics")
        out = self.path("ranks.jsonl")
        process = ranked(3, source, "--out", out, "--depth", "basics")
        self.wait_for_place(out, process)
        os.kill(children_of(process)[1], signal.SIGKILL)
        said = process.communicate(timeout=100)[0].decode()
        self.assertNotEqual(process.returncode, 0, said)
        self.assertTrue(os.path.exists(out + ".place"))
        process = ranked(3, source, "--out", out, "--depth", "basics", "--resume")
        said = process.communicate(timeout=100)[0].decode()
        self.assertEqual(process.returncode, 0, said)
        self.assertIn("going on after line", said)
        with open(out) as one, open(self.path("threads.jsonl")) as two:
            self.assertEqual(one.read(), two.read())


if __name__ == "__main__":
    unittest.main()
