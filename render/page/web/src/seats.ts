// The seats on the map, and what is below it for the one that is picked: its name, its weight, and whether there is one.

import type { Change, Seating as Lost, Triple } from "./document";
import { el, hide, make, mark, say } from "./dom";
import { Handle, kept } from "./handle";
import type { Ground } from "./handle";
import type { Box, Place } from "./heat";
import { free } from "./seating";
import { flat } from "./slice";
import { decibels, fixed } from "./words";

/** From so many seats on, only those that are picked or lose most have their names on the map. */
const MOST_NAMES = 8;
/** From so many on, the others are small and without their numbers. */
const MOST_NUMBERS = 16;
/** Half a seat, and half of what its name takes up at most, for a letter and for its ends. */
const SEAT_PX = 21;
const NAME_PX = { high: 10, most: 88, letter: 3.2, ends: 8 };
/** The most seats of a design. */
const MOST_SEATS = 64;

interface Spot {
  handle: Handle;
  number: HTMLElement;
  name: HTMLElement;
}

/** The seat that loses most; -1: not known. */
export function worst(lost: Lost | null): number {
  const losses = lost?.each.map((s) => s.planned_db) ?? [];
  return losses.length === 0 ? -1 : losses.indexOf(Math.max(...losses));
}

/** Where a name of so many letters stands beside its seat: inside the map, and over as little of what is taken as can be. */
function beside([x, y]: [number, number], letters: number, taken: Box[], wide: number, high: number): Box {
  const half = Math.min(NAME_PX.most, NAME_PX.ends + NAME_PX.letter * letters);
  const [up, side] = [SEAT_PX + NAME_PX.high, SEAT_PX + half];
  const over = (of: Box): number =>
    taken.reduce((sum, t) => sum + meet(of[0], t[0], of[2] + t[2]) * meet(of[1], t[1], of[3] + t[3]), 0);
  const boxes = [[x, y + up], [x, y - up], [x + side, y], [x - side, y]].map(([u, v]): Box =>
    [Math.min(Math.max(u!, half + 4), wide - half - 4), Math.min(Math.max(v!, 14), high - 14), half, NAME_PX.high]);
  return boxes.reduce((best, box) => (over(box) < over(best) ? box : best));
}

/** By how much two middles are nearer than they may be. */
function meet(a: number, b: number, apart: number): number {
  return Math.max(0, apart - Math.abs(a - b));
}

export class Seats {
  private readonly spots: Spot[] = [];
  private readonly box = el("seats");
  private readonly own = el("seat-own");
  private readonly name = el<HTMLInputElement>("seat-name");
  private readonly weight = el<HTMLInputElement>("seat-weight");
  /** The place that a seat which is being added is to have. */
  private awaited: Triple | null = null;
  /** A seat that had the focus is being taken away. */
  private focuses = false;

  constructor(private readonly ground: Ground) {
    const { state } = ground;
    el("seat-add").onclick = () => void this.add();
    el("seat-remove").onclick = () => void this.remove();
    this.name.onchange = () => this.change("name", this.name.value.trim() || null);
    this.weight.onchange = () => this.weigh();
    state.on("plan", () => this.added());
    state.on("pick", () => this.fields());
  }

