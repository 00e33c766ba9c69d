// What the server sends of sound: a head in JSON, and samples behind it.

import { binary } from "./api";
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

/** Takes an answer apart: 4 bytes that say how long the head is, the head, and samples. */
function unpacked<Head>(body: ArrayBuffer): { head: Head; take: (n: number) => Float32Array<ArrayBuffer> } {
  const long = new DataView(body).getUint32(0, true);
  const head = JSON.parse(new TextDecoder().decode(new Uint8Array(body, 4, long))) as Head;
  let at = 4 + long;
  const take = (n: number): Float32Array<ArrayBuffer> => {
    const some = new Float32Array(body, at, n);
    at += 4 * n;
    return some;
  };
  return { head, take };
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
