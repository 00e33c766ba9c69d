// The level at the chair over frequency: as it is, with the delays, in step.

import uPlot from "uplot";

import { el, ink, make } from "./dom";
import type { State } from "./state";
import type { Response } from "./document";
import type { Maybe } from "./types";
import { fixed, hertz } from "./words";

/** One line of the picture. */
interface Line {
  words: string;
  of: (r: Response) => Maybe[];
  colour: string;
  dash?: number[];
  width: number;
}

const lines: Line[] = [
  { words: "in step", of: (r) => r.in_step_db, colour: "--line-best", dash: [2, 4], width: 1.5 },
  { words: "without delays", of: (r) => r.unaligned_db, colour: "--line-before", width: 1.5 },
  { words: "with delays", of: (r) => r.aligned_db, colour: "--accent", width: 2.5 },
];

/** A level that does not follow the chair. */
export interface Level {
  frequency_hz: number[];
  level_db: Maybe[];
}

/** A line that does not follow the chair, at the frequencies of a response. */
type Still = Omit<Line, "of"> & { level: Level };

export const NAMED_HZ = [50, 100, 200, 500, 1000, 2000, 5000, 10000, 20000];
/** Where there is little room these go without a name. */
export const SPARED_HZ = [200, 2000, 20000];
const SPAN_DB = 40;
/** Between these the lines are named. */
const NAMES_HZ = { from: 1200, to: 3500 };
/** As large as the curves are on paper. */
const PAPER_PX = { width: 680, height: 130 };
/** Below this width the lines are named above the picture. */
export const NARROW_PX = 520;

export class Curves {
  private plot: uPlot | null = null;
  private readonly box = el("curves");
  private high = 0;
  private isPaper = false;
  private second: Still | null = null;
  private heard: Still | null = null;

  constructor(private readonly state: State) {
    new ResizeObserver(() => this.resize()).observe(this.box);
    state.on("ghost", () => this.renew());
  }

  /** Draws a second design's line over the first's; null takes it away. */
  compare(second: { name: string; response: Response } | null): void {
    this.second = second === null ? null : {
      words: second.name, colour: "--line-other", dash: [7, 4], width: 2,
      level: { frequency_hz: second.response.frequency_hz, level_db: second.response.aligned_db },
    };
    this.renew();
  }

  /** Draws what was measured; null takes it away. */
  measured(level: Level | null): void {
    this.heard = level === null ? null : { words: "measured", colour: "--line-measured", width: 1.5, level };
    this.renew();
  }

  /** Makes the picture anew, in the page's present colours. */
  renew(): void {
    this.plot?.destroy();
    this.plot = null;
    this.draw(true);
  }

  /** Draws for the printer, or for the screen again. */
  forPaper(isPaper: boolean): void {
    this.isPaper = isPaper;
    this.renew();
  }

  /** Draws the newest answer. The scale follows a chair at rest only, so that it does not jump. */
  draw(isRest: boolean): void {
    const response = this.state.moved?.response ?? this.state.planned?.plan.response;
    if (response === undefined || (this.plot === null && this.box.clientWidth === 0)) return;
    const top = Math.max(...response.in_step_db.filter((v): v is number => v !== null));
    if (isRest || this.plot === null || top > this.high) this.high = 5 * Math.ceil((top + 2) / 5);
    const data = this.data(response);
    if (this.plot === null) this.plot = new uPlot(this.options(), data, this.box);
    else this.plot.setData(data);
    if (isRest) this.tell(response);
  }

  /** The level before a hand took hold of something. */
  private ghost(): Still | null {
    const r = this.state.former?.response;
    return r === undefined ? null : { words: "before", colour: "--line-best", width: 1.5, level: { frequency_hz: r.frequency_hz, level_db: r.aligned_db } };
  }

  private still(): Still[] {
    return [this.ghost(), this.second, this.heard].filter((s) => s !== null);
  }

  private all(): Omit<Line, "of">[] {
    return [...lines, ...this.still()];
  }

  private data(response: Response): uPlot.AlignedData {
    const own = lines.map((l) => l.of(response));
    return [response.frequency_hz, ...own, ...this.still().map((s) => onto(response.frequency_hz, s.level))];
  }

  private tell(response: Response): void {
    const at = (list: Maybe[]) => fixed(list[Math.floor(list.length / 2)] ?? null, 1);
    const middle = response.frequency_hz[Math.floor(response.frequency_hz.length / 2)] ?? 0;
    this.box.setAttribute(
      "aria-label",
      `Level at the chair over frequency. At ${hertz(middle)}: ${at(response.unaligned_db)} dB without delays, ${at(response.aligned_db)} dB with them, ${at(response.in_step_db)} dB in step.`,
    );
    el("response-key").replaceChildren(
      ...this.all().map((l, i) => make("span", { class: `key-item ${i < lines.length ? `line-${i}` : l.colour.slice(2)}` }, l.words)),
    );
  }

