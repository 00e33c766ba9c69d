// What somebody has turned of single channels, to hear what each does: alone, silent, reversed,
// or with a wrong delay; and the rows of the channels' table where that is done. It changes what
// is heard and shown, and not the design, until it is taken into it.

import { el, make, say } from "./dom";
import { canGive, isByHand, tried } from "./driverdo";
import type { Turned } from "./mixdown";
import type { State } from "./state";
import { fixed } from "./words";

const SAMPLES_PER_MS = 48;
/** The most by which a delay can be wrong, ms. */
const MOST_MS = 3;
const STEP_MS = 0.01;

interface Knobs {
  solo: boolean;
  mute: boolean;
  reversed: boolean;
  late_ms: number;
}

const PLANNED: Knobs = { solo: false, mute: false, reversed: false, late_ms: 0 };

export class Desk {
  private readonly knobs = new Map<number, Knobs>();
  private readonly listeners: (() => void)[] = [];
  private readonly open = el<HTMLButtonElement>("desk");
  private readonly reset = el<HTMLButtonElement>("desk-reset");
  private readonly keep = el<HTMLButtonElement>("desk-take");

  constructor(private readonly state: State) {
    this.open.onclick = () => {
      this.open.setAttribute("aria-expanded", String(!this.isOpen));
      this.rows();
    };
    this.reset.onclick = () => {
      this.clear();
      this.open.focus();
    };
    this.keep.onclick = () => {
      const { planned, channels, turned } = state;
      if (planned === null) return;
      const set = tried(planned, channels, turned);
      this.clear();
      this.open.focus();
      void state.change(set);
    };
    state.on("plan", () => {
      const ids = this.ids;
      for (const id of this.knobs.keys()) if (!ids.includes(id)) this.knobs.delete(id);
      this.rows();
      this.said();
      this.tell();
    });
  }

  on(then: () => void): void {
    this.listeners.push(then);
  }

  /** How a channel is turned; the ideal point, 0, is none. */
  of(channel: number): Turned {
    const { mute, solo, reversed, late_ms } = this.knobs.get(channel) ?? PLANNED;
    if (channel === 0) return { off: false, reversed: false, late: 0 };
    const isOneAlone = [...this.knobs.values()].some((k) => k.solo);
    return { off: mute || (isOneAlone && !solo), reversed, late: late_ms * SAMPLES_PER_MS };
  }

  /** Nothing is turned. */
  get isPlanned(): boolean {
    return [...this.knobs.values()].every((k) => !k.mute && !k.solo && !k.reversed && k.late_ms === 0);
  }

  /** How much later than planned a channel is, µs. */
  lateOf(channel: number): number {
    return 1000 * (this.knobs.get(channel)?.late_ms ?? 0);
  }

  /** Tries a delay that is so much later than planned, µs. */
  late(channel: number, us: number): void {
    const steps = Math.round(Math.min(Math.max(us / 1000, -MOST_MS), MOST_MS) / STEP_MS);
    const ms = Number((steps * STEP_MS).toFixed(2));
    if (ms === (this.knobs.get(channel)?.late_ms ?? 0)) return;
    this.turn(channel, { late_ms: ms });
    for (const input of el("channels").querySelectorAll<HTMLInputElement>(`.desk-row[data-of="${channel}"] input`)) input.value = String(ms);
  }

  /** Between which delays in µs one can be tried that is planned as so much. */
  rangeOf(us: number): [number, number] {
    return [us - 1000 * MOST_MS, us + 1000 * MOST_MS];
  }

  private clear(): void {
    this.knobs.clear();
    this.rows();
    this.turned();
  }

  private get ids(): number[] {
    return this.state.planned?.processor.map((s) => s.channel) ?? [];
  }

  private get isOpen(): boolean {
    return this.open.getAttribute("aria-expanded") === "true";
  }

  private turn(channel: number, what: Partial<Knobs>): void {
    this.knobs.set(channel, { ...PLANNED, ...this.knobs.get(channel), ...what });
    this.turned();
  }

