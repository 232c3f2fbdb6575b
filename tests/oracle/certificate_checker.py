#!/usr/bin/env python3
# SPDX-License-Identifier: Apache-2.0
"""Checks certificates of claims (docs/formats/certificate.md). Stands alone: shares nothing with the program.

    certificate_checker.py [--marks GRID] FILE...     '-' reads standard input; a file may hold many certificates

With --marks the marks among the facts are compared with a grid of candidates: one word a cell, '.' for all digits,
digits otherwise. Exit code 0: every certificate holds; 1: one does not; 64: it cannot be read.
"""
import re
import sys

DIGITS = "123456789ABCDEFG"


class Fault(Exception):
    """The certificate does not hold."""


class Grid:
    def __init__(self, side, box_rows, box_columns):
        if side != box_rows * box_columns or not 0 < side <= 16:
            raise Fault("no such shape")
        self.side = side
        self.cells = [(row, column) for row in range(1, side + 1) for column in range(1, side + 1)]
        self.houses = {}
        for number in range(1, side + 1):
            self.houses[f"r{number}"] = [cell for cell in self.cells if cell[0] == number]
            self.houses[f"c{number}"] = [cell for cell in self.cells if cell[1] == number]
        for row, column in self.cells:
            box = (row - 1) // box_rows * box_rows + (column - 1) // box_columns + 1
            self.houses.setdefault(f"b{box}", []).append((row, column))

    def cell(self, name):
        match = re.fullmatch(r"r(\d+)c(\d+)", name)
        cell = (int(match[1]), int(match[2])) if match else None
        if cell not in self.cells:
            raise Fault(f"no cell {name}")
        return cell

    def candidate(self, text):
        """'r3c4=5' as (3, 4, 5); 'o2' as an option."""
        if re.fullmatch(r"o\d+", text):
            return ("option", int(text[1:]))
        name, _, digit = text.partition("=")
        if digit not in DIGITS[:self.side] or len(digit) != 1:
            raise Fault(f"no candidate {text}")
        return (*self.cell(name), DIGITS.index(digit) + 1)

    def cell_row(self, name):
        return ({(*self.cell(name), digit): 1 for digit in range(1, self.side + 1)}, 1, True)

    def weighed(self, weights):
        """For each digit: how often it stands in the houses, by weight."""
        rows = []
        for digit in range(1, self.side + 1):
            row = {}
            for weight, house in weights:
                if house not in self.houses:
                    raise Fault(f"no house {house}")
                for cell in self.houses[house]:
                    row[(*cell, digit)] = row.get((*cell, digit), 0) + weight
            rows.append((row, sum(weight for weight, _ in weights), True))
        return rows


