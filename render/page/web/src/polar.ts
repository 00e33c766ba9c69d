// The level round the body at the chair's height in one octave: with the delays,
// and without.

import { el, hide, ink, mark, paper } from "./dom";
import type { State } from "./state";
import type { Polar, Triple } from "./document";
import type { Maybe } from "./types";
import { hertz } from "./words";

const RINGS = 4;
const RING_DB = 6;

export class Round {
  private readonly canvas = el<HTMLCanvasElement>("polar");
  private readonly upright = el<HTMLCanvasElement>("polar-upright");
  private polar: Polar | null = null;
  private band_hz = 2000;

  constructor(private readonly state: State, private readonly changed: () => void) {
    // At once, and not in the next frame: till then the old picture would be stretched.
    new ResizeObserver(() => this.draw()).observe(this.canvas);
    el<HTMLSelectElement>("round-band").onchange = (event) => {
      this.band_hz = Number((event.target as HTMLSelectElement).value);
      this.changed();
    };
  }

  take(): void {
    this.polar = this.state.moved?.polar ?? this.polar;
    this.changed();
  }

  /** Draws; while the chair moves the last circle stays, paler. */
  draw(): void {
    const upright = this.state.planned?.upright ?? null;
    hide(this.upright, upright === null);
    if (this.polar !== null) this.circle(this.canvas, this.polar, false, this.state.moved?.polar ? 1 : 0.45);
    if (upright !== null) this.circle(this.upright, upright, true, this.state.isSettled ? 1 : 0.45);
  }

  private circle(canvas: HTMLCanvasElement, polar: Polar, isUpright: boolean, alpha: number): void {
    const { band_hz } = this;
    const p = paper(canvas);
    if (p === null) return;
    const { angle_deg: angle, band_hz: bands, level_db: level, unaligned_db: without } = polar;
    const c = p.context;
    const r = Math.min(p.width, p.height) / 2 - 24;
    const [x0, y0] = [p.width / 2, p.height / 2];
    const b = nearest(bands, band_hz);
    const top = RING_DB * Math.ceil(Math.max(...[level[b], without[b]].flatMap((l) => (l ?? []).filter((v): v is number => v !== null))) / RING_DB);
    const radius = (db: Maybe) => (db === null ? 0 : r * Math.max(0, 1 - (top - db) / (RINGS * RING_DB)));
    c.clearRect(0, 0, p.width, p.height);
    c.font = `11.5px ${ink("--sans")}`;
    c.textAlign = "center";
    c.textBaseline = "middle";
    this.rings(c, x0, y0, r);
    const line = (values: Maybe[]) => {
      c.beginPath();
      for (const [i, a] of angle.entries()) {
        const t = (a * Math.PI) / 180;
        const q = radius(values[i] ?? null);
        c.lineTo(x0 + q * Math.cos(t), y0 - q * Math.sin(t));
      }
      c.closePath();
      c.stroke();
    };
    c.lineJoin = "round";
    c.globalAlpha = alpha;
    c.strokeStyle = ink("--line-before");
    c.lineWidth = 1.5;
    line(without[b] ?? []);
    c.strokeStyle = ink("--accent");
    c.lineWidth = 2.5;
    line(level[b] ?? []);
    c.globalAlpha = 1;
    this.marks(c, x0, y0, r, top, isUpright ? "from the side" : "front →");
    if (!isUpright) this.chair(c, x0, y0, r);
    mark(canvas, "aria-label", words(isUpright, angle, level[b] ?? [], bands[b] ?? band_hz));
  }

  private rings(c: CanvasRenderingContext2D, x0: number, y0: number, r: number): void {
    c.strokeStyle = ink("--rule");
    c.lineWidth = 1;
    for (let k = 1; k <= RINGS; k++) {
      c.beginPath();
      c.arc(x0, y0, (r * k) / RINGS, 0, 2 * Math.PI);
      c.stroke();
    }
    c.beginPath();
    c.moveTo(x0 - r, y0);
    c.lineTo(x0 + r, y0);
    c.moveTo(x0, y0 - r);
    c.lineTo(x0, y0 + r);
    c.stroke();
  }

  /** The rings' levels, over the lines so that they can be read, and which way is the front. */
  private marks(c: CanvasRenderingContext2D, x0: number, y0: number, r: number, top: number, below: string): void {
    for (let k = RINGS; k >= 2; k--) {
      const t = -Math.PI * 0.75;
      const q = (r * k) / RINGS;
      const text = `${top - RING_DB * (RINGS - k)}${k === RINGS ? " dB" : ""}`;
      const w = c.measureText(text).width + 8;
      c.fillStyle = ink("--card");
      c.fillRect(x0 + q * Math.cos(t) - w / 2, y0 - q * Math.sin(t) - 8, w, 16);
      c.fillStyle = ink("--quiet");
      c.fillText(text, x0 + q * Math.cos(t), y0 - q * Math.sin(t));
    }
    c.fillText(below, x0 + r - 10, y0 + r + 10);
    c.fillStyle = ink("--shell");
    c.strokeStyle = ink("--edge");
    c.beginPath();
    c.arc(x0, y0, 7, 0, 2 * Math.PI);
    c.fill();
    c.stroke();
  }

  /** Where the chair and the seats are on the circle. */
  private chair(c: CanvasRenderingContext2D, x0: number, y0: number, r: number): void {
    const { isChairOwn, seats, spot } = this.state;
    c.fillStyle = ink("--accent");
    const dot = ([x, y]: Triple, size: number): [number, number] => {
      const t = Math.atan2(y, x);
      const at: [number, number] = [x0 + (r + 12) * Math.cos(t), y0 - (r + 12) * Math.sin(t)];
      c.beginPath();
      c.arc(...at, size, 0, 2 * Math.PI);
      c.fill();
      return at;
    };
    if (seats.length > 1) for (const seat of seats) dot(seat, 4);
    const [x, y] = dot(spot, 6);
    const word = isChairOwn ? "chair" : "middle";
    c.fillText(word, Math.min(x, 2 * x0 - c.measureText(word).width / 2) - 2, y - 15);
  }
}

function nearest(bands: number[], hz: number): number {
  let best = 0;
  for (const [i, b] of bands.entries()) if (Math.abs(Math.log(b / hz)) < Math.abs(Math.log(bands[best]! / hz))) best = i;
  return best;
}

/** An octave's exact middle as it is called. */
export function nominal(hz: number): number {
  return [125, 250, 500, 1000, 2000, 4000, 8000, 16000].find((n) => Math.abs(hz / n - 1) < 0.05) ?? hz;
}

function words(isUpright: boolean, angle: number[], level: Maybe[], band: number): string {
  const known = level.filter((v): v is number => v !== null);
  if (known.length === 0) return "Level round the body: none";
  const most = Math.max(...known);
  const least = Math.min(...known);
  const at = (v: number) => Math.round(angle[level.indexOf(v)] ?? 0);
  return `Level ${isUpright ? "over the top of" : "round"} the body in the ${hertz(nominal(band))} octave: ${most.toFixed(1)} dB at ${at(most)} degrees, ${least.toFixed(1)} dB at ${at(least)} degrees, counted from the front ${isUpright ? "up" : "to the left"}.`;
}
