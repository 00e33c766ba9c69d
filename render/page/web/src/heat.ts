// Draws one slice of the room in colours, with lines of one value.

import { packed } from "./colours";
import { contour } from "./contour";
import type { Paper } from "./dom";
import { Layer } from "./layer";
import type { Scale } from "./scale";
import { light, ticks } from "./scale";
import type { Heat, Maybe } from "./types";

/** A place on the paper for u and v in metres. */
export type Place = (u: number, v: number) => [number, number];

const still = document.createElement("canvas");
let image: ImageData | null = null;

function drawHeat(c: CanvasRenderingContext2D, heat: Heat, scale: Scale, at: Place): void {
  const { columns, rows, values } = heat;
  const own = still.getContext("2d");
  if (own === null) return;
  if (still.width !== columns || still.height !== rows) {
    still.width = columns;
    still.height = rows;
  }
  if (image?.width !== columns || image.height !== rows) image = own.createImageData(columns, rows);
  const pixels = new Uint32Array(image.data.buffer);
  for (let r = 0; r < rows; r++) {
    for (let k = 0; k < columns; k++) {
      const v = values[r * columns + k];
      pixels[(rows - 1 - r) * columns + k] = v == null ? 0 : packed(light(scale, v));
    }
  }
  own.putImageData(image, 0, 0);
  const [left, bottom] = at(heat.low_m[0], heat.low_m[1]);
  const [right, top] = at(heat.high_m[0], heat.high_m[1]);
  c.imageSmoothingEnabled = true;
  // The smoothest takes the processor half of a frame: a map that is soon another goes without.
  c.imageSmoothingQuality = heat.isFine && heat.isWhole ? "high" : "low";
  c.drawImage(still, left, top, right - left, bottom - top);
}

/** What words stay clear of: its middle, half its width and half its height, in pixels. */
export type Box = [x: number, y: number, halfWidth: number, halfHeight: number];

/** A line of one value, in pieces of four numbers: x and y of both ends, in pixels. */
interface Contour {
  level: number;
  line: number[];
}

/** What there is of heat on a map, which stays while the chair moves on and no newer comes. */
export class HeatPicture {
  private readonly layer = new Layer();
  private contours: Contour[] = [];

  /** Draws it; that of a former place without lines, and paler. */
  draw(p: Paper, heat: Heat, scale: Scale, at: Place, former: number | null): void {
    p.context.globalAlpha = former ?? 1;
    this.layer.put(p, [heat, scale, former], (own) => {
      drawHeat(own.context, heat, scale, at);
      this.contours = former === null ? drawContours(own.context, heat, scale, at) : [];
    });
    p.context.globalAlpha = 1;
  }

  /** Writes on lines what they are of, where there is room, clear of some boxes. */
  label(p: Paper, words: (v: number) => string, clear: Box[]): void {
    const taken: Box[] = [...clear];
    for (const { level, line } of this.contours) label(p, line, words(level), taken);
  }
}

/** Draws a few lines of one value. */
function drawContours(c: CanvasRenderingContext2D, heat: Heat, scale: Scale, at: Place): Contour[] {
  const { columns, rows } = heat;
  const du = (heat.high_m[0] - heat.low_m[0]) / columns;
  const dv = (heat.high_m[1] - heat.low_m[1]) / rows;
  const values = smooth(heat);
  const out: Contour[] = [];
  for (const level of ticks(scale, 5)) {
    const line = contour(values, columns, rows, level);
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
    c.strokeStyle = light(scale, level) > 0.7 ? "rgb(60 30 40 / 45%)" : "rgb(255 248 236 / 45%)";
    c.lineWidth = 1;
    c.stroke();
    out.push({ level, line });
  }
  return out;
}

/** Writes a line's words on it, near the top of the paper and clear of those before. */
function label({ context: c, width, height }: Paper, line: number[], words: string, taken: Box[]): void {
  const half = c.measureText(words).width / 2 + 8;
  let best = -1;
  let least = Number.POSITIVE_INFINITY;
  for (let i = 0; i < line.length; i += 4) {
    const x = line[i]!;
    const y = line[i + 1]!;
    const inside = x > 34 && x < width - 34 && y > 16 && y < height - 16;
    if (!inside || taken.some(([tx, ty, w, h]) => Math.abs(tx - x) < w + half && Math.abs(ty - y) < h + 12)) continue;
    const far = Math.hypot(x - 0.62 * width, y - 0.16 * height);
    if (far < least) [least, best] = [far, i];
  }
  if (best < 0) return;
  const x = line[best]!;
  const y = line[best + 1]!;
  taken.push([x, y, half + 6, 14]);
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

const WEIGHT = [1, 2, 1];

/** A slice evened out over its neighbours, for lines without steps; cells without a value keep none. */
function smooth({ values, columns, rows }: Heat): Maybe[] {
  return values.map((own, i) => {
    if (own === null) return null;
    const [c, r] = [i % columns, Math.floor(i / columns)];
    let [sum, whole] = [0, 0];
    for (let y = Math.max(r - 1, 0); y <= Math.min(r + 1, rows - 1); y++) {
      for (let x = Math.max(c - 1, 0); x <= Math.min(c + 1, columns - 1); x++) {
        const v = values[y * columns + x];
        if (v == null) continue;
        const w = WEIGHT[x - c + 1]! * WEIGHT[y - r + 1]!;
        sum += w * v;
        whole += w;
      }
    }
    return sum / whole;
  });
}
