// Draws one slice of the room in colours, with lines of one value.

import { SHADES } from "./colours";
import { contour } from "./contour";
import type { Paper } from "./dom";
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
  p: Paper, heat: Heat, scale: Scale, at: Place, words: (v: number) => string, clear: [number, number][],
): void {
  const { columns, rows } = heat;
  const c = p.context;
  const du = (heat.high_m[0] - heat.low_m[0]) / columns;
  const dv = (heat.high_m[1] - heat.low_m[1]) / rows;
  const taken: [number, number][] = [...clear.map(([x, y]): [number, number] => [x, y - 42]), ...clear];
  for (const level of ticks(scale, 5)) {
    const line = contour(heat.values, columns, rows, level);
    if (line.length < 16) continue;
    for (let i = 0; i < line.length; i += 2) {
      const [x, y] = at(heat.low_m[0] + (line[i]! + 0.5) * du, heat.low_m[1] + (line[i + 1]! + 0.5) * dv);
      line[i] = x;
      line[i + 1] = y;
    }
    c.beginPath();
    for (let i = 0; i < line.length; i += 4) {
      c.moveTo(line[i]!, line[i + 1]!);
      c.lineTo(line[i + 2]!, line[i + 3]!);
    }
    c.strokeStyle = share(scale, level) > 0.7 ? "rgb(60 30 40 / 45%)" : "rgb(255 248 236 / 45%)";
    c.lineWidth = 1;
    c.stroke();
    label(p, line, words(level), taken);
  }
}

/** Writes a line's words on it, near the top of the paper and clear of those before. */
function label({ context: c, width, height }: Paper, line: number[], words: string, taken: [number, number][]): void {
  let best = -1;
  let least = Number.POSITIVE_INFINITY;
  for (let i = 0; i < line.length; i += 4) {
    const x = line[i]!;
    const y = line[i + 1]!;
    const inside = x > 34 && x < width - 34 && y > 16 && y < height - 16;
    if (!inside || taken.some(([tx, ty]) => Math.abs(tx - x) < 72 && Math.abs(ty - y) < 30)) continue;
    const far = Math.hypot(x - 0.62 * width, y - 0.16 * height);
    if (far < least) [least, best] = [far, i];
  }
  if (best < 0) return;
  const x = line[best]!;
  const y = line[best + 1]!;
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
