"""agree.py FOLDER: prints how far one step of NumPy's lies from ours at worst, for what lies in the folder."""
import os
import sys

from numpy_aeroplane import Aeroplane
from numpy_flight import read_samples, worst_difference

print(worst_difference(Aeroplane(os.path.join(sys.argv[1], "aeroplane.json")),
                       read_samples(os.path.join(sys.argv[1], "samples.f64"))))
