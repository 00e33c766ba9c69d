// What the server sends of sound: a head in JSON, and samples behind it.

import { binary } from "./api";
import { unpacked } from "./unpacked";
import type { EarsAsked, EarsHead, Fed, ProgrammeHead } from "./document";

/** One channel's impulse response, for each ear. */
export interface Stem {
  channel: number;
  filter: number;
  from: number;
  ears: Float32Array[];
}

/** What a place hears of each channel by itself. */
export interface Stems {
  ears: number;
  filters: Float32Array[];
  stems: Stem[];
  cases: Record<string, Fed[]>;
}

export interface Programme extends ProgrammeHead {
  loop: Float32Array<ArrayBuffer>;
}

export async function stemsAt(wish: EarsAsked, signal: AbortSignal): Promise<Stems> {
  const { head, take } = unpacked<EarsHead>(await binary("ears", wish, signal));
  const ears = head.two_ears ? 2 : 1;
  return {
    ears,
    filters: head.filters.map(take),
    stems: head.stems.map(({ channel, filter, from, samples }) => ({ channel, filter, from, ears: Array.from({ length: ears }, () => take(samples)) })),
    cases: head.cases,
  };
}

const programmes = new Map<string, Promise<Programme>>();

/** A programme, fetched once. */
export function programmeOf(name: string): Promise<Programme> {
  let found = programmes.get(name);
  if (found === undefined) {
    found = binary(`programme?name=${encodeURIComponent(name)}`).then((body) => {
      const { head, take } = unpacked<ProgrammeHead>(body);
      return { ...head, loop: take(head.samples) };
    });
    found.catch(() => programmes.delete(name));
    programmes.set(name, found);
  }
  return found;
}
