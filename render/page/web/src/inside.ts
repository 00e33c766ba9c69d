// The inside of the body, as one who solders sees it: a channel's drivers lit, its wires from
// minus to plus, the signs at each driver.

import { channelColour, css, inkOn } from "./colours";
import type { BenchAnswer, BenchChannel, BenchJoint } from "./document";
import { isDone, nameOf, type Step, type Ticks } from "./steps";

const SVG = "http://www.w3.org/2000/svg";

function draw(tag: string, attributes: Record<string, string | number>, ...children: (Node | string)[]): SVGElement {
  const e = document.createElementNS(SVG, tag);
  for (const [name, value] of Object.entries(attributes)) e.setAttribute(name, String(value));
  e.append(...children);
  return e;
}

/** How large a driver is drawn: a third of the way to its nearest neighbour, within bounds. */
function sizeOf(joints: readonly BenchJoint[]): number {
  let least = 1;
  for (const [i, a] of joints.entries())
    for (const b of joints.slice(i + 1))
      if (a.lower === b.lower && a.body === b.body) least = Math.min(least, Math.hypot(a.right - b.right, a.up - b.up));
  return Math.min(Math.max(0.36 * least, 0.03), 0.1);
}

type At = readonly [number, number];

/** One picture of a channel: each disc is one, and the drivers of all bodies are on it. */
export function inside(bench: BenchAnswer, channel: BenchChannel, ticks: Ticks, now: Step | null): SVGElement[] {
  const discs = bench.halves ? [false, true] : [false];
  const size = sizeOf(bench.joints);
  return discs.map((lower) => {
    const what = `${bench.halves ? (lower ? "The lower half from above" : "The upper half from below") : "The body from inside"}: channel ${channel.channel}, drivers ${channel.strings.flatMap((s) => s.drivers).join(", ")}`;
    const seen = bench.joints.filter((j) => j.lower === lower);
    return draw("svg", { viewBox: "-1.28 -1.28 2.56 2.56", role: "img", "aria-label": what },
      draw("circle", { class: "rim", r: 1.14 }), ...marks(lower), ...spare(channel, seen, size), ...lit(channel, seen, size, ticks, now));
  });
}

/** Where front and left are. */
function marks(lower: boolean): SVGElement[] {
  const left = lower ? -1.21 : 1.21;
  return [
    draw("text", { class: "mark", x: 0, y: -1.21 }, "front"),
    draw("text", { class: "mark", x: left, y: 0, transform: `rotate(90 ${left} 0)` }, "its left"),
  ];
}

function spare(channel: BenchChannel, seen: BenchJoint[], size: number): SVGElement[] {
  const own = new Set(channel.strings.flatMap((s) => s.drivers));
  return seen.filter((j) => !own.has(j.id)).map((j) => draw("g", { class: "spare" }, draw("circle", { cx: j.right, cy: -j.up, r: 0.8 * size })));
}

function lit(channel: BenchChannel, seen: BenchJoint[], size: number, ticks: Ticks, now: Step | null): SVGElement[] {
  const at = new Map(seen.map((j) => [j.id, [j.right, -j.up] as At]));
  const wires: SVGElement[] = [];
  const drivers: SVGElement[] = [];
  for (const { drivers: ids } of channel.strings) {
    const soldered = new Set(ticks.get(nameOf(ids))?.soldered);
    for (const [k, id] of ids.entries()) {
      const here = at.get(id);
      if (here === undefined) continue;
      const before = at.get(ids[k - 1] ?? 0);
      const isNow = now !== null && now.kind === "driver" && now.id === id;
      if (before !== undefined) wires.push(wire(before, here, size, isNow));
      drivers.push(...driver(channel.channel, id, here, size, soldered.has(id), isNow));
      drivers.push(...signs(here, before, at.get(ids[k + 1] ?? 0), size));
    }
  }
  return [...wires, ...drivers];
}

function wire(from: At, to: At, size: number, isNow: boolean): SVGElement {
  const long = Math.hypot(to[0] - from[0], to[1] - from[1]) || 1;
  const d = [(size * (to[0] - from[0])) / long, (size * (to[1] - from[1])) / long] as const;
  return draw("path", { class: isNow ? "wire is-now" : "wire", d: `M${from[0] + d[0]} ${from[1] + d[1]}L${to[0] - d[0]} ${to[1] - d[1]}` });
}

function driver(channel: number, id: number, at: At, size: number, done: boolean, isNow: boolean): SVGElement[] {
  const colour = channelColour(channel);
  const state = `lit ${done ? "is-done" : "waits"}${isNow ? " is-now" : ""}`;
  // No wire that passes by shines through.
  return [draw("circle", { class: "under", cx: at[0], cy: at[1], r: size }), draw("g", { class: state },
    draw("circle", { cx: at[0], cy: at[1], r: size, fill: css(colour) }),
    draw("text", { x: at[0], y: at[1], "font-size": 0.95 * size, ...(done ? { fill: inkOn(colour) } : {}) }, String(id)))];
}

/** Plus stands towards the driver before, minus towards the next; where there is none, on the other side. */
function signs(at: At, before: At | undefined, next: At | undefined, size: number): SVGElement[] {
  const towards = (to: At): number => Math.atan2(to[1] - at[1], to[0] - at[0]);
  const plus = before !== undefined ? towards(before) : next !== undefined ? towards(next) + Math.PI : Math.PI;
  let minus = next !== undefined ? towards(next) : plus + Math.PI;
  const apart = Math.atan2(Math.sin(minus - plus), Math.cos(minus - plus));
  if (Math.abs(apart) < 0.9) minus = plus + (apart < 0 ? -0.9 : 0.9); // else they would stand on each other
  return ([["+", plus], ["−", minus]] as const).flatMap(([sign, angle]) => {
    const [x, y] = [at[0] + 1.05 * size * Math.cos(angle), at[1] + 1.05 * size * Math.sin(angle)];
    return [draw("circle", { class: "sign-back", cx: x, cy: y, r: 0.34 * size }), draw("text", { class: "sign", x, y, "font-size": 0.62 * size }, sign)];
  });
}

/** How many steps are done. */
export function count(steps: readonly Step[], ticks: Ticks): number {
  return steps.filter((s) => isDone(s, ticks)).length;
}
