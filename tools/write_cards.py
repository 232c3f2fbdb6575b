#!/usr/bin/env python3
# SPDX-License-Identifier: Apache-2.0
"""tools/write_cards.py BUILD [ID...]   writes the examples of the technique cards and the list of the catalogue

A card, docs/manual/techniques/<id>.md, is written by hand up to the line
"## Example"; what follows, and the figure, come from the program card_lab of
the build folder. Without ids: all techniques, and docs/manual/techniques.md."""

import os
import subprocess
import sys

TOP = os.path.dirname(os.path.dirname(os.path.abspath(__file__)))
CARDS = "docs/manual/techniques"
FIGURES = "docs/pictures/techniques"
HEADING = "## Example\n"
FAMILIES = ["single", "locked", "subset", "fish", "one-digit", "wing", "colouring", "finned-fish", "mixed-fish", "uniqueness", "chain", "almost-locked-set",
            "exclusion", "leftovers", "multi-sector", "exocet", "forcing"]


def program(build):
    return os.path.join(build, "card_lab")


def read(path):
    with open(os.path.join(TOP, path), encoding="utf-8") as file:
        return file.read()


def write(path, text):
    with open(os.path.join(TOP, path), "w", encoding="utf-8") as file:
        file.write(text)


def techniques(build):
    lines = subprocess.run([program(build), "--table"], stdout=subprocess.PIPE, check=True).stdout.decode().splitlines()
    return [dict(zip(("family", "id", "name", "cost", "unique"), line.split("\t"))) for line in lines]


def write_card(build, technique):
    path = f"{CARDS}/{technique['id']}.md"
    if not os.path.exists(os.path.join(TOP, path)):
        print(f"no card: {path}", file=sys.stderr)
        return False
    figure = f"{FIGURES}/{technique['id']}.svg"
    done = subprocess.run([program(build), technique["id"], os.path.join(TOP, figure)], stdout=subprocess.PIPE, check=False)
    if done.returncode != 0:
        return False
    prose = read(path).split(HEADING)[0].rstrip()
    text = done.stdout.decode()
    words, rest = text.split("\n\n", 1)
    write(path, f"{prose}\n\n{HEADING}\n![{technique['name']}: framed candidates carry the argument, crossed ones fall]"
                f"(../../pictures/techniques/{technique['id']}.svg)\n\n{words}\n\n{rest}")
    return True


def write_list(all_techniques):
    lines = ["# The catalogue", "",
             "Written by `tools/write_cards.py`; the cards it leads to are written by hand, their examples by the program.", "",
             "The cost is that of the plainest instance ([measure.md](../measure.md)). Names that commands take: the id, the family, `uniqueness` for all that",
             "need a puzzle with exactly one solution, and `balance`.", ""]
    for family in FAMILIES:
        members = sorted((each for each in all_techniques if each["family"] == family), key=lambda each: int(each["cost"]))
        if not members:
            continue
        lines += [f"## {family}", "", "| technique | id | cost | needs one solution |", "|---|---|---:|---|"]
        for each in members:
            lines.append(f"| [{each['name']}](techniques/{each['id']}.md) | `{each['id']}` | {each['cost']} | {each['unique']} |")
        lines.append("")
    lines += ["## balance", "", "Balances are not in this list: they are searched, not listed. See [weigh](weigh.md). As steps of a path they cost 120 and three times",
              "their load.", ""]
    write("docs/manual/techniques.md", "\n".join(lines))


def main():
    if len(sys.argv) < 2 or not os.path.exists(program(sys.argv[1])):
        print(__doc__, file=sys.stderr)
        sys.exit(64)
    build, wanted = sys.argv[1], sys.argv[2:]
    os.makedirs(os.path.join(TOP, FIGURES), exist_ok=True)
    all_techniques = techniques(build)
    good = True
    for technique in all_techniques:
        if not wanted or technique["id"] in wanted:
            good = write_card(build, technique) and good
    write_list(all_techniques)
    sys.exit(0 if good else 1)


main()
