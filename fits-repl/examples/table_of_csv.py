"""Makes a table of a CSV: adds the limits to a list of parts.

    python3 table_of_csv.py PROGRAM PARTS.csv

The list needs a column `query`; its column `part` is kept. A row that is not
understood is printed with its reason, and the others are answered.
"""

import csv
import subprocess
import sys

COLUMNS = [
    "line",
    "part",
    "query",
    "shown.hole.lower",
    "shown.hole.upper",
    "shown.shaft.lower",
    "shown.shaft.upper",
    "error",
]


def table(program, parts):
    """The rows of a list of parts, each a dictionary by the columns."""
    run = subprocess.run(
        [program, "batch", "--exit-zero", "--csv", ",".join(COLUMNS), parts],
        stdout=subprocess.PIPE,
        text=True,
        encoding="utf-8",
        check=True,
    )
    return list(csv.DictReader(run.stdout.splitlines(keepends=True)))


if __name__ == "__main__":
    for row in table(*sys.argv[1:]):
        if row["error"]:
            print(f"line {row['line']}, {row['part']}: {row['error']}")
            continue
        hole = f"{row['shown.hole.lower']} to {row['shown.hole.upper']}"
        shaft = f"{row['shown.shaft.lower']} to {row['shown.shaft.upper']}"
        print(f"{row['part']}: hole {hole}, shaft {shaft}")
