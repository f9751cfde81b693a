"""The flight of many aeroplanes at once, written anew from the model's equations in NumPy: a yardstick for the speed of the
kernels and a referee of their numbers. SI, radians, body axes; an array holds one aeroplane a column.

The equations are those of aircraft/ and sim/motion/, where their sources stand. Written as a careful user of NumPy would:
strips x aeroplanes in one array, sums over strips as matrix products, nothing done twice.
"""
import numpy as np

from numpy_aeroplane import (AILERON, ATTITUDE, DENSITY, DOWNWASH, ELEVATOR, FASTEST_INFLOW_PS,
                             FASTEST_SEPARATION_PS, FIN, FLAP, GUST, GUST_RATE, INFLOW, LAGGED, NUMBERS, PROPELLER,
                             RATE, RUDDER, SEPARATION, SHAKE, SHED_SHARE, SIDEWASH, STEP_S, STRIPS, TAIL, THROTTLE,
                             VELOCITY, WAKE, WIND, WING, cross, rotation, wrapped)
from numpy_airframe import body, into_the_wake, propulsion, section_loads, shifts


def control_rates(a, y, controls, rate):
    aileron, elevator, rudder = a.d["controls"]

    def follow(target, present, limit):
        return np.clip((target - present) / 0.05, -limit, limit)

    def geared(surface, stick):
        s = np.clip(stick, -1, 1)
        return s * np.where(s > 0, surface["positive"], surface["negative"])

    rate[ELEVATOR] = follow(geared(elevator, -controls[0]), y[ELEVATOR], elevator["rate"])
    rate[AILERON] = follow(np.clip(controls[1], -1, 1) * aileron["negative"], y[AILERON], aileron["rate"])
    rate[RUDDER] = follow(geared(rudder, -controls[2]), y[RUDDER], rudder["rate"])
    rate[FLAP] = follow(controls[4], y[FLAP], a.d["flap_rate"])
    rate[THROTTLE] = (np.clip(controls[3], 0, 1) - y[THROTTLE]) / a.d["engine"]["throttle_lag"]


def rigid_rates(a, y, r, force, moment, spin, rate):
    v, w, q = y[VELOCITY], y[RATE], y[ATTITUDE]
    radius = 6356766.0
    gravity = 9.80665 * (radius / (radius - y[2])) ** 2
    for i in range(3):
        rate[i] = r[i][0] * v[0] + r[i][1] * v[1] + r[i][2] * v[2]
    rate[3] = 0.5 * (-q[1] * w[0] - q[2] * w[1] - q[3] * w[2])
    rate[4] = 0.5 * (q[0] * w[0] + q[2] * w[2] - q[3] * w[1])
    rate[5] = 0.5 * (q[0] * w[1] + q[3] * w[0] - q[1] * w[2])
    rate[6] = 0.5 * (q[0] * w[2] + q[1] * w[1] - q[2] * w[0])
    rate[VELOCITY] = force / a.d["mass"] + np.stack(r[2]) * gravity - cross(w, v)
    rate[RATE] = a.inertia_inverse @ (moment - cross(w, a.inertia @ w + spin))