class Certificate:
    def __init__(self, lines, marks):
        self.lines, self.at, self.marks = lines, 0, marks
        self.options, self.facts, self.lemmas, self.denial = 0, [], [], None

    def line(self):
        if self.at >= len(self.lines):
            raise Fault("it stops too early")
        self.at += 1
        return self.lines[self.at - 1].strip()

    # ---- formulas: a row is (factors by variable, bound, exact?) ----

    def formula(self, text):
        words = re.findall(r"[()\[\]]|[^\s()\[\]]+", text)
        tree, rest = self.tree(words)
        if rest:
            raise Fault("a formula goes on after its end")
        rows = []
        self.flatten(tree, None, rows)
        return rows

    def tree(self, words):
        if words[:1] == ["["]:
            end = words.index("]")
            *terms, sign, bound = words[1:end]
            row = {}
            for factor, name in zip(terms[::2], terms[1::2]):
                variable = self.grid.candidate(name)
                row[variable] = row.get(variable, 0) + int(factor)
            if sign not in ("=", ">=") or len(terms) % 2:
                raise Fault("a row cannot be read")
            return ("row", (row, int(bound), sign == "=")), words[end + 1:]
        if words[:1] != ["("] or words[1] not in ("all", "any"):
            raise Fault("a formula cannot be read")
        parts, rest = [], words[2:]
        while rest[:1] != [")"]:
            part, rest = self.tree(rest)
            parts.append(part)
        return (words[1], parts), rest[1:]

    def flatten(self, tree, option, rows):
        kind, content = tree
        if kind == "row":
            return self.guarded(content, option, rows)
        options = [option] * len(content)
        if kind == "any":
            options = [("option", self.options + i + 1) for i in range(len(content))]
            self.options += len(content)
            self.guarded(({each: 1 for each in options}, 1, False), option, rows)
        for part, each in zip(content, options):
            self.flatten(part, each, rows)

    @staticmethod
    def guarded(row, option, rows):
        """With an option the row holds only when the option is true."""
        if option is None:
            rows.append(row)
            return
        factors, bound, exact = row
        for sign in (1, -1) if exact else (1,):
            signed = {variable: sign * factor for variable, factor in factors.items()}
            smallest = sum(min(factor, 0) for factor in signed.values())
            signed[option] = smallest - sign * bound
            rows.append((signed, smallest, False))

    # ---- the head ----

    def read_fact(self, number, kind, rest):
        if number != len(self.facts) + 1:
            raise Fault("the facts are not numbered in order")
        words = rest.split()
        if kind == "house":
            rows = self.grid.weighed([(1, words[0])])
        elif kind == "marks":
            cell = self.grid.cell(words[0])
            allowed = [] if words[1] == "-" else [DIGITS.index(digit) + 1 for digit in words[1]]
            if self.marks and not self.marks[cell] <= set(allowed):
                raise Fault(f"the grid has other marks in {words[0]}")
            rows = [({(*cell, digit): 1 for digit in range(1, self.grid.side + 1) if digit not in allowed}, 0, True)]
        elif kind == "balance":
            rows = self.grid.weighed([(int(weight), house) for weight, house in zip(words[1::2], words[2::2])])
        elif kind == "claim":
            rows = self.formula(rest.split(None, 1)[1])
        else:
            raise Fault(f"no fact is called {kind}")
        self.facts.append(rows)

    def check(self):
        if self.line() != "certificate 1":
            raise Fault("it is no certificate")
        word, *numbers = self.line().split()
        self.grid = Grid(*map(int, numbers))
        line = self.line()
        while line.startswith("fact "):
            _, number, kind, rest = line.split(None, 3)
            self.read_fact(int(number), kind, rest)
            line = self.line()
        if not line.startswith("deny "):
            raise Fault("nothing is denied")
        self.denial = self.formula(line[5:])
        self.proof({}, 0)
        if self.at != len(self.lines):
            raise Fault("it goes on after the clash")

    # ---- the proof ----

    def row(self, name):
        try:
            if name.startswith("r"):
                return self.grid.cell_row(name)
            place, _, number = name.partition(".")
            rows = {"lemma": self.lemmas, "deny": self.denial}.get(place) if not place.isdigit() else self.facts[int(place) - 1]
            if int(number) < 1 or place == "0":
                raise IndexError
            return rows[int(number) - 1]
        except (IndexError, ValueError, TypeError):
            raise Fault(f"no row {name}") from None

    def total(self, text):
        factors, bound, exact = {}, 0, True
        if not text.split():
            raise Fault("a line rests on nothing")
        for word in text.split():
            times, star, name = word.partition("*")
            times, name = (int(times), name) if star else (1, word)
            row, its_bound, its_exact = self.row(name)
            if not its_exact and times <= 0:
                raise Fault("only exact rows may be taken away")
            for variable, factor in row.items():
                factors[variable] = factors.get(variable, 0) + times * factor
            bound, exact = bound + times * its_bound, exact and its_exact
        return factors, bound, exact

    @staticmethod
    def is_broken(row, known):
        factors, bound, exact = row
        fixed = sum(factor for variable, factor in factors.items() if known.get(variable))
        open_factors = [factor for variable, factor in factors.items() if variable not in known]
        highest = fixed + sum(max(factor, 0) for factor in open_factors)
        lowest = fixed + sum(min(factor, 0) for factor in open_factors)
        return highest < bound or (exact and lowest > bound)

    def literals(self, text):
        return [(self.grid.candidate(word.lstrip("!")), not word.startswith("!")) for word in text.split()]

    def proof(self, known, depth):
        while True:
            word, _, rest = self.line().partition(" ")
            if word == "use":
                names, _, forced = rest.partition(":")
                self.use(self.total(names), self.literals(forced), known)
            elif word == "clash":
                if not self.is_broken(self.total(rest), known):
                    raise Fault("a clash is none")
                return
            elif word == "suppose" and depth == 0:
                self.lemma(self.literals(rest), dict(known))
            elif word == "split":
                return self.split(self.total(rest), known, depth)
            else:
                raise Fault(f"'{word}' cannot stand here")

    def use(self, row, literals, known):
        for variable, value in literals:
            if variable not in known:
                if not self.is_broken(row, {**known, variable: not value}):
                    raise Fault(f"{variable} is not forced")
                known[variable] = value
            elif known[variable] != value:
                raise Fault(f"{variable} is known to be otherwise")

    def lemma(self, literals, known):
        row, bound = {}, 1
        for variable, value in literals:
            if variable in known:
                raise Fault("a supposition is known or made twice")
            known[variable] = value
            row[variable] = -1 if value else 1
            bound -= value
        self.proof(known, 1)
        if self.line() != "end":
            raise Fault("a supposition has no end")
        self.lemmas.append((row, bound, False))

    def split(self, row, known, depth):
        cases = sorted((variable for variable, factor in row[0].items() if factor > 0 and variable not in known),
                       key=lambda variable: (variable[0] == "option", *(part if isinstance(part, int) else 0 for part in variable)))
        if not self.is_broken(row, {**known, **{variable: False for variable in cases}}):
            raise Fault("a split leaves a way out")
        for variable in cases:
            if self.line() != "case":
                raise Fault("a case is missing")
            self.proof({**known, variable: True}, depth + 1)
            if self.line() != "end":
                raise Fault("a case has no end")


def read_marks(text):
    words = text.split()
    side = round(len(words) ** 0.5)
    everything = set(range(1, side + 1))
    return {(i // side + 1, i % side + 1): everything if word == "." else {DIGITS.index(d) + 1 for d in word.strip("()=")}
            for i, word in enumerate(words)}


def main(words):
    marks = None
    if words[:1] == ["--marks"] and len(words) > 1:
        marks, words = read_marks(words[1]), words[2:]
    if not words:
        print(__doc__, file=sys.stderr)
        return 64
    checked = 0
    for name in words:
        text = sys.stdin.read() if name == "-" else open(name, encoding="utf-8").read()
        for number, part in enumerate(re.split(r"(?m)^(?=certificate )", text)):
            if not part.strip():
                continue
            certificate = Certificate(part.strip("\n").split("\n"), marks)
            try:
                certificate.check()
            except (Fault, ValueError, IndexError, AttributeError, TypeError) as fault:
                print(f"{name}: certificate {number}, line {certificate.at}: {fault}")
                return 1
            checked += 1
    print(f"{checked} certificates hold")
    return 0 if checked else 64


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
