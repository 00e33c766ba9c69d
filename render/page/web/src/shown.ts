// What the page shows: the plan, the newest answer to a move, and who sits where; and who is told of news.

import type { Echo, Listener, Measures, Output, Place, PlanAnswer, Seating, Triple, Turned } from "./document";
import type { Former } from "./trial";
import type { Row, Settled } from "./types";

export type News = "ghost" | "plan" | "text" | "faults" | "moved" | "map" | "round" | "spot" | "busy" | "rest" | "link" | "settle" | "pick" | "ears" | "turned";

/** Places that are written alike. */
export function same(a: Triple, b: Triple): boolean {
  return a.every((v, i) => Math.abs(v - b[i]!) < 6e-4);
}

/** Where everybody sits: what figures are of. */
export interface Sitting {
  spot: Triple;
  seats: Triple[];
}

/** Who sits where a plan says. */
export function sittingOf(planned: PlanAnswer): Sitting {
  return { spot: [...planned.spot_m], seats: planned.seats.map(({ at_m }) => [...at_m]) };
}

/** Every driver's row as a plan has it. */
export function rowsOf(planned: PlanAnswer): Row[] {
  return planned.plan.drivers.map((d) => ({ ...d, way: d }));
}

export class Shown {
  planned: PlanAnswer | null = null;
  /** The plan that moves are asked of; a chair's rest does not change it, that of one of several seats does. */
  liveID = "";
  /** The first plan of the design as it is but for where people sit. */
  designID = "";
  spot: Triple = [1, 0, 0];
  /** All who sit there, where the design has seats, in its order. */
  seats: Triple[] = [];
  /** The seat whose place and name stand below the map; -1: the chair. */
  picked = -1;
  /** What is tried with channels; empty: nothing. */
  turned: Turned[] = [];
  /** Where somebody is who walks; null: nobody does. */
  ears: Triple | null = null;
  moved: Settled | null = null;
  /** What that is of, and which plan it was asked of. */
  movedOf: Sitting | null = null;
  movedID = "";
  /** Every driver's row as the plan has it. */
  protected ownRows: Row[] = [];
  private readonly listeners = new Map<News, (() => void)[]>();

  on(news: News, then: () => void): void {
    this.listeners.set(news, [...(this.listeners.get(news) ?? []), then]);
  }

  tell(news: News): void {
    for (const then of this.listeners.get(news) ?? []) then();
  }

  /** What was shown when a hand took hold of something; null: none holds anything. */
  former: Former | null = null;

  /** What is shown is not this design, but what a hand tries or a kept one. */
  get isOther(): boolean {
    return this.former !== null && this.former.ofDelays !== true;
  }

  ghost(former: Former | null): void {
    this.former = former;
    this.tell("ghost");
  }

  /** Shows the plan of what a hand tries, or of another design. This design stays as it is. */
  preview(planned: PlanAnswer): void {
    this.planned = planned;
    this.ownRows = rowsOf(planned);
    if (planned.seats.length !== this.seats.length) Object.assign(this, sittingOf(planned));
    this.liveID = this.designID = planned.id;
    this.moved = this.movedOf = null;
    this.tell("plan");
  }

  /** The newest answer to a move, unless the plan alone is of where everybody is. */
  private get newest(): Settled | null {
    const { moved, movedOf } = this;
    if (moved === null || !this.isSettled) return moved;
    // While seats are moved they are served as well as can be in no time, and in full by their plan.
    return this.isOf(movedOf) && (this.seats.length < 2 || this.movedID === this.planned?.id) ? moved : null;
  }

  /** Whether that is where everybody sits now. The middle seat is nobody's own place: it is where the seats say. */
  private isOf(that: Sitting | null): boolean {
    if (that === null || that.seats.length !== this.seats.length) return false;
    return (!this.isChairOwn || same(that.spot, this.spot)) && that.seats.every((at, i) => same(at, this.seats[i]!));
  }

  /** The seats of the design that is shown, by name. */
  get seated(): Listener[] {
    return this.planned?.seats ?? [];
  }

  /** The chair is a place of its own, and not just the middle seat. */
  get isChairOwn(): boolean {
    return this.seats.length < 2 || (this.planned?.own_spot ?? true);
  }

  /** How the delays serve the seats; null where there is one place alone. */
  get seating(): Seating | null {
    const { newest, planned } = this;
    return (newest === null ? planned?.plan.seats : newest.seats) ?? null;
  }

  /** Every driver's row as it is at the chair now. */
  get rows(): Row[] {
    return this.newest?.drivers ?? this.ownRows;
  }

  /** What each channel is set to now, as worked out. */
  get channels(): Output[] {
    return this.newest?.channels ?? this.planned?.plan.channels ?? [];
  }

  /** What the figures say of the direct sound at the chair, and of what comes back to it. */
  get measures(): { direct: Measures; echoes: Echo[] } | null {
    const { newest, planned } = this;
    if (newest !== null) return { direct: newest.measures, echoes: newest.echoes };
    return planned === null ? null : { direct: planned.plan.measures, echoes: planned.plan.echoes };
  }

  /** Where everybody sits whom all figures are for. */
  private get figured(): Sitting | null {
    if (this.newest !== null) return this.movedOf;
    return this.planned === null ? null : sittingOf(this.planned);
  }

  /** Where that is, in words. */
  get place(): Place | null {
    return this.newest?.place ?? this.planned?.place ?? null;
  }

  /** The figures are for a place where the chair, or a seat, is no more. */
  get isFormer(): boolean {
    const { figured } = this;
    return figured !== null && !this.isOf(figured);
  }

  /** The plan, of the last design that could be planned, is that of everybody where they are. */
  get isSettled(): boolean {
    return this.planned !== null && this.isOf(sittingOf(this.planned));
  }

  /** Picks a seat; -1: the chair. */
  pick(seat: number): void {
    if (seat === this.picked) return;
    this.picked = seat;
    this.tell("pick");
  }
}
