// The room from above or from the side: a map of a quantity, with the body and the chair.

import { Bar } from "./bar";
import { Chair } from "./chair";
import type { Triple } from "./document";
import { el, hide, ink, make, mark, paper, say } from "./dom";
import type { Follow } from "./follow";
import { HeatPicture } from "./heat";
import type { Box, Place } from "./heat";
import type { Ground } from "./handle";
import { about, scaleFor } from "./quantity";
import type { Scale } from "./scale";
import { both, covering } from "./scale";
import { Seats } from "./seats";
import { BodyPicture } from "./bodypicture";
import { drawEars, drawFront, drawLean, drawMetre, drawWay } from "./scenery";
import { flat, frameOf, places, reach } from "./slice";
import type { State } from "./state";
import { Whose } from "./whose";
import type { Heat, Maybe, Quantity, View } from "./types";

/** How much of a former map is left to see. */
const FORMER = 0.15;

export class RoomMap {
  private readonly canvas = el<HTMLCanvasElement>("map");
  private readonly bar = new Bar();
  private readonly room = el("room");
  private readonly whose: Whose;
  private readonly chair: Chair;
  private readonly seats: Seats;
  private scale: Scale | null = null;
  private scaled = "";
  private ofQuantity = "";
  private heat: Heat | null = null;
  private readonly painted = new HeatPicture();
  private readonly body = new BodyPicture();
  /** What the heat is of, as follow has it. */
  private heatOf = "";
  /** What the word for the front takes up. */
  private front: Box[] = [];
  /** What the seats take up. */
  private taken: Box[] = [];

  constructor(private readonly state: State, private readonly follow: Follow, private readonly changed: () => void) {
    this.whose = new Whose(state, follow, () => this.look());
    this.choosers();
    const ground: Ground = { state, follow, canvas: this.canvas, heat: () => this.heat };
    this.chair = new Chair(ground);
    this.seats = new Seats(ground);
    this.canvas.addEventListener("click", ({ clientX, clientY }) => (this.isSeat ? this.seats : this.chair).to(clientX, clientY));
    for (const [i, axis] of (["x", "y", "z"] as const).entries()) {
      const field = el<HTMLInputElement>(`spot-${axis}`);
      field.addEventListener("input", () => {
        if (field.value === "" || !Number.isFinite(field.valueAsNumber)) return;
        const place: Triple = [...this.place];
        place[i] = field.valueAsNumber;
        this.follow.move(place, this.isSeat ? this.state.picked : -1);
      });
    }
    // At once, and not in the next frame: till then the old picture would be stretched.
    new ResizeObserver(() => this.draw()).observe(this.room);
  }

  /** What stands below the map is a seat's, and not the chair's. */
  private get isSeat(): boolean {
    return this.state.seats.length > 1 && this.state.picked >= 0;
  }

  /** The place of the seat that is picked, or of the chair. */
  private get place(): Triple {
    return this.isSeat ? this.state.seats[this.state.picked]! : this.state.spot;
  }

  /** Takes the newest map, as far as it has come. Its scale waits for the whole, so that colours do not jump. */
  take(): void {
    const { heat, answered: key } = this.follow;
    if (heat === null || key !== this.follow.wanted) return; // of what is no longer asked
    this.heat = heat;
    this.heatOf = key;
    if (this.scale === null || key !== this.scaled || (heat.isFine && heat.isWhole)) {
      const own = covering(scaleFor(this.follow.quantity, heat), this.atChair(heat));
      // What is held against something else keeps to one scale with it.
      this.scale = this.state.former !== null && this.scale !== null && this.ofQuantity === this.follow.quantity ? both(this.scale, own) : own;
      this.ofQuantity = this.follow.quantity;
      this.scaled = key;
    }
  }

  /** The map is of something else than what is asked for. */
  private get isOther(): boolean {
    return this.heat === null || this.heatOf !== this.follow.wanted;
  }

  private get isOld(): boolean {
    return this.isOther || (this.state.isFormer && (this.state.link === "lost" || this.follow.fault !== ""));
  }

  /** Says that the map is not there yet, over what is left of the former one. */
  private computing(): void {
    const { isOther, isOld } = this;
    const words = this.state.link === "lost" ? "No map: the program does not answer." : isOther ? "Computing the map…" : "No map for this place.";
    mark(this.room, "data-map", isOld ? "old" : "new");
    say(el("map-say"), isOld ? words : "");
  }

  /** The map's value at the chair; a comb onset as the head of the page has it. */
  private atChair(heat: Heat): Maybe {
    if (this.follow.quantity === "comb_onset") return this.state.moved?.measures.aligned.comb_onset_hz ?? null;
    const [u, v] = this.spot();
    const column = Math.floor(((u - heat.low_m[0]) / (heat.high_m[0] - heat.low_m[0])) * heat.columns);
    const row = Math.floor(((v - heat.low_m[1]) / (heat.high_m[1] - heat.low_m[1])) * heat.rows);
    return column < 0 || column >= heat.columns ? null : (heat.values[row * heat.columns + column] ?? null);
  }

