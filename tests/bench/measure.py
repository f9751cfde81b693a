"""Rounds of all contestants, one after the other, so that what else the machine does strikes all alike."""
import os
import statistics
import subprocess
import sys

from program import ask_once, instructions

HERE = os.path.dirname(os.path.abspath(__file__))
PYTHON = "/usr/bin/python3"  # the one that python3-numpy is for
AEROPLANES = 1000
SCALAR, LIBM, LIBM_SCALAR = "scalar", "libm", "libm-scalar"
NUMPY, NUMPY_PLAIN = "NumPy", "NumPy, plain"


class Size:
    """How much of each thing is done."""

    def __init__(self, quick):
        self.steps = 20 if quick else 100
        self.numpy_steps = 3 if quick else 20
        self.sorties_per_lane = 1 if quick else 8
        self.scaling = 16 if quick else 256
        self.counts = [8, 32] if quick else [64, 256, 1024]
        self.quick = quick
        self.rounds = 2 if quick else 7


def say(text):
    print("stallwright: bench:", text, file=sys.stderr, flush=True)


def lanes_of(kernel):
    return {"x86-64-v2": 2, "x86-64-v3": 4, "x86-64-v4": 8}.get(kernel, 1)


def exported(program, folder):
    """Puts what NumPy flies into the folder and returns the worst difference of its step from ours."""
    program.ask("export", folder, AEROPLANES)
    done = subprocess.run([PYTHON, "-B", os.path.join(HERE, "agree.py"), folder], capture_output=True, text=True, check=True)
    return float(done.stdout)


class NumpyFlight:
    """A process of NumPy's own.

    keeps_memory  its allocator keeps what it has had: given back and asked for again at each operation, arrays of this size
                  cost NumPy as much time as its arithmetic
    """

    def __init__(self, folder, keeps_memory):
        kept = {"MALLOC_MMAP_THRESHOLD_": "100000000", "MALLOC_TRIM_THRESHOLD_": "1000000000",
                "MALLOC_TOP_PAD_": "67108864"} if keeps_memory else {}
        self.process = subprocess.Popen([PYTHON, "-B", os.path.join(HERE, "numpy_server.py"), folder],
                                        stdin=subprocess.PIPE, stdout=subprocess.PIPE, text=True,
                                        env=os.environ | {"OPENBLAS_NUM_THREADS": "1"} | kept)

    def ns(self, steps):
        self.process.stdin.write(f"{steps}\n")
        self.process.stdin.flush()
        return float(self.process.stdout.readline())

    def close(self):
        self.process.stdin.close()
        self.process.wait()


def one_round(program, yardsticks, kernels, size):
    """ns per aeroplane-step by (what, contestant); of the thread's processor time, but wall time where threads are many."""
    found = {}
    for kernel in kernels:
        found["step", kernel] = program.ask("step", kernel, AEROPLANES, size.steps)["ns"]
    for name, yardstick in yardsticks.items():
        found["step", name] = yardstick.ns(size.numpy_steps)
    for kernel in kernels:
        found["tick", kernel] = program.ask("tick", kernel, AEROPLANES, size.steps // 2)["ns"]
    for kernel in kernels:
        run = program.ask("sorties", kernel, "short", size.sorties_per_lane * lanes_of(kernel))
        found["sorties", kernel] = run["ns"]
        found["steps of a sortie", kernel] = run["steps"] / run["sorties"]
    for threads in (1, 2):
        found["many", threads] = program.ask("many", "short", size.scaling, threads)["wall_ns"]
    found["clock", "ghz"] = program.ask("clock")["hz"] * 1e-9
    return found


class Rounds:
    """What the rounds found: a list for each (what, contestant)."""

    def __init__(self, rounds):
        self.all = rounds

    def best(self, what, who):
        return min(r[what, who] for r in self.all)

    def median(self, what, who):
        return statistics.median(r[what, who] for r in self.all)

    def ratio(self, what, slow, quick):
        """How many times slower, round by round: median, least, most."""
        ratios = [r[what, slow] / r[what, quick] for r in self.all]
        return statistics.median(ratios), min(ratios), max(ratios)


def by_count(file, counts):
    """One process for each number of sorties and threads."""
    rows = []
    for count in counts:
        for threads in (1, 2):
            say(f"{count} sorties on {threads} thread{'s' if threads > 1 else ''}")
            rows.append((count, threads, ask_once(file, "many", "short", count, threads)))
    return rows


def counted_instructions(file, folder, card, kernels):
    """Per aeroplane-step, of the flight alone and of whole sorties; none for x86-64-v4, which valgrind does not know."""
    found = {}
    for kernel in kernels:
        if kernel == "x86-64-v4":
            continue
        say(f"instructions of {kernel}")
        found["step", kernel] = instructions(file, folder, "step", kernel, 8, 25)
        found["sorties", kernel] = instructions(file, folder, "sorties", kernel, card, lanes_of(kernel))
    return found
