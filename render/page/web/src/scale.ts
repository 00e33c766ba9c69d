// The colour scale of a map: where its ends are, which values it names, and how
// far up it a value lies.

import type { Maybe } from "./types";

export interface Scale {
  low: number;
  high: number;
  log: boolean;
  /** Low values are light. */
  lowIsGood: boolean;
}

/** What is less than this, in dB or microseconds, is all one colour: nobody hears it. */
const LEAST_SPAN = 1;

/** A scale for values: from the 2nd to the 98th in a hundred, rounded outward; smear begins at nothing. */
export function scaleOf(values: readonly Maybe[], log: boolean, fromZero: boolean): Omit<Scale, "lowIsGood"> {
  const known = values.filter((v): v is number => v !== null && (!log || v > 0)).sort((a, b) => a - b);
  if (known.length === 0) return log ? { low: 100, high: 10000, log } : { low: 0, high: 1, log };
  const at = (share: number) => known[Math.round(share * (known.length - 1))]!;
  let low = fromZero ? 0 : at(0.02);
  let high = at(0.98);
  if (!log) {
    high = Math.max(high, low + LEAST_SPAN);
    const step = nice((high - low) / 6);
    low = step * Math.floor(low / step);
    high = step * Math.ceil(high / step);
  }
  if (high <= low) low = high / 2; // a map of one value: without combs that is the best there is
  return { low, high, log };
}

/** A scale that reaches as far as a value that must be on it. */
export function covering(s: Scale, v: Maybe): Scale {
  if (v === null || (s.log && v <= 0)) return s;
  const step = nice((s.high - s.low) / 6);
  if (v > s.high) return { ...s, high: s.log ? v : step * Math.ceil(v / step) };
  if (v < s.low) return { ...s, low: s.log ? v : step * Math.floor(v / step) };
  return s;
}

/** A scale that reaches as far as two of one kind. */
export function both(a: Scale, b: Scale): Scale {
  return a.log === b.log && a.lowIsGood === b.lowIsGood ? { ...a, low: Math.min(a.low, b.low), high: Math.max(a.high, b.high) } : b;
}

/** Where a value lies, 0 at the low end and 1 at the high one. */
export function share(s: Scale, v: number): number {
  return s.log ? Math.log(Math.max(v, 1e-9) / s.low) / Math.log(s.high / s.low) : (v - s.low) / (s.high - s.low);
}

/** How light a value is, 0 for the dark end and 1 for the light one. */
export function light(s: Scale, v: number): number {
  return s.lowIsGood ? 1 - share(s, v) : share(s, v);
}

/** 1, 2 or 5 times a power of ten, not below a value. */
export function nice(least: number): number {
  const ten = 10 ** Math.floor(Math.log10(Math.max(least, 1e-9)));
  for (const k of [1, 2, 5]) if (k * ten >= least) return k * ten;
  return 10 * ten;
}

/** The values that a scale names: about so many. */
export function ticks(s: Scale, about: number): number[] {
  const out: number[] = [];
  if (s.log) {
    const steps = Math.log10(s.high / s.low) > 1.6 ? [1, 2, 5] : [1, 1.5, 2, 3, 4, 5, 6, 8];
    for (let ten = 10 ** Math.floor(Math.log10(s.low)); ten <= s.high; ten *= 10) {
      for (const k of steps) if (k * ten >= s.low && k * ten <= s.high) out.push(k * ten);
    }
    const every = Math.ceil(out.length / about);
    return out.filter((_, i) => i % every === 0);
  }
  const step = nice((s.high - s.low) / about);
  for (let k = Math.ceil(s.low / step); k * step <= s.high + 1e-9 * step; k++) out.push(k * step);
  return out;
}
