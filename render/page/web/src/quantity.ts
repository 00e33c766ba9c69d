// What a map can show, in words and on its scale.

import type { Scale } from "./scale";
import { scaleOf } from "./scale";
import type { Heat } from "./document";
import type { Quantity } from "./types";
import { fixed, hertz } from "./words";

interface Shown {
  title: string;
  /** Which end is the good one. */
  good: string;
  hasBand: boolean;
  log: boolean;
  fromZero: boolean;
  words: (v: number) => string;
}

const shown: Record<Quantity, Shown> = {
  comb_onset: { title: "No combs up to", good: "light is good", hasBand: false, log: true, fromZero: false, words: hertz },
  smear: { title: "Smear", good: "dark is good", hasBand: false, log: false, fromZero: true, words: (v) => `${fixed(v, 0)} µs` },
  level: { title: "Level", good: "light is loud", hasBand: true, log: false, fromZero: false, words: (v) => `${fixed(v, 0)} dB` },
  summing_loss: { title: "Summing loss", good: "dark is good", hasBand: true, log: false, fromZero: false, words: (v) => `${fixed(v, 0)} dB` },
  loss: { title: "Loss to in step", good: "dark is good", hasBand: false, log: false, fromZero: true, words: (v) => `${fixed(v, 0)} dB` },
};

export function about(quantity: Quantity): Shown {
  return shown[quantity];
}

export function scaleFor(quantity: Quantity, heat: Heat): Scale {
  const { log, fromZero } = shown[quantity];
  return scaleOf(heat.values, log, fromZero);
}
