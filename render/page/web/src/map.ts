// The room from above or from the side, with the chair in it. The chair is the
// page's largest handle: it is dragged, moved by keys, or put where one taps.

import { SHADES, channelColour, css } from "./colours";
import { el, ink, paper, say } from "./dom";
import type { Follow } from "./follow";
import { drawContours, drawHeat } from "./heat";
import type { Box, Place } from "./heat";
import { about, scaleFor } from "./quantity";
import type { Scale } from "./scale";
import { covering, nice, share, ticks } from "./scale";
import type { State } from "./state";
import type { Heat, Triple } from "./document";
import type { Maybe, Quantity, View } from "./types";
import { fixed, length } from "./words";

const STEP_M = 0.05;
const LONG_STEP_M = 0.25;
/** No chair comes nearer to the body than this. */
const CLEAR_M = 0.08;

/** How far a hand is from the middle of the chair on the screen, and how much further the tag is that would be in its way. */
const HAND_PX = 35;
const TAG_PX = 40;
const TAG_OVER_HAND_PX = 18;

/** How much of a former map is left to see. */
const FORMER = 0.15;

/** The corners of a map. */
type Frame = Pick<Heat, "low_m" | "high_m">;

export class RoomMap {
  private readonly canvas = el<HTMLCanvasElement>("map");
  private readonly bar = el<HTMLCanvasElement>("bar");
  private readonly room = el("room");
  private readonly chair = el("chair");
  private readonly tag = el("chair-tag");
  private readonly hands = { left: el("hand-left"), right: el("hand-right") };
  private readonly turn = document.getElementById("chair-turn");
  private scale: Scale | null = null;
  private scaled = "";
  private heat: Heat | null = null;
  /** What the heat is of, as follow has it. */
  private heatOf = "";
  private hasMoved = false;
  /** Half the width of the chair's tag, for words of a length: to ask for it lays the page out. */
  private tagged = { length: 0, half: 0 };
  private barred = "";
  /** What the word for the front takes up. */
  private front: Box[] = [];
  private grip: { dx: number; dy: number } | null = null;

  constructor(private readonly state: State, private readonly follow: Follow, private readonly changed: () => void) {
    this.choosers();
    this.pointer();
    this.chair.addEventListener("keydown", (event) => this.key(event));
    for (const [i, axis] of (["x", "y", "z"] as const).entries()) {
      const field = el<HTMLInputElement>(`spot-${axis}`);
      field.addEventListener("input", () => {
        if (field.value === "" || !Number.isFinite(field.valueAsNumber)) return;
        const spot: Triple = [...this.state.spot];
        spot[i] = field.valueAsNumber;
        this.follow.move(spot);
      });
    }
    // At once, and not in the next frame: till then the old picture would be stretched.
    new ResizeObserver(() => this.draw()).observe(this.room);
  }

  /** Takes the newest answer's slice. */
  take(): void {
    const heat = this.state.moved?.map;
    const key = this.follow.answered;
    if (heat == null || key !== this.follow.wanted) return; // of what is no longer asked
    this.heat = heat;
    this.heatOf = key;
    if (this.scale === null || key !== this.scaled || this.follow.isFine) {
      this.scale = covering(scaleFor(this.follow.quantity, heat), this.atChair(heat));
      this.scaled = key;
    }
  }

  /** Says that the map is not there yet, over what is left of the former one. */
  private computing(): boolean {
    const isOther = this.heat === null || this.heatOf !== this.follow.wanted;
    const isOld = isOther || (this.state.isFormer && (this.state.link === "lost" || this.follow.fault !== ""));
    const words = this.state.link === "lost" ? "No map: the program does not answer." : isOther ? "Computing the map…" : "No map for this place.";
    this.room.dataset.map = isOld ? "old" : "new";
    say(el("map-say"), isOld ? words : "");
    return isOld;
  }

