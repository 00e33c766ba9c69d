#!/usr/bin/env python3
"""Write sweep.csv beside this file: what an exponential sine sweep went through, found
by dividing spectra in numpy.

The sweep is that of A. Farina, AES 108th Convention, 2000, preprint 5093: 40 Hz to
20 kHz in 2 s at 48 kHz. It goes through two sections of the W3C Audio EQ Cookbook
(peaking +6 dB, Q 2, 1 kHz; low-pass, Q 0.7071, 16 kHz) and a comb (an echo half as
strong after 22 samples), all in the time domain, sample by sample. Its inverse is the
division of spectra; the impulse response is cut to its first 0.2 s and transformed
again. Needs numpy only and is independent of any Go code. Run: python3 sweep.py
"""
import csv
import os

import numpy as np

RATE = 48000
F1, F2, T = 40.0, 20000.0, 2.0
L = T / np.log(F2 / F1)


def peaking(f, q, gain):
    w = 2 * np.pi * f / RATE
    a, alpha = 10 ** (gain / 40), np.sin(w) / (2 * q)
    b = np.array([1 + alpha * a, -2 * np.cos(w), 1 - alpha * a])
    return b / (1 + alpha / a), np.array([1 + alpha / a, -2 * np.cos(w), 1 - alpha / a]) / (1 + alpha / a)


def lowpass(f, q):
    w = 2 * np.pi * f / RATE
    c, alpha = np.cos(w), np.sin(w) / (2 * q)
    b = np.array([(1 - c) / 2, 1 - c, (1 - c) / 2])
    return b / (1 + alpha), np.array([1 + alpha, -2 * c, 1 - alpha]) / (1 + alpha)


def run(x, b, a):
    y = np.zeros_like(x)
    x1 = x2 = y1 = y2 = 0.0
    for i, v in enumerate(x):
        o = b[0] * v + b[1] * x1 + b[2] * x2 - a[1] * y1 - a[2] * y2
        x2, x1, y2, y1 = x1, v, y1, o
        y[i] = o
    return y


t = np.arange(int(T * RATE)) / RATE
sweep = np.zeros(int(4 * RATE))
sweep[: len(t)] = np.sin(2 * np.pi * F1 * L * (np.exp(t / L) - 1))
heard = sweep.copy()
heard[22:] += 0.5 * sweep[:-22]
for b, a in (peaking(1000, 2, 6), lowpass(16000, np.sqrt(0.5))):
    heard = run(heard, b, a)

n = 1 << 18
h = np.fft.irfft(np.fft.rfft(heard, n) / np.fft.rfft(sweep, n) * (np.fft.rfftfreq(n, 1 / RATE) < 21000), n)
h = np.concatenate([h[-2400:], h[: int(0.2 * RATE)]])

with open(os.path.join(os.path.dirname(os.path.abspath(__file__)), "sweep.csv"), "w", newline="") as f:
    f.write("# Level of two filters and a comb, by deconvolution of an exponential sweep (Farina, AES 108, 2000) in numpy; written by sweep.py\n")
    out = csv.writer(f, lineterminator="\n")
    out.writerow(["frequency_hz", "level_db"])
    for hz in np.geomspace(100, 16000, 60):
        hz = round(float(hz), 1)
        value = np.sum(h * np.exp(-2j * np.pi * hz * np.arange(len(h)) / RATE))
        out.writerow([hz, "%.5f" % (20 * np.log10(abs(value)))])
