// One of several bodies by itself, its centre in the origin, as the picture in three dimensions has it.

import type { Mounted, PlanAnswer, Solid, Triple } from "./document";

/** How many bodies there are. */
export function bodies(planned: PlanAnswer | null): number {
  return 1 + (planned?.others?.length ?? 0);
}

/** All bodies, as they are held in the room. */
export function solids(planned: PlanAnswer): Solid[] {
  return [planned.solid, ...(planned.others ?? [])];
}

/** Where a body's centre is, m. */
export function centre(planned: PlanAnswer, body: number): Triple {
  return planned.plan.held?.[body]?.at_m ?? [0, 0, 0];
}

/** Which drivers a body has, by their place in the plan. */
export function driversOf(planned: PlanAnswer, body: number): number[] {
  return planned.drivers.flatMap((d, i) => (d.body === body ? [i] : []));
}

/** A plan with one body alone, in the origin. */
export function alone(planned: PlanAnswer, body: number): PlanAnswer {
  if (bodies(planned) === 1) return planned;
  const [x, y, z] = centre(planned, body);
  const here = ([u, v, w]: Triple): Triple => [u - 1000 * x, v - 1000 * y, w - 1000 * z];
  const solid = solids(planned)[body]!;
  return {
    ...planned,
    solid: { ...solid, vertices_mm: solid.vertices_mm.map(here) },
    drivers: driversOf(planned, body).map((i): Mounted => ({ ...planned.drivers[i]!, at_mm: here(planned.drivers[i]!.at_mm) })),
    empty: body === 0 ? planned.empty : [],
    floor_m: planned.floor_m === null ? null : planned.floor_m - z,
    ceiling_m: planned.ceiling_m === null ? null : planned.ceiling_m - z,
  };
}
