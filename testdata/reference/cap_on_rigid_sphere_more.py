#!/usr/bin/env python3
"""Write cap_on_rigid_sphere_more.csv beside this file: the field of a polar cap
on a rigid sphere, nearer, farther, lower, higher and for other caps than in
cap_on_rigid_sphere.csv.

Needs mpmath only, and is independent of any Go code that is checked against
the table: the spherical Hankel functions are carried as they are, at 60 digits
and with mpmath's unbounded exponent, by DLMF 10.51.1 from DLMF 10.49.1, and
the series is summed until a hundred terms running are below 1e-32 of the sum.
Run: python3 cap_on_rigid_sphere_more.py
"""
import csv
import os

import mpmath as mp

mp.mp.dps = 60


def hankel2(z):
    """Yield h_0, h_1, ... of the second kind at z."""
    e = mp.expj(-z)
    before, now = 1j * e / z, e * (1j / z**2 - 1 / z)
    n = 0
    while True:
        yield before
        n += 1
        before, now = now, (2 * n + 1) / z * now - before


def legendre(x):
    """Yield P_0, P_1, ... at x."""
    before, now = mp.mpf(1), x
    n = 0
    while True:
        yield before
        n += 1
        before, now = now, ((2 * n + 1) * x * now - n * before) / (n + 1)


def cap_on_sphere(ka, half_angle, r_over_a, gammas):
    """The values at all angles gammas: the pressure over that of a point source
    of the same volume velocity at the centre, time factor exp(+i omega t)."""
    ka, alpha, s = mp.mpf(ka), mp.mpf(half_angle), mp.mpf(r_over_a)
    x, kr = mp.cos(alpha), ka * s
    far, near, cap = hankel2(kr), hankel2(ka), legendre(x)
    angles = [legendre(mp.cos(mp.mpf(g))) for g in gammas]
    totals = [mp.mpc(0)] * len(gammas)
    h_before, h = None, next(near)
    p_before, p, p_after = None, next(cap), next(cap)
    n = small = 0
    while small < 100:
        h_after = next(near)
        slope = -h_after if n == 0 else h_before - (n + 1) / ka * h
        weight = (1 - x) / 2 if n == 0 else (p_before - p_after) / 2
        term = -1j * weight * next(far) / slope
        totals = [t + term * next(a) for t, a in zip(totals, angles)]
        quiet = abs(term) < mp.mpf(10) ** -32 * min(abs(t) for t in totals)
        small = small + 1 if n > ka and quiet else 0
        h_before, h = h, h_after
        p_before, p, p_after = p, p_after, next(cap)
        n += 1
    free = 1j * ka * 2 * mp.pi * (1 - x) * mp.expj(-kr) / (4 * mp.pi * s)
    return [t / free for t in totals]


GAMMAS = ("0", "0.5", "20", "60", "88", "90", "105", "135", "165", "179", "180")

CASES = [  # ka, cap half angle in degrees, r/a
    ("0.001", "5", "3"), ("0.001", "60", "1.01"), ("0.001", "1", "1000"),
    ("0.02", "0.5", "1.1"), ("0.02", "12", "12.5"),
    ("0.7", "1", "1.01"), ("0.7", "30", "2"), ("0.7", "90", "1000"),
    ("2", "1", "1000"), ("2", "8", "1.05"), ("2", "45", "12.5"),
    ("5", "5", "1.02"), ("5", "60", "5"),
    ("7", "0.5", "40"), ("7", "20", "1.2"),
    ("12", "3", "1.01"), ("12", "60", "1000"),
    ("18", "5", "13"), ("18", "12", "1.5"),
    ("30", "1", "1.01"), ("30", "5", "2"), ("30", "40", "13"),
    ("44", "6", "13"), ("44", "6", "1.1"),
    ("60", "1", "1.01"), ("60", "1", "1000"), ("60", "5", "1.02"), ("60", "12", "13"),
    ("60", "30", "3"), ("60", "60", "1.01"), ("60", "60", "1000"), ("60", "90", "5"),
    ("200", "5", "1.05"), ("200", "2", "13"), ("400", "5", "1000"),
]


def main():
    rows = [("ka", "cap_half_angle_deg", "r_over_a", "gamma_deg", "re", "im")]
    for ka, alpha, s in CASES:
        values = cap_on_sphere(ka, mp.radians(mp.mpf(alpha)), s, [mp.radians(mp.mpf(g)) for g in GAMMAS])
        for gamma, v in zip(GAMMAS, values):
            rows.append((ka, alpha, s, gamma, mp.nstr(v.real, 18), mp.nstr(v.imag, 18)))
    here = os.path.dirname(os.path.abspath(__file__))
    with open(os.path.join(here, "cap_on_rigid_sphere_more.csv"), "w", newline="") as f:
        f.write("# polar cap on a rigid sphere over a point source of equal volume velocity at the centre; "
                "exp(+iwt); spherical-harmonic series (Morse and Ingard, Theoretical Acoustics, ch. 7; "
                "Beranek and Mellow, Acoustics: Sound Fields, Transducers and Vibration, section 12.6); "
                "computed with mpmath at 60 digits by cap_on_rigid_sphere_more.py\n")
        csv.writer(f).writerows(rows)


if __name__ == "__main__":
    main()
