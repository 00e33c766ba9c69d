// The body on the map, with its drivers in the colours of their channels.

import { solids } from "./bodies";
import { channelColour, css } from "./colours";
import type { PlanAnswer, Solid, Triple } from "./document";
import { ink } from "./dom";
import type { Paper } from "./dom";
import type { Place } from "./heat";
import { Layer } from "./layer";
import { flat, toEye } from "./slice";
import type { Row, View } from "./types";

export class BodyPicture {
  private readonly layer = new Layer();

  /** Draws it. It stays while no driver goes to another channel, the map has one frame and, from the side, one looks from the same side. */
  draw(p: Paper, at: Place, planned: PlanAnswer, rows: Row[], spot: Triple, view: View): void {
    const from = view === "above" ? view : Math.atan2(spot[1], spot[0]);
    const channels = rows.map((d) => d.channel).join();
    this.layer.put(p, [planned, channels, from, ...at(0, 0), ...at(1, 1), ink("--ink")], ({ context }) => drawBody(context, at, planned, rows, spot, view));
  }
}

/** Draws the body with its drivers, in the colours of their channels, and the floor where it is seen. */
function drawBody(c: CanvasRenderingContext2D, at: Place, planned: PlanAnswer, rows: Row[], spot: Triple, view: View): void {
  for (const level of [planned.floor_m, planned.ceiling_m]) {
    if (view !== "side" || level === null) continue;
    const [, y] = at(0, level);
    c.fillStyle = ink("--ink");
    c.fillRect(0, y - 1, c.canvas.width, 2);
  }
  for (const solid of solids(planned)) {
    c.beginPath();
    for (const [i, point] of outline(solid, spot, view).entries()) {
      const [x, y] = at(...point);
      if (i === 0) c.moveTo(x, y);
      else c.lineTo(x, y);
    }
    c.closePath();
    c.lineJoin = "round";
    c.fillStyle = "#fbf6ea";
    c.fill();
    c.strokeStyle = "#2a2320";
    c.lineWidth = 1.5;
    c.stroke();
  }
  const channel = new Map(rows.map((d) => [d.id, d.channel]));
  const [o] = at(0, 0);
  const dots = new Map<number, Path2D>(); // of each channel in one
  for (const d of planned.drivers) {
    if (toEye(d.normal, spot, view) < 0.05) continue;
    const [x, y] = at(...flat([d.at_mm[0] / 1000, d.at_mm[1] / 1000, d.at_mm[2] / 1000], spot, view));
    const r = Math.max(1.1, 0.42 * (at(d.cone_mm / 1000, 0)[0] - o));
    const id = channel.get(d.id) ?? 1;
    let path = dots.get(id);
    if (path === undefined) dots.set(id, (path = new Path2D()));
    path.moveTo(x + r, y);
    path.arc(x, y, r, 0, 2 * Math.PI);
  }
  for (const [id, path] of dots) {
    c.fillStyle = css(channelColour(id));
    c.fill(path);
  }
}

/** The outlines that were drawn last: a body of many corners has the same while it is seen from the same side. */
const outlines = new WeakMap<Solid, { from: string; line: [number, number][] }>();

function outline(solid: Solid, spot: Triple, view: View): [number, number][] {
  const from = view === "above" ? view : Math.atan2(spot[1], spot[0]).toFixed(4);
  let found = outlines.get(solid);
  if (found?.from !== from) {
    found = { from, line: hull(solid.vertices_mm.map(([x, y, z]) => flat([x / 1000, y / 1000, z / 1000], spot, view))) };
    outlines.set(solid, found);
  }
  return found.line;
}

/** The convex hull of points, counter-clockwise (the monotone chain of A. M. Andrew, 1979). */
function hull(points: readonly [number, number][]): [number, number][] {
  const sorted = [...points].sort((p, q) => p[0] - q[0] || p[1] - q[1]);
  const half = (list: readonly [number, number][]) => {
    const out: [number, number][] = [];
    for (const p of list) {
      while (out.length >= 2) {
        const a = out[out.length - 2]!;
        const b = out[out.length - 1]!;
        if ((b[0] - a[0]) * (p[1] - a[1]) - (b[1] - a[1]) * (p[0] - a[0]) > 0) break;
        out.pop();
      }
      out.push(p);
    }
    out.pop();
    return out;
  };
  return [...half(sorted), ...half(sorted.reverse())];
}
