#!/usr/bin/env python3
"""Write loudness.csv beside this file: loudness and true peak of a few signals by
the library libebur128 (MIT licence; Debian's libebur128-1), for signals that any
language makes alike from sines and a linear congruential generator.

Run: python3 loudness.py
"""
import csv
import ctypes
import math
import os

lib = ctypes.CDLL("libebur128.so.1")
lib.ebur128_init.restype = ctypes.c_void_p
MOMENTARY, INTEGRATED, TRUE_PEAK = 1, 1 << 2 | 1, 1 << 5 | 1 << 4 | 1


def noise():
    """Yield numbers from -1 to 1: the generator of Numerical Recipes."""
    state = 1770
    while True:
        state = (state * 1664525 + 1013904223) % 2**32
        yield state / 2**31 - 1


def steps(rate):
    """Noise that changes its level each second, below both gates at times."""
    source = noise()
    for level in (-20, -75, -45, -10, -30, -65, -15, -40, -72, -25, -80, -50):
        gain = 10 ** (level / 20)
        for _ in range(rate):
            yield gain * next(source), gain * next(source) / 2


def chirp(rate):
    """A sine that rises from 20 Hz to 10 kHz in 10 s."""
    for n in range(10 * rate):
        t = n / rate
        angle = 2 * math.pi * (20 * t + 499 * t * t)
        yield 0.3 * math.sin(angle), 0.1 * math.cos(angle)


def hum(rate):
    """Hum and a little hiss."""
    source = noise()
    for n in range(4 * rate):
        yield 0.5 * math.sin(100 * math.pi * n / rate), 0.01 * next(source)


def clicks(rate):
    """Three clicks a second, one sample each."""
    for n in range(9 * rate):
        yield (0.8, -0.4) if n % (rate // 3) == 100 else (0.0, 0.0)


def burst(rate):
    """Not much longer than a block, loud at its end."""
    for n in range(rate * 7 // 10):
        v = math.sin(4000 * math.pi * n / rate) * (0.5 if n > rate * 6 // 10 else 0.001)
        yield v, v


def measure(signal, rate):
    state = ctypes.c_void_p(lib.ebur128_init(2, ctypes.c_ulong(rate), INTEGRATED | TRUE_PEAK))
    flat = [v for frame in signal(rate) for v in frame]
    data = (ctypes.c_double * len(flat))(*flat)
    if lib.ebur128_add_frames_double(state, data, ctypes.c_size_t(len(flat) // 2)):
        raise RuntimeError("the library does not take the samples")
    value = ctypes.c_double()
    found = []
    for ask in (lib.ebur128_loudness_global, lib.ebur128_loudness_momentary):
        if ask(state, ctypes.byref(value)):
            raise RuntimeError("the library has no answer")
        found.append(value.value)
    peaks = []
    for channel in (0, 1):
        lib.ebur128_true_peak(state, ctypes.c_uint(channel), ctypes.byref(value))
        peaks.append(value.value)
    lib.ebur128_destroy(ctypes.byref(state))
    return found + [20 * math.log10(max(peaks))]


with open(os.path.join(os.path.dirname(os.path.abspath(__file__)), "loudness.csv"), "w", newline="") as f:
    f.write("# loudness by ITU-R BS.1770 in LUFS, momentary at the end, and true peak in dBTP of signals that loudness.py describes; measured with libebur128 1.2.6 by loudness.py\n")
    w = csv.writer(f, lineterminator="\n")
    w.writerow(["signal", "rate", "integrated_lufs", "momentary_lufs", "true_peak_dbtp"])
    for rate in (22050, 44100, 48000, 96000):
        for signal in (steps, chirp, hum, clicks, burst):
            w.writerow([signal.__name__, rate] + ["%.5f" % v for v in measure(signal, rate)])
