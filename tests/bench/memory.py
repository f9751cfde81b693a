"""Peak of memory of `stallwright study` over very many brief sorties.

A child's peak counts this program's own until it starts, so NumPy, which is larger than a study, stays out of here.
"""
import argparse
import os
import shutil
import subprocess
import sys
import time

from program import plain_environment
from table import table, write_table

HERE = os.path.dirname(os.path.abspath(__file__))
CELLS = 2  # of brief-recipe.toml


def peak_of(command):
    """Seconds and peak in MiB of one process."""
    begun = time.monotonic()
    process = subprocess.Popen(command, stdout=subprocess.DEVNULL, stderr=subprocess.PIPE, text=True,
                               env=plain_environment())
    words = process.stderr.read()
    _, status, usage = os.wait4(process.pid, 0)
    process.returncode = os.waitstatus_to_exitcode(status)
    if process.returncode != 0:
        raise SystemExit(words)
    return time.monotonic() - begun, usage.ru_maxrss / 1024


def memory_table(stallwright, folder, counts):
    rows = []
    for count in counts:
        study = os.path.join(folder, "memory")
        shutil.rmtree(study, ignore_errors=True)
        command = [stallwright, "study", "--recipe", os.path.join(HERE, "brief-recipe.toml"), "--card",
                   os.path.join(HERE, "brief.toml"), "--sorties", str(count // CELLS), "--out", study]
        seconds, peak = peak_of(command)
        _, of_tables = peak_of(command)  # nothing is flown again
        rows.append([f"{count // CELLS * CELLS:,}", f"{seconds:.0f}", f"{peak:.1f}", f"{of_tables:.1f}"])
        print("stallwright: bench:", *rows[-1], file=sys.stderr, flush=True)
        shutil.rmtree(study)
    return table(["sorties of the brief card", "s", "peak, MiB", "peak of making the tables alone, MiB"], rows)


def main():
    parser = argparse.ArgumentParser()
    for name in ("--program", "--stallwright", "--out"):
        parser.add_argument(name, required=True)
    parser.add_argument("--keep", action="store_true")
    parser.add_argument("--memory", type=int, action="append")
    chosen, _ = parser.parse_known_args()
    write_table("memory", memory_table(chosen.stallwright, chosen.out, chosen.memory), chosen.out, chosen.keep)


main()
