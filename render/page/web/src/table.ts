// The delays to set, and every driver's row.

import { chip } from "./chip";
import { bar } from "./delaybars";
import { el, make, mark, say } from "./dom";
import { DriverTable } from "./drivertable";
import type { State } from "./state";
import type { PlanAnswer, Rounding, Setting } from "./document";
import { decibels, fixed, hertz, milliseconds, runs } from "./words";

interface Cells {
  delay: HTMLElement;
  way: HTMLElement;
  gain: HTMLElement;
  ids: HTMLElement;
  /** The drivers that are written there. */
  of: string;
}

export class Tables {
  private rows = new Map<number, Cells>();
  /** The woofer's cell, with what it is set to at the plan's spot. */
  private others: { delay: HTMLElement; way: HTMLElement; delay_us: number }[] = [];
  private readonly all = el<HTMLDetailsElement>("all-drivers");
  private readonly long = new DriverTable();

  constructor(private readonly state: State) {
    state.on("plan", () => this.take());
    el("copy").onclick = () => void this.copy();
    this.all.ontoggle = () => this.drivers();
    document.addEventListener("picked", () => this.drivers());
  }

  private take(): void {
    const { planned } = this.state;
    if (planned === null) return;
    const set = new Map(planned.processor.map((s) => [s.channel, s]));
    const others = planned.processor.filter((s) => planned.plan.channels.every((c) => c.id !== s.channel));
    this.rows = new Map();
    this.others = [];
    el("channels").querySelector("tbody")!.replaceChildren(
      ...planned.plan.channels.map((c) => {
        const row = { delay: make("td", { class: "number strong" }), way: make("td", { class: "number way" }), gain: make("td", { class: "number" }), ids: make("td", { class: "wide-cell ids" }), of: "" };
        this.rows.set(c.id, row);
        return make("tr", { "data-channel": c.id },
          make("th", { scope: "row" }, chip(c.id)), make("td", { class: "wide-cell bar-cell" }, bar(c.id)), row.delay, row.way, row.gain,
          make("td", { class: "polarity" }, (set.get(c.id)?.inverted ?? c.inverted) ? "inverted" : "normal"),
          row.ids);
      }),
      ...others.map((s) => {
        const [delay, way] = [make("td", { class: "number strong" }), make("td", { class: "number way" })];
        this.others.push({ delay, way, delay_us: 1000 * s.delay_ms });
        return make("tr", { "data-channel": s.channel },
          make("th", { scope: "row" }, `${s.channel}${s.name ? `, ${s.name}` : ""}`), make("td", { class: "wide-cell bar-cell" }),
          delay, way, make("td", { class: "number" }, decibels(s.gain_db)),
          make("td", { class: "polarity" }, s.inverted ? "inverted" : "normal"), make("td", { class: "wide-cell ids" }));
      }),
    );
    el("channels").dataset.polarity = planned.processor.some((s) => s.inverted) ? "mixed" : "normal";
    say(el("filters"), filters(planned, planned.processor.filter((s) => !others.includes(s))));
    this.draw();
    this.drivers();
  }

  /** Shows the newest delays. */
  draw(): void {
    const { channels, isSettled, planned } = this.state;
    const former = this.state.former?.channels;
    for (const c of channels) {
      const row = this.rows.get(c.id);
      if (row === undefined) continue;
      say(row.delay, milliseconds(c.delay_us));
      say(row.way, this.way(c.delay_us));
      const before = former?.find((f) => f.id === c.id);
      for (const [cell, isOther] of [[row.delay, before?.delay_us !== c.delay_us], [row.gain, before?.gain_db !== c.gain_db]] as const) cell.classList.toggle("changed", former !== undefined && isOther);
      mark(row.delay, "title", before === undefined || before.delay_us === c.delay_us ? "" : `before: ${milliseconds(before.delay_us)} ms`);
      say(row.gain, decibels(c.gain_db));
      const of = c.drivers.join();
      if (of !== row.of) say(row.ids, runs(c.drivers));
      row.of = of;
    }
    for (const { delay, way, delay_us } of this.others) {
      say(delay, isSettled ? milliseconds(delay_us) : "…");
      say(way, isSettled ? this.way(delay_us) : "…");
    }
    if (planned !== null) say(el("step"), steps(planned.rounding, isSettled, this.state.isFormer));
  }

