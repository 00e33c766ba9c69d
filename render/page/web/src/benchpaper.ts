// The bench on paper: every channel with its picture, its strings, boxes to tick and what
// the meter is to show.

import { chip } from "./chip";
import { el, make } from "./dom";
import { inside } from "./inside";
import { between, isDone, stepsOf, type Step, type Ticks } from "./steps";
import type { BenchAnswer, BenchChannel } from "./document";
import { fixed } from "./words";

/** Makes the sheets that are printed. */
export function sheets(bench: BenchAnswer, ticks: Ticks): void {
  el("paper").replaceChildren(
    make("h1", {}, `${bench.name}: at the bench`),
    make("p", {}, el("seen-from").textContent ?? ""),
    make("ul", { class: "lines" }, ...bench.say.map((s) => make("li", {}, s))),
    ...bench.channels.map((c) => sheet(bench, c, ticks)),
  );
}

function sheet(bench: BenchAnswer, channel: BenchChannel, ticks: Ticks): HTMLElement {
  const steps = stepsOf(channel);
  const rows = channel.strings.map((s, i) => {
    const own = steps.filter((step) => step.string === i);
    const joints = own.filter((step) => step.kind === "driver").map((step) => make("span", {}, box(step, ticks), String(step.id)));
    const read = own.filter((step) => step.reading !== null).map((step) => make("div", {}, box(step, ticks), `${step.title}: `, make("strong", {}, `${fixed(step.reading?.ohm ?? null, 1)} Ω`), ` (${between(step.reading!)})`));
    return make("tr", {}, make("th", { scope: "row" }, String(i + 1)), make("td", { class: "joints" }, "+ ", ...joints, "−"), make("td", {}, ...read), make("td", { class: "number" }, `${fixed(s.wire_m, 2)} m`));
  });
  const head = ["String", "Plus to minus", "By a meter", "Wire"].map((words) => make("th", { scope: "col" }, words));
  return make("article", {},
    make("h2", {}, "Channel ", chip(channel.channel)),
    make("div", {}, ...inside(bench, channel, ticks, null)),
    make("table", {}, make("thead", {}, make("tr", {}, ...head)), make("tbody", {}, ...rows)));
}

function box(step: Step, ticks: Ticks): HTMLElement {
  return make("span", { class: isDone(step, ticks) ? "box is-done" : "box" });
}
