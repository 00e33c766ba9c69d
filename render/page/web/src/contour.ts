// Lines of one value over a grid, by marching squares (the table of sixteen
// cases is common practice). Saddles are cut by the value of their middle.

import type { Maybe } from "./types";

/** A piece of a line: x1, y1, x2, y2 in columns and rows, cell centres at whole numbers. */
export type Piece = [number, number, number, number];

export function contour(values: readonly Maybe[], columns: number, rows: number, level: number): Piece[] {
  const out: Piece[] = [];
  for (let r = 0; r + 1 < rows; r++) {
    for (let c = 0; c + 1 < columns; c++) {
      const a = values[r * columns + c];
      const b = values[r * columns + c + 1];
      const d = values[(r + 1) * columns + c];
      const e = values[(r + 1) * columns + c + 1];
      if (a == null || b == null || d == null || e == null) continue;
      cell(out, c, r, [a, b, e, d], level);
    }
  }
  return out;
}

/** Corners in order: lower left, lower right, upper right, upper left. */
function cell(out: Piece[], c: number, r: number, v: [number, number, number, number], level: number): void {
  const corner: [number, number][] = [[c, r], [c + 1, r], [c + 1, r + 1], [c, r + 1]];
  const cut: ([number, number] | null)[] = [0, 1, 2, 3].map((i) => {
    const j = (i + 1) % 4;
    const from = v[i]!;
    const to = v[j]!;
    if (from < level === to < level) return null;
    const t = (level - from) / (to - from);
    const p = corner[i]!;
    const q = corner[j]!;
    return [p[0] + t * (q[0] - p[0]), p[1] + t * (q[1] - p[1])];
  });
  const found = cut.filter((p): p is [number, number] => p !== null);
  if (found.length === 2) out.push([...found[0]!, ...found[1]!]);
  if (found.length === 4) {
    const middle = (v[0] + v[1] + v[2] + v[3]) / 4;
    const turn = middle < level === v[0] < level ? [0, 1, 2, 3] : [3, 0, 1, 2];
    out.push([...found[turn[0]!]!, ...found[turn[1]!]!], [...found[turn[2]!]!, ...found[turn[3]!]!]);
  }
}
