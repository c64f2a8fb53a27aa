"""Keeps one `fits batch` open and asks it, a line at a time.

    python3 ask_batch.py [PROGRAM]

Bores a bushing seat of the cider press: asks what to aim for, then has each
reading judged until one is good.
"""

import json
import subprocess
import sys


class Fits:
    """One `fits batch` that stays open: an answer for each question."""

    def __init__(self, program="fits"):
        self.batch = subprocess.Popen(
            [program, "batch", "--units", "mm"],
            stdin=subprocess.PIPE,
            stdout=subprocess.PIPE,
            text=True,
            encoding="utf-8",
        )

    def ask(self, query):
        # A line break inside would be two questions.
        self.batch.stdin.write(" ".join(query.split()) + "\n")
        self.batch.stdin.flush()
        line = self.batch.stdout.readline()
        if not line:
            raise RuntimeError("fits batch ended")
        answer = json.loads(line)
        if "error" in answer:
            error = answer["error"]
            raise ValueError(f"{query}: {error['message']}; {error['hint']}")
        return answer

    def close(self):
        self.batch.stdin.close()
        return self.batch.wait()


if __name__ == "__main__":
    fits = Fits(*sys.argv[1:])
    plan = fits.ask("bore 25 H7 from 24.2")
    print(f"aim for {plan['aim_mm']} mm")
    for reading in ["24.610", "24.815", "25.004"]:
        judged = fits.ask(f"25 H7 = {reading}")
        print(f"{reading}: {judged['verdict']}, {judged['to_go_mm']} mm to go")
        if judged["verdict"] == "good":
            break
    try:
        fits.ask("25 H99")
    except ValueError as error:
        print(error)
    fits.close()
