#!/usr/bin/env python3
"""Write polyhedra.csv, geodesic_chords.csv, points_on_sphere.csv and
air_absorption.csv beside this file, from the definitions alone. Needs nothing but
Python, and is independent of any Go code. Takes a minute.

polyhedra.csv: solids from the coordinates of their corners (Coxeter, Regular
Polytopes, chapter 3; Cundy and Rollett, Mathematical Models, chapter 3): edges are
the pairs of corners that are nearest, faces the planes with all corners on one side.

geodesic_chords.csv: each face of the icosahedron is divided by lines parallel to its
edges, and the points are moved out to the ball (class I, method 1; Kenner, Geodesic
Math and How to Use It, chapter on breakdowns). Lengths are lettered as they rise.

points_on_sphere.csv: the least Coulomb energy of N unit charges on a unit ball
(Thomson's problem), by descent from many random starts. Wales and Ulker, Phys. Rev. B
74 (2006) 212101, list these energies; a search proves no minimum, but finds none lower.

air_absorption.csv: the formulae (3) to (5) of ISO 9613-1:1993, clause 6, at the exact
centres of the octaves, 1000 * 10^(3n/10) Hz, in dB/km at 101.325 kPa, to five figures.

Run: python3 tables.py
"""
import itertools
import math
import os
import random

HERE = os.path.dirname(os.path.abspath(__file__))
PHI = (1 + math.sqrt(5)) / 2


def sub(a, b):
    return [x - y for x, y in zip(a, b)]


def dot(a, b):
    return sum(x * y for x, y in zip(a, b))


def cross(a, b):
    return [a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]]


def norm(a):
    return math.sqrt(dot(a, a))


def signs(point):
    """All changes of sign of a point's coordinates."""
    return {tuple(s * x + 0.0 for s, x in zip(turn, point)) for turn in itertools.product((1, -1), repeat=3)}


def even(*points):
    """The points with all changes of sign and even permutations."""
    out = set()
    for x, y, z in points:
        for p in ((x, y, z), (y, z, x), (z, x, y)):
            out |= {tuple(0.0 if v == 0 else v for v in q) for q in signs(p)}
    return sorted(out)


SOLIDS = {
    "tetrahedron": [(1, 1, 1), (1, -1, -1), (-1, 1, -1), (-1, -1, 1)],
    "cube": even((1, 1, 1)),
    "octahedron": even((1, 0, 0)),
    "dodecahedron": even((1, 1, 1), (0, 1 / PHI, PHI)),
    "icosahedron": even((0, 1, PHI)),
    "cuboctahedron": even((1, 1, 0)),
    "icosidodecahedron": even((0, 0, PHI), (0.5, PHI / 2, PHI * PHI / 2)),
    "truncated icosahedron": even((0, 1, 3 * PHI), (1, 2 + PHI, 2 * PHI), (PHI, 2, 2 * PHI + 1)),
    "rhombicosidodecahedron": even((1, 1, PHI ** 3), (PHI ** 2, PHI, 2 * PHI), (2 + PHI, 0, PHI ** 2)),
}


def faces_of(corners, edges):
    """The planes through two edges of a corner that leave all corners on one side."""
    beside = {}
    for a, b in edges:
        beside.setdefault(a, []).append(b)
        beside.setdefault(b, []).append(a)
    found = {}
    for at, others in beside.items():
        for p, q in itertools.combinations(others, 2):
            n = cross(sub(corners[p], corners[at]), sub(corners[q], corners[at]))
            n = [x / norm(n) for x in n]
            height = dot(n, corners[at])
            if height < 0:
                n, height = [-x for x in n], -height
            if height > 1e-9 and all(dot(n, c) < height + 1e-9 for c in corners):
                found[frozenset(i for i, c in enumerate(corners) if dot(n, c) > height - 1e-9)] = n
    return found


def polyhedra():
    yield "# counts, dihedral angles and edge over circumradius of polyhedra, computed from their corners (Coxeter, Regular Polytopes, chapter 3; Cundy and Rollett, Mathematical Models, chapter 3) by tables.py"
    yield "name,vertices,edges,faces,dihedral_deg,edge_over_circumradius"
    for name, corners in SOLIDS.items():
        pairs = list(itertools.combinations(range(len(corners)), 2))
        far = {p: norm(sub(corners[p[0]], corners[p[1]])) for p in pairs}
        edge = min(far.values())
        edges = [p for p in pairs if far[p] < edge * (1 + 1e-9)]
        faces = faces_of(corners, edges)
        angles = set()
        for a, b in edges:
            m, n = [v for k, v in faces.items() if a in k and b in k]
            angles.add(f"{180 - math.degrees(math.acos(max(-1, min(1, dot(m, n))))):.4f}")
        yield f"{name},{len(corners)},{len(edges)},{len(faces)},{'|'.join(sorted(angles, key=float))},{edge / norm(corners[0]):.6f}"


