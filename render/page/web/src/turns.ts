// How the direct sound at the chair turns over frequency: its phase, or its group delay, in the place of the
// level where they are chosen.

import uPlot from "uplot";

import { NAMED_HZ, NARROW_PX, short, SPARED_HZ } from "./curves";
import type { Phase, Turn } from "./document";
import { el, ink, say } from "./dom";
import type { Follow } from "./follow";
import type { State } from "./state";
import type { Maybe } from "./types";
import { fixed } from "./words";

/** What can be shown of a turn; the scale holds 0 and no less than so much. */
interface Shown {
  words: string;
  unit: string;
  of: (turn: Turn) => Maybe[];
  least: number;
  /** How many of the values at each end are left out of the scale: spikes beside a null. */
  spikes: number;
  /** Without delays it turns as often as it likes: its line does not make the scale. */
  holdsAll: boolean;
}

const SHOWN: Record<string, Shown> = {
  phase: { words: "Phase", unit: "degrees, after the first arrival", of: (t) => t.phase_deg, least: 180, spikes: 0, holdsAll: false },
  group: { words: "Group delay", unit: "ms, after the first arrival", of: (t) => t.group_delay_ms, least: 0.5, spikes: 0.02, holdsAll: true },
};

const LINES = [
  { of: (p: Phase) => p.in_step, colour: "--line-best", dash: [2, 4], width: 1.5 },
  { of: (p: Phase) => p.unaligned, colour: "--line-before", width: 1.5 },
  { of: (p: Phase) => p.aligned, colour: "--accent", width: 2.5 },
];

export class Turns {
  private plot: uPlot | null = null;
  private readonly box = el("turns");
  private range: [number, number] = [0, 1];
  private shown: Shown | null = null;
  private chosen = "level";

  constructor(private readonly state: State, private readonly follow: Follow) {
    const both = el("response-of");
    both.addEventListener("change", () => {
      this.chosen = both.querySelector<HTMLInputElement>("input:checked")!.value;
      this.show(this.chosen);
      this.follow.phase = this.shown !== null;
      if (this.follow.phase) this.follow.look();
    });
    new ResizeObserver(() => this.resize()).observe(this.box);
    state.on("plan", () => this.unit());
  }

  /** On paper stands the level. */
  forPaper(isPaper: boolean): void {
    this.show(isPaper ? "level" : this.chosen);
  }

  private show(value: string): void {
    this.shown = SHOWN[value] ?? null;
    this.box.hidden = this.shown === null;
    el("turns-key").hidden = this.shown === null;
    el("curves").hidden = el("response-key").hidden = this.shown !== null;
    this.unit();
    this.renew();
  }

  private unit(): void {
    say(el("response-unit"), this.shown?.unit ?? this.state.planned?.plan.level_unit ?? "");
  }

  /** Makes the picture anew, in the page's present colours. */
  renew(): void {
    this.plot?.destroy();
    this.plot = null;
    this.draw(true);
  }

  /** Draws the newest answer. The scale follows a chair at rest only, so that it does not jump. */
  draw(isRest: boolean): void {
    const { shown, state } = this;
    if (shown === null || this.box.clientWidth === 0) return;
    const phase = state.moved === null ? state.planned?.plan.phase : state.moved.phase;
    if (phase === undefined) return; // it comes with the next answer
    const lines = LINES.map((l) => shown.of(l.of(phase)));
    if (isRest || this.plot === null) this.range = ends(shown.holdsAll ? lines.flat() : [...lines[0]!, ...lines[2]!], shown);
    const data: uPlot.AlignedData = [phase.frequency_hz, ...lines];
    if (this.plot === null) this.plot = new uPlot(this.options(), data, this.box);
    else this.plot.setData(data);
    if (isRest) this.tell(shown, phase);
  }

  private tell(shown: Shown, { frequency_hz, aligned, unaligned }: Phase): void {
    const middle = frequency_hz.findIndex((hz) => hz >= 1000);
    const at = (turn: Turn) => fixed(shown.of(turn)[middle], 2);
    this.box.setAttribute("aria-label", `${shown.words} at the chair over frequency, ${shown.unit}. At 1 kHz: ${at(unaligned)} without delays, ${at(aligned)} with them.`);
  }

  private resize(): void {
    if (this.shown === null || this.box.clientWidth === 0) return;
    if (this.plot === null) this.renew();
    else this.plot.setSize({ width: this.box.clientWidth, height: this.box.clientHeight });
  }

  private options(): uPlot.Options {
    const quiet = ink("--quiet");
    const font = `12px ${ink("--sans")}`;
    const grid = { stroke: ink("--rule"), width: 1 };
    const isNarrow = this.box.clientWidth < NARROW_PX;
    const axis = { stroke: quiet, font, grid, ticks: { show: false }, gap: 6 };
    return {
      width: this.box.clientWidth, height: this.box.clientHeight,
      padding: [10, 14, 0, 0],
      cursor: { drag: { setScale: false }, points: { size: 7 }, y: false },
      legend: { show: false },
      scales: { x: { time: false, distr: 3, log: 10, range: [50, 20000] }, y: { range: () => this.range } },
      axes: [
        { ...axis, size: 30, splits: () => NAMED_HZ, filter: (_, s) => s, values: (_, s) => s.map((v) => (isNarrow && SPARED_HZ.includes(v) ? "" : short(v))) },
        { ...axis, size: 46, ...(this.shown === SHOWN.phase ? { incrs: [45, 90, 180, 360, 720, 1440] } : {}) },
      ],
      series: [{}, ...LINES.map(({ colour, width, dash }) => ({ stroke: ink(colour), width, ...(dash ? { dash } : {}), points: { show: false } }))],
    };
  }
}

/** The ends of a scale. */
function ends(all: Maybe[], { least, spikes }: Shown): [number, number] {
  const known = all.filter((v): v is number => v !== null).sort((a, b) => a - b);
  const cut = Math.floor(spikes * known.length);
  let [low, high] = [Math.min(known[cut] ?? 0, 0), Math.max(known[known.length - 1 - cut] ?? 0, 0)];
  if (high - low < least) [low, high] = [(low + high - least) / 2, (low + high + least) / 2];
  const air = 0.06 * (high - low);
  return [low - air, high + air];
}
