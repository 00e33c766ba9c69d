#!/usr/bin/env python3
"""How long numpy takes for one term of a free-field sum, in ns on one core.

The sum is what a map of the design's numbers asks for: 60 drivers, 4,096 cells and 105
frequencies of exp(-ikr)/r, times a weight for each driver and frequency. It is what the
rates of BenchmarkMap in timing are held against: run both on the same machine.
"""
import os

for name in ("OMP_NUM_THREADS", "OPENBLAS_NUM_THREADS", "MKL_NUM_THREADS"):
    os.environ[name] = "1"
import time

import numpy as np

DRIVERS, CELLS, FREQUENCIES = 60, 4096, 105

rng = np.random.default_rng(1)
driver = rng.normal(size=(DRIVERS, 3))
driver *= 0.15 / np.linalg.norm(driver, axis=1)[:, None]
side = np.linspace(-2.8, 2.8, 64)
x, y = np.meshgrid(side, side)
cell = np.stack([x.ravel(), y.ravel(), np.full(CELLS, 0.6)], axis=1)
k = 2 * np.pi * np.geomspace(100, 10000, FREQUENCIES) / 344
weight = np.exp(2j * np.pi * rng.random((DRIVERS, FREQUENCIES)))


def total():
    out = np.zeros((CELLS, FREQUENCIES), complex)
    for d in range(DRIVERS):
        r = np.linalg.norm(cell - driver[d], axis=1)[:, None]
        out += weight[d] * np.exp(-1j * k * r) / r
    return out


best = float("inf")
for _ in range(3):
    start = time.process_time()
    total()
    best = min(best, time.process_time() - start)
print(f"{best / (DRIVERS * CELLS * FREQUENCIES) * 1e9:.1f} ns per term")
