// How each channel is strung, the load that its amplifier sees, what a driver gets and
// the high-pass to set: on the screen, and on the printed sheet.

import { chip } from "./bodyview";
import { el, make, say } from "./dom";
import type { State } from "./state";
import type { Bank, Channel, Setting, Strung } from "./document";
import { NONE, decibels, fixed, hertz, microseconds, onset, typeset } from "./words";

/** Fills the table. */
export function sheet(state: State): void {
  const { planned } = state;
  if (planned === null) return;
  const set = new Map(planned.processor.map((s) => [s.channel, s]));
  const wiring = new Map(planned.wiring.map((w) => [w.channel, w]));
  el("wiring").querySelector("tbody")!.replaceChildren(
    ...planned.plan.channels.map((c) => {
      const w = wiring.get(c.id);
      return make("tr", {},
        make("th", { scope: "row" }, chip(c.id)),
        make("td", { class: "joints" }, ...(w?.strings ?? []).map(({ drivers }) => make("span", {}, drivers.join(" → ")))),
        make("td", {}, strings(c)),
        make("td", { class: "number" }, ...load(w)),
        make("td", { class: "number" }, `${fixed(c.dc_ohm, 1)} Ω`),
        make("td", { class: "number" }, w?.driver_w == null ? NONE : `${fixed(w.driver_w, w.driver_w < 1 ? 3 : 2)} W`),
        make("td", { class: "number" }, corner(set.get(c.id), planned.protection.least_hz !== null)));
    }),
  );
}

/** Fills the table of what shorter strings cost and bring; it is away where there is no choice. */
export function front(state: State): void {
  const { planned } = state;
  if (planned === null) return;
  const all = planned.plan.front;
  el("front").hidden = all.length < 2;
  say(el("front-rule"), typeset(planned.front_rule));
  el("fronts").querySelector("tbody")!.replaceChildren(...all.map(choice));
}

function choice(f: Strung): HTMLElement {
  const which = f.chosen ? "as planned" : f.rule ? "by the rule" : "";
  return make("tr", { class: f.chosen ? "picked-row" : undefined },
    make("th", { scope: "row" }, f.longest_string === 1 ? "one" : `up to ${f.longest_string}`),
    ...[microseconds(f.smear_us), onset(f.comb_onset_hz), `${decibels(f.louder_db)} dB`, `${fixed(f.least_ohm, 1)} Ω`].map((text) => make("td", { class: "number" }, text)),
    make("td", { class: "quiet" }, which));
}

/** The least load, and at which frequency. */
function load(w: Bank | undefined): (Node | string)[] {
  if (w?.lowest_ohm == null) return ["not known"];
  const at = w.lowest_hz === null ? "" : ` at ${hertz(w.lowest_hz)}`;
  return [`${fixed(w.lowest_ohm, 1)} Ω`, make("span", { class: "quiet" }, at)];
}

/** How a channel's drivers hang together. */
export function strings({ series, parallel, drivers }: Channel): string {
  if (drivers.length === 1) return "one alone";
  if (series * parallel !== drivers.length) return `${parallel} strings, unequal`;
  if (parallel === 1) return `${series} in series`;
  if (series === 1) return `${parallel} in parallel`;
  return `${parallel} strings of ${series}`;
}

/** The frequency of a channel's high-pass; without one, whether it is known that none is needed. */
function corner(setting: Setting | undefined, isKnown: boolean): string {
  const pass = setting?.filters.find((f) => f.name.startsWith("high-pass"));
  if (pass === undefined) return isKnown ? "none" : "not known";
  return hertz(pass.frequency_hz);
}
