#!/usr/bin/env python3
"""Write impedance_noisy.csv and impedance_fit.csv beside this file: impedances of
invented drivers with one percent of noise, and what SciPy's least_squares (MINPACK's
Levenberg-Marquardt) finds in them, with standard errors.

    Z = Re + i w Le + K sqrt(i w) + Re Qms/Qes/(1 + i Qms (f/fs - fs/f))

(R. H. Small, J. Audio Eng. Soc. 20 (1972) 383; J. Vanderkooy, J. Audio Eng. Soc. 37
(1989) 119). Residuals are the real and imaginary parts of ln(Z/Znoisy). The standard
errors are the roots of the diagonal of s2 (J'J)^-1. The values that are fitted are
Re, fs, Qms, Qes, Le and K themselves; the error of Qts is by first derivatives.
Needs numpy and scipy only and is independent of any Go code.
Run: python3 impedance_fit.py
"""
import csv
import os

import numpy as np
from scipy.optimize import least_squares

FREQUENCY = 20 * 10 ** (np.arange(121) / 40)  # 20 Hz to 20 kHz
CASES = {
    "small driver": (7.1, 150, 3.2, 1.14, 5e-5, None),
    "weak motor": (3.6, 210, 2.1, 3.4, 3e-5, None),
    "high Q": (6.2, 95, 9.5, 0.62, 2.2e-4, None),
    "solid iron": (7.1, 150, 3.2, 1.14, 4e-5, 0.012),
}
NAMES = ("dc_ohm", "resonance_hz", "qms", "qes", "inductance_h", "semi_ohm")


def impedance(v, f):
    re, fs, qms, qes, le = v[:5]
    k = v[5] if len(v) > 5 else 0
    s = 2j * np.pi * f
    return re + s * le + k * np.sqrt(s) + re * qms / qes / (1 + 1j * qms * (f / fs - fs / f))


def main():
    here = os.path.dirname(os.path.abspath(__file__))
    random = np.random.default_rng(8)
    noisy = [["case", "frequency_hz", "ohm", "degrees"]]
    found = [["case", "name", "value", "error"]]
    for name, true in CASES.items():
        true = np.array([v for v in true if v is not None])
        z = impedance(true, FREQUENCY)
        z = z * (1 + 0.01 * (random.standard_normal(z.size) + 1j * random.standard_normal(z.size)))
        noisy += [[name, f"{f:.12g}", f"{abs(v):.12g}", f"{np.degrees(np.angle(v)):.12g}"] for f, v in zip(FREQUENCY, z)]

        def off(v):
            d = np.log(impedance(v * true, FREQUENCY) / z)
            return np.concatenate([d.real, d.imag])

        fit = least_squares(off, np.ones(true.size), method="lm", xtol=1e-14, ftol=1e-14, gtol=1e-14)
        spread = np.linalg.inv(fit.jac.T @ fit.jac) * 2 * fit.cost / (fit.fun.size - true.size)
        spread = spread * np.outer(true, true)
        v = fit.x * true
        for i, x in enumerate(v):
            found.append([name, NAMES[i], f"{x:.12g}", f"{np.sqrt(spread[i, i]):.8g}"])
        qms, qes = v[2], v[3]
        slope = np.zeros(true.size)
        slope[2], slope[3] = (qes / (qms + qes)) ** 2, (qms / (qms + qes)) ** 2
        found.append([name, "qts", f"{qms * qes / (qms + qes):.12g}", f"{np.sqrt(slope @ spread @ slope):.8g}"])
    for file, rows in (("impedance_noisy.csv", noisy), ("impedance_fit.csv", found)):
        with open(os.path.join(here, file), "w", newline="") as out:
            out.write("# Impedance of invented drivers with noise, and its fit by scipy.optimize.least_squares; written by impedance_fit.py\n")
            csv.writer(out, lineterminator="\n").writerows(rows)


if __name__ == "__main__":
    main()