  /** Puts seats where they are on the map, their names clear of some boxes. Returns what they take up. */
  put(at: Place, wide: number, high: number, clear: Box[]): Box[] {
    const { state, follow } = this.ground;
    const isShown = state.seats.length > 1;
    hide(this.box, !isShown);
    this.heads(isShown);
    this.fields();
    if (!isShown) return [];
    while (this.spots.length < state.seats.length) this.spots.push(this.spot(this.spots.length));
    const isRound = state.seating?.round !== undefined; // for nobody in particular
    const least = isRound ? -1 : worst(state.seating);
    const body: Box = [...at(0, 0), SEAT_PX, SEAT_PX];
    const taken: Box[] = [body, ...clear, ...state.seats.map((place): Box => [...at(...flat(place, state.spot, follow.view)), SEAT_PX - 4, SEAT_PX - 4])];
    for (const [i, { handle, number, name }] of this.spots.entries()) {
      const place = state.seats[i];
      hide(handle.element, place === undefined);
      if (place === undefined) {
        hide(name, true);
        continue;
      }
      const [x, y] = at(...flat(place, state.spot, follow.view));
      handle.element.style.left = `${((100 * x) / wide).toFixed(2)}%`;
      handle.element.style.top = `${((100 * y) / high).toFixed(2)}%`;
      const isPicked = i === state.picked;
      handle.element.tabIndex = isPicked || (state.picked < 0 && i === 0) ? 0 : -1;
      handle.element.toggleAttribute("data-picked", isPicked);
      const isPlain = isRound || (state.seats.length > MOST_NUMBERS && !isPicked && i !== least);
      handle.element.toggleAttribute("data-plain", isPlain);
      mark(handle.element, "data-state", follow.fault !== "" && isPicked ? "fault" : i === least ? "worst" : "fits");
      say(number, isPlain ? "" : decibels(state.seating?.each[i]?.planned_db ?? null));
      mark(handle.element, "aria-label", this.words(i, least));
      hide(name, state.seats.length > MOST_NAMES && !isPicked && i !== least);
      if (name.hidden) continue;
      say(name, `${this.nameOf(i)}${i === least ? " · worst" : ""}`);
      const box = beside([x, y], name.textContent!.length, taken, wide, high);
      name.style.transform = `translate(${box[0].toFixed(1)}px, ${box[1].toFixed(1)}px) translate(-50%, -50%)`;
      taken.push(box);
    }
    return taken;
  }

  /** Says of headings and of the way to the map whose they are. */
  private heads(isShown: boolean): void {
    const { picked, seating, isChairOwn } = this.ground.state;
    say(el("sit-title"), isShown ? "Who sits where" : "Sit here");
    say(el("sit-say"), isShown ? "Drag any seat. Everything follows." : "Drag the chair. Everything follows.");
    say(el("response-title"), seating === null || isChairOwn ? "What the chair hears" : `What ${seating.middle_seat} hears`);
    const skip = el<HTMLAnchorElement>("skip");
    skip.hash = isShown && !isChairOwn ? `#seat-${Math.max(picked, 0) + 1}` : "#chair";
    say(skip, isShown ? "Go to the seats" : "Go to the chair");
  }

  /** Moves the seat that is picked to where the screen was touched. */
  to(clientX: number, clientY: number): void {
    this.spots[this.ground.state.picked]?.handle.to(clientX, clientY);
  }

  private spot(i: number): Spot {
    const { state, follow } = this.ground;
    const number = make("span", { class: "seat-number", "aria-hidden": "true" });
    const element = make("div", { class: "seat", id: `seat-${i + 1}`, role: "application", "aria-roledescription": "movable seat", "aria-describedby": "seat-help", tabindex: -1 }, number);
    const name = make("p", { class: "seat-name", "aria-hidden": "true" });
    const handle = new Handle(element, this.ground, () => state.seats[i]!, (to) => follow.move(to, i));
    for (const taken of ["focus", "pointerdown"] as const) element.addEventListener(taken, () => state.pick(i));
    element.addEventListener("keydown", (event) => this.key(event));
    this.box.append(element, name);
    return { handle, number, name };
  }

  /** N and P lead from seat to seat, Delete takes one away. */
  private key(event: KeyboardEvent): void {
    if (event.ctrlKey || event.metaKey || event.altKey) return;
    const { state } = this.ground;
    const by = { n: 1, p: -1 }[event.key.toLowerCase()];
    if (by !== undefined) {
      state.pick((state.picked + by + state.seats.length) % state.seats.length);
      this.spots[state.picked]?.handle.element.focus();
    } else if (event.key === "Delete") void this.remove();
    else return;
    event.preventDefault();
  }

