"""numpy_server.py FOLDER: flies the aeroplanes of FOLDER when asked. A number of steps a line on stdin, nanoseconds of
processor time per aeroplane-step a line on stdout."""
import os
import sys
import time

import numpy_flight
from numpy_aeroplane import Aeroplane


def nanoseconds(aeroplane, samples, steps):
    y, controls, air, _ = samples
    y = numpy_flight.step(aeroplane, y, controls, air)  # takes the memory that the others use again
    begun = time.thread_time_ns()
    for _ in range(steps):
        y = numpy_flight.step(aeroplane, y, controls, air)
    return (time.thread_time_ns() - begun) / steps / y.shape[1]


def main():
    folder = sys.argv[1]
    aeroplane = Aeroplane(os.path.join(folder, "aeroplane.json"))
    samples = numpy_flight.read_samples(os.path.join(folder, "samples.f64"))
    for line in sys.stdin:
        print(nanoseconds(aeroplane, samples, int(line)), flush=True)


main()