  /** The map's value at the chair; a comb onset as the head of the page has it. */
  private atChair(heat: Heat): Maybe {
    if (this.follow.quantity === "comb_onset") return this.state.moved?.measures.aligned.comb_onset_hz ?? null;
    const [u, v] = this.flat(this.state.spot);
    const column = Math.floor(((u - heat.low_m[0]) / (heat.high_m[0] - heat.low_m[0])) * heat.columns);
    const row = Math.floor(((v - heat.low_m[1]) / (heat.high_m[1] - heat.low_m[1])) * heat.rows);
    return column < 0 || column >= heat.columns ? null : (heat.values[row * heat.columns + column] ?? null);
  }

  /** What words on the map stay clear of: the body, the chair with its tag, and the scale of length. */
  private clear(at: Place, high: number): Box[] {
    const [x0, y0] = at(0, 0);
    const [x, y] = at(...this.flat(this.state.spot));
    const [tx, ty] = [x, y + this.tagAt(x0 - x, y0 - y)];
    const r = Math.max(16, 6 + at(this.reach(), 0)[0] - x0);
    // Some words lie beside the way to the body, none on it.
    const way = [1, 2, 3, 4, 5].map((i): Box => [x0 + ((x - x0) * i) / 6, y0 + ((y - y0) * i) / 6, 8, 8]);
    return [[x0, y0, r, r], ...way, [x, y, 46, 46], [tx, ty, 44, 14], [60, high - 23, 60, 20], ...this.front];
  }

  /** How far the body reaches from its middle, m. */
  private reach(): number {
    const { planned } = this.state;
    return Math.max(...(planned?.solid.vertices_mm ?? []).map(length), Number(planned?.values["body.radius_mm"] ?? 100)) / 1000;
  }

  draw(): void {
    this.fields();
    const isOld = this.computing();
    const { heat, scale } = this;
    const frame = heat ?? this.frame();
    if (frame === null) return;
    const ratio = (frame.high_m[0] - frame.low_m[0]) / (frame.high_m[1] - frame.low_m[1]);
    this.room.style.aspectRatio = ratio.toFixed(4);
    const p = paper(this.canvas);
    if (p === null) return;
    const c = p.context;
    const at = this.places(frame, p.width, p.height);
    c.clearRect(0, 0, p.width, p.height);
    c.font = `500 11.5px ${ink("--sans")}`;
    if (heat !== null && scale !== null) {
      c.globalAlpha = isOld ? FORMER : 1;
      drawHeat(c, heat, scale, at);
      c.globalAlpha = 1;
      if (!isOld) drawContours(p, heat, scale, at, about(this.follow.quantity).words, this.clear(at, p.height));
    }
    this.way(c, at);
    this.body(c, at);
    this.drawFront(c, at);
    this.metre(c, at, p.height);
    this.putChair(at, p.width, p.height);
    if (scale !== null) this.drawBar(scale);
    this.canvas.setAttribute("aria-label", this.words());
  }

  private words(): string {
    const { title, good } = about(this.follow.quantity);
    return `The room from ${this.follow.view === "above" ? "above" : "the side"}: ${title.toLowerCase()}, ${good}. The chair is ${this.state.place?.tape ?? ""}.`;
  }

  /** Where the map will be, before it is computed: body and chair are drawn at once. */
  private frame(): Frame | null {
    const half = this.state.planned?.slice.half_width_m;
    if (half === undefined) return null;
    const floor = this.state.planned?.floor_m ?? -half;
    return this.follow.view === "above" ? { low_m: [-half, -half], high_m: [half, half] } : { low_m: [-half, floor], high_m: [half, floor + half] };
  }

  private places(heat: Frame, w: number, h: number): Place {
    const [u0, v0] = heat.low_m;
    const [u1, v1] = heat.high_m;
    return (u, v) => [((u - u0) / (u1 - u0)) * w, h - ((v - v0) / (v1 - v0)) * h];
  }

  /** Where a point of the room lies on the slice; from the side, u runs towards the chair. */
  private flat(p: Triple): [number, number] {
    if (this.follow.view === "above") return [p[0], p[1]];
    const [x, y] = this.state.spot;
    const d = Math.hypot(x, y);
    const [cx, cy] = d === 0 ? [1, 0] : [x / d, y / d];
    return [p[0] * cx + p[1] * cy, p[2]];
  }

