#!/usr/bin/env python3
# SPDX-License-Identifier: Apache-2.0
"""Runs the audits and writes docs/audit.md from what they print.

    tools/write_audit.py BUILD_FOLDER [--full] [AUDIT...]

Without names all audits run; with names only those, and the other sections stay.
"""
import pathlib
import re
import subprocess
import sys
import tempfile

AUDITS = ["soundness_audit", "definition_audit", "worlds_audit", "mutation_audit", "finder_audit", "claim_audit"]
HEAD = """# Audits

Written by `tools/write_audit.py`; not edited by hand. Every figure was counted by the program named above its table.
`./test` runs the same audits with smaller samples and fails on any wrong conclusion, on a mutant that survives, and on a
technique that fired too seldom to mean anything.
"""


def kept_section(text, audit):
    """The section that an earlier run wrote, or nothing."""
    found = re.search(rf"\n<!-- {audit}(?: --full)? -->\n(?:(?!\n<!-- ).)*", text, re.DOTALL)
    return found.group(0) if found else ""


def main():
    words = sys.argv[1:]
    full = "--full" in words
    names = [word for word in words if word in AUDITS]
    folders = [word for word in words if word != "--full" and word not in AUDITS]
    if len(folders) != 1:
        print(__doc__, file=sys.stderr)
        return 64
    target = pathlib.Path(__file__).resolve().parent.parent / "docs" / "audit.md"
    for audit in names or AUDITS:
        with tempfile.TemporaryDirectory() as scratch:
            file = pathlib.Path(scratch) / "section.md"
            command = [str(pathlib.Path(folders[0]) / audit), "--markdown", str(file)] + (["--full"] if full else [])
            print("running", audit, "...", file=sys.stderr, flush=True)
            if subprocess.run(command, stdout=subprocess.DEVNULL, check=False).returncode != 0:
                print(audit, "failed; its section stays as it was", file=sys.stderr)
                return 1
            section = f"\n<!-- {audit}{' --full' if full else ''} -->\n" + file.read_text(encoding="utf-8")
        before = target.read_text(encoding="utf-8") if target.exists() else ""
        sections = [section if other == audit else kept_section(before, other) for other in AUDITS]
        target.write_text(HEAD + "".join(sections), encoding="utf-8")
        print("wrote", target.name, file=sys.stderr)
    return 0


if __name__ == "__main__":
    sys.exit(main())
