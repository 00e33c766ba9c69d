// Numbers as people read them. The minus is a real one, and digits do not jump.

import type { Triple } from "./document";
import type { Maybe } from "./types";

const MINUS = "\u2212";
/** What stands where there is no number. */
export const NONE = "–";

export function fixed(value: Maybe | undefined, places: number): string {
  if (value === null || value === undefined || !Number.isFinite(value)) return NONE;
  const text = value.toFixed(places);
  return Number(text) === 0 ? text.replace("-", "") : text.replace("-", MINUS);
}

export function milliseconds(us: Maybe | undefined): string {
  return fixed(us === null || us === undefined ? null : us / 1000, 3);
}

export function microseconds(us: Maybe): string {
  return us === null ? NONE : `${fixed(us, us < 9.95 ? 1 : 0)} µs`;
}

/** A frequency as it is said: 392 Hz, 4.2 kHz. */
export function hertz(hz: Maybe): string {
  if (hz === null) return NONE;
  if (hz < 1000) return `${fixed(hz, 0)} Hz`;
  return `${fixed(hz / 1000, hz < 9950 ? 1 : 0).replace(/\.0$/, "")} kHz`;
}

/** The lowest frequency that combs; where there is none, the highest that is looked at. */
export function onset(hz: Maybe): string {
  return hz === null ? "20 kHz" : hertz(hz);
}

export function decibels(db: Maybe | undefined, places = 1): string {
  return fixed(db, places);
}

export function length(v: Triple): number {
  return Math.hypot(...v);
}

const COUNTS = "no one two three four five six seven eight nine ten eleven twelve".split(" ");

/** A count as it is said: in words up to twelve. */
export function inWords(count: number): string {
  return COUNTS[count] ?? String(count);
}

/** A list of numbers with runs drawn together: 1–4, 7. */
export function runs(ids: readonly number[]): string {
  const sorted = [...ids].sort((a, b) => a - b);
  const out: string[] = [];
  for (let i = 0; i < sorted.length; ) {
    let j = i;
    while (j + 1 < sorted.length && sorted[j + 1] === sorted[j]! + 1) j++;
    if (j - i >= 2) out.push(`${sorted[i]}–${sorted[j]}`);
    else for (let k = i; k <= j; k++) out.push(String(sorted[k]));
    i = j + 1;
  }
  return out.join(", ");
}

/** A line of the program's own as it stands on paper: a capital, µs, real minus signs. */
export function typeset(text: string): string {
  return text.slice(0, 1).toUpperCase() + text.slice(1).replace(/(?<=\d) us\b/g, " µs").replace(/(?<=\s)-(?=\d)/g, MINUS).replace(/(?<=\d )([cm]?)m([23])\b/g, (_, of: string, power: string) => `${of}m${power === "2" ? "²" : "³"}`).replace(/\bkg\/m3\b/g, "kg/m³");
}