  private way(c: CanvasRenderingContext2D, at: Place): void {
    const [x0, y0] = at(0, 0);
    const [x1, y1] = at(...this.flat(this.state.spot));
    c.beginPath();
    c.moveTo(x0, y0);
    c.lineTo(x1, y1);
    c.setLineDash([2, 5]);
    c.lineCap = "round";
    c.strokeStyle = "rgb(30 22 30 / 55%)";
    c.lineWidth = 4;
    c.stroke();
    c.strokeStyle = "rgb(255 250 240 / 95%)";
    c.lineWidth = 2;
    c.stroke();
    c.setLineDash([]);
  }

  private body(c: CanvasRenderingContext2D, at: Place): void {
    const planned = this.state.planned;
    if (planned === null) return;
    const floor = planned.floor_m;
    if (this.follow.view === "side" && floor !== null) {
      const [, y] = at(0, floor);
      c.fillStyle = ink("--ink");
      c.fillRect(0, y - 1, c.canvas.width, 2);
    }
    c.beginPath();
    if (planned.solid.vertices_mm.length === 0) {
      const r = Number(planned.values["body.radius_mm"] ?? 100) / 1000;
      const [x0, y0] = at(0, 0);
      const [x1] = at(r, 0);
      c.arc(x0, y0, x1 - x0, 0, 2 * Math.PI);
    } else {
      const flat = planned.solid.vertices_mm.map(([x, y, z]) => this.flat([x / 1000, y / 1000, z / 1000]));
      for (const [i, point] of hull(flat).entries()) {
        const [x, y] = at(...point);
        if (i === 0) c.moveTo(x, y);
        else c.lineTo(x, y);
      }
      c.closePath();
    }
    c.lineJoin = "round";
    c.fillStyle = "#fbf6ea";
    c.fill();
    c.strokeStyle = "#2a2320";
    c.lineWidth = 1.5;
    c.stroke();
    const channel = new Map(this.state.rows.map((d) => [d.id, d.channel]));
    const [o] = at(0, 0);
    for (const d of planned.drivers) {
      const side = this.follow.view === "above" ? d.normal[2] : this.toEye(d.normal);
      if (side < 0.05) continue;
      const [x, y] = at(...this.flat([d.at_mm[0] / 1000, d.at_mm[1] / 1000, d.at_mm[2] / 1000]));
      const r = Math.max(1.1, 0.42 * (at(d.cone_mm / 1000, 0)[0] - o));
      c.fillStyle = css(channelColour(channel.get(d.id) ?? 1));
      c.beginPath();
      c.arc(x, y, r, 0, 2 * Math.PI);
      c.fill();
    }
  }

  /** From the side one looks from the right of the way to the chair. */
  private toEye(normal: Triple): number {
    const [x, y] = this.state.spot;
    const d = Math.hypot(x, y) || 1;
    return (normal[0] * y - normal[1] * x) / d;
  }

  private metre(c: CanvasRenderingContext2D, at: Place, h: number): void {
    const perMetre = at(1, 0)[0] - at(0, 0)[0];
    const long = nice(60 / perMetre);
    const w = long * perMetre;
    const words = `${long} m`;
    c.fillStyle = "rgb(252 247 236 / 90%)";
    c.beginPath();
    c.roundRect(10, h - 36, w + 20, 26, 6);
    c.fill();
    c.strokeStyle = "#2a2320";
    c.lineWidth = 1.25;
    c.beginPath();
    c.moveTo(20, h - 20);
    c.lineTo(20, h - 16);
    c.lineTo(20 + w, h - 16);
    c.lineTo(20 + w, h - 20);
    c.stroke();
    c.fillStyle = "#2a2320";
    c.textAlign = "center";
    c.textBaseline = "alphabetic";
    c.fillText(words, 20 + w / 2, h - 21);
  }

