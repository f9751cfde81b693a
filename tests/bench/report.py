"""The table of tests/bench/run, in Markdown."""
import datetime
import os
import re
import subprocess

from measure import AEROPLANES, LIBM, LIBM_SCALAR, NUMPY, NUMPY_PLAIN, SCALAR, lanes_of
from table import table

AVX2, AVX512 = "x86-64-v3", "x86-64-v4"
STRIPS, STRIPS_OF_GOAL = 25, 10
STEPS_PER_S = 100
PIPES = 2
YARDSTICKS = (LIBM, LIBM_SCALAR)


def processor():
    with open("/proc/cpuinfo", encoding="ascii") as info:
        name = re.search(r"model name\s*: (.*)", info.read())
    return f"{name[1] if name else 'processor'}, {os.cpu_count()} cores"


def heading(rounds, version, size, load_before):
    """Load: how many programs wanted a processor in the minute before the first round; 0 is a quiet machine."""
    clocks = [r["clock", "ghz"] for r in rounds.all]
    return (f"{processor()} at {min(clocks):.2f} to {max(clocks):.2f} GHz as measured, "
            f"{datetime.date.today().isoformat()}, stallwright {version}, {compiler()}; "
            f"{len(rounds.all)} rounds, load {load_before:.1f} before{', quick' if size.quick else ''}.\n\n")


def compiler():
    return subprocess.run(["c++", "--version"], capture_output=True, text=True, check=True).stdout.splitlines()[0]


def floor_ns(operations, kernel, rounds):
    return operations["arithmetic"] / (lanes_of(kernel) * PIPES * rounds.median("clock", "ghz"))


def kernels_table(rounds, kernels, operations, instructions):
    rows = []
    for kernel in kernels:
        step, tick, whole = (rounds.best(w, kernel) for w in ("step", "tick", "sorties"))
        floor = "" if kernel in YARDSTICKS else f"{100 * floor_ns(operations['step'], kernel, rounds) / step:.0f} %"
        count = [f"{instructions[w, kernel]:,.0f}" if (w, kernel) in instructions else "–"
                 for w in ("step", "sorties")]
        rows.append([kernel, lanes_of(kernel), f"{step:,.0f}", f"{tick:,.0f}", f"{whole:,.0f}",
                     f"{rounds.median('sorties', kernel):,.0f}", *count, floor,
                     f"{1e9 / STEPS_PER_S / whole:,.0f}", f"{1e9 / whole / rounds.best('steps of a sortie', kernel):.1f}"])
    for name in (NUMPY, NUMPY_PLAIN):
        rows.append([name, "–", f"{rounds.best('step', name):,.0f}"] + ["–"] * 8)
    return table(["kernel", "lanes", "flight alone, ns", "with air and instruments, ns", "whole sortie, ns", "its median, ns",
                  "instructions, flight alone", "of a brief sortie", "floor/flight alone", "times real time",
                  "sorties/s"], rows)


def operations_table(operations, kernels, rounds):
    names = ["arithmetic", "additions", "multiplications", "divisions", "roots", "comparisons", "selections", "bit_steps"]
    text = table(["operations of one aeroplane-step"] + [n.replace("_", " ") for n in names],
                 [[what] + [f"{operations[key][n]:,.0f}" for n in names]
                  for what, key in (("flight alone", "step"), ("with air and instruments", "tick"))])
    floors = ", ".join(f"{k} {floor_ns(operations['step'], k, rounds):,.0f} and "
                       f"{floor_ns(operations['tick'], k, rounds):,.0f}" for k in kernels if k not in YARDSTICKS)
    return text + f"Floor in ns, flight alone and with air and instruments: {floors}.\n\n"


def as_ten_strips(rounds, kernel):
    """The flight in proportion to its strips, all else as it is; the least favourable way to count."""
    flight, whole = rounds.best("step", kernel), rounds.best("sorties", kernel)
    return flight * STRIPS_OF_GOAL / STRIPS + (whole - flight)


def goals_table(rounds, kernels):
    rows = []

    def ratio(what, slow, quick, kind, goal):
        middle, least, most = rounds.ratio(kind, slow, quick)
        rows.append([what, f"≥ {goal}", f"{middle:.2f} ({least:.2f} to {most:.2f})", "yes" if middle >= goal else "no"])

    for kernel, goal in ((AVX2, 330), (AVX512, 170)):
        if kernel in kernels:
            found = as_ten_strips(rounds, kernel)
            rows.append([f"ns of a whole sortie's step, {kernel}, taken to ten strips", f"≤ {goal}", f"{found:,.0f}",
                         "yes" if found <= goal else "no"])
    for kernel, goal in ((AVX2, 4.5), (AVX512, 9)):
        if kernel in kernels:
            for yardstick in YARDSTICKS:
                ratio(f"{kernel} against {yardstick}, whole sortie", yardstick, kernel, "sorties", goal)
                ratio(f"{kernel} against {yardstick}, flight alone", yardstick, kernel, "step", goal)
    for kernel, goal in ((AVX2, 8), (AVX512, 16)):
        if kernel in kernels:
            for name in (NUMPY, NUMPY_PLAIN):
                ratio(f"{kernel} against {name} over {AEROPLANES:,} aeroplanes, flight alone", name, kernel, "step", goal)
    ratio("two threads against one", 1, 2, "many", 1.85)
    middle, least, most = rounds.ratio("sorties", LIBM, SCALAR)
    rows.append(["(our scalar code against libm, whole sortie)", "",
                 f"{middle:.2f} ({least:.2f} to {most:.2f})", ""])
    return table(["what", "goal", "found: median of rounds (least to most)", "met"], rows)


def counts_table(rows):
    return table(["sorties of the short card", "threads", "s", "sorties/s", "ns per aeroplane-step", "peak of memory, MiB"],
                 [[f"{count:,}", threads, f"{run['wall_s']:.1f}", f"{run['sorties'] / run['wall_s']:.1f}",
                   f"{run['wall_ns']:,.0f}", f"{run['peak_kib'] / 1024:.1f}"] for count, threads, run in rows])