  private nameOf(i: number): string {
    return this.ground.state.seated[i]?.name ?? `seat ${i + 1}`;
  }

  private words(i: number, least: number): string {
    const { state } = this.ground;
    const { planned_db, where } = state.seating?.each[i] ?? {};
    const [x, y, z] = state.seats[i]!;
    const place = where ?? `${fixed(x, 2)} m forward, ${fixed(y, 2)} m to the loudspeaker’s left, ${fixed(z, 2)} m up`;
    const loses = planned_db === undefined || state.seating?.round !== undefined ? "" : `; loses ${decibels(planned_db)} dB${i === least ? ", the most of all" : ""}`;
    return `Seat ${this.nameOf(i)}, ${place}${loses}`;
  }

  /** Shows the name and the weight of the seat that is picked. */
  private fields(): void {
    const { state } = this.ground;
    const listener = state.seats.length > 1 ? state.seated[state.picked] : undefined;
    hide(this.own, listener === undefined);
    hide(el("seat-remove"), !(listener?.key.startsWith("seat[") ?? false));
    el<HTMLButtonElement>("seat-add").disabled = state.seats.length >= MOST_SEATS;
    if (listener === undefined) return say(el("seat-row-say"), "");
    const isSeat = listener.key.startsWith("seat[");
    for (const [field, text] of [[this.name, listener.name], [this.weight, String(listener.weight)]] as const) {
      field.readOnly = !isSeat;
      if (document.activeElement !== field && field.value !== text) field.value = text;
    }
    say(el("seat-row-say"), isSeat ? "" : "One of a row, which moves as a whole: see Change the design.");
  }

  private get table(): string {
    return this.ground.state.seated[this.ground.state.picked]?.key ?? "";
  }

  private change(name: string, value: Change["value"]): void {
    if (this.table !== "") void this.ground.state.change([{ key: `${this.table}.${name}`, value }]);
  }

  private weigh(): void {
    const { valueAsNumber: weight } = this.weight;
    if (Number.isFinite(weight)) this.change("weight", weight);
  }

  /** Adds a seat beside the one that is picked. The first makes a seat of the chair too. */
  private async add(): Promise<void> {
    const { state } = this.ground;
    await state.settle();
    const beside = state.seats[state.picked] ?? state.spot;
    const at = free(beside, [state.spot, ...state.seats], (to) => kept(to, this.ground));
    const set = (n: number, [x, y, z]: Triple): Change[] => [
      { key: `seat[${n}].x_m`, value: x }, { key: `seat[${n}].y_m`, value: y }, { key: `seat[${n}].z_m`, value: z },
    ];
    const written = state.seated.filter(({ key }) => key.startsWith("seat[")).length;
    this.awaited = at;
    if (state.seats.length > 0) await state.change(set(written + 1, at));
    else await state.change([...set(1, state.spot), ...set(2, at), { key: "spot", value: null }]);
  }

  /** Picks the seat that has come; where one has gone under somebody's keys, they go on at another. */
  private added(): void {
    const { state } = this.ground;
    if (this.focuses) {
      this.focuses = false;
      requestAnimationFrame(() => requestAnimationFrame(() => (state.isChairOwn ? el("chair") : this.spots[state.picked]?.handle.element)?.focus()));
    }
    const at = this.awaited;
    if (at === null) return;
    const i = state.seats.findIndex((s) => s.every((v, k) => Math.abs(v - at[k]!) < 1e-3));
    if (i < 0) return;
    this.awaited = null;
    state.pick(i);
  }

  private async remove(): Promise<void> {
    if (!this.table.startsWith("seat[")) return;
    const hadFocus = this.box.contains(document.activeElement);
    await this.ground.state.takeAway(this.table);
    if (hadFocus) this.focuses = true;
  }
}