  private putChair(at: Place, wide: number, high: number): void {
    const [x, y] = at(...this.flat(this.state.spot));
    const [x0, y0] = at(0, 0);
    this.chair.style.left = `${((100 * x) / wide).toFixed(2)}%`;
    this.chair.style.top = `${((100 * y) / high).toFixed(2)}%`;
    const facing = (Math.atan2(y0 - y, x0 - x) * 180) / Math.PI - 90;
    this.turn?.setAttribute("transform", `rotate(${facing.toFixed(1)} 24 24)`);
    this.putHands([x0 - x, y0 - y], [this.chair.style.left, this.chair.style.top]);
    const { place } = this.state;
    const words = this.hasMoved && place !== null ? `${fixed(place.along_m, 2)} m along the floor` : "drag me";
    say(this.tag, words);
    if (words.length !== this.tagged.length) this.tagged = { length: words.length, half: this.tag.offsetWidth / 2 + 6 };
    const { half } = this.tagged;
    const tx = Math.min(Math.max(x, half), wide - half);
    this.tag.style.transform = `translate(${tx.toFixed(1)}px, ${(y + this.tagAt(x0 - x, y0 - y)).toFixed(1)}px) translate(-50%, -50%)`;
    this.chair.setAttribute("aria-label", `Chair, ${place?.tape ?? ""}`);
    say(el("slice-say"), this.follow.view === "above"
      ? `The map is at the ears’ height, ${(place?.high ?? "").replace("its middle", "the loudspeaker’s middle")}. L and R are the hands of who sits there and faces the loudspeaker.`
      : "The map is upright, through the middle of the body and the chair.");
  }

  /** Shows the hands of who faces the body, where it is seen from above; dx and dy lead to it on the screen. */
  private putHands([dx, dy]: [number, number], [left, top]: [string, string]): void {
    const d = Math.hypot(dx, dy) || 1;
    const isAbove = this.follow.view === "above";
    // On the screen y runs down, so that a quarter turn to the left of (dx, dy) is (dy, -dx).
    for (const [hand, sign] of [["left", 1], ["right", -1]] as const) {
      const box = this.hands[hand];
      box.hidden = !isAbove;
      Object.assign(box.style, { left, top });
      box.style.transform = `translate(-50%, -50%) translate(${((sign * HAND_PX * dy) / d).toFixed(1)}px, ${((-sign * HAND_PX * dx) / d).toFixed(1)}px)`;
    }
  }

  /** How far below the chair its tag is; it keeps off the way to the body and off the hands. */
  private tagAt(dx: number, dy: number): number {
    const d = Math.hypot(dx, dy) || 1;
    const far = TAG_PX + (this.follow.view === "above" ? (TAG_OVER_HAND_PX * Math.abs(dx)) / d : 0);
    return dy < 0 ? far : -far;
  }

  /** Says which way the loudspeaker looks, where it is seen from above. */
  private drawFront(c: CanvasRenderingContext2D, at: Place): void {
    this.front = [];
    const planned = this.state.planned;
    if (planned === null || this.follow.view !== "above") return;
    const reach = Math.max(...planned.solid.vertices_mm.map(([x]) => x), Number(planned.values["body.radius_mm"] ?? 100)) / 1000;
    const [x, y] = at(reach, 0);
    const tip = x + 20;
    c.beginPath();
    c.moveTo(x + 5, y);
    c.lineTo(tip, y);
    c.moveTo(tip - 5, y - 4);
    c.lineTo(tip, y);
    c.lineTo(tip - 5, y + 4);
    for (const [width, ink] of [[4.5, "rgb(30 22 30 / 60%)"], [2, "rgb(255 250 240 / 97%)"]] as const) {
      c.lineWidth = width;
      c.strokeStyle = ink;
      c.stroke();
    }
    c.font = `600 11.5px ${ink("--sans")}`;
    c.textAlign = "left";
    c.textBaseline = "middle";
    c.lineWidth = 3.5;
    c.strokeStyle = "rgb(30 22 30 / 65%)";
    c.strokeText("front", tip + 5, y);
    c.fillStyle = "rgb(255 250 240)";
    c.fillText("front", tip + 5, y);
    this.front = [[tip + 10, y, 34, 10]];
  }

