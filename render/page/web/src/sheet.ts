// What the printed sheet says besides what the screen does: how each channel is
// wired, the load that the amplifier sees, and the high-pass to set.

import { chip } from "./bodyview";
import { el, make } from "./dom";
import type { State } from "./state";
import type { PlanChannel, Setting } from "./types";
import { fixed, hertz, runs } from "./words";

/** Fills the sheet's table. */
export function sheet(state: State): void {
  const { planned } = state;
  if (planned === null) return;
  const set = new Map(planned.processor.map((s) => [s.channel, s]));
  el("wiring").querySelector("tbody")!.replaceChildren(
    ...planned.plan.channels.map((c) => make("tr", {},
      make("th", { scope: "row" }, chip(c.id)),
      make("td", {}, runs(c.drivers)),
      make("td", {}, strings(c)),
      make("td", { class: "number" }, `${fixed(c.nominal_ohm, 1)} Ω`),
      make("td", { class: "number" }, `${fixed(c.dc_ohm, 1)} Ω`),
      make("td", { class: "number" }, corner(set.get(c.id))))),
  );
}

/** How a channel's drivers hang together. */
export function strings({ series, parallel, drivers }: PlanChannel): string {
  if (drivers.length === 1) return "one alone";
  if (series * parallel !== drivers.length) return `${parallel} strings, unequal`;
  if (parallel === 1) return `${series} in series`;
  if (series === 1) return `${parallel} in parallel`;
  return `${parallel} strings of ${series}`;
}

/** The frequency of a channel's high-pass. */
function corner(setting: Setting | undefined): string {
  const pass = setting?.filters.find((f) => f.name.startsWith("high-pass"));
  return pass === undefined ? "none" : hertz(pass.frequency_hz);
}
