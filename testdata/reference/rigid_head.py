#!/usr/bin/env python3
"""Write rigid_head.csv beside this file: the pressure at a point on a rigid
sphere from a point source outside it, over the free field at the sphere's
centre.

The series is that of R. O. Duda and W. L. Martens, "Range dependence of the
response of a spherical head model", J. Acoust. Soc. Am. 104 (1998) 3048,

    H = -(rho/mu) exp(-i mu rho) sum of (2m+1) P_m(cos theta) h_m(mu rho)/h_m'(mu)

with mu = ka, rho = r/a and, in their time factor exp(-i omega t), spherical
Hankel functions of the first kind, which mpmath gives through its Bessel
functions of order m + 1/2. The table has its complex conjugate, for
exp(+i omega t). Needs mpmath only and is independent of any Go code.
Run: python3 rigid_head.py
"""
import csv
import os

import mpmath as mp

mp.mp.dps = 50


def hankel(m, x):
    return mp.sqrt(mp.pi / (2 * x)) * mp.hankel1(m + mp.mpf(1) / 2, x)


def head(mu, rho, angles):
    mu, rho = mp.mpf(mu), mp.mpf(rho)
    totals = [mp.mpc(0)] * len(angles)
    before = hankel(-1, mu)
    m = quiet = 0
    while quiet < 5:
        now = hankel(m, mu)
        slope = before - (m + 1) / mu * now
        term = (2 * m + 1) * hankel(m, mu * rho) / slope
        totals = [t + term * mp.legendre(m, mp.cos(a)) for t, a in zip(totals, angles)]
        small = abs(term) < mp.mpf(10) ** -25 * min(abs(t) for t in totals)
        quiet = quiet + 1 if m > mu and small else 0
        before = now
        m += 1
    return [mp.conj(-(rho / mu) * mp.expj(-mu * rho) * t) for t in totals]


DEGREES = [0, 10, 45, 80, 90, 100, 135, 150, 170, 180]

with open(os.path.join(os.path.dirname(os.path.abspath(__file__)), "rigid_head.csv"), "w", newline="") as f:
    f.write("# Pressure on a rigid sphere from a point source over the free field at its centre, exp(+i omega t); Duda and Martens, JASA 104 (1998) 3048; written by rigid_head.py\n")
    out = csv.writer(f, lineterminator="\n")
    out.writerow(["ka", "r_over_a", "theta_deg", "re", "im"])
    for mu in ["0.01", "0.3", "1", "3", "10", "25", "40"]:
        for rho in ["1.25", "2", "5", "20", "100"]:
            values = head(mu, rho, [mp.radians(d) for d in DEGREES])
            for d, v in zip(DEGREES, values):
                out.writerow([mu, rho, d, mp.nstr(v.real, 17), mp.nstr(v.imag, 17)])
