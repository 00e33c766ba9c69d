// What a search found: all that was tried in two of its aims, sliders that weigh the aims, and the designs
// that are offered, which a click opens.

import * as api from "./api";
import { el, framed, ink, make, paper, say } from "./dom";
import { notice } from "./notice";
import type { Search, SearchAim, SearchFound } from "./document";
import type { State } from "./state";
import { fixed } from "./words";

type Figures = Record<string, number | null>;

/** Room for the axes, and around the points, px. */
const ROOM = { left: 46, right: 16, top: 14, bottom: 34 };
/** A point nearer than this is meant. */
const NEAR_PX = 22;
const OFFERED_PX = 11;

/** How far a design is from the best of those that are offered in an aim: 0 is the best, 1 the worst. */
export function share(aim: SearchAim, of: Figures, offered: Figures[]): number {
  const known = offered.map((o) => o[aim.key] ?? Number.NaN).filter(Number.isFinite);
  const [low, high] = [Math.min(...known), Math.max(...known)];
  const v = of[aim.key] ?? Number.NaN;
  if (!Number.isFinite(v) || high <= low) return 0;
  return aim.more_is_better ? (high - v) / (high - low) : (v - low) / (high - low);
}

/** What a design is worth by the weights of the aims, 0 being best in all. */
export function worth(aims: SearchAim[], weights: number[], of: Figures, offered: Figures[]): number {
  const sum = weights.reduce((s, w) => s + w, 0) || 1;
  return aims.reduce((s, aim, i) => s + weights[i]! * share(aim, of, offered), 0) / sum;
}

export class FoundPanel {
  private search: Search | null = null;
  private weights: number[] = [];
  private axes = { across: 0, up: 0 };
  private lit = -1;
  /** Where the designs that are offered are in the picture. */
  private spots: { x: number; y: number; found: SearchFound }[] = [];
  private readonly canvas = el<HTMLCanvasElement>("found-chart");
  private readonly draw = framed(() => this.drawNow());

  constructor(private readonly state: State) {
    this.canvas.addEventListener("click", (event) => {
      const found = this.near(event);
      if (found !== null) void this.open(found);
    });
    this.canvas.addEventListener("pointermove", (event) => this.light(this.near(event)?.number ?? -1));
    this.canvas.addEventListener("pointerleave", () => this.light(-1));
    new ResizeObserver(this.draw).observe(this.canvas);
    state.on("plan", () => this.mark());
    void this.fetch();
  }

  recolour(): void {
    this.draw();
  }

  private async fetch(): Promise<void> {
    this.search = (await api.found()).search;
    const { aims } = this.search;
    this.weights = aims.map(() => 1);
    this.axes = { across: aims.length - 1, up: 0 };
    el("offered").hidden = false;
    say(el("offered-title"), this.search.title);
    say(el("offered-how"), `${this.search.how}.`);
    el("offered-aims").replaceChildren(...aims.map((aim, i) => {
      const slider = make("input", { type: "range", min: 0, max: 1, step: 0.05, value: 1, id: `aim-${aim.aim}` });
      slider.oninput = () => {
        this.weights[i] = slider.valueAsNumber;
        this.list();
      };
      return make("label", {}, make("span", {}, name(aim)), slider);
    }));
    for (const which of ["across", "up"] as const) {
      const select = el<HTMLSelectElement>(`found-${which}`);
      select.replaceChildren(...aims.map((aim, i) => make("option", { value: i, selected: i === this.axes[which] }, name(aim))));
      select.onchange = () => {
        this.axes[which] = Number(select.value);
        this.draw();
      };
    }
    this.list();
    this.draw();
  }

  /** Lists the designs that are offered, the best by the weights first. */
  private list(): void {
    const { search } = this;
    if (search === null) return;
    const all = search.found.map(figures);
    const best = [...search.found].sort((a, b) => worth(search.aims, this.weights, figures(a), all) - worth(search.aims, this.weights, figures(b), all) || a.number - b.number);
    const box = el("offered-list");
    const rows = new Map([...box.children].map((li) => [Number((li as HTMLElement).dataset.number), li]));
    const held = document.activeElement;
    box.replaceChildren(...best.map((found) => rows.get(found.number) ?? this.row(found, search.aims)));
    if (held instanceof HTMLElement) held.focus({ preventScroll: true });
    this.mark();
  }

  private row(found: SearchFound, aims: SearchAim[]): HTMLLIElement {
    const values = aims.map((aim) => `${name(aim)} ${told(figures(found)[aim.key])}${unit(aim)}`).join(", ");
    const button = make("button", { type: "button", class: "plain offered-open" },
      make("span", { class: "offered-number", "aria-hidden": "true" }, String(found.number)),
      make("span", {}, make("strong", {}, found.name), make("span", { class: "quiet" }, ` ${found.why}. `), make("span", { class: "offered-figures" }, values)));
    button.onclick = () => void this.open(found);
    for (const over of ["pointerenter", "focus"] as const) button.addEventListener(over, () => this.light(found.number));
    return make("li", { "data-number": found.number }, button);
  }

  /** Marks the design that is open. */
  private mark(): void {
    for (const li of el("offered-list").children) {
      const found = this.search?.found.find((f) => String(f.number) === (li as HTMLElement).dataset.number);
      li.firstElementChild?.setAttribute("aria-current", String(found?.file === this.state.origin.name));
    }
    this.draw();
  }

