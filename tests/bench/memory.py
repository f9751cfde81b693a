"""Peak of memory of `stallwright study` over very many brief sorties."""
import argparse
import os
import subprocess
import sys
import tempfile
import time

from program import plain_environment
from table import table, write_table

HERE = os.path.dirname(os.path.abspath(__file__))
CELLS = 2  # of brief-recipe.toml


def peak_mib(process):
    """What /proc says of it, so far; 0 when it has gone. (The kernel's usage of a child counts its parent as well.)"""
    try:
        with open(f"/proc/{process.pid}/status", encoding="ascii") as status:
            peak = [line.split()[1] for line in status if line.startswith("VmHWM:")]
    except OSError:
        return 0.0
    return int(peak[0]) / 1024 if peak else 0.0


def peak_of(command):
    """Seconds and peak in MiB of one process, looked at a hundred times a second."""
    begun, peak = time.monotonic(), 0.0
    with tempfile.TemporaryFile("w+") as words:
        process = subprocess.Popen(command, stdout=subprocess.DEVNULL, stderr=words, env=plain_environment())
        while process.poll() is None:
            peak = max(peak, peak_mib(process))
            time.sleep(0.01)
        if process.returncode != 0:
            words.seek(0)
            raise SystemExit(words.read())
    return time.monotonic() - begun, peak


def memory_row(stallwright, folder, count):
    parts = [os.path.join(folder, f"part-{shard}") for shard in (1, 2)]
    whole = os.path.join(folder, "whole")
    seconds, peaks = 0.0, []
    for shard, part in enumerate(parts, start=1):
        took, peak = peak_of([stallwright, "study", "--recipe", os.path.join(HERE, "brief-recipe.toml"), "--card",
                              os.path.join(HERE, "brief.toml"), "--sorties", str(count // CELLS), "--shard", f"{shard}/2",
                              "--out", part])
        seconds += took
        peaks.append(peak)
    _, of_merging = peak_of([stallwright, "study", "merge", *parts, "--out", whole])
    return [f"{count // CELLS * CELLS:,}", f"{seconds:.0f}", f"{max(peaks):.1f}", f"{of_merging:.1f}"]


def memory_table(stallwright, counts):
    rows = []
    for count in counts:
        with tempfile.TemporaryDirectory() as folder:
            rows.append(memory_row(stallwright, folder, count))
        print("stallwright: bench:", *rows[-1], file=sys.stderr, flush=True)
    return table(["sorties of the brief card", "s", "peak of flying half of them, MiB", "peak of merging, MiB"], rows)


def main():
    parser = argparse.ArgumentParser()
    for name in ("--program", "--stallwright", "--out"):
        parser.add_argument(name, required=True)
    parser.add_argument("--keep", action="store_true")
    parser.add_argument("--memory", type=int, action="append")
    chosen, _ = parser.parse_known_args()
    write_table("memory", memory_table(chosen.stallwright, chosen.memory), chosen.out, chosen.keep)


main()