  private resize(): void {
    if (this.box.clientWidth === 0) return;
    if (this.plot === null || this.box.clientWidth < NARROW_PX !== this.plot.width < NARROW_PX) return this.renew();
    this.plot.setSize(this.size());
  }

  private size(): { width: number; height: number } {
    if (this.isPaper) return PAPER_PX;
    return { width: this.box.clientWidth, height: this.box.clientHeight };
  }

  private options(): uPlot.Options {
    const quiet = ink("--quiet");
    const font = `12px ${ink("--sans")}`;
    const grid = { stroke: ink("--rule"), width: 1 };
    const isNarrow = this.box.clientWidth < NARROW_PX;
    return {
      ...this.size(),
      padding: [10, 14, 0, 0],
      cursor: { drag: { setScale: false }, points: { size: 7 }, y: false },
      legend: { show: false },
      scales: {
        x: { time: false, distr: 3, log: 10, range: [50, 20000] },
        y: { range: () => [this.high - SPAN_DB, this.high] },
      },
      axes: [
        { stroke: quiet, font, grid, ticks: { show: false }, size: 30, gap: 6, splits: () => NAMED_HZ, filter: (_, s) => s, values: (_, s) => s.map((v) => (isNarrow && SPARED_HZ.includes(v) ? "" : short(v))) },
        { stroke: quiet, font, grid, ticks: { show: false }, size: 40, gap: 6, values: (_, s) => s.map(String) },
      ],
      series: [
        {},
        ...this.all().map((l) => ({
          label: l.words,
          stroke: ink(l.colour),
          width: l.width,
          ...(l.dash ? { dash: l.dash } : {}),
          points: { show: false },
        })),
      ],
      hooks: isNarrow ? {} : { draw: [(u: uPlot) => this.names(u)] },
    };
  }

  /** Writes each line's name on it, where the lines lie furthest apart. */
  private names(u: uPlot): void {
    const c = u.ctx;
    const sharp = devicePixelRatio || 1;
    const at = this.apart(u);
    const named = this.all().flatMap((l, i) => {
      const v = u.data[i + 1]?.[at];
      return v == null ? [] : [{ l, y: u.valToPos(v, "y", true) }];
    });
    named.sort((a, b) => a.y - b.y);
    const gap = 17 * sharp;
    for (const [i, e] of named.entries()) e.y = i === 0 ? e.y - 12 * sharp : Math.max(e.y + 13 * sharp, named[i - 1]!.y + gap);
    c.save();
    c.font = `600 ${12 * sharp}px ${ink("--sans")}`;
    c.textAlign = "center";
    c.textBaseline = "middle";
    c.lineJoin = "round";
    c.lineWidth = 4 * sharp;
    c.strokeStyle = ink("--card");
    const x = u.valToPos(u.data[0][at]!, "x", true);
    for (const { l, y } of named) {
      c.strokeText(l.words, x, y);
      c.fillStyle = ink(l.colour);
      c.fillText(l.words, x, y);
    }
    c.restore();
  }

  /** Where the lines lie furthest apart, of the frequencies at which all are heard. */
  private apart(u: uPlot): number {
    let [best, most] = [0, -1];
    for (const [i, f] of Array.from(u.data[0]).entries()) {
      if (f < NAMES_HZ.from || f > NAMES_HZ.to) continue;
      const known = u.data.slice(1).map((list) => list[i]).filter((v) => v != null).sort((a, b) => a - b);
      const least = Math.min(...known.slice(1).map((v, k) => v - known[k]!));
      if (Number.isFinite(least) && least > most) [best, most] = [i, least];
    }
    return best;
  }
}

/** A frequency on an axis. */
export function short(hz: number): string {
  return hz < 1000 ? String(hz) : `${hz / 1000}k`;
}

/** How far off, as a ratio, a frequency may be to stand for another. */
const NEAR = 1.04;

/** A level at other frequencies: the nearest of its own, nothing where none is near. */
function onto(frequency: number[], { frequency_hz, level_db }: Level): Maybe[] {
  let j = 0;
  return frequency.map((f) => {
    while (j + 1 < frequency_hz.length && Math.abs(frequency_hz[j + 1]! - f) <= Math.abs(frequency_hz[j]! - f)) j++;
    const its = frequency_hz[j] ?? 0;
    return its > f / NEAR && its < f * NEAR ? (level_db[j] ?? null) : null;
  });
}
