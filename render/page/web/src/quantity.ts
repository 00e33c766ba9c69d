// What a map can show, in words and on its scale.

import type { Scale } from "./scale";
import { scaleOf } from "./scale";
import type { Heat, Quantity } from "./types";
import { fixed, hertz } from "./words";

/** What a quantity is on a map, where light is always the good end. */
interface Shown {
  title: string;
  /** What light means. */
  good: string;
  /** The low end is the good one, and so the light one. */
  lowIsGood: boolean;
  hasBand: boolean;
  log: boolean;
  fromZero: boolean;
  words: (v: number) => string;
}

const shown: Record<Quantity, Shown> = {
  comb_onset: { title: "No combs up to", good: "light is good", lowIsGood: false, hasBand: false, log: true, fromZero: false, words: hertz },
  smear: { title: "Smear", good: "light is good", lowIsGood: true, hasBand: false, log: false, fromZero: true, words: (v) => `${fixed(v, 0)} µs` },
  direct_level: { title: "Level, direct", good: "light is loud", lowIsGood: false, hasBand: true, log: false, fromZero: false, words: (v) => `${fixed(v, 0)} dB` },
  level: { title: "Level", good: "light is loud", lowIsGood: false, hasBand: true, log: false, fromZero: false, words: (v) => `${fixed(v, 0)} dB` },
  summing_loss: { title: "Summing loss", good: "light is good", lowIsGood: true, hasBand: true, log: false, fromZero: false, words: (v) => `${fixed(v, 0)} dB` },
  loss: { title: "Loss to in step", good: "light is good", lowIsGood: true, hasBand: false, log: false, fromZero: true, words: (v) => `${fixed(v, 0)} dB` },
};

export function about(quantity: Quantity): Shown {
  return shown[quantity];
}

export function scaleFor(quantity: Quantity, heat: Heat): Scale {
  const { log, fromZero, lowIsGood } = shown[quantity];
  return { ...scaleOf(heat.values, log, fromZero), lowIsGood };
}
