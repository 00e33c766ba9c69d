// Lines of one value over a grid, by marching squares (the table of sixteen
// cases is common practice). Saddles are cut by the value of their middle.

import type { Maybe } from "./types";

/**
 * The line of a level as pieces, four numbers each: x1, y1, x2, y2 in columns and
 * rows, cell centres at whole numbers.
 */
export function contour(values: readonly Maybe[], columns: number, rows: number, level: number): number[] {
  const out: number[] = [];
  for (let r = 0; r + 1 < rows; r++) {
    for (let c = 0; c + 1 < columns; c++) {
      const at = r * columns + c;
      const a = values[at];
      const b = values[at + 1];
      const d = values[at + columns];
      const e = values[at + columns + 1];
      if (a == null || b == null || d == null || e == null) continue;
      cell(out, c, r, a, b, e, d, level);
    }
  }
  return out;
}

/** Corners in order: lower left a, lower right b, upper right e, upper left d. */
function cell(out: number[], c: number, r: number, a: number, b: number, e: number, d: number, level: number): void {
  const [la, lb, le, ld] = [a < level, b < level, e < level, d < level];
  if (la === lb && lb === le && le === ld) return;
  const bottom = () => out.push(c + (level - a) / (b - a), r);
  const right = () => out.push(c + 1, r + (level - b) / (e - b));
  const top = () => out.push(c + (level - d) / (e - d), r + 1);
  const left = () => out.push(c, r + (level - a) / (d - a));
  if (la !== lb && lb !== le && le !== ld) {
    // A saddle: its middle says which two corners belong together.
    const isJoined = (a + b + e + d) / 4 < level === la;
    if (isJoined) {
      bottom();
      right();
      top();
      left();
    } else {
      left();
      bottom();
      right();
      top();
    }
    return;
  }
  if (la !== lb) bottom();
  if (lb !== le) right();
  if (le !== ld) top();
  if (ld !== la) left();
}
