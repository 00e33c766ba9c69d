// A walk: where the ears are from one moment to the next.

import * as api from "./api";
import type { State } from "./state";
import { el, make } from "./dom";
import type { Named, Triple, WalkAsked } from "./document";

/** How far ahead of the sound places are asked for: about what one takes to be heard, ms. */
const AHEAD_MS = 60;
/** How long one stands where a walk ends, ms. */
const STANDING_MS = 1000;

export class Walk {
  private gone: AbortController | null = null;

  constructor(private readonly state: State) {}

  get isOn(): boolean {
    return this.gone !== null;
  }

  /** Walks, and has each place heard on the way; resolves where it ends, true, or was ended. */
  async go(way: Omit<WalkAsked, "text">, text: string, hear: () => Promise<void>): Promise<boolean> {
    this.end();
    const mine = new AbortController();
    this.gone = mine;
    try {
      const { to_m, pace_m_s } = await api.walk({ ...way, text }, mine.signal);
      const long = Math.hypot(...to_m.map((v, i) => v - way.from_m[i]!));
      const began = performance.now();
      for (let part = 0; part < 1 && this.gone === mine; ) {
        part = Math.min(1, ((performance.now() - began + AHEAD_MS) * pace_m_s) / 1000 / Math.max(long, 1e-9));
        const at = way.from_m.map((v, i) => v + part * (to_m[i]! - v)) as Triple;
        this.state.ears = at;
        this.state.tell("ears");
        await hear();
      }
      await new Promise((then) => setTimeout(then, STANDING_MS));
      return this.gone === mine;
    } finally {
      if (this.gone === mine) this.end();
    }
  }

  /** Ends the walk: the ears are where one sits. */
  end(): void {
    this.gone?.abort();
    this.gone = null;
    if (this.state.ears === null) return;
    this.state.ears = null;
    this.state.tell("ears");
  }
}

/** Offers the ways that there are: to another seat, and those that the server knows. */
export function offerWays({ seating, picked }: State, walks: Named[]): void {
  const to = el<HTMLSelectElement>("walk-to");
  const was = to.value;
  const seats = seating?.each.map((s, i) => make("option", { value: `seat ${i + 1}` }, `to ${s.name}`)).filter((_, i) => i !== picked) ?? [];
  to.replaceChildren(...seats, ...walks.map((w) => make("option", { value: w.name }, w.words)));
  if ([...to.options].some((o) => o.value === was)) to.value = was;
}

/** The way that was chosen: one that is offered, or to a seat. */
export function wayOf({ seats }: State): { way: string; to_m: Triple | null } {
  const way = el<HTMLSelectElement>("walk-to").value;
  const at = seats[Number(way.replace("seat ", "")) - 1];
  return way.startsWith("seat ") && at !== undefined ? { way: "", to_m: [...at] } : { way, to_m: null };
}
