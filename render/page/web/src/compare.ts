// A second design beside the first: its measures in a table, its level at its
// chair drawn over the first one's.

import * as api from "./api";
import type { Curves } from "./curves";
import { el, make, say } from "./dom";
import { sentence } from "./fields";
import { pickText } from "./files";
import type { State } from "./state";
import type { AtSpot, Measures, PlanAnswer, Seats, SeatsLost } from "./document";
import type { Maybe } from "./types";
import { decibels, fixed, microseconds, milliseconds, onset } from "./words";

interface Side {
  name: string;
  planned: PlanAnswer;
  measures: Measures;
}

export class Compare {
  private other: Side | null = null;
  private readonly box = el("comparison");

  constructor(private readonly state: State, private readonly curves: Curves) {
    el("keep").onclick = () => {
      const planned = state.planned;
      if (planned !== null) this.set({ name: "kept", planned, measures: planned.plan.measures });
    };
    el("other").onclick = () =>
      pickText(el<HTMLInputElement>("other-file"), (name, text) => void this.plan(name, text), (words) => this.refuse(words));
    el("drop").onclick = () => this.set(null);
    for (const news of ["plan", "rest"] as const) state.on(news, () => this.show());
  }

  private async plan(name: string, text: string): Promise<void> {
    try {
      const planned = await api.plan(text);
      this.set({ name: name.replace(/\.toml$/i, ""), planned, measures: planned.plan.measures });
    } catch (error) {
      this.refuse(error instanceof api.Faulty ? error.faults.map(sentence).join("; ") : String(error));
    }
  }

  private refuse(words: string): void {
    this.box.replaceChildren(make("p", { class: "fault", role: "alert" }, words));
  }

  private set(other: Side | null): void {
    this.other = other;
    el("drop").hidden = other === null;
    this.curves.compare(other === null ? null : { name: other.name, response: other.planned.plan.response });
    this.show();
  }

  private show(): void {
    const planned = this.state.planned;
    const { other } = this;
    if (planned === null || other === null) {
      if (this.box.querySelector("table") !== null) this.box.replaceChildren();
      return;
    }
    const measures = this.state.moved?.measures ?? planned.plan.measures;
    const own = rows({ name: "this one", planned, measures });
    const its = rows(other);
    const head = make("tr", {}, make("td", {}), make("th", { scope: "col", class: "number" }, "this one"), make("th", { scope: "col", class: "number" }, other.name));
    const caption = make("caption", { class: "hidden" });
    say(caption, `This design beside ${other.name}`);
    this.box.replaceChildren(
      make("table", {}, caption, make("thead", {}, head), make("tbody", {},
        ...own.flatMap(([words, value], i) => (value === "" && (its[i]?.[1] ?? "") === "" ? [] : [
          make("tr", {}, make("th", { scope: "row" }, words), make("td", { class: "number" }, value), make("td", { class: "number" }, its[i]?.[1] ?? "")),
        ])),
      )),
    );
  }
}

/** What seats lose without delays and with them; of a design without seats nothing. */
function lost(seats: Seats | undefined, of: (lost: SeatsLost) => Maybe): string {
  return seats === undefined ? "" : `${decibels(of(seats.without))} → ${decibels(of(seats.planned))} dB`;
}

function rows({ planned, measures }: Side): [string, string][] {
  const both = (words: string, of: (m: AtSpot) => string): [string, string] => [words, `${of(measures.unaligned)} → ${of(measures.aligned)}`];
  const { plan } = planned;
  const longest = Math.max(0, ...plan.channels.map((c) => c.delay_us));
  return [
    ["drivers", String(plan.drivers.length)],
    ["channels", String(plan.channels.length)],
    ["radius", `${fixed(Number(planned.values["body.radius_mm"] ?? 0), 0)} mm`],
    ["chair", planned.place.short],
    ["worst of seats", lost(plan.seats, (of) => of.worst_db)],
    ["between seats", lost(plan.seats, (of) => of.between_db)],
    both("smear", (m) => microseconds(m.smear_us)),
    both("arrivals within", (m) => microseconds(m.spread_us)),
    both("no combs up to", (m) => onset(m.comb_onset_hz)),
    ["longest delay", `${milliseconds(longest)} ms`],
    ["lightest load", `${fixed(Math.min(...plan.channels.map((c) => c.nominal_ohm)), 1)} Ω`],
  ];
}
