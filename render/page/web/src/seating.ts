// Seats of the design: how they move together, how that is written, and where one more may be.

import type { Change, Triple } from "./document";
import { same } from "./state";
import type { Sitting, State } from "./state";

const AXES = ["x_m", "y_m", "z_m"];
/** The seats all round at the chair's distance, which the file does not have. */
const ALL_ROUND = "seats";

/** Where all seats are once the chair (-1), or one seat, is somewhere else. Those of an area move with it. */
export function seatsAfter(state: State, to: Triple, seat: number): Triple[] {
  const { seats, seated, planned } = state;
  if (seat < 0) {
    if (seated[0]?.key === ALL_ROUND) return seats.map((at) => ringed(at, at, to));
    return planned?.own_spot === false && seats.length === 1 ? seatsAfter(state, to, 0) : seats;
  }
  const from = seats[seat];
  const key = seated[seat]?.key;
  if (from === undefined || key === undefined) return seats;
  if (!key.startsWith("area[")) return seats.with(seat, to);
  const moved = isRound(state, key) ? (at: Triple) => ringed(at, from, to) : (at: Triple) => plus(at, minus(to, from));
  return seats.map((at, i) => (seated[i]?.key === key ? moved(at) : at));
}

/** Where the chair goes with a seat that is dragged; null: it does not. All round, they are at its distance. */
export function chairAfter(state: State, to: Triple, seat: number): Triple | null {
  const [from, listener] = [state.seats[seat], state.seated[seat]];
  return from === undefined || listener?.key !== ALL_ROUND ? null : ringed(state.spot, from, to);
}

/** Whether an area is an arc or a ring, round the axis of the body. */
function isRound(state: State, area: string): boolean {
  return ["arc", "ring"].includes(String(state.planned?.values[`${area}.shape`]));
}

/** A seat of a ring on which one goes from a place to another: as far from the axis, and as high. */
function ringed([x, y]: Triple, from: Triple, to: Triple): Triple {
  const k = Math.hypot(to[0], to[1]) / Math.hypot(from[0], from[1]);
  return [x * k, y * k, to[2]];
}

export function plus(a: Triple, b: Triple): Triple {
  return [a[0] + b[0], a[1] + b[1], a[2] + b[2]];
}

function minus(a: Triple, b: Triple): Triple {
  return [a[0] - b[0], a[1] - b[1], a[2] - b[2]];
}

/** What of the design changes where people sit elsewhere than is written. */
export function places(state: State, written: Sitting, now: Sitting): Change[] {
  const set = state.planned?.own_spot === false ? [] : place("spot", written.spot, now.spot);
  const done = new Set([ALL_ROUND]);
  for (const [i, { key }] of state.seated.entries()) {
    const [from, to] = [written.seats[i], now.seats[i]];
    if (from === undefined || to === undefined || same(from, to) || done.has(key)) continue;
    done.add(key);
    set.push(...(key.startsWith("area[") ? area(state, key, from, to) : place(key, from, to)));
  }
  return set;
}

function place(table: string, from: Triple, to: Triple): Change[] {
  return AXES.flatMap((name, i) => (Math.abs(from[i]! - to[i]!) < 5e-4 ? [] : [{ key: `${table}.${name}`, value: to[i]! }]));
}

/** An area of which one seat is elsewhere. */
function area(state: State, key: string, from: Triple, to: Triple): Change[] {
  if (isRound(state, key)) return [{ key: `${key}.radius_m`, value: tidy(Math.hypot(to[0], to[1])) }, { key: `${key}.z_m`, value: to[2] }];
  return ["from_m", "to_m"].flatMap((end) => {
    const at = state.planned?.values[`${key}.${end}`] as Triple | undefined;
    return at === undefined ? [] : [{ key: `${key}.${end}`, value: plus(at, minus(to, from)).map(tidy) }];
  });
}

/** A length as it is written, to a millimetre. */
function tidy(m: number): number {
  return Math.round(1000 * m) / 1000;
}

/** How far from everybody else a new seat is, m: so that arms are free, or two chairs side by side. */
const APART_M = [0.9, 0.5];
/** Directions, as they are tried, from where the chair or the picked seat is. */
const STEP_DEG = 10;

/** A free place for one more seat: beside one, as far from the body's axis and as high, where keep leaves it. */
export function free(beside: Triple, others: Triple[], keep: (at: Triple) => Triple): Triple {
  for (const apart of APART_M) {
    const isFree = (at: Triple): boolean => same(keep(at), at) && others.every((o) => Math.hypot(...minus(o, at)) >= apart - 1e-3);
    for (const far of [1, 1.3, 0.75, 1.7]) {
      for (let deg = 0; deg <= 180; deg += STEP_DEG) {
        const at = [turned(beside, far, -deg), turned(beside, far, deg)].find(isFree);
        if (at !== undefined) return at;
      }
    }
  }
  return keep(plus(beside, [0, 0, APART_M[1]!]));
}

function turned([x, y, z]: Triple, far: number, deg: number): Triple {
  const t = Math.atan2(y, x) + (deg * Math.PI) / 180;
  const d = far * Math.hypot(x, y);
  return [tidy(d * Math.cos(t)), tidy(d * Math.sin(t)), z];
}
