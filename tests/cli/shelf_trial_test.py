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
        begin, end = "<!-- measured -->", "<!-- end of what was measured -->"
        report = self.path("report.md", f"# Before\n\n{begin}\n\nearlier figures\n\n{end}\n\n# Behind\n")
        words = ["--survey", "40", "--depth", "basics", "--report", report]
        done = subprocess.run([sys.executable, trial, BIN, "2000", self.path("trial"), *words], capture_output=True, text=True, timeout=280)
        self.assertEqual(done.returncode, 0, done.stdout + done.stderr)
        self.assertIn("2,006, of which 4 repeat an earlier puzzle in other clothes and 2 are no puzzles", done.stdout)
        self.assertIn("the two shelves | equal", done.stdout)
        with open(report, encoding="utf-8") as file:
            self.assertEqual(file.read(), f"# Before\n\n{begin}\n\n{done.stdout}\n{end}\n\n# Behind\n")

    def test_a_document_without_marks_is_left_alone(self):
        trial, report = os.path.join(SOURCE, "tools/shelf_trial.py"), self.path("report.md", "# Before\n\n<!-- measured -->\n\n# Behind\n")
        done = subprocess.run([sys.executable, trial, BIN, "20", self.path("trial"), "--report", report], capture_output=True, text=True, timeout=60)
        self.assertIn("has no <!-- measured -->", done.stderr)
        self.assertFalse(os.path.exists(self.path("trial")))


if __name__ == "__main__":
    unittest.main()
