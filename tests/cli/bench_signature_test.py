# SPDX-License-Identifier: Apache-2.0
"""The signature of the quick bench is the recorded one, whatever compiler and build made the program.
When behaviour was meant to change: put the new number into tests/golden/bench_signature.txt and say so in the commit."""

import os
import unittest

from program import SOURCE, Case, Run


class BenchSignatureTest(Case):
    def test_the_last_line_is_the_recorded_signature(self):
        with open(os.path.join(SOURCE, "tests/golden/bench_signature.txt")) as file:
            recorded = dict(line.split() for line in file.read().splitlines() if line and line[0] != "#")
        full = bool(os.environ.get("COUNTERPOISE_FULL_BENCH"))
        run = Run("bench", *([] if full else ["--quick"]))
        self.ends(run, 0, "time ")
        last = run.out.splitlines()[-1]
        self.assertRegex(last, r"^signature \d+$")
        self.assertEqual(last, "signature " + recorded["full" if full else "quick"])

    def test_every_technique_has_a_line(self):
        run = Run("bench", "--quick")
        for technique in ("balance", "hidden-single", "x-wing", "naked-pair"):
            self.assertRegex(run.out, rf"(?m)^{technique} +fired \d+, conclusions \d+$")


if __name__ == "__main__":
    unittest.main()
