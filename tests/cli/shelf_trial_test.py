# SPDX-License-Identifier: Apache-2.0
"""The trial of the shelf (tools/shelf_trial.py) with two thousand puzzles: imported in peace and with two kills, compared,
surveyed, searched. docs/shelf_trial.md has the figures of the same with a million."""

import os
import subprocess
import sys
import unittest

from program import BIN, SOURCE, Case


class ShelfTrialTest(Case):
    def test_two_thousand_puzzles(self):
        trial = os.path.join(SOURCE, "tools/shelf_trial.py")
        done = subprocess.run([sys.executable, trial, BIN, "2000", self.path("trial"), "--survey", "40", "--depth", "basics"], capture_output=True, text=True, timeout=280)
        self.assertEqual(done.returncode, 0, done.stdout + done.stderr)
        self.assertIn("2,006, of which 4 repeat an earlier puzzle in other clothes and 2 are no puzzles", done.stdout)
        self.assertIn("the two shelves | equal", done.stdout)


if __name__ == "__main__":
    unittest.main()
