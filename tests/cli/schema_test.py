# SPDX-License-Identifier: Apache-2.0
"""Answers in JSON follow the documented schemas, and the schemas refuse what is wrong."""

import copy
import json
import os
import signal
import subprocess
import tempfile
import time
import unittest

from program import BIN, DEMO, SOURCE, STUCK, FOUR, MANY, NONE, Case, Run, published, tree

BASICS = [word for family in ("single", "locked", "subset", "fish") for word in ("--only", family)]


def catches(process, sign):
    """Has this process a handler of its own for the signal by now?"""
    with open(f"/proc/{process}/status") as status:
        caught = next(line.split()[1] for line in status if line.startswith("SigCgt"))
    return bool(int(caught, 16) >> (sign - 1) & 1)


class SchemaTest(Case):
    def test_check_on_the_published_puzzles(self):
        text = "".join(f"{name}\t{puzzle}\n" for name, puzzle, _ in published())
        run = Run("check", "-", "--json", stdin=text)
        self.ends(run, 0)
        answers = run.lines()
        self.assertEqual(len(answers), 55)
        for answer, (name, _, solution) in zip(answers, published()):
            self.fits(answer, "check")
            self.assertEqual((answer["name"], answer["solutions"], answer["solution"]), (name, "one", solution))

    def test_check_on_other_puzzles(self):
        for puzzle, code, solutions in ((FOUR, 0, "one"), (MANY, 1, "many"), (NONE, 1, "none")):
            run = Run("check", puzzle, "--json")
            self.ends(run, code)
            self.fits(run.json(), "check")
            self.assertEqual(run.json()["solutions"], solutions)

    def test_path_on_the_published_puzzles(self):
        text = "".join(f"{name}\t{puzzle}\n" for name, puzzle, _ in published())
        run = Run("path", "-", "--json", *BASICS, stdin=text)
        self.assertIn(run.code, (0, 2))
        self.assertEqual(len(run.lines()), 55)
        for answer, (_, puzzle, solution) in zip(run.lines(), published()):
            self.fits(answer, "path")
            grid = list(puzzle)
            for step in answer["steps"]:
                for placed in step["placements"]:
                    row, column = int(placed["cell"][1]) - 1, int(placed["cell"][3]) - 1
                    grid[9 * row + column] = str(placed["digit"])
                for gone in step["eliminations"]:
                    row, column = int(gone["cell"][1]) - 1, int(gone["cell"][3]) - 1
                    self.assertNotEqual(solution[9 * row + column], str(gone["digit"]))
            if answer["solved"]:
                self.assertEqual("".join(grid), solution)
            else:
                self.assertEqual("".join(grid), answer["stuck"]["position"])
                self.assertTrue(all(mine in (".", true) for mine, true in zip(grid, solution)))

    def test_path_with_balances(self):
        run = Run("path", STUCK, "--json", "--only", "balance", *BASICS)
        self.ends(run, 0)
        self.fits(run.json(), "path")
        self.assertEqual(sum(step["technique"] == "balance" for step in run.json()["steps"]), 1)

    def test_path_without_balances_is_stuck(self):
        run = Run("path", STUCK, "--json", *BASICS)
        self.ends(run, 2)
        self.fits(run.json(), "path")
        self.assertFalse(any(step["technique"] == "balance" for step in run.json()["steps"]))

    def test_path_of_an_impossible_puzzle(self):
        run = Run("path", NONE, "--json")
        self.ends(run, 1)
        self.fits(run.json(), "path")
        self.assertIn("holds 1 twice", run.json()["stuck"]["text"])

    def test_survey(self):
        for words in ([], ["--after-basics", "--limit", "1"], ["--after-basics", "--technique", "swordfish", "--technique", "single"]):
            run = Run("survey", STUCK, "--json", *words)
            self.ends(run, 0)
            self.fits(run.json(), "survey")
        self.assertEqual({entry["technique"] for entry in run.json()["close"]} & {"swordfish"}, {"swordfish"})
        self.fits(Run("survey", MANY, "--technique", "x-wing", "--json").json(), "survey")

    def test_needed(self):
        for puzzle, words, needed in ((STUCK, ["--technique", "naked-single"], "no"), (FOUR, ["--technique", "single"], "yes"),
                                      (FOUR, ["--technique", "fish", "--without", "single"], "open")):
            run = Run("needed", puzzle, "--json", *words)
            self.ends(run, 2 if needed == "open" else 0)
            self.fits(run.json(), "needed")
            self.assertEqual(run.json()["needed"], needed)

    def test_alternatives(self):
        balance = Run("survey", STUCK, "--after-basics", "--technique", "balance", "--json").json()["balances"][0]
        gone = balance["eliminations"][0]
        run = Run("alternatives", STUCK, "--after-basics", "--eliminate", f"{gone['cell']}={gone['digit']}", "--json")
        self.ends(run, 0)
        self.assertIn("balance", [step["technique"] for step in run.json()["alternatives"]])
        self.fits(run.json(), "alternatives")
        costs = [step["cost"] for step in run.json()["alternatives"]]
        self.assertEqual(costs, sorted(costs))
        run = Run("alternatives", STUCK, "--at-step", "999", "--eliminate", "r1c1=4", "--json")
        self.ends(run, 64)
        self.fits(run.json(), "error")

    def test_weigh_with_houses(self):
        for words in (["--left", "r1,r3", "--right", "c4,b3", "--after-basics"], ["--left", "r1,r2", "--right", "c1,c2"],
                      ["--left", "r2,r5,r8,c2,c5,c8", "--right", "b1,b3,b5,b7,b9", "--after-basics"],
                      ["--left", "2*r3,c1", "--right", "b1,b2,b4", "--level", "3"], ["--left", "r1"], ["--left", "", "--right", "c1,c2", "--why"], ["--left", ""],
                      ["--after-basics", "--left", "r1,r2", "--right", "b1,b2", "--why"], ["--left", "r1,r2", "--right", "c1", "--why", "--level", "2"]):
            run = Run("weigh", STUCK, "--json", *words)
            self.ends(run, 0)
            self.fits(run.json(), "weigh")

    def test_what_is_missing(self):
        for words, kind in ((["--left", ""], "no-houses"), (["--left", "r1,r2", "--right", "c1,c2", "--level", "2"], "slack")):
            run = Run("weigh", STUCK, "--json", *words)
            self.assertEqual(run.json()["missing"]["kind"], kind)
            self.assertNotIn("changes", run.json()["missing"])
        run = Run("weigh", STUCK, "--json", "--after-basics", "--left", "r1,r2", "--right", "b1,b2", "--why")
        self.assertGreater(len(run.json()["missing"]["changes"]), 0)

    def test_digits_hold_as_many_copies_as_said(self):
        # The solution, from check, has in the open cells of each remainder what the account allows.
        solution = Run("check", STUCK, "--json").json()["solution"]
        for words in (["--left", "r1,r3", "--right", "c4,b3"], ["--left", "r2,r5,r8", "--right", "c1,b1,b5"], ["--left", "c1,c2"], ["--left", "b1,b5,b9", "--right", "r2,r6"]):
            answer = Run("weigh", STUCK, "--json", *words).json()
            for entry in answer["digits"]:
                for pan in ("left", "right"):
                    held = [solution[(int(cell[1]) - 1) * 9 + int(cell[3]) - 1] for cell in answer["open_" + pan]]
                    copies = held.count(str(entry["digit"]))
                    self.assertTrue(entry[pan]["least"] <= copies <= entry[pan]["most"], (words, entry, copies))

    def test_weigh_without_houses(self):
        run = Run("weigh", STUCK, "--json", "--after-basics", "--limit", "5")
        self.ends(run, 0)
        answer = run.json()
        self.fits(answer, "weigh_all")
        self.assertIn("milliseconds", answer)
        self.assertEqual(len(answer["balances"]), 5)

    def test_weigh_on_other_shapes(self):
        run = Run("weigh", FOUR, "--json")
        self.ends(run, 0)
        self.fits(run.json(), "weigh_all")

    def test_lesson(self):
        run = Run("lesson", STUCK, "-o", self.path("lesson"), "--json")
        self.ends(run, 0)
        self.fits(run.json(), "lesson")

    def test_count(self):
        # 4x4: OEIS A107739; 6x6: OEIS A291187.
        for shape, grids in (("4x4", 288), ("6x6", 28200960)):
            run = Run("count", "--shape", shape, "--json")
            self.ends(run, 0)
            self.fits(run.json(), "count")
            self.assertEqual(run.json()["grids"], grids)

    def test_bench(self):
        run = Run("bench", "--quick", "--json")
        self.ends(run, 0, "time ")
        self.fits(run.json(), "bench")

    def test_errors(self):
        for words in (["check", "12x"], ["path", STUCK, "--without", "nothing"], ["count", "--shape", "9x9"],
                      ["weigh", STUCK, "--left", "r1", "--right", "x1"], ["check", "no-such-file.txt"], ["chekc"]):
            run = Run(*words, "--json")
            self.assertIn(run.code, (2, 64))
            self.fits(run.json(), "error")

    def test_schemas_bite(self):
        good = Run("path", STUCK, "--json", "--only", "balance", *BASICS).json()
        bad = copy.deepcopy(good)
        bad["steps"][0]["placements"][0]["cell"] = "r0c1"
        with self.assertRaises(AssertionError):
            self.fits(bad, "path")
        bad = copy.deepcopy(good)
        next(step for step in bad["steps"] if step["technique"] == "balance")["balance"]["extra"] = 1
        with self.assertRaises(AssertionError):
            self.fits(bad, "path")
        bad = copy.deepcopy(good)
        bad["solved"] = False
        with self.assertRaises(AssertionError):
            self.fits(bad, "path")

    def test_compose(self):
        for plan, puzzles in (("three_against_four", 2), ("four_against_four", 2), ("ring", 1)):
            words = ["compose", os.path.join(SOURCE, f"data/plans/{plan}.plan"), "--count", str(puzzles), "--json"]
            run = Run(*words)
            self.ends(run, 0)
            self.fits(run.json(), "compose")
            self.assertEqual(len(run.json()["puzzles"]), puzzles)
            self.assertNotIn("state", run.json())
            keys = [puzzle["clean"]["key"] for puzzle in run.json()["puzzles"]]
            self.assertEqual(keys, sorted(keys))
        self.assertEqual(run.out, Run(*words, "--threads", "3").out)

    def test_compose_goes_on_from_its_state(self):
        plan = os.path.join(SOURCE, "data/plans/four_against_four.plan")
        with tempfile.TemporaryDirectory() as folder:
            state = os.path.join(folder, "state")
            first = Run("compose", plan, "--most-tries", "64", "--state", state, "--json")
            self.ends(first, 2)
            whole = Run("compose", plan, "--count", "4", "--state", state, "--json")
            self.ends(whole, 0)
            self.assertEqual(whole.out, Run("compose", plan, "--count", "4", "--json").out)
            other = os.path.join(SOURCE, "data/plans/ring.plan")
            self.ends(Run("compose", other, "--state", state), 64)
            self.ends(Run("compose", plan, "--state", state, "--seed", "4"), 64, "seed 1, not to 4")
            self.ends(Run("compose", plan, "--count", "4", "--state", state, "--seed", "1"), 0)
            with open(state, "w", encoding="utf-8") as file:
                file.write("{}")
            self.ends(Run("compose", plan, "--state", state), 64)

    def test_compose_keeps_its_state_on_ctrl_c(self):
        plan, state = os.path.join(SOURCE, "data/plans/four_against_four.plan"), self.path("state")
        hears_ctrl_c = lambda: signal.signal(signal.SIGINT, signal.SIG_DFL)  # also when these tests run in the background
        child = subprocess.Popen([BIN, "compose", plan, "--count", "1000", "--threads", "1", "--state", state, "--json"], stdout=subprocess.PIPE, preexec_fn=hears_ctrl_c)
        while child.poll() is None and not catches(child.pid, signal.SIGINT):
            time.sleep(0.01)
        child.send_signal(signal.SIGINT)
        said = child.communicate(timeout=60)[0].decode()
        self.assertEqual(child.returncode, 2, said)
        self.assertEqual(tree(self.folder), ["state"])
        tried = json.loads(said)["yield"]["tried"]
        more = Run("compose", plan, "--count", "1000", "--most-tries", str(tried + 64), "--state", state, "--json")
        self.assertEqual(more.json()["yield"]["tried"], tried + 64)

    def test_judge_improve_and_vary(self):
        plan = os.path.join(SOURCE, "data/plans/ring.plan")
        demo = os.path.join(SOURCE, "data/demo.txt")
        for puzzle, code in ((demo, 0), (STUCK, 1)):
            run = Run("judge", puzzle, "--limit", "0", "--plan", plan, "--json")
            self.ends(run, code)
            self.fits(run.json(), "judge")
            self.assertEqual(run.json()["meets"], code == 0)
        # Without its last given the bundled puzzle has many solutions, and to add it again is a change that helps.
        given = max(i for i, character in enumerate(DEMO) if character != ".")
        run = Run("improve", DEMO[:given] + "." + DEMO[given + 1:], "--plan", plan, "--limit", "1", "--most-changes", "1", "--json")
        self.ends(run, 0)
        self.fits(run.json(), "improve")
        self.assertGreater(run.json()["changes"][0]["points_met"], run.json()["points_met"])
        for command in ("judge", "improve"):
            self.ends(Run(command, demo, "--plan", plan, "--most-changes", "3"), 64, "--most-changes is 3", "1 to 2")
        run = Run("vary", demo, "--left", "c1,c2,c8,c9", "--right", "r3,r7,b4,b6", "--count", "2", "--json")
        self.ends(run, 0)
        self.fits(run.json(), "vary")

    def test_plan(self):
        run = Run("plan", os.path.join(SOURCE, "data/plans/ring.plan"), "--json")
        self.ends(run, 0)
        self.fits(run.json(), "plan_check")
        again = Run("plan", "-", "--json", stdin=run.json()["plan"])
        self.assertEqual(run.json(), again.json())
        wrong = Run("plan", "-", "--json", stdin="counterpoise plan 1\nidea: any balance\nlook: left all\n")
        self.ends(wrong, 64)
        self.fits(wrong.json(), "error")


if __name__ == "__main__":
    unittest.main()
