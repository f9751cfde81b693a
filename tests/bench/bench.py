"""What tests/bench/run does once all is built."""
import argparse
import os
import subprocess

import measure
import report
from program import Program
from table import write_table

HERE = os.path.dirname(os.path.abspath(__file__))
AGREES = 1e-9


def options():
    parser = argparse.ArgumentParser()
    for name in ("--program", "--stallwright", "--out"):
        parser.add_argument(name, required=True)
    parser.add_argument("--quick", action="store_true")
    parser.add_argument("--keep", action="store_true")
    parser.add_argument("--rounds", type=int)
    return parser.parse_args()


def rounds_of_all(program, folder, kernels, size):
    difference = measure.exported(program, folder)
    if not difference < AGREES:
        raise SystemExit(f"stallwright: bench: NumPy's step and ours differ by {difference:.1e}, expected below {AGREES}")
    yardsticks = {measure.NUMPY: measure.NumpyFlight(folder, keeps_memory=True),
                  measure.NUMPY_PLAIN: measure.NumpyFlight(folder, keeps_memory=False)}
    rounds = []
    for number in range(size.rounds):
        measure.say(f"round {number + 1} of {size.rounds}")
        rounds.append(measure.one_round(program, yardsticks, kernels, size))
    for yardstick in yardsticks.values():
        yardstick.close()
    return measure.Rounds(rounds), difference


def whole_table(chosen):
    size = measure.Size(chosen.quick)
    size.rounds = chosen.rounds or size.rounds
    with Program(chosen.program) as program:
        kernels = program.ask("kernels")
        operations = program.ask("operations")
        rounds, difference = rounds_of_all(program, chosen.out, kernels, size)
    counts = measure.by_count(chosen.program, size.counts)
    instructions = measure.counted_instructions(chosen.program, chosen.out, os.path.join(HERE, "brief.toml"), kernels)
    said = subprocess.run([chosen.stallwright, "--version"], capture_output=True, text=True, check=True).stdout
    return "".join([report.heading(rounds, said.split()[-1], size),
                    report.kernels_table(rounds, kernels, operations, instructions),
                      report.goals_table(rounds, kernels), report.operations_table(operations, kernels, rounds),
                      report.counts_table(counts),
                      f"One step of NumPy's differs from ours by {difference:.1e} at most, of the larger of 1 and the number, "
                      f"over {measure.AEROPLANES:,} aeroplanes.\n"])


def main():
    chosen = options()
    write_table("table", whole_table(chosen), chosen.out, chosen.keep)


main()
