// A second design beside the first: its measures in a table, its level at its
// chair drawn over the first one's.

import * as api from "./api";
import type { Curves } from "./curves";
import { el, make, say } from "./dom";
import { sentence } from "./fields";
import { pickText } from "./files";
import type { Sitting, State } from "./state";
import { shown } from "./trial";
import type { AtSpot, Measures, PlanAnswer, Seats, SeatsLost } from "./document";
import type { Maybe } from "./types";
import { decibels, fixed, microseconds, milliseconds, onset } from "./words";

interface Side {
  name: string;
  planned: PlanAnswer;
  measures: Measures;
}

/** The most designs that are kept beside this one. */
const MOST_KEPT = 6;
/** What stands for the body, by the model. */
const HEARD_AS: Record<string, string> = { sphere: "a ball", body: "it is", point: "points", baffle: "a wall" };
/** Leads from this design to the kept one and back. */
const KEY = "c";

export class Compare {
  private readonly kept: Side[] = [];
  /** The one that stands beside this one, and that the key leads to. */
  private other: Side | null = null;
  /** This design and who sits where, while the other is shown in its place; null: it is not. */
  private own: { planned: PlanAnswer; sitting: Sitting } | null = null;
  private readonly box = el("comparison");
  /** The ball stood for the body when this design was planned last. */
  private waited = false;

  constructor(private readonly state: State, private readonly curves: Curves) {
    el("keep").onclick = () => this.keep();
    el("other").onclick = () =>
      pickText(el<HTMLInputElement>("other-file"), (name, text) => void this.plan(name, text), (words) => this.refuse(words));
    el("drop").onclick = () => this.drop();
    el("peek").onclick = el("peek-back").onclick = () => this.swap();
    document.addEventListener("keydown", (event) => this.key(event));
    for (const news of ["plan", "rest"] as const) state.on(news, () => this.show());
    state.on("plan", () => {
      const waits = state.planned?.model.waits === true;
      if (this.waited && !waits) void this.renew();
      this.waited = waits;
    });
    state.on("ghost", () => {
      if (this.own !== null && state.former === null) this.back();
    });
  }

  private keep(): void {
    const { planned } = this.state;
    if (planned === null || this.own !== null) return;
    const names = new Set(this.kept.map((k) => k.name));
    let n = 1;
    while (names.has(`kept ${n}`)) n++;
    this.add({ name: `kept ${n}`, planned, measures: planned.plan.measures });
  }

  /** Told when what is kept changes. */
  changed: () => void = () => undefined;

  /** What is kept, as designs. */
  get texts(): { name: string; text: string }[] {
    return this.kept.map(({ name, planned }) => ({ name, text: planned.text }));
  }

  async plan(name: string, text: string): Promise<void> {
    try {
      const planned = await api.plan(text);
      this.add({ name: name.replace(/\.toml$/i, ""), planned, measures: planned.plan.measures });
    } catch (error) {
      this.refuse(error instanceof api.Faulty ? error.faults.map(sentence).join("; ") : String(error));
    }
  }

  /** Plans those anew for whose body the ball stands; where that is solved for now, it is heard as it is. */
  private async renew(): Promise<void> {
    for (const side of this.kept.filter((k) => k.planned.model.waits)) {
      const planned = await api.plan(side.planned.text).catch(() => null);
      if (planned === null || planned.model.waits || this.own !== null) continue;
      Object.assign(side, { planned, measures: planned.plan.measures });
      if (side === this.other) this.choose(side);
    }
  }

  private refuse(words: string): void {
    this.box.replaceChildren(make("p", { class: "fault", role: "alert" }, words));
  }

  private add(side: Side): void {
    this.kept.push(side);
    if (this.kept.length > MOST_KEPT) this.kept.shift();
    this.choose(side);
  }

  private drop(): void {
    this.back();
    this.kept.splice(this.kept.indexOf(this.other!), 1);
    this.choose(this.kept.at(-1) ?? null);
  }

  /** Puts one of those that are kept beside this design. */
  private choose(other: Side | null): void {
    const isShown = this.own !== null;
    this.back();
    this.other = other;
    el("drop").hidden = el("peek").hidden = other === null;
    this.curves.compare(other === null ? null : { name: other.name, response: other.planned.plan.response });
    const list = el("kept");
    list.hidden = this.kept.length < 2;
    list.replaceChildren(make("legend", { class: "hidden" }, "Which one stands beside this"), ...this.kept.map((side) => {
      const input = make("input", { type: "radio", name: "kept", checked: side === other });
      input.onchange = () => this.choose(side);
      return make("label", {}, input, make("span", {}, side.name));
    }));
    this.changed();
    if (isShown && other !== null) this.swap();
    this.show();
  }

  private key(event: KeyboardEvent): void {
    const isTyping = event.target instanceof HTMLTextAreaElement || event.target instanceof HTMLInputElement || event.target instanceof HTMLSelectElement;
    if (isTyping || event.key.toLowerCase() !== KEY || event.ctrlKey || event.metaKey || event.altKey) return;
    this.swap();
  }

  /** Shows the other in this design's place: map, body, curves, tables and sound. Once more, and this one is back. */
  private swap(): void {
    const { state, other } = this;
    if (this.own !== null) return this.back();
    if (other === null || state.planned === null || state.isBroken) return;
    const own = { planned: state.planned, sitting: { spot: state.spot, seats: state.seats } };
    state.ghost(shown(state));
    this.own = own;
    state.preview(other.planned);
    this.told();
  }

  private back(): void {
    const { own, state } = this;
    if (own === null) return;
    this.own = null;
    if (state.former !== null) state.ghost(null);
    if (state.planned === this.other?.planned) { // else a change of the design came between
      Object.assign(state, own.sitting);
      state.preview(own.planned);
    }
    this.told();
  }

  /** Says whose figures all are. */
  private told(): void {
    const name = this.own === null ? "" : (this.other?.name ?? "");
    el("peeking").hidden = name === "";
    document.body.dataset.shows = name === "" ? "own" : "other";
    say(el("peek-say"), name === "" ? "" : `All that you see and hear is of “${name}”; ghosts and marks show this design. Changes, Undo and Save go to this design.`);
    el("peek").setAttribute("aria-pressed", String(name !== ""));
  }

  private show(): void {
    const { planned, moved } = this.state;
    const { other } = this;
    if (planned === null || other === null) {
      if (this.box.querySelector("table") !== null) this.box.replaceChildren();
      return;
    }
    const mine = this.own?.planned ?? planned;
    const own = rows({ name: "this one", planned: mine, measures: this.own === null && moved !== null ? moved.measures : mine.plan.measures });
    const its = rows(other);
    const head = make("tr", {}, make("td", {}), make("th", { scope: "col", class: "number" }, "this one"), make("th", { scope: "col", class: "number" }, other.name));
    const caption = make("caption", { class: "hidden" });
    say(caption, `This design beside ${other.name}`);
    this.box.replaceChildren(
      make("table", {}, caption, make("thead", {}, head), make("tbody", {},
        ...own.flatMap(([words, value], i) => {
          const its_ = its[i]?.[1] ?? "";
          if (value === "" && its_ === "") return [];
          return [make("tr", { class: value === its_ ? "alike" : undefined }, make("th", { scope: "row" }, words), make("td", { class: "number" }, value), make("td", { class: "number" }, its_))];
        }),
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
    ["body heard as", HEARD_AS[plan.model] ?? ""],
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
