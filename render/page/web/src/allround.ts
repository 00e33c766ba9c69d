// For nobody in particular: how loud and how even it is all round, and the one slider between.

import type { Round, RoundPoint } from "./document";
import { el, hide, ink, make, paper, say } from "./dom";
import { nominal } from "./polar";
import type { State } from "./state";
import { decibels, hertz } from "./words";

/** A difference, with its sign. */
export function signed(db: number): string {
  const text = decibels(db);
  return db > 0 && text !== "0.0" ? `+${text}` : text;
}

/** How loud on the mean, and how uneven at the most, a plan is on all circles. */
export function whole({ planned, without, loud }: Round): { own: RoundPoint; without_db: number } {
  const gains = planned.gain_db.flat();
  return {
    own: { loud, gain_db: gains.reduce((sum, v) => sum + v, 0) / Math.max(gains.length, 1), deviation_db: Math.max(...planned.deviation_db.flat()) },
    without_db: Math.max(...without.deviation_db.flat()),
  };
}

export class AllRound {
  private readonly box = el("all-round");
  private readonly loud = el<HTMLInputElement>("loud");
  private readonly front = el<HTMLCanvasElement>("round-front");

  constructor(private readonly state: State) {
    this.loud.onchange = () => void state.change([{ key: "seats.loud", value: this.loud.valueAsNumber }]);
    new ResizeObserver(() => this.draw()).observe(this.front);
  }

  draw(): void {
    const round = this.state.seating?.round;
    hide(this.box, round === undefined);
    hide(el("circles-scroll"), round === undefined);
    hide(el("seats-scroll"), round !== undefined);
    if (round === undefined) return;
    if (document.activeElement !== this.loud) this.loud.value = String(round.loud);
    this.table(round);
    // While seats are moved there is no front: the last one stays.
    this.curve(this.state.planned?.plan.seats?.round?.front ?? [], whole(round).own);
  }

  private table({ octave_hz, planned, without }: Round): void {
    const most = (rows: number[][], i: number) => Math.max(...rows.map((row) => row[i] ?? 0));
    const mean = (rows: number[][], i: number) => rows.reduce((sum, row) => sum + (row[i] ?? 0), 0) / Math.max(rows.length, 1);
    el("circles").querySelector("tbody")!.replaceChildren(...octave_hz.map((hz, i) =>
      make("tr", {},
        make("th", { scope: "row" }, hertz(nominal(hz))),
        make("td", { class: "number strong" }, signed(mean(planned.gain_db, i))),
        make("td", { class: "number strong" }, decibels(most(planned.deviation_db, i))),
        make("td", { class: "number" }, decibels(most(without.deviation_db, i))))));
  }

  /** Draws the plans between even and loud, and the one that is planned. */
  private curve(points: RoundPoint[], own: RoundPoint): void {
    const p = paper(this.front);
    if (p === null) return;
    const c = p.context;
    const all = [...points, own];
    const right = 1.15 * Math.max(...all.map((q) => q.deviation_db), 1);
    const [low, high] = [Math.min(0, ...all.map((q) => q.gain_db)), Math.max(1, ...all.map((q) => q.gain_db))];
    const inset = { left: 38, right: 12, top: 12, bottom: 30 };
    const x = (db: number) => inset.left + (db / right) * (p.width - inset.left - inset.right);
    const y = (db: number) => p.height - inset.bottom - ((db - low) / (high - low || 1)) * (p.height - inset.top - inset.bottom);
    c.clearRect(0, 0, p.width, p.height);
    c.font = `11.5px ${ink("--sans")}`;
    c.strokeStyle = ink("--rule");
    c.lineWidth = 1;
    c.strokeRect(inset.left, inset.top, p.width - inset.left - inset.right, p.height - inset.top - inset.bottom);
    c.fillStyle = ink("--quiet");
    c.textBaseline = "middle";
    c.textAlign = "right";
    for (const db of [low, high]) c.fillText(signed(db), inset.left - 5, y(db));
    c.textBaseline = "top";
    c.textAlign = "left";
    c.fillText("0", inset.left, p.height - inset.bottom + 4);
    c.textAlign = "center";
    c.fillText("louder by dB, over uneven by dB", (inset.left + p.width - inset.right) / 2, p.height - 14);
    c.textAlign = "right";
    c.fillText(decibels(right), p.width - inset.right, p.height - inset.bottom + 4);
    c.strokeStyle = ink("--accent");
    c.lineWidth = 1.5;
    c.beginPath();
    for (const q of points) c.lineTo(x(q.deviation_db), y(q.gain_db));
    c.stroke();
    c.fillStyle = ink("--card");
    for (const q of points) {
      c.beginPath();
      c.arc(x(q.deviation_db), y(q.gain_db), 3.5, 0, 2 * Math.PI);
      c.fill();
      c.stroke();
    }
    c.fillStyle = ink("--accent");
    c.beginPath();
    c.arc(x(own.deviation_db), y(own.gain_db), 6, 0, 2 * Math.PI);
    c.fill();
    this.front.setAttribute("aria-label", `Plans from even to loud: ${points.map((q) => `${signed(q.gain_db)} dB louder, ${decibels(q.deviation_db)} dB uneven`).join("; ")}. The plan: ${signed(own.gain_db)} dB, ${decibels(own.deviation_db)} dB.`);
    say(el("loud-say"), `${signed(own.gain_db)} dB, uneven by ${decibels(own.deviation_db)} dB`);
  }
}
