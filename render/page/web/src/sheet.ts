// How each channel is strung, the load that its amplifier sees, what a driver gets and
// the high-pass to set: on the screen, and on the printed sheet.

import { chip } from "./chip";
import { el, make, say } from "./dom";
import type { State } from "./state";
import type { Bank, Channel, SeatsStrings, Setting, Strung } from "./document";
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

/** Fills the table of what shorter strings cost and bring, at the chair or at the seats; it is away where there is no choice. */
export function front(state: State): void {
  const { planned } = state;
  if (planned === null) return;
  const { front: chair, seats } = planned.plan;
  const rows = seats === undefined ? chair.map(choice) : seats.strings.map(choiceOfSeats);
  el("front").hidden = rows.length < 2;
  say(el("front-title"), seats === undefined ? "Louder, or less smear" : "Louder, or less lost");
  say(el("front-rule"), seats === undefined ? typeset(planned.front_rule) : "");
  const head = seats === undefined ? ["Smear", "No combs up to", "Louder by", "Least load"] : ["Worst seat", "Mean", "Between seats", "Louder by"];
  el("fronts").querySelector("thead tr")!.replaceChildren(
    make("th", { scope: "col" }, "Strings of"), ...head.map((words) => make("th", { scope: "col", class: "number" }, words)),
    make("th", { scope: "col" }, make("span", { class: "hidden" }, "Which")),
  );
  el("fronts").querySelector("tbody")!.replaceChildren(...rows);
}

function choice(f: Strung): HTMLElement {
  const which = f.chosen ? "as planned" : f.rule ? "by the rule" : "";
  return row(f, [microseconds(f.smear_us), onset(f.comb_onset_hz), `${decibels(f.louder_db)} dB`, `${fixed(f.least_ohm, 1)} Ω`], which);
}

function choiceOfSeats(f: SeatsStrings): HTMLElement {
  return row(f, [f.worst_db, f.mean_db, f.between_db, f.louder_db].map((db) => `${decibels(db)} dB`), f.chosen ? "as planned" : "");
}

function row({ longest_string, chosen }: { longest_string: number; chosen: boolean }, cells: string[], which: string): HTMLElement {
  return make("tr", { class: chosen ? "picked-row" : undefined },
    make("th", { scope: "row" }, longest_string === 1 ? "one" : `up to ${longest_string}`),
    ...cells.map((text) => make("td", { class: "number" }, text)),
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