def derivative(a, y, controls, air):
    """d(state)/dt of every aeroplane."""
    r = rotation(y[ATTITUDE])
    wind = air[WIND]
    wind_b = np.stack([r[0][i] * wind[0] + r[1][i] * wind[1] + r[2][i] * wind[2] for i in range(3)])
    velocity = y[VELOCITY] - wind_b - air[GUST]
    turning = y[RATE] - air[GUST_RATE]
    rho = air[DENSITY]
    force, moment, spin, spin_rate, wash, swirl = propulsion(a, y, velocity, turning, rho)
    rate = np.empty_like(y)
    rate[PROPELLER] = spin_rate

    moved = np.vstack([velocity, turning, wash, swirl])
    along, own = a.motion[0] @ moved, a.motion[1] @ moved
    own[TAIL] -= y[DOWNWASH]
    own[FIN] -= y[SIDEWASH]
    normal = (1 - SHED_SHARE) * own - y[INFLOW]
    shakes = air[SHAKE]
    shake = np.vstack([shakes[a.shake_of], [(shakes[5] - shakes[4]) * np.sqrt(0.5)] * 3])
    into_the_wake(a, y, velocity, shake, along, normal)

    x = y[SEPARATION]
    root = np.sqrt(np.clip(x, 0, 1))
    zero, stall, drag, section_moment = shifts(a, y, root)
    speed = np.sqrt(along * along + normal * normal)
    per_speed = 1 / np.maximum(speed, 1e-9)
    cl, cd, cm = section_loads(a, normal * per_speed, along * per_speed, a.section["zero_lift"] + zero, x, root, drag,
                               section_moment)

    q_area = 0.5 * rho * speed * a.area
    felt = cl.copy()
    felt[WING] += a.d["buffet"] * (1 - x[WING]) * shake[WING]
    lift, drag_force = q_area * felt, q_area * cd
    loads = np.vstack([lift * normal - drag_force * along, -lift * along - drag_force * normal,
                       q_area * speed * a.chord * cm])
    of_body, body_moment = body(a, velocity, turning, rho)
    force = force + a.to_force @ loads[:2 * STRIPS] + of_body
    moment = moment + a.to_moment @ loads + body_moment

    circulation = 0.5 * speed * a.chord * cl
    lagged = y[LAGGED]
    alpha = np.arctan2(normal, along)
    rate[LAGGED] = wrapped(alpha - lagged) * np.minimum(speed * a.per_delay, FASTEST_SEPARATION_PS)
    c = a.section
    e = np.exp(np.clip((wrapped(lagged) - c["stall"] - stall) / c["stall_width"], -300, 300))
    towards = e / (e + e * e + a.gap)
    towards[WING] = a.matrix["spread"] @ towards[WING]
    rate[SEPARATION] = (towards - x) * np.minimum(speed * a.per_separation, FASTEST_SEPARATION_PS)

    induced = np.vstack([a.matrix[k] @ circulation[s] for k, s in (("wing", WING), ("tail", TAIL), ("fin", FIN))])
    rate[INFLOW] = (induced - SHED_SHARE * own - y[INFLOW]) * np.minimum(speed * a.per_inflow, FASTEST_INFLOW_PS)
    travel = np.minimum(np.sqrt((velocity * velocity).sum(axis=0)) / a.d["wake_travel"], FASTEST_INFLOW_PS)
    rate[DOWNWASH] = (a.matrix["tail_by_wing"] @ circulation[WING] - y[DOWNWASH]) * travel
    rate[SIDEWASH] = (a.matrix["fin_by_wing"] @ circulation[WING] - y[SIDEWASH]) * travel
    rate[WAKE] = (1 - x[5:11].mean(axis=0) - y[WAKE]) * travel
    control_rates(a, y, controls, rate)
    rigid_rates(a, y, r, force, moment, spin, rate)
    return rate


def step(a, y, controls, air, h=STEP_S):
    """One step of classical Runge-Kutta, air and controls held."""
    k1 = derivative(a, y, controls, air)
    k2 = derivative(a, y + 0.5 * h * k1, controls, air)
    k3 = derivative(a, y + 0.5 * h * k2, controls, air)
    k4 = derivative(a, y + h * k3, controls, air)
    out = y + h / 6 * (k1 + 2 * (k2 + k3) + k4)
    out[ATTITUDE] /= np.sqrt((out[ATTITUDE] ** 2).sum(axis=0))
    np.clip(out[SEPARATION], 0, 1, out=out[SEPARATION])
    return out


def read_samples(file):
    """State, controls, air and the state one step on, of the aeroplanes that stallwright-bench wrote."""
    rows = np.fromfile(file).reshape(-1, 2 * NUMBERS + 5 + 16)
    parts = np.split(rows, [NUMBERS, NUMBERS + 5, NUMBERS + 21], axis=1)
    return [np.ascontiguousarray(part.T) for part in parts]


def worst_difference(a, samples):
    """Largest difference of one step from the kernel's, over the larger of 1 and the number itself."""
    y, controls, air, expected = samples
    return np.max(np.abs(step(a, y, controls, air) - expected) / np.maximum(1, np.abs(expected)))
