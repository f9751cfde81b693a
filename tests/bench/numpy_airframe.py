"""Parts of the airframe's loads: propeller and engine, body, sections, and what the wake does to the tail."""
import numpy as np

from numpy_aeroplane import (AILERON, ELEVATOR, FIN, FLAP, PROPELLER, RUDDER, TAIL, THROTTLE, WAKE, WAKE_DEFICIT,
                             WAKE_HALF_WIDTH_CHORDS, WAKE_SHAKE, column, cross)


def propulsion(a, y, velocity, rate, rho):
    p, e, d = a.d["propeller"], a.d["engine"], a.d
    hub, axis, diameter = column(d["hub"]), column(d["shaft"]), p["diameter"]
    v = velocity + cross(rate, hub)
    u = (v * axis).sum(axis=0)
    across = v - axis * u
    speed = np.sqrt((v * v).sum(axis=0))
    spin = y[PROPELLER]
    n = np.maximum(spin / (2 * np.pi), 1)
    advance = u / (n * diameter)
    dynamic = rho * n * n * diameter**4
    thrust = dynamic * np.interp(advance, p["advance"], p["thrust"])
    torque = dynamic * diameter / (2 * np.pi) * np.interp(advance, p["advance"], p["power"])
    full = e["power"] / e["speed"] + e["friction"]
    sigma = rho / 1.225
    share = y[THROTTLE] + (1 - y[THROTTLE]) * d["idle_throttle"] * np.minimum(1, e["idle_speed"] / np.maximum(spin, 1))
    friction = e["friction"] * 0.5 * (spin / np.sqrt(spin * spin + 100) + spin / e["speed"])
    engine = full * (sigma - (1 - sigma) / 7.55) * share - friction
    along = np.maximum(u, 0)
    disc = d["disc_area"]
    jet = np.maximum(along * along + 2 * thrust / (rho * disc), 0.25 * along * along)
    wash = 0.5 * (np.sqrt(jet) - along)
    swirl = torque / (rho * disc * np.maximum(along + wash, 1) * diameter**2 / 8)
    side = across / np.maximum(speed, 1)
    force = axis * thrust - side * (p["normal_force"] * 0.5 * rho * speed * speed * disc)
    loading = p["asymmetric"] * thrust * diameter
    moment = cross(hub, force) - axis * engine
    moment[1] -= loading * side[1]
    moment[2] -= loading * side[2]
    return force, moment, axis * (p["inertia"] * spin), (engine - torque) / p["inertia"], wash, swirl


def body(a, velocity, rate, rho):
    b, centre = a.d["body"], column(a.d["body_centre"])
    v = velocity + cross(rate, centre)
    speed = np.sqrt((v * v).sum(axis=0))
    half = 0.5 * rho
    f = v * (-half * speed * b["drag"])
    f[1] -= half * v[1] * (speed * b["side"] + np.abs(v[1]) * b["cross_side"])
    f[2] -= half * v[2] * np.abs(v[2]) * b["cross_up"]
    moment = cross(centre, f)
    munk = rho * b["munk"] * v[0]
    moment[1] += munk * v[2]
    moment[2] -= munk * v[1]
    return f, moment


def shifts(a, y, root):
    """What flap and control do to every section: zero lift, stall, drag, moment."""
    flaps = np.array(a.d["flaps"])
    zero, stall, drag, moment = (a.flap_share * np.interp(y[FLAP], flaps[:, 0], flaps[:, k]) for k in (1, 2, 3, 4))
    aileron = a.d["controls"][0]
    ratio = aileron["positive"] / aileron["negative"]
    up = y[AILERON]
    angle = np.empty_like(root)
    angle[0:8] = np.where(-up > 0, up, up * ratio)
    angle[8:16] = np.where(up > 0, -up, -up * ratio)
    angle[TAIL], angle[FIN] = y[ELEVATOR], -y[RUDDER]
    zero -= a.control_effectiveness * np.maximum(root, 0.2) * angle
    stall += a.stall_offset - a.control_stall_shift * angle
    drag += a.control_drag * angle * angle
    return zero, stall, drag, moment


def section_loads(a, sine, cosine, zero_lift, x, root, drag, moment):
    c = a.section
    forward = 1 - np.maximum(cosine, 0)
    fade = 1 - forward * forward
    zero = np.clip(zero_lift * fade, -np.pi / 4, np.pi / 4)
    sz, cz = np.sin(zero), np.cos(zero)
    s, k = sine * cz - cosine * sz, cosine * cz + sine * sz
    ss = s * s
    low, high = 0.116977778440511, 0.5  # squared sines of 20 and 45 deg
    t = np.clip((ss - low) / (high - low), 0, 1)
    plate = np.where(k > 0, t * t * (3 - 2 * t), 1)
    rest = (1 - plate) * c["lift_slope"]
    kirchhoff = 0.25 * (1 + root) ** 2
    of_plate = plate * c["flat_plate"]
    lift_factor = rest * kirchhoff + of_plate
    drag_factor = rest * (kirchhoff - root * root * root * (3 - 2 * root)) + of_plate
    arm = (1 - plate) * (5 + 5 * x - 6 * root) / 16 + plate * (0.5 - 0.25 * k)
    normal = lift_factor * s
    lift = normal * k
    off = np.clip(lift - c["cl_min_drag"], -2, 2)
    cd = c["profile_drag"] + drag + c["drag_rise"] * off * off + drag_factor * ss
    cm = (c["moment"] + moment) * root * fade - normal * (arm - 0.25)
    return lift, cd, cm


def into_the_wake(a, y, velocity, shake, along, normal):
    """Tail and fin in the wake of a stalled wing: slower and shaken; changes along and normal."""
    downwash = 0.5 * (y[90] + y[91])
    slope = np.clip((velocity[2] - 0.5 * downwash) / np.maximum(velocity[0], 1), -1.5, 1.5)
    off = (a.wake_rise[16:] - a.wake_arm[16:] * slope) / (WAKE_HALF_WIDTH_CHORDS * a.d["mean_chord"])
    off[0:6] = off[0]
    close = np.exp(-np.minimum(off * off, 40))
    close[6:] = np.where(off[6:] < 0, 1, close[6:])
    wake = y[WAKE] * close
    before = np.sqrt(along[16:] ** 2 + normal[16:] ** 2)
    along[16:] *= 1 - WAKE_DEFICIT * wake
    normal[16:] += WAKE_SHAKE * wake * shake[16:] * before
