#!/usr/bin/env python3
# SPDX-License-Identifier: Apache-2.0
"""Runs the audits and writes docs/audit.md from what they print.

    tools/write_audit.py BUILD_FOLDER [--full]
"""
import pathlib
import subprocess
import sys
import tempfile

AUDITS = ["soundness_audit", "definition_audit", "worlds_audit", "mutation_audit", "finder_audit", "claim_audit"]
HEAD = """# Audits

Written by `tools/write_audit.py`; not edited by hand. Every figure was counted by the program named above its table.
`./test` runs the same audits with smaller samples and fails on any wrong conclusion, on a mutant that survives, and on a
technique that fired too seldom to mean anything.
"""


def main():
    words = sys.argv[1:]
    full = "--full" in words
    folders = [word for word in words if word != "--full"]
    if len(folders) != 1:
        print(__doc__, file=sys.stderr)
        return 64
    parts = [HEAD]
    with tempfile.TemporaryDirectory() as scratch:
        for audit in AUDITS:
            file = pathlib.Path(scratch) / (audit + ".md")
            command = [str(pathlib.Path(folders[0]) / audit), "--markdown", str(file)] + (["--full"] if full else [])
            print("running", audit, "...", file=sys.stderr, flush=True)
            if subprocess.run(command, stdout=subprocess.DEVNULL, check=False).returncode != 0:
                print(audit, "failed; nothing was written", file=sys.stderr)
                return 1
            parts.append(f"\n<!-- {audit}{' --full' if full else ''} -->\n" + file.read_text(encoding="utf-8"))
    target = pathlib.Path(__file__).resolve().parent.parent / "docs" / "audit.md"
    target.write_text("".join(parts), encoding="utf-8")
    print("wrote", target.name, file=sys.stderr)
    return 0


if __name__ == "__main__":
    sys.exit(main())