  /** How far sound goes in a delay, mm. */
  private way(us: number): string {
    return fixed((us / 1000) * (this.state.planned?.plan.air.speed_of_sound_m_s ?? 0), 0);
  }

  /** Fills the long table, where it is open. */
  drivers(): void {
    const { rows } = this.state;
    if (rows.length === 0 || !this.all.open) return;
    const picked = el<HTMLSelectElement>("pick").value;
    this.long.show(rows, picked);
  }

  /** Puts the table on the clipboard, for a spreadsheet. */
  private async copy(): Promise<void> {
    const lines = [...el("channels").querySelectorAll("tbody tr[data-channel]")].map((tr) => {
      const cells = [...tr.querySelectorAll("td:not(.bar-cell)")].map((td) => (td.textContent ?? "").replace("\u2212", "-"));
      return [tr.querySelector("th")?.textContent ?? "", ...cells].join("\t");
    });
    const button = el("copy");
    try {
      await navigator.clipboard.writeText(["channel\tdelay_ms\tdelay_mm\tgain_db\tpolarity\tdrivers", ...lines].join("\n"));
      say(button, "Copied");
    } catch {
      say(button, "Not allowed");
    }
    setTimeout(() => say(button, "Copy"), 1600);
  }
}

/** What the processor's step makes of the delays, in words. */
function steps({ step_us, octave_hz, loss_db }: Rounding, isSettled: boolean, isFormer: boolean): string {
  const step = `These are delays that the processor can be set to, in steps of ${fixed(step_us, step_us < 100 ? 1 : 0)} µs`;
  if (isFormer) return `${step}.`;
  if (!isSettled) return `${step}. What that costs is computed once the chair rests.`;
  let worst = -1;
  for (const [i, loss] of loss_db.entries()) if (loss !== null && loss > (loss_db[worst] ?? 0)) worst = i;
  const loss = loss_db[worst] ?? 0;
  if (loss < 0.05) return `${step}, at no cost.`;
  return `${step}. That costs at most ${decibels(loss)} dB, in the octave of ${hertz(nominal(octave_hz[worst] ?? 1000))}.`;
}

/** What people call an octave whose exact centre is 1 kHz times a power of 10^0.3. */
function nominal(hz: number): number {
  const steps = Math.round(Math.log2(hz / 1000));
  return steps < -3 ? Math.floor(1000 * 2 ** steps) : 1000 * 2 ** steps;
}

/** Families of filters, which are called after people. */
const FAMILIES: Record<string, string> = { butterworth: "Butterworth", "linkwitz-riley": "Linkwitz-Riley", bessel: "Bessel" };

/** The filters of the channels in words, where they are all the same. */
function filters({ protection }: PlanAnswer, settings: Setting[]): string {
  const { family, order, corner_hz } = protection;
  const said = settings.map((s) => {
    const kinds = new Map<string, string[]>();
    for (const f of s.filters) {
      const kind = `${f.name} at ${hertz(f.frequency_hz)}`;
      kinds.set(kind, [...(kinds.get(kind) ?? []), fixed(f.q, 3)]);
    }
    const high = `high-pass at ${hertz(corner_hz)}`;
    return [...kinds]
      .map(([kind, q]) => (kind === high ? `${FAMILIES[family] ?? family} high-pass of order ${order} at ${hertz(corner_hz)}, as sections of Q ${q.join(" and ")}` : `${kind}, Q ${q.join(" and ")}`))
      .join("; ");
  });
  const first = said[0] ?? "";
  if (first === "") return "";
  return said.every((s) => s === first) ? `On every channel: ${first}.` : "The channels' filters differ: see the processor's table.";
}
