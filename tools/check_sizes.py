#!/usr/bin/env python3
# SPDX-License-Identifier: Apache-2.0
"""File and function lengths. Waivers are lines in tools/sizes.allow:
    path            limit  reason
    path:function   limit  reason"""

import re

import house

FILE_LIMIT, FUNCTION_LIMIT = 600, 80
TRUSTED = "src/verify/"  # read by people who doubt: kept smaller
TRUSTED_FILE_LIMIT, TRUSTED_FUNCTION_LIMIT = 300, 40
ENDINGS = house.CPP + (".py", ".sh", ".cmake", ".ts", ".js", ".mjs", ".svelte")
ALLOW = "tools/sizes.allow"

SCOPE = re.compile(r"\b(namespace|class|struct|union|enum|extern)\b")
NAME = re.compile(r"(~?\w+|operator\s*\S+?)\s*\(")


def blank_preprocessor(text):
    return re.sub(r"^[ \t]*#(?:[^\n\\]|\\.|\\\n)*", lambda m: "\n" * m.group(0).count("\n"), text, flags=re.M)


def kind_of_brace(head):
    """What a '{' outside functions opens, judged by the text before it."""
    bare = re.sub(r"template\s*<[^{}]*?>(?=\s*[\w\[(:])", "", head)
    if "(" not in bare:
        return "scope" if SCOPE.search(bare) else "init"
    if re.match(r"\s*(class|struct|union|enum|namespace)\b", bare) and not bare.rstrip().endswith(")"):
        return "scope"
    if re.search(r"(=|,|\(|\breturn)\s*$", bare):
        return "init"
    after = bare[bare.index(")") + 1:] if ")" in bare else ""
    if re.search(r"(?<!:):(?!:)", after) and re.search(r"[\w>]\s*$", after):
        return "init"  # a member in a constructor's list: x_{...}
    return "function"


def functions(text):
    """Yields (name, first line, length). Lambdas count for what holds them."""
    code = blank_preprocessor(house.code_only(text))
    stack, head, head_line, line, round_depth = [], "", 1, 1, 0
    for letter in code:
        if letter == "\n":
            line += 1
        inside = "function" in (kind for kind, _, _ in stack)
        if letter == "{":
            kind = "block" if inside else kind_of_brace(head)
            match = NAME.search(re.sub(r"template\s*<[^{}]*?>", "", head)) if kind == "function" else None
            stack.append((kind, match.group(1) if match else "?", head_line))
            if kind != "init":
                head = ""
        elif letter == "}":
            if not stack:
                return  # a brace we do not understand; better silent than wrong
            kind, name, first = stack.pop()
            if kind == "function":
                yield name, first, line - first + 1
            head = head + "{}" if kind == "init" else ""
        elif letter == ";" and round_depth == 0:
            head = ""
        else:
            round_depth += (letter == "(") - (letter == ")")
            if not head.strip() and not letter.isspace():
                head, head_line = "", line
            head += letter


def waivers(report):
    allowed = {}
    if not house.exists(ALLOW):
        return allowed
    for number, line in enumerate(house.read(ALLOW).split("\n"), 1):
        if not line.strip() or line.startswith("#"):
            continue
        words = line.split(None, 2)
        if len(words) < 3 or not words[1].isdigit():
            report.add(ALLOW, number, "wanted: path[:function] limit reason")
            continue
        allowed[words[0]] = [int(words[1]), number, False]
    return allowed


def main():
    report = house.Report("sizes")
    allowed = waivers(report)

    def judge(path, line, key, what, length, limit):
        if length <= limit:
            return
        waiver = allowed.get(key)
        if waiver:
            waiver[2] = True
            limit = waiver[0]
        if length > limit:
            report.add(path, line, f"{what} has {length} lines, at most {limit} are allowed")

    checked = longest = counted = 0
    for path in house.files(endings=ENDINGS):
        text = house.read(path)
        trusted = path.startswith(TRUSTED)
        checked += 1
        judge(path, 1, path, "file", len(text.splitlines()), TRUSTED_FILE_LIMIT if trusted else FILE_LIMIT)
        if not path.endswith((".cpp", ".h")):
            continue
        for name, line, length in functions(text):
            counted, longest = counted + 1, max(longest, length)
            judge(path, line, f"{path}:{name}", f"function {name}", length,
                  TRUSTED_FUNCTION_LIMIT if trusted else FUNCTION_LIMIT)
    for key, (_, number, used) in allowed.items():
        if not used:
            report.add(ALLOW, number, f"{key} needs no waiver (any more)")
    report.done(f"{checked} files, {counted} functions, the longest has {longest} lines")


main()
