# SPDX-License-Identifier: Apache-2.0
"""What a person types wrongly gets a message with the place and a hint, on standard error, and exit code 64."""

import os
import stat
import unittest

from program import BIN, STUCK, FOUR, Case, Run

COMMANDS = ("desk", "demo", "lesson", "weigh", "path", "survey", "needed", "alternatives", "claim", "claims", "check", "count", "bench", "shelf")


class UsageTest(Case):
    def test_help_of_every_command_has_two_examples(self):
        run = Run("--help")
        self.ends(run, 0)
        for command in COMMANDS:
            self.assertIn(command, run.out)
            help_text = Run(command, "--help")
            self.ends(help_text, 0)
            examples = [line for line in help_text.out.splitlines() if line.strip().startswith("counterpoise " + command)]
            self.assertGreaterEqual(len(examples), 2, command)

    def test_version(self):
        run = Run("--version")
        self.ends(run, 0)
        self.assertRegex(run.out, r"^counterpoise \d+\.\d+\.\d+\n$")

    def test_no_command(self):
        self.ends(Run(), 64, "no command given", "hint: the commands are: demo, lesson, series, weigh")

    def test_unknown_command(self):
        self.ends(Run("chekc"), 64, "'chekc' is not a command", "hint: did you mean check?")
        self.ends(Run("qqqqqq"), 64, "hint: the commands are: demo")

    def test_unknown_option(self):
        self.ends(Run("check", FOUR, "--jsn"), 64, "there is no option --jsn for check", "hint: did you mean --json?")
        self.ends(Run("weigh", FOUR, "--leftt=r1"), 64, "there is no option --leftt", "--left")

    def test_missing_arguments(self):
        self.ends(Run("check"), 64, "PUZZLE is required", "check --help")
        self.ends(Run("count"), 64, "--shape", "count --help")
        self.ends(Run("lesson", FOUR), 64, "--output is required")
        self.ends(Run("weigh", FOUR, "--left"), 64, "--left", "hint: ")

    def test_too_many_words(self):
        self.ends(Run("check", "12..", "34.."), 64, "'34..' is one word too many", "quotes")

    def test_options_that_exclude_one_another(self):
        self.ends(Run("weigh", FOUR, "--left", "r1", "--right", "c1", "--limit", "3"), 64, "--limit")
        self.ends(Run("weigh", FOUR, "--right", "c1", "--most-houses", "3"), 64, "--most-houses")
        self.ends(Run("weigh", FOUR, "--level", "3"), 64, "--level")
        self.ends(Run("weigh", FOUR, "--why"), 64, "--why")

    def test_numbers_out_of_range(self):
        self.ends(Run("path", FOUR, "--max-slack", "9"), 64, "--max-slack is 9", "0 to 2")
        self.ends(Run("path", FOUR, "--max-slack", "many"), 64, "many", "hint: ")
        self.ends(Run("weigh", FOUR, "--limit", "-1"), 64, "limit", "hint: ")
        self.ends(Run("weigh", FOUR, "--most-houses", "100"), 64, "--most-houses is 100", "0 to 99")

    def test_json_errors_are_on_standard_output_too(self):
        run = Run("check", FOUR, "--jsn", "--json")
        self.ends(run, 64, "--jsn")
        self.assertEqual(run.json()["error"]["code"], "bad-argument")

    def test_a_wrong_character_is_pointed_at(self):
        run = Run("check", "1...\n3..x\n....\n....\n")
        self.ends(run, 64, "\n  3..x\n     ^\n", "hint: ")
        place = Run("check", "1...\n3..x\n....\n....\n", "--json").json()["error"]["where"]
        self.assertEqual(place, {"field": "puzzle", "line": 2, "column": 4, "offset": 8, "length": 1})

    def test_a_wrong_length_is_counted(self):
        self.ends(Run("check", STUCK[:-1]), 64, "80 cells, 1 too few for 9x9")
        self.ends(Run("check", STUCK + "1"), 64, "82 cells, 1 too many for 9x9")

    def test_an_unknown_house_is_pointed_at(self):
        self.ends(Run("weigh", STUCK, "--left", "r1,r2", "--right", "c1,c12"), 64, "--right: 'c12' is not a house", "\n  c1,c12\n     ^^^\n", "b1 to b9")

    def test_pans_that_say_nothing(self):
        self.ends(Run("lesson", STUCK, "-o", self.path("x"), "--left", "r1,c1", "--right", "c1,r1"), 64, "the same houses")
        self.ends(Run("weigh", STUCK, "--left", "0*r1", "--right", "c1"), 64, "factor")

    def test_weights_are_bounded(self):
        self.ends(Run("weigh", STUCK, "--left", "999999*r1", "--right", "c1"), 64, "'999999*r1' has no usable factor", "1 to 99")
        self.ends(Run("weigh", STUCK, "--left", "r1", "--right", "60*c1,40*c2"), 64, "--right: the pan holds more than 99 houses", "\n  60*c1,40*c2\n        ^^^^^\n", "hint: ")
        self.ends(Run("weigh", STUCK, "--left", "99*r1", "--right", "50*c1,49*c2"), 0)

    def test_a_pan_may_be_empty(self):
        run = Run("weigh", STUCK, "--left", "r1", "--json")
        self.ends(run, 0)
        self.assertEqual((run.json()["left"], run.json()["right"], run.json()["surplus"]), (["r1"], [], 1))
        run = Run("weigh", STUCK, "--right", "c1,c2", "--json")
        self.assertEqual((run.json()["left"], run.json()["right"], run.json()["surplus"]), ([], ["c1", "c2"], -2))
        run = Run("weigh", STUCK, "--left", "", "--right", "", "--json")
        self.ends(run, 0)
        self.assertEqual(run.json()["missing"]["kind"], "no-houses")
        run = Run("weigh", STUCK, "--left", "r1,c1", "--right", "c1,r1")
        self.ends(run, 0)
        self.assertIn("everything cancels", run.out)

    def test_an_unknown_technique(self):
        self.ends(Run("path", STUCK, "--without", "xwing"), 64, "'xwing' is not a technique", "x-wing?")
        self.ends(Run("path", STUCK, "--without", "balances"), 64, "hint: did you mean balance?")

    def test_an_unknown_shape(self):
        self.ends(Run("count", "--shape", "4x5"), 64, "'4x5' is not a shape", "4x4")
        self.ends(Run("count", "--shape", "9x9"), 2, "too many 9x9 grids")

    def test_without_takes_one_name_and_repeats(self):
        run = Run("path", "--without", "naked-single", "--without", "hidden-single", "--without", "full-house", FOUR, "--json")
        self.ends(run, 2)
        self.assertFalse(run.json()["solved"])

    def test_files_that_cannot_be_read(self):
        self.ends(Run("check", "nowhere.txt"), 64, "there is no file 'nowhere.txt'")
        self.ends(Run("check", self.folder), 64, "it is a folder")
        self.ends(Run("check", self.path("empty.txt", "")), 64, "holds no puzzle")
        self.ends(Run("check", self.path("comments.txt", "# nothing\n\n")), 64, "holds no puzzle")
        locked = self.path("locked.txt", FOUR)
        os.chmod(locked, 0)
        if not os.access(locked, os.R_OK):  # root may read everything
            self.ends(Run("check", locked), 64, "cannot read")
        os.chmod(locked, stat.S_IRUSR)

    def test_a_megabyte_of_rubbish(self):
        rubbish = bytes((i * i * 31 + i * 7 + (i >> 8)) % 256 for i in range(1_000_000))
        run = Run("check", self.path("rubbish", rubbish))
        self.ends(run, 64, "hint: ")
        self.assertLess(len(run.err), 2000)
        self.ends(Run("check", self.path("long", b"1" * 1_000_000)), 64, "too long")
        self.ends(Run("check", "-", stdin=b"1" * 1_000_000 + b"\n" + FOUR.encode()), 64, "too long")
        self.ends(Run("check", "/dev/zero"), 64, "too long")

    def test_a_reader_that_goes_away(self):
        text = "\n".join([STUCK] * 3000)
        self.path("many.txt", text)
        code = os.system(f"cd '{self.folder}' && '{BIN}' check many.txt --json 2>err.txt | head -n 1 >out.txt")
        self.assertEqual(code, 0)
        with open(self.path("err.txt")) as err:
            self.assertEqual(err.read(), "")

    def test_a_full_disk(self):
        if not os.path.exists("/dev/full"):
            self.skipTest("no /dev/full here")
        code = os.system(f"'{BIN}' check {FOUR} >/dev/full 2>'{self.path('err.txt')}'")
        self.assertEqual(os.waitstatus_to_exitcode(code), 64)
        with open(self.path("err.txt")) as err:
            self.assertIn("cannot be written", err.read())


if __name__ == "__main__":
    unittest.main()
