# SPDX-License-Identifier: Apache-2.0
"""What the tests of the program share: starting it, reading its answers, the schemas."""

import json
import os
import subprocess
import tempfile
import unittest

BIN = os.environ["COUNTERPOISE_BIN"]
SOURCE = os.environ["COUNTERPOISE_SOURCE"]

# Our own puzzles: random_minimal_puzzle(shape, 1) of src/exact/random_grid.h.
FOUR = "..3.1......4.1.."
STUCK = "6........7.35...2.....14.........9.....9....435.1....2.6.3.1..7....9..6..452...1."  # 9x9, seed 1600
DEMO = next(line for line in open(os.path.join(SOURCE, "data/demo.txt")).read().split("\n") if line[:1] not in ("#", ""))
MANY = "...3..1....2...."  # a 4x4 grid with several solutions
NONE = "11.............."  # two 1s in a row


def published():
    """(name, puzzle, solution) of the 55 published puzzles; sources: tests/data/sources.md."""
    with open(os.path.join(SOURCE, "tests/data/puzzles.tsv")) as file:
        return [tuple(line.split("\t")[:3]) for line in file.read().split("\n") if line]


class Run:
    """One run of the program: exit code, standard output, standard error."""

    def __init__(self, *words, stdin="", cwd=None):
        if isinstance(stdin, str):
            stdin = stdin.encode()
        done = subprocess.run([BIN, *words], input=stdin, capture_output=True, cwd=cwd, timeout=120)
        self.code, self.out, self.err = done.returncode, done.stdout.decode(), done.stderr.decode()

    def json(self):
        return json.loads(self.out)

    def lines(self):
        return [json.loads(line) for line in self.out.splitlines()]


def said(*words):
    """What another program (a validator) says; it has to end well."""
    done = subprocess.run(words, capture_output=True, timeout=60)
    if done.returncode != 0:
        raise AssertionError(f"{words[0]} ended with {done.returncode}: {done.stderr.decode()[:500]}")
    return done.stdout.decode()


def tree(folder):
    """All files below a folder."""
    return sorted(os.path.relpath(os.path.join(at, name), folder) for at, _, names in os.walk(folder) for name in names)


def schema(name):
    """A schema of docs/formats/schema with the balance put in where it is referred to."""
    folder = os.path.join(SOURCE, "docs/formats/schema")

    def load(file):
        with open(os.path.join(folder, file)) as text:
            return json.load(text)

    def expand(part):
        if isinstance(part, list):
            return [expand(item) for item in part]
        if not isinstance(part, dict):
            return part
        part = {key: expand(value) for key, value in part.items()}
        if "$ref" in part:
            inner = expand(load(part.pop("$ref")))
            inner.pop("$schema")
            return {"allOf": [inner], **part}
        return part

    return expand(load(name + ".schema.json"))


class Case(unittest.TestCase):
    """A test case that knows the schemas."""

    def setUp(self):
        self._folder = tempfile.TemporaryDirectory()
        self.addCleanup(self._folder.cleanup)
        self.folder = self._folder.name

    def path(self, name, text=None):
        """A path in a fresh folder; with text, a file there."""
        path = os.path.join(self.folder, name)
        if text is not None:
            with open(path, "wb") as file:
                file.write(text if isinstance(text, bytes) else text.encode())
        return path

    def fits(self, answer, name):
        """The answer follows docs/formats/schema/<name>.schema.json."""
        try:
            import jsonschema
        except ImportError:
            self.fail("these tests need the Debian package python3-jsonschema")
        wanted = schema(name)
        jsonschema.Draft202012Validator.check_schema(wanted)
        faults = [f"{list(fault.absolute_path)}: {fault.message[:300]}" for fault in jsonschema.Draft202012Validator(wanted).iter_errors(answer)]
        self.assertEqual(faults, [], name)

    def ends(self, run, code, *said):
        """The run ended with this code and said these things on standard error."""
        self.assertEqual(run.code, code, run.out[:2000] + run.err[:2000])
        for text in said:
            self.assertIn(text, run.err)