def chords():
    yield "# chord factors (edge over ball radius) of class I subdivisions of the icosahedron, computed from the definition (Kenner, Geodesic Math and How to Use It, 1976) by tables.py; lettered as they rise"
    yield "frequency,letter,chord_factor,edges_in_full_sphere"
    corners = SOLIDS["icosahedron"]
    radius = norm(corners[0])
    edge = min(norm(sub(corners[0], c)) for c in corners[1:])
    triangles = [t for t in itertools.combinations(corners, 3)
                 if all(abs(norm(sub(p, q)) - edge) < 1e-9 for p, q in itertools.combinations(t, 2))]
    for n in range(1, 7):
        seen = {}
        for a, b, c in triangles:
            grid = {}
            for i in range(n + 1):
                for j in range(n + 1 - i):
                    p = [((n - i - j) * x + i * y + j * z) / n for x, y, z in zip(a, b, c)]
                    grid[i, j] = [x / norm(p) for x in p]
            for (i, j), p in grid.items():
                for k in ((i + 1, j), (i, j + 1), (i - 1, j + 1)):
                    if k in grid:
                        q = grid[k]
                        key = frozenset((tuple(round(x, 9) + 0.0 for x in p), tuple(round(x, 9) + 0.0 for x in q)))
                        seen[key] = round(norm(sub(p, q)), 9)
        lengths = sorted(set(seen.values()))
        for letter, length in zip("ABCDEFGHIJKLMNOP", lengths):
            yield f"{n},{letter},{length:.5f},{sum(v == length for v in seen.values())}"


def energy_and_pull(p):
    total, pull = 0.0, [[0.0, 0.0, 0.0] for _ in p]
    for i in range(len(p)):
        xi, yi, zi = p[i]
        for j in range(i):
            xj, yj, zj = p[j]
            dx, dy, dz = xi - xj, yi - yj, zi - zj
            inv = 1 / math.sqrt(dx * dx + dy * dy + dz * dz)
            total += inv
            cube = inv ** 3
            for to, s in ((pull[i], cube), (pull[j], -cube)):
                to[0] += s * dx
                to[1] += s * dy
                to[2] += s * dz
    return total, pull


def descend(p):
    step, (best, pull) = 0.5 / len(p), energy_and_pull(p)
    for _ in range(6000):
        moved = []
        for a, f in zip(p, pull):
            along = dot(a, f)
            q = [x + step * (g - along * x) for x, g in zip(a, f)]
            moved.append([x / norm(q) for x in q])
        now, force = energy_and_pull(moved)
        if now <= best:
            if best - now < 1e-15 * best:
                return now
            p, best, pull, step = moved, now, force, step * 1.2
        else:
            step /= 2
    return best


def energies():
    yield "# least Coulomb energy of N unit charges on a unit sphere (Thomson problem; Wales and Ulker, Phys. Rev. B 74 (2006) 212101, list them), computed by tables.py: the lowest of a search, which proves no minimum"
    yield "n,energy"
    dice = random.Random(1)
    for n, starts in ((4, 4), (6, 4), (8, 4), (12, 4), (20, 6), (24, 6), (32, 6), (50, 8), (72, 8)):
        best = math.inf
        for _ in range(starts):
            p = [[dice.gauss(0, 1) for _ in range(3)] for _ in range(n)]
            best = min(best, descend([[x / norm(q) for x in q] for q in p]))
        yield f"{n},{best:.9f}"


def absorption(hz, celsius, percent):
    """dB/m: ISO 9613-1:1993, formulae (3), (4) and (5), and (B.2), (B.3) for the vapour."""
    t, t0, t01 = celsius + 273.15, 293.15, 273.16
    h = percent * 10 ** (-6.8346 * (t01 / t) ** 1.261 + 4.6151)
    oxygen = 24 + 4.04e4 * h * (0.02 + h) / (0.391 + h)
    nitrogen = (t / t0) ** -0.5 * (9 + 280 * h * math.exp(-4.170 * ((t / t0) ** (-1 / 3) - 1)))
    return 8.686 * hz * hz * (1.84e-11 * (t / t0) ** 0.5 + (t / t0) ** -2.5 * (
        0.01275 * math.exp(-2239.1 / t) / (oxygen + hz * hz / oxygen)
        + 0.1068 * math.exp(-3352.0 / t) / (nitrogen + hz * hz / nitrogen)))


def air():
    yield "# atmospheric attenuation in dB/km at 101.325 kPa at the exact centres of the octaves, computed from the formulae of ISO 9613-1:1993, clause 6, by tables.py"
    yield "temperature_c,humidity_percent,63,125,250,500,1000,2000,4000,8000"
    for celsius, percent in ((10, 70), (20, 70), (30, 70), (15, 20), (15, 50), (15, 80)):
        row = [f"{1000 * absorption(1000 * 10 ** (0.3 * n), celsius, percent):.5g}" for n in range(-4, 4)]
        yield ",".join([str(celsius), str(percent)] + row)


for file, lines in (("polyhedra.csv", polyhedra), ("geodesic_chords.csv", chords),
                    ("points_on_sphere.csv", energies), ("air_absorption.csv", air)):
    with open(os.path.join(HERE, file), "w", encoding="utf-8") as f:
        f.writelines(line + "\n" for line in lines())