  private turned(): void {
    this.said();
    this.tell();
    for (const then of this.listeners) then();
  }

  /** Has what is turned of channels that have delays shown. */
  private tell(): void {
    const all = this.state.planned?.plan.channels ?? [];
    const turned = all.map(({ id }) => ({ channel: id, off: this.of(id).off, reversed: this.of(id).reversed, late_us: this.lateOf(id) }))
      .filter((t) => t.off || t.reversed || t.late_us !== 0);
    if (JSON.stringify(turned) === JSON.stringify(this.state.turned)) return;
    this.state.turned = turned;
    this.state.tell("turned");
  }

  /** Says what is not as planned. */
  private said(): void {
    const words = [...this.knobs].sort(([a], [b]) => a - b).flatMap(([id, { solo, mute, reversed, late_ms }]) => {
      const is = [
        ...(solo ? ["alone"] : []), ...(mute ? ["silent"] : []), ...(reversed ? ["reversed"] : []),
        ...(late_ms === 0 ? [] : [`${fixed(Math.abs(late_ms), 2)} ms too ${late_ms > 0 ? "late" : "early"}`]),
      ];
      return is.length === 0 ? [] : [`channel ${id} ${is.join(", ")}`];
    });
    const isForEars = [...this.knobs.values()].some((k) => k.solo || k.mute);
    say(el("desk-say"), words.length === 0 ? "" : `Not as planned: ${words.join("; ")}.${isForEars ? " Solo and mute are for listening: the design keeps all its channels." : ""}`);
    this.reset.hidden = words.length === 0;
    const { planned } = this.state;
    const isTaken = [...this.knobs.values()].some((k) => k.late_ms !== 0 || k.reversed);
    this.keep.hidden = !isTaken || planned === null || !(canGive(planned) || isByHand(planned));
  }

  /** Puts a row of knobs below each channel's own, or takes them away. */
  private rows(): void {
    const body = el("channels").querySelector("tbody")!;
    for (const row of body.querySelectorAll(".desk-row")) row.remove();
    if (!this.isOpen) return;
    for (const row of body.querySelectorAll<HTMLElement>("tr[data-channel]")) row.after(this.row(Number(row.dataset.channel)));
  }

  private row(id: number): HTMLTableRowElement {
    const now = this.knobs.get(id) ?? PLANNED;
    const button = (what: "solo" | "mute" | "reversed", words: string) => {
      const made = make("button", { type: "button", "aria-pressed": String(now[what]), "aria-label": `${words} channel ${id}` }, words);
      made.onclick = () => {
        const is = made.getAttribute("aria-pressed") !== "true";
        made.setAttribute("aria-pressed", String(is));
        this.turn(id, { [what]: is });
      };
      return made;
    };
    const range = { min: -MOST_MS, max: MOST_MS, step: STEP_MS, value: now.late_ms };
    const slide = make("input", { type: "range", "aria-label": `Channel ${id} later than planned, in ms`, ...range });
    const type = make("input", { type: "number", "aria-label": `Channel ${id} later than planned, typed, in ms`, ...range });
    const late = (from: HTMLInputElement, to: HTMLInputElement) => () => {
      const ms = Math.min(Math.max(from.valueAsNumber, -MOST_MS), MOST_MS);
      if (!Number.isFinite(ms)) return;
      to.value = String(ms);
      this.turn(id, { late_ms: ms });
    };
    slide.oninput = late(slide, type);
    type.oninput = late(type, slide);
    return make("tr", { class: "desk-row", "data-of": id },
      make("td", { colspan: 7 }, make("div", { class: "knobs", role: "group", "aria-label": `Channel ${id} as it is heard` },
        button("solo", "Solo"), button("mute", "Mute"), button("reversed", "Reverse"),
        make("span", { class: "late" }, make("span", { "aria-hidden": "true" }, "later by"), slide, type, make("span", { class: "unit", "aria-hidden": "true" }, "ms")))));
  }
}
