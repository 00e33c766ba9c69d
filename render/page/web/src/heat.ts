// Draws one slice of the room in colours, with lines of one value.

import { SHADES } from "./colours";
import { contour } from "./contour";
import type { Scale } from "./scale";
import { share, ticks } from "./scale";
import type { Heat } from "./types";

/** A place on the paper for u and v in metres. */
export type Place = (u: number, v: number) => [number, number];

const still = document.createElement("canvas");

export function drawHeat(c: CanvasRenderingContext2D, heat: Heat, scale: Scale, at: Place): void {
  const { columns, rows, values } = heat;
  still.width = columns;
  still.height = rows;
  const own = still.getContext("2d");
  if (own === null) return;
  const image = own.createImageData(columns, rows);
  for (let r = 0; r < rows; r++) {
    for (let k = 0; k < columns; k++) {
      const v = values[r * columns + k];
      if (v == null) continue;
      const [red, green, blue] = SHADES[Math.round(255 * Math.min(Math.max(share(scale, v), 0), 1))]!;
      const p = 4 * ((rows - 1 - r) * columns + k);
      image.data[p] = red;
      image.data[p + 1] = green;
      image.data[p + 2] = blue;
      image.data[p + 3] = 255;
    }
  }
  own.putImageData(image, 0, 0);
  const [left, bottom] = at(heat.low_m[0], heat.low_m[1]);
  const [right, top] = at(heat.high_m[0], heat.high_m[1]);
  c.imageSmoothingEnabled = true;
  c.imageSmoothingQuality = "high";
  c.drawImage(still, left, top, right - left, bottom - top);
}

/** Draws a few lines of one value, each with its words where there is room; some places stay clear of them. */
export function drawContours(
  c: CanvasRenderingContext2D, heat: Heat, scale: Scale, at: Place, words: (v: number) => string, clear: [number, number][],
): void {
  const { columns, rows } = heat;
  const du = (heat.high_m[0] - heat.low_m[0]) / columns;
  const dv = (heat.high_m[1] - heat.low_m[1]) / rows;
  const spot = (col: number, row: number) => at(heat.low_m[0] + (col + 0.5) * du, heat.low_m[1] + (row + 0.5) * dv);
  const taken: [number, number][] = [...clear.map(([x, y]): [number, number] => [x, y - 42]), ...clear];
  for (const level of ticks(scale, 5)) {
    const lines = contour(heat.values, columns, rows, level).map(([a, b, d, e]) => [...spot(a, b), ...spot(d, e)] as const);
    if (lines.length < 4) continue;
    c.beginPath();
    for (const [x1, y1, x2, y2] of lines) {
      c.moveTo(x1, y1);
      c.lineTo(x2, y2);
    }
    c.strokeStyle = share(scale, level) > 0.7 ? "rgb(60 30 40 / 45%)" : "rgb(255 248 236 / 45%)";
    c.lineWidth = 1;
    c.stroke();
    label(c, lines, words(level), taken);
  }
}

/** Writes a line's words on it, near the top of the paper and clear of those before. */
function label(c: CanvasRenderingContext2D, lines: readonly (readonly [number, number, number, number])[], words: string, taken: [number, number][]): void {
  const wide = c.canvas.clientWidth;
  const high = c.canvas.clientHeight;
  let best: readonly [number, number, number, number] | undefined;
  let least = Number.POSITIVE_INFINITY;
  for (const line of lines) {
    const [x, y] = line;
    const inside = x > 34 && x < wide - 34 && y > 16 && y < high - 16;
    if (!inside || taken.some(([tx, ty]) => Math.abs(tx - x) < 72 && Math.abs(ty - y) < 30)) continue;
    const far = Math.hypot(x - 0.62 * wide, y - 0.16 * high);
    if (far < least) [least, best] = [far, line];
  }
  if (best === undefined) return;
  const [x, y] = best;
  taken.push([x, y]);
  const w = c.measureText(words).width + 10;
  c.fillStyle = "rgb(252 247 236 / 90%)";
  c.beginPath();
  c.roundRect(x - w / 2, y - 9, w, 18, 9);
  c.fill();
  c.fillStyle = "#2a2320";
  c.textAlign = "center";
  c.textBaseline = "middle";
  c.fillText(words, x, y + 0.5);
}
