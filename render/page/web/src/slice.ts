// The slice of the room that the map shows, from above or from the side.

import type { PlanAnswer, Solid, Triple } from "./document";
import type { Place } from "./heat";
import type { Heat, View } from "./types";
import { length } from "./words";

/** The corners of a map. */
export type Frame = Pick<Heat, "low_m" | "high_m">;

/** Where a map will be, before it is computed: body and chair are drawn at once. */
export function frameOf(planned: PlanAnswer, view: View): Frame {
  const half = planned.slice.half_width_m;
  const bottom = planned.slice.bottom_m;
  return view === "above" ? { low_m: [-half, -half], high_m: [half, half] } : { low_m: [-half, bottom], high_m: [half, bottom + half] };
}

/** Where a point of a frame lies on a canvas. */
export function places(frame: Frame, w: number, h: number): Place {
  const [u0, v0] = frame.low_m;
  const [u1, v1] = frame.high_m;
  return (u, v) => [((u - u0) / (u1 - u0)) * w, h - ((v - v0) / (v1 - v0)) * h];
}

/** Where a point of the room lies on the slice; from the side, u runs towards the chair. */
export function flat(p: Triple, spot: Triple, view: View): [number, number] {
  if (view === "above") return [p[0], p[1]];
  const [cx, cy] = towards(spot);
  return [p[0] * cx + p[1] * cy, p[2]];
}

/** The place that lies at u and v of the slice, as far before or behind it as another. */
export function raised([u, v]: readonly [number, number], at: Triple, spot: Triple, view: View): Triple {
  if (view === "above") return [u, v, at[2]];
  const [cx, cy] = towards(spot);
  const by = u - (at[0] * cx + at[1] * cy);
  return [at[0] + by * cx, at[1] + by * cy, v];
}

/** The direction along the floor that u runs in, from the side. */
function towards([x, y]: Triple): [number, number] {
  const d = Math.hypot(x, y);
  return d === 0 ? [1, 0] : [x / d, y / d];
}

/** How far a direction points to who looks at the slice: from the side one looks from the right of the way to the chair. */
export function toEye(normal: Triple, spot: Triple, view: View): number {
  if (view === "above") return normal[2];
  const [x, y] = spot;
  const d = Math.hypot(x, y) || 1;
  return (normal[0] * y - normal[1] * x) / d;
}

/** How far bodies reach, which is asked with every move. */
const reaches = new WeakMap<Solid, Map<string, number>>();

/** How far the first body reaches from its middle, m; in a direction of unit length alone, if one is given. */
export function reach(planned: PlanAnswer | null, along: Triple | null = null): number {
  if (planned === null) return radius(planned, 100) / 1000;
  const { solid } = planned;
  let known = reaches.get(solid);
  if (known === undefined) reaches.set(solid, (known = new Map()));
  const key = along?.map((v) => v.toFixed(6)).join() ?? "";
  let far = known.get(key);
  if (far === undefined) {
    const of = along === null ? length : (v: Triple) => v[0] * along[0] + v[1] * along[1] + v[2] * along[2];
    known.set(key, (far = solid.vertices_mm.reduce((most, v) => Math.max(most, of(v)), radius(planned, 100)) / 1000));
  }
  return far;
}

/** The body's radius in mm; where there is none, another. */
export function radius(planned: PlanAnswer | null, none: number): number {
  return Number(planned?.values["body.radius_mm"] ?? none);
}
