"""Constants of the aeroplane as stallwright-bench exports them, laid out for NumPy; and where what lies in the arrays."""
import json

import numpy as np

WING, TAIL, FIN = slice(0, 16), slice(16, 22), slice(22, 25)
STRIPS = 25
STEP_S = 0.01
FASTEST_SEPARATION_PS, FASTEST_INFLOW_PS = 200.0, 40.0
SHED_SHARE, INFLOW_CHORDS = 0.5, 1.8
WAKE_DEFICIT, WAKE_SHAKE, WAKE_HALF_WIDTH_CHORDS = 0.25, 0.06, 0.5

# Rows of the state, in the order of FlightState.
POSITION, ATTITUDE, VELOCITY, RATE = slice(0, 3), slice(3, 7), slice(7, 10), slice(10, 13)
INFLOW, LAGGED, SEPARATION = slice(13, 38), slice(38, 63), slice(63, 88)
DOWNWASH, SIDEWASH, WAKE = slice(88, 94), slice(94, 97), 97
ELEVATOR, AILERON, RUDDER, FLAP, THROTTLE, PROPELLER = 98, 99, 100, 101, 102, 103
NUMBERS = 104
# Rows of the air.
DENSITY, WIND, GUST, GUST_RATE, SHAKE = 0, slice(1, 4), slice(4, 7), slice(7, 10), slice(10, 16)


def column(values):
    return np.array(values, dtype=float)[:, None]


def cross(a, b):
    return np.stack([a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]])


def rotation(q):
    """Body to earth, [row][column] of arrays."""
    w, x, y, z = q
    return [[1 - 2 * (y * y + z * z), 2 * (x * y - w * z), 2 * (x * z + w * y)],
            [2 * (x * y + w * z), 1 - 2 * (x * x + z * z), 2 * (y * z - w * x)],
            [2 * (x * z - w * y), 2 * (y * z + w * x), 1 - 2 * (x * x + y * y)]]


def wrapped(angle):
    return angle - np.round(angle / (2 * np.pi)) * (2 * np.pi)


class Aeroplane:
    """Constants, laid out for the arrays: one row a strip."""

    def __init__(self, file):
        with open(file, encoding="utf-8") as text:
            d = json.load(text)
        self.d = d
        strips = d["strips"]
        surface = [0] * 16 + [1] * 6 + [2] * 3
        for name in ("chord", "area", "flap_share", "control_share", "stall_offset", "wake_arm", "wake_rise"):
            setattr(self, name, column([s[name] for s in strips]))
        self.r, self.along_axis, self.normal_axis, self.span_axis = (
            np.array([s[k] for s in strips]) for k in ("r", "chord_axis", "normal", "span"))
        section = {k: column([d["sections"][s][k] for s in surface]) for k in d["sections"][0]}
        self.section = section
        self.gap = np.exp((section["negative_stall"] - section["stall"]) / section["stall_width"])
        self.per_separation = 1 / (section["tau1_chords"] * self.chord)
        self.per_delay = 1 / (section["tau2_chords"] * self.chord)
        self.per_inflow = 1 / (INFLOW_CHORDS * self.chord)
        for name in ("effectiveness", "stall_shift", "drag"):
            setattr(self, "control_" + name, self.control_share * column([d["controls"][s][name] for s in surface]))
        self.shake_of = [0, 0, 0, 0, 2, 2, 2, 2, 3, 3, 3, 3, 1, 1, 1, 1] + [4, 4, 4, 5, 5, 5]
        self.motion = self.motion_matrices(strips)
        to = {"spread": "separation_spread", "wing": "wing_influence", "tail": "tail_influence", "fin": "fin_influence",
              "tail_by_wing": "tail_by_wing", "fin_by_wing": "fin_by_wing"}
        self.matrix = {k: np.array(d[v]) for k, v in to.items()}
        self.inertia = np.array(d["inertia"]).reshape(3, 3)
        self.inertia_inverse = np.linalg.inv(self.inertia)
        # Loads of all strips: forces along chord and normal, and the moments of both and of the sections.
        self.to_force = np.hstack([self.along_axis.T, self.normal_axis.T])
        self.to_moment = np.hstack([np.cross(self.r, self.along_axis).T, np.cross(self.r, self.normal_axis).T,
                                    self.span_axis.T])

    def motion_matrices(self, strips):
        """Velocity along chord and normal of every strip is linear in (velocity, rate, wash, swirl)."""
        hub = self.d["hub"]
        along, normal = np.zeros((STRIPS, 8)), np.zeros((STRIPS, 8))
        for k in range(8):
            unit = np.eye(8)[k]
            for i, s in enumerate(strips):
                v = unit[0:3] + np.cross(unit[3:6], s["r"])
                v[0] += s["washed"] * s["wash_growth"] * unit[6]
                if i >= 16:
                    swirl = self.d["propeller"]["swirl"] * s["washed"] * unit[7]
                    v[1] += swirl * (s["r"][2] - hub[2])
                    v[2] -= swirl * (s["r"][1] - hub[1])
                else:
                    v[2] -= s["body_crossflow"] * v[1]
                along[i, k], normal[i, k] = np.dot(v, s["chord_axis"]), np.dot(v, s["normal"])
        return along, normal