  private drawBar(scale: Scale): void {
    const { title, good, words } = about(this.follow.quantity);
    const band = el<HTMLSelectElement>("band").selectedOptions[0]?.textContent ?? "";
    const whole = about(this.follow.quantity).hasBand ? `${title}, ${band} octave` : title;
    say(el("bar-title"), `${whole}: ${good}`);
    const p = paper(this.bar);
    if (p === null) return;
    const key = [scale.low, scale.high, p.width, whole, ink("--quiet")].join();
    if (key === this.barred) return;
    this.barred = key;
    const c = p.context;
    c.clearRect(0, 0, p.width, p.height);
    const inset = 2;
    const w = p.width - 2 * inset;
    const ramp = c.createLinearGradient(inset, 0, inset + w, 0);
    for (let i = 0; i <= 32; i++) ramp.addColorStop(i / 32, css(SHADES[Math.round((255 * i) / 32)]!));
    c.fillStyle = ramp;
    c.beginPath();
    c.roundRect(inset, 0, w, 10, 5);
    c.fill();
    c.fillStyle = ink("--quiet");
    c.font = `11.5px ${ink("--sans")}`;
    c.textBaseline = "top";
    let last = -40;
    for (const v of ticks(scale, Math.max(3, Math.floor(w / 80)))) {
      const text = words(v);
      const half = c.measureText(text).width / 2;
      const x = Math.min(Math.max(inset + w * share(scale, v), half), p.width - half);
      if (x - half < last + 10) continue;
      c.textAlign = "center";
      c.fillText(text, x, 15);
      last = x + half;
    }
    this.bar.setAttribute("aria-label", `Colours from ${words(scale.low)}, dark, to ${words(scale.high)}, light`);
  }

  private fields(): void {
    for (const [i, axis] of (["x", "y", "z"] as const).entries()) {
      const field = el<HTMLInputElement>(`spot-${axis}`);
      const text = this.state.spot[i]!.toFixed(2);
      if (document.activeElement !== field && field.value !== text) field.value = text;
    }
    const fault = el("spot-fault");
    fault.hidden = this.follow.fault === "";
    say(fault, this.follow.fault);
    if (this.state.planned !== null) this.chair.dataset.state = this.follow.fault === "" ? "fits" : "fault";
  }

  private choosers(): void {
    el("view").addEventListener("change", (event) => {
      this.follow.view = (event.target as HTMLInputElement).value as View;
      this.look();
    });
    const quantity = el<HTMLSelectElement>("quantity");
    const band = el<HTMLSelectElement>("band");
    const show = () => {
      this.follow.quantity = quantity.value as Quantity;
      this.follow.band = Number(band.value);
      el("band-label").hidden = !about(this.follow.quantity).hasBand;
    };
    quantity.onchange = band.onchange = () => {
      show();
      this.look();
    };
    show();
  }

  private look(): void {
    this.follow.look();
    this.changed();
  }

  private pointer(): void {
    this.chair.addEventListener("pointerdown", (event) => {
      if (event.button !== 0) return;
      const box = this.chair.getBoundingClientRect();
      this.grip = { dx: box.x + box.width / 2 - event.clientX, dy: box.y + box.height / 2 - event.clientY };
      this.chair.setPointerCapture(event.pointerId);
      this.chair.dataset.drag = "yes";
    });
    this.chair.addEventListener("pointermove", (event) => {
      if (this.grip !== null) this.to(event.clientX + this.grip.dx, event.clientY + this.grip.dy);
    });
    for (const end of ["pointerup", "pointercancel"] as const) {
      this.chair.addEventListener(end, () => {
        this.grip = null;
        delete this.chair.dataset.drag;
      });
    }
    this.canvas.addEventListener("click", (event) => this.to(event.clientX, event.clientY));
  }