  private async open(found: SearchFound): Promise<void> {
    try {
      const { file, text } = await api.offered(found.file);
      await this.state.replace(text, `opened ${found.number}, ${found.name}`, { name: file, canSave: false, saved: text });
      notice("files", "");
    } catch (error) {
      notice("files", error instanceof Error ? `${error.message}.` : "");
    }
  }

  private light(number: number): void {
    if (number === this.lit) return;
    this.lit = number;
    this.canvas.style.cursor = number < 0 ? "default" : "pointer";
    for (const li of el("offered-list").children) li.toggleAttribute("data-lit", (li as HTMLElement).dataset.number === String(number));
    this.draw();
  }

  private near({ offsetX, offsetY }: MouseEvent): SearchFound | null {
    const far = this.spots.map((s) => Math.hypot(s.x - offsetX, s.y - offsetY));
    const at = far.indexOf(Math.min(...far));
    return at >= 0 && far[at]! < NEAR_PX ? this.spots[at]!.found : null;
  }

  private drawNow(): void {
    const { search } = this;
    const p = paper(this.canvas);
    if (search === null || p === null) return;
    const c = p.context;
    c.clearRect(0, 0, p.width, p.height);
    const [across, up] = [search.aims[this.axes.across]!, search.aims[this.axes.up]!];
    const points = search.tried.map((t) => ({ ...t, figures: figures(t) }));
    const x = axis(points.map((t) => t.figures[across.key] ?? null), ROOM.left, p.width - ROOM.right);
    const y = axis(points.map((t) => t.figures[up.key] ?? null), p.height - ROOM.bottom, ROOM.top);
    grid(c, p.height, x, y);
    for (const t of points) {
      const [u, v] = [x.at(t.figures[across.key]), y.at(t.figures[up.key])];
      if (!Number.isFinite(u + v)) continue;
      c.globalAlpha = t.stage === "screened" ? 0.25 : 0.7;
      c.fillStyle = t.front ? ink("--accent") : ink("--line-best");
      dot(c, u, v, t.front ? 3.5 : t.stage === "screened" ? 1.5 : 2.5);
    }
    c.globalAlpha = 1;
    this.spots = search.found.map((found) => ({ x: x.at(figures(found)[across.key]), y: y.at(figures(found)[up.key]), found }));
    for (const { x: u, y: v, found } of this.spots) {
      const isOpen = found.file === this.state.origin.name;
      c.fillStyle = found.number === this.lit || isOpen ? ink("--line-before") : ink("--accent");
      dot(c, u, v, OFFERED_PX);
      c.fillStyle = ink("--on-accent");
      c.font = `600 12px ${ink("--sans")}`;
      c.textAlign = "center";
      c.textBaseline = "middle";
      c.fillText(String(found.number), u, v + 0.5);
    }
    say(el("found-axes"), `Across: ${across.axis}. Up: ${up.axis}.`);
    this.canvas.setAttribute("aria-label", `${search.tried.length} designs that were tried, by ${name(across)} and ${name(up)}; those that are offered are in the list.`);
  }
}

function figures(of: object): Figures {
  return of as unknown as Figures;
}

/** An aim in a few words: what its axis says before its unit. */
function name(aim: SearchAim): string {
  return aim.axis.split(/[,:]/)[0]!;
}

function unit(aim: SearchAim): string {
  const of = /, ([^:]+):/.exec(aim.axis)?.[1];
  return of === undefined ? "" : ` ${of}`;
}

function told(v: number | null | undefined): string {
  return v == null ? "–" : fixed(v, Math.abs(v) >= 20 || Number.isInteger(v) ? 0 : 1);
}

interface Axis {
  at: (v: number | null | undefined) => number;
  ticks: { px: number; words: string }[];
}

/** An axis for values between two places of the picture. */
function axis(values: (number | null)[], from: number, to: number): Axis {
  const known = values.filter((v): v is number => v !== null && Number.isFinite(v));
  const [low, high] = known.length === 0 ? [0, 1] : [Math.min(...known), Math.max(...known)];
  const span = high - low || 1;
  const ten = 10 ** Math.floor(Math.log10(span / 4));
  const step = [1, 2, 5, 10].map((k) => k * ten).find((s) => span / s <= 5)!;
  const at = (v: number | null | undefined) => (v == null ? Number.NaN : from + ((v - low) / span) * (to - from));
  const ticks = [];
  for (let v = step * Math.ceil(low / step); v <= high + 1e-9 * span; v += step) ticks.push({ px: at(v), words: fixed(v, step < 1 ? 1 : 0) });
  return { at, ticks };
}

function grid(c: CanvasRenderingContext2D, height: number, x: Axis, y: Axis): void {
  c.font = `11.5px ${ink("--sans")}`;
  c.fillStyle = ink("--quiet");
  c.strokeStyle = ink("--rule");
  c.textAlign = "center";
  c.textBaseline = "top";
  for (const { px, words } of x.ticks) c.fillText(words, px, height - ROOM.bottom + 14);
  c.textAlign = "right";
  c.textBaseline = "middle";
  for (const { px, words } of y.ticks) {
    c.fillText(words, ROOM.left - 14, px);
    c.beginPath();
    c.moveTo(ROOM.left - 8, px);
    c.lineTo(c.canvas.clientWidth - 4, px);
    c.stroke();
  }
}

function dot(c: CanvasRenderingContext2D, x: number, y: number, r: number): void {
  c.beginPath();
  c.arc(x, y, r, 0, 2 * Math.PI);
  c.fill();
}