  /** What words on the map stay clear of: the body, the chair with its tag, and the scale of length. */
  private clear(at: Place, high: number): Box[] {
    const [x0, y0] = at(0, 0);
    const [x, y] = at(...this.spot());
    const [tx, ty] = [x, y + this.chair.tagAt(x0 - x, y0 - y)];
    const r = Math.max(16, 6 + at(reach(this.state.planned), 0)[0] - x0);
    // Some words lie beside the way to the body, none on it.
    const way = [1, 2, 3, 4, 5].map((i): Box => [x0 + ((x - x0) * i) / 6, y0 + ((y - y0) * i) / 6, 8, 8]);
    const chair: Box[] = this.state.isChairOwn ? [[x, y, 46, 46], [tx, ty, 44, 14]] : [];
    return [[x0, y0, r, r], ...way, ...chair, ...this.taken, [60, high - 23, 60, 20], ...this.front];
  }

  draw(): void {
    this.picture();
    this.fields();
    this.computing();
    this.whose.say();
    mark(this.canvas, "aria-label", this.words());
  }

  /** Draws the map itself, and what lies on it. */
  private picture(): void {
    const { heat, scale, isOld } = this;
    const { planned, rows, spot } = this.state;
    const frame = heat ?? (planned === null ? null : frameOf(planned, this.follow.view));
    if (frame === null) return;
    const ratio = (frame.high_m[0] - frame.low_m[0]) / (frame.high_m[1] - frame.low_m[1]);
    this.room.style.aspectRatio = ratio.toFixed(4);
    const p = paper(this.canvas);
    if (p === null) return;
    const c = p.context;
    const at = places(frame, p.width, p.height);
    const said = this.whose.box(p.width);
    this.taken = this.seats.put(at, p.width, p.height, [...this.front, said]);
    c.clearRect(0, 0, p.width, p.height);
    c.font = `500 11.5px ${ink("--sans")}`;
    if (heat !== null && scale !== null) {
      this.painted.draw(p, heat, scale, at, isOld ? FORMER : null);
      if (!isOld) this.painted.label(p, about(this.follow.quantity).words, [...this.clear(at, p.height), said]);
    }
    const lean = this.lean(isOld);
    if (lean.length > 0) drawLean(c, at, lean);
    drawWay(c, at(0, 0), at(...this.spot()));
    if (planned !== null) this.body.draw(p, at, planned, rows, spot, this.follow.view);
    this.front = planned !== null && this.follow.view === "above" ? drawFront(c, at, planned) : [];
    drawMetre(c, at, p.height);
    if (this.state.ears !== null) drawEars(c, at(...flat(this.state.ears, spot, this.follow.view)));
    if (scale !== null) this.bar.draw(scale, this.follow.quantity);
    this.chair.put(at, p.width, p.height);
    this.sayLean(lean.length > 0);
  }

  /** How far one may lean, once that is known of where the chair is. */
  private lean(isOld: boolean): [number, number][][] {
    const { moved, isFormer } = this.state;
    return isOld || isFormer || moved?.lean?.view !== this.follow.view ? [] : moved.lean.lines;
  }

  private sayLean(isKnown: boolean): void {
    const words = `Within the broken line no more than 1 dB more is lost than ${this.state.seats.length > 1 ? "at the seat in it" : "at the chair"}: so far one may lean.`;
    say(el("lean-say"), isKnown ? words : "");
  }

  /** Where the chair lies on the slice. */
  private spot(): [number, number] {
    return flat(this.state.spot, this.state.spot, this.follow.view);
  }

  private words(): string {
    const { title, good } = about(this.follow.quantity);
    return `The room from ${this.follow.view === "above" ? "above" : "the side"}: ${title.toLowerCase()}, ${this.whose.words}, ${good}. ${this.state.isChairOwn ? "The chair" : "The middle seat"} is ${this.state.place?.tape ?? ""}.`;
  }

  private fields(): void {
    for (const [i, axis] of (["x", "y", "z"] as const).entries()) {
      const field = el<HTMLInputElement>(`spot-${axis}`);
      const text = this.place[i]!.toFixed(2);
      if (document.activeElement !== field && field.value !== text) field.value = text;
    }
    const fault = el("spot-fault");
    hide(fault, this.follow.fault === "");
    say(fault, this.follow.fault);
    this.chair.judge();
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
    const loss = make("option", { value: "loss" }, about("loss").title);
    this.state.on("plan", () => {
      if (this.state.seating !== null) quantity.append(loss);
      else if (loss.isConnected) {
        loss.remove();
        if (this.follow.quantity !== "loss") return;
        show();
        this.look();
      }
    });
  }

  private look(): void {
    this.follow.look();
    this.changed();
  }
}