  /** Puts the chair where the screen was touched. */
  private to(clientX: number, clientY: number): void {
    const heat = this.heat;
    if (heat === null) return;
    const box = this.canvas.getBoundingClientRect();
    const u = heat.low_m[0] + ((clientX - box.x) / box.width) * (heat.high_m[0] - heat.low_m[0]);
    const v = heat.low_m[1] + ((box.bottom - clientY) / box.height) * (heat.high_m[1] - heat.low_m[1]);
    const [x, y, z] = this.state.spot;
    if (this.follow.view === "above") return this.move([u, v, z]);
    const d = Math.hypot(x, y);
    const along = Math.max(u, 0.02);
    this.move(d === 0 ? [along, 0, v] : [(x / d) * along, (y / d) * along, v]);
  }

  private key(event: KeyboardEvent): void {
    const step = event.shiftKey ? LONG_STEP_M : STEP_M;
    const [x, y, z] = this.state.spot;
    const d = Math.hypot(x, y) || 1;
    const isSide = this.follow.view === "side";
    const along = (s: number): Triple => [x + (s * x) / d, y + (s * y) / d, z];
    const moves: Record<string, Triple> = {
      ArrowRight: isSide ? along(step) : [x + step, y, z],
      ArrowLeft: isSide ? along(-step) : [x - step, y, z],
      ArrowUp: isSide ? [x, y, z + step] : [x, y + step, z],
      ArrowDown: isSide ? [x, y, z - step] : [x, y - step, z],
      PageUp: [x, y, z + step],
      PageDown: [x, y, z - step],
    };
    const to = moves[event.key];
    if (to === undefined) return;
    event.preventDefault();
    this.move(to);
  }

  private move(to: Triple): void {
    this.hasMoved = true;
    this.follow.move(this.kept(to));
  }

  /** The nearest place that is on the map, in the room, above the floor and clear of the body. */
  private kept(to: Triple): Triple {
    const { planned } = this.state;
    const low: Triple = [-100, -100, -100];
    const high: Triple = [100, 100, 100];
    const heat = this.heat;
    if (heat !== null && this.follow.view === "above") {
      const edge = 0.02 * (heat.high_m[0] - heat.low_m[0]);
      for (const i of [0, 1] as const) {
        low[i] = heat.low_m[i] + edge;
        high[i] = heat.high_m[i] - edge;
      }
    } else if (heat !== null) {
      high[2] = heat.high_m[1] - 0.02;
      const most = heat.high_m[0] - 0.02;
      const d = Math.hypot(to[0], to[1]);
      if (d > most) to = [(to[0] / d) * most, (to[1] / d) * most, to[2]];
    }
    if (planned?.floor_m != null) low[2] = planned.floor_m + 0.02;
    if (planned?.room != null) {
      for (const i of [0, 1, 2] as const) {
        low[i] = Math.max(low[i], planned.room.low_m[i] + 0.05);
        high[i] = Math.min(high[i], planned.room.high_m[i] - 0.05);
      }
    }
    const spot = to.map((v, i) => Math.min(Math.max(v, low[i]!), high[i]!)) as Triple;
    const r = Number(planned?.values["body.radius_mm"] ?? 0) / 1000 + CLEAR_M;
    const far = length(spot);
    if (far < r) {
      const k = far < 1e-6 ? 0 : r / far;
      return k === 0 ? [r, 0, Math.max(0, low[2])] : (spot.map((v, i) => Math.max(v * k, low[i]!)) as Triple);
    }
    return spot.map((v) => Math.round(1000 * v) / 1000) as Triple;
  }
}

/** The convex hull of points, counter-clockwise (the monotone chain of A. M. Andrew, 1979). */
function hull(points: readonly [number, number][]): [number, number][] {
  const sorted = [...points].sort((p, q) => p[0] - q[0] || p[1] - q[1]);
  const half = (list: readonly [number, number][]) => {
    const out: [number, number][] = [];
    for (const p of list) {
      while (out.length >= 2) {
        const a = out[out.length - 2]!;
        const b = out[out.length - 1]!;
        if ((b[0] - a[0]) * (p[1] - a[1]) - (b[1] - a[1]) * (p[0] - a[0]) > 0) break;
        out.pop();
      }
      out.push(p);
    }
    out.pop();
    return out;
  };
  return [...half(sorted), ...half(sorted.reverse())];
}
