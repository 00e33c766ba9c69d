// Sums channels' impulse responses with their gains and delays. Sums and convolutions may be
// done in either order, so that what is heard takes one convolver for each filter, however many
// channels there are; and a delay between two samples is made here with a windowed sinc, where a
// DelayNode goes straight from one sample to the next, 2 dB down at 10 kHz.

import type { Fed } from "./document";
import type { Stems } from "./stems";

/** What somebody has changed of a channel. */
export interface Turned {
  off: boolean;
  reversed: boolean;
  /** Later than planned, samples. */
  late: number;
}

/** What is heard behind each filter, for each ear. */
export interface Mix {
  filters: Float32Array[];
  /** [filter][ear] */
  responses: Float32Array<ArrayBuffer>[][];
}

/** The sinc's taps to either side: with this window right within -75 dB to 20 kHz at 48 kHz. */
const REACH = 32;
/** A window of Kaiser's, which is 80 dB down beside its main lobe. */
const BETA = 8;
/** A fraction of a sample that is none: -80 dB at 20 kHz. */
const NEAR = 4e-5;

/** Sums a case up. The delays that somebody turned are as said for the channel. */
export function mixed(stems: Stems, feds: Fed[], turned: (channel: number) => Turned): Mix {
  const parts = feds.flatMap((fed) => {
    const { off, reversed, late } = turned(stems.stems[fed.stem]!.channel);
    return off ? [] : [{ ...stems.stems[fed.stem]!, gain: reversed ? -fed.gain : fed.gain, at: stems.stems[fed.stem]!.from + fed.delay_samples + late }];
  });
  const first = Math.min(0, ...parts.map((p) => Math.floor(p.at))); // nothing is heard before its time
  const end = Math.max(1, ...parts.map((p) => Math.ceil(p.at) - first + p.ears[0]!.length + REACH));
  const responses = stems.filters.map(() => Array.from({ length: stems.ears }, () => new Float32Array(end)));
  for (const [fraction, some] of grouped(parts, first)) {
    for (const [filter, ears] of responses.entries()) {
      const of = some.filter((p) => p.filter === filter);
      if (of.length === 0) continue;
      for (const [ear, out] of ears.entries()) delayed(out, sum(of, ear, end, first), fraction);
    }
  }
  return { filters: stems.filters, responses };
}

interface Part {
  filter: number;
  ears: Float32Array[];
  gain: number;
  at: number;
}

/** Puts those together that are as far from whole samples. */
function grouped(parts: Part[], first: number): Map<number, Part[]> {
  const out = new Map<number, Part[]>();
  for (const p of parts) {
    const at = p.at - first;
    let fraction = Math.round((at - Math.floor(at)) / NEAR) * NEAR;
    if (fraction > 1 - NEAR / 2) fraction = 0;
    out.set(fraction, [...(out.get(fraction) ?? []), p]);
  }
  return out;
}

/** Adds at whole samples. */
function sum(parts: Part[], ear: number, length: number, first: number): Float64Array {
  const out = new Float64Array(length);
  for (const { ears, gain, at } of parts) {
    const from = Math.floor(at - first + NEAR / 2);
    for (const [i, v] of ears[ear]!.entries()) out[from + i]! += gain * v;
  }
  return out;
}

/** Adds what is later by a fraction of a sample. */
function delayed(out: Float32Array, samples: Float64Array, fraction: number): void {
  const taps = sinc(fraction);
  let first = samples.findIndex((v) => v !== 0);
  if (first < 0) return;
  let last = samples.findLastIndex((v) => v !== 0);
  const reach = (taps.length - 1) / 2;
  first = Math.max(0, first - reach);
  last = Math.min(out.length - 1, last + reach);
  for (let i = first; i <= last; i++) {
    let v = 0;
    for (let k = Math.max(-reach, i - samples.length + 1); k <= Math.min(reach, i); k++) v += taps[k + reach]! * samples[i - k]!;
    out[i]! += v;
  }
}

/** Taps that delay by a fraction of a sample. */
export function sinc(fraction: number): Float64Array {
  if (fraction === 0) return Float64Array.of(1);
  return Float64Array.from({ length: 2 * REACH + 1 }, (_, i) => {
    const t = i - REACH - fraction;
    const inside = 1 - (t / (REACH + 1)) ** 2;
    return (Math.sin(Math.PI * t) / (Math.PI * t)) * (bessel(BETA * Math.sqrt(Math.max(0, inside))) / bessel(BETA));
  });
}

/** The modified Bessel function of order 0, by its series. */
function bessel(x: number): number {
  let [sum, term] = [1, 1];
  for (let k = 1; term > 1e-12 * sum; k++) {
    term *= (x / (2 * k)) ** 2;
    sum += term;
  }
  return sum;
}

/** How loud a programme is through a mix: the sum of its energies, both ears taken together. */
export function loudnessOf({ filters, responses }: Mix, hz: number[], energy: number[], rate: number): number {
  let out = 0;
  const most = Math.max(...energy);
  for (const [k, f] of hz.entries()) {
    if (energy[k]! < 1e-6 * most) continue;
    const w = (2 * Math.PI * f) / rate;
    const behind = filters.map((filter) => spectrumOf(filter, w));
    for (let ear = 0; ear < responses[0]!.length; ear++) {
      let [re, im] = [0, 0];
      for (const [i, [a, b]] of behind.entries()) {
        const [c, d] = spectrumOf(responses[i]![ear]!, w);
        re += a * c - b * d;
        im += a * d + b * c;
      }
      out += energy[k]! * (re * re + im * im);
    }
  }
  return responses[0]!.length === 1 ? 2 * out : out; // one ear is heard on both sides
}

/** The spectrum at an angle for each sample, by Goertzel's recursion turned as one goes. */
function spectrumOf(samples: Float32Array, w: number): [number, number] {
  const [c, s] = [Math.cos(w), -Math.sin(w)];
  let [re, im] = [0, 0];
  for (let i = samples.length - 1; i >= 0; i--) {
    const next = re * c - im * s + samples[i]!; // Horner's rule in exp(-iw)
    im = re * s + im * c;
    re = next;
  }
  return [re, im];
}
