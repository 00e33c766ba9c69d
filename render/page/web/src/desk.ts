// What somebody has turned of single channels, to hear what each does: alone, silent, reversed,
// or with a wrong delay; and the rows of the channels' table where that is done. It changes what
// is heard, and not the design.

import { el, make, say } from "./dom";
import type { Turned } from "./mixdown";
import type { State } from "./state";
import { fixed } from "./words";

const SAMPLES_PER_MS = 48;
/** The most by which a delay can be wrong, ms. */
const MOST_MS = 3;

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

  constructor(private readonly state: State) {
    this.open.onclick = () => {
      this.open.setAttribute("aria-expanded", String(!this.isOpen));
      this.rows();
    };
    this.reset.onclick = () => {
      this.knobs.clear();
      this.rows();
      this.turned();
      this.open.focus();
    };
    state.on("plan", () => {
      const ids = this.ids;
      for (const id of this.knobs.keys()) if (!ids.includes(id)) this.knobs.delete(id);
      this.rows();
      this.said();
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
    for (const then of this.listeners) then();
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
    say(el("desk-say"), words.length === 0 ? "" : `Heard not as planned: ${words.join("; ")}.`);
    this.reset.hidden = words.length === 0;
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
    const range = { min: -MOST_MS, max: MOST_MS, step: 0.01, value: now.late_ms };
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
    return make("tr", { class: "desk-row" },
      make("td", { colspan: 6 }, make("div", { class: "knobs", role: "group", "aria-label": `Channel ${id} as it is heard` },
        button("solo", "Solo"), button("mute", "Mute"), button("reversed", "Reverse"),
        make("span", { class: "late" }, make("span", { "aria-hidden": "true" }, "later by"), slide, type, make("span", { class: "unit", "aria-hidden": "true" }, "ms")))));
  }
}
