# SPDX-License-Identifier: Apache-2.0
"""Claims as a teacher meets them: the script with a slip, the corrected one, answers that follow their schemas, messages with
the place marked. Every certificate is replayed by tests/oracle/certificate_checker.py, which shares no code with the program."""

import json
import os
import subprocess
import sys
import unittest

from program import DEMO, FOUR, SOURCE, STUCK, Case, Run

SLIP = os.path.join(SOURCE, "data/claims_with_a_slip.txt")
RIGHT = os.path.join(SOURCE, "data/claims_all_proved.txt")
CHECKER = os.path.join(SOURCE, "tests/oracle/certificate_checker.py")


class ClaimsTest(Case):
    def replay(self, certificates):
        done = subprocess.run([sys.executable, CHECKER, "-"], input="".join(certificates), text=True, capture_output=True, timeout=120)
        self.assertEqual(done.stdout, f"{len(certificates)} certificates hold\n", done.stdout + done.stderr)

    def test_the_slip_is_named(self):
        run = Run("claims", SLIP, "--json")
        self.ends(run, 2)
        answer = run.json()
        self.fits(answer, "claims")
        self.assertEqual(len(answer["claims"]), 12)
        self.assertEqual(answer["first_not_implied"], 5)
        slip = answer["claims"][4]
        self.assertEqual(slip["verdict"], "open")
        # The digits shown break the claim: a 1 among the cells.
        self.assertIn(1, [each["digit"] for each in slip["counter"]])
        self.assertEqual([claim["verdict"] for claim in answer["claims"] if claim["number"] != 5], ["proved"] * 11)
        self.assertIn("number 5", answer["text"])

    def test_the_corrected_script_is_proved_and_replays(self):
        run = Run("claims", RIGHT, "--json")
        self.ends(run, 0)
        answer = run.json()
        self.fits(answer, "claims")
        self.assertEqual(answer["first_not_implied"], 0)
        self.assertEqual(len(answer["claims"]), 12)
        self.replay([claim["reason"]["certificate"] for claim in answer["claims"]])
        self.assertEqual([fact["name"] for fact in answer["claims"][0]["reason"]["facts"]], ["x"])

    def test_a_json_script(self):
        with open(RIGHT, encoding="utf-8") as file:
            lines = file.read().split("\n")
        as_list = self.path("list.json", json.dumps([line for line in lines if not line.startswith(("puzzle", "basics"))]))
        run = Run("claims", as_list, "--puzzle", DEMO, "--after-basics", "--json")
        self.ends(run, 0)
        self.assertEqual(len(run.json()["claims"]), 12)
        whole = self.path("whole.json", json.dumps({"puzzle": FOUR, "footing": "position", "claims": ["r1c1 = 2", "footing rules", "r1c1 = 2"]}))
        run = Run("claims", whole, "--json")
        self.ends(run, 2)
        self.assertEqual([claim["verdict"] for claim in run.json()["claims"]], ["open", "proved"])
        self.ends(Run("claims", self.path("bad.json", "[1]")), 64, "a claim is no text")

    def test_a_wrong_step_makes_later_ones_suspect(self):
        script = self.path("script.txt", f"puzzle {FOUR}\nr1c1 = 3\nfooting earlier\nr1c1 != 2\n")
        run = Run("claims", script, "--json")
        self.ends(run, 1)
        first, second = run.json()["claims"]
        self.fits(run.json(), "claims")
        self.assertEqual((first["verdict"], run.json()["first_not_implied"]), ("refuted", 1))
        self.assertEqual(second["rests_on_unproved"], [1])
        self.assertNotIn("solution", run.json())

    def test_verdicts_and_exit_codes(self):
        for words, code, verdict in ((["r1c1 = 2"], 0, "proved"), (["r1c1 = 4"], 1, "refuted"), (["r1c1 = 2", "--footing", "r1"], 2, "open")):
            run = Run("claim", FOUR, *words, "--json")
            self.ends(run, code)
            self.fits(run.json(), "claim")
            self.assertEqual(run.json()["verdict"], verdict)
            if "reason" in run.json():
                self.replay([run.json()["reason"]["certificate"]])

    def test_hard_positions(self):
        certificates = []
        for claim in ("r1c2 != 1", "r1c2 r1c3 hold 1,2", "exactly one 5 in b1", "if r1c2 = 1 then r2c2 != 1"):
            run = Run("claim", STUCK, claim, "--json")
            self.assertIn(run.code, (0, 1))
            self.fits(run.json(), "claim")
            if "reason" in run.json():
                certificates.append(run.json()["reason"]["certificate"])
        self.replay(certificates)

    def test_the_solution_only_for_the_asking(self):
        solution = Run("check", FOUR, "--json").json()["solution"]
        self.assertNotIn(solution, Run("claim", FOUR, "r1c1 = 4", "--json").out)
        self.assertEqual(Run("claim", FOUR, "r1c1 = 4", "--json", "--reveal").json()["solution"], solution)

    def test_nothing_more_than_the_cells_discussed(self):
        solution = Run("check", DEMO, "--json").json()["solution"]
        for claim in ("r7c2 = 1", "r6c9 = 9", "r5c7 in 1,2,3", "r3c4689 in 1,2"):
            for footing in ("rules", "r3, c9", "position"):
                run = Run("claim", DEMO, claim, "--footing", footing, "--json")
                answer = run.json()
                self.assertNotIn(solution, run.out)
                self.assertNotIn("solution", answer)
                shown = {each["cell"]: each["digit"] for each in answer.get("counter", [])}
                named = {"r3c4", "r3c6", "r3c8", "r3c9"} if "4689" in claim else {claim[:4]}
                self.assertLessEqual(set(shown), named)
                if answer["verdict"] == "refuted" and shown:
                    self.assertTrue(any(solution[9 * (int(cell[1]) - 1) + int(cell[3]) - 1] != str(digit) for cell, digit in shown.items()))

    def test_a_wrong_mark_is_reported(self):
        run = Run("claim", "13 4 3 1 / 3 1 2 4 / 1 2 4 3 / 4 3 1 2".replace("/", " "), "r1c1 = 2", "--json")
        self.assertIn(run.code, (0, 1, 2, 64))
        grid = "34 . 3 . 1 . . . . . . 4 . 1 . ."
        run = Run("claim", grid, "r1c1 = 2", "--json")
        self.fits(run.json(), "claim")
        self.assertEqual(run.json()["wrong_marks"], ["r1c1"])

    def test_messages(self):
        self.ends(Run("claim", FOUR, "r1c1 ="), 64, "--claim: a digit is wanted here", "  r1c1 =\n        ^")
        self.ends(Run("claim", FOUR, "r5c1 = 2"), 64, "there is no r5c1 on this grid", "  ^^^^", "go from 1 to 4")
        self.ends(Run("claim", FOUR, "let a = r1c1; a = 2"), 64, "'a' cannot be a name", "word of the language")
        self.ends(Run("claim", FOUR, "(" * 10000 + "r1c1 = 2" + ")" * 10000), 64, "the claim is too long")
        self.ends(Run("claim", FOUR, "(" * 1000 + "r1c1 = 2" + ")" * 1000), 64, "too many brackets within one another")
        self.ends(Run("claim", FOUR, "r1c1 = 2", "--footing", "r9"), 64, "--footing: 'r9' is no footing")
        script = self.path("script.txt", f"puzzle {FOUR}\nr1c1 = 2\nr1c1 == = 3\n")
        self.ends(Run("claims", script), 64, "script.txt:3:9:", "r1c1 == = 3")
        self.ends(Run("claims", self.path("none.txt", "r1c1 = 2\n")), 64, "the script names no puzzle")
        self.ends(Run("claims", self.path("none.txt")), 64, "none.txt")

    def test_the_checker_bites(self):
        certificate = Run("claim", FOUR, "r1c1 = 2", "--json").json()["reason"]["certificate"]
        self.replay([certificate])
        lines = certificate.split("\n")
        for number, line in enumerate(lines):
            if not line.startswith(("use", "clash", "fact")):
                continue
            done = subprocess.run([sys.executable, CHECKER, "-"], input="\n".join(lines[:number] + lines[number + 1:]), text=True, capture_output=True, timeout=60)
            self.assertEqual(done.returncode, 1, line)


if __name__ == "__main__":
    unittest.main()
