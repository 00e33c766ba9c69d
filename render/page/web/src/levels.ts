// How loud what is heard is played: all cases of a programme alike, wherever one sits and whatever
// is turned, so that the ear judges timing and not level.

import { loudnessOf, mixed, type Mix, type Turned } from "./mixdown";
import type { Programme, Stems } from "./stems";

/** Loudness that is the same, 0.004 dB. */
const SAME = 1e-3;
const AS_PLANNED: Turned = { off: false, reversed: false, late: 0 };

export class Levels {
  /** Sums as of loudnessOf, by the case and what else is asked for. */
  private readonly targets = new Map<string, number>();

  /** Sums a case up, as loud as it is to be; null: it is not there. */
  wanted(stems: Stems, name: string, kind: string, programme: Programme, turned: (channel: number) => Turned): { mix: Mix; gain: number; name: string } | null {
    const feds = stems.cases[name];
    if (feds === undefined) return null;
    const mix = mixed(stems, feds, turned);
    const loud = loudnessOf(mix, programme.frequency_hz, programme.energy, programme.rate);
    // Unless it was measured yet, all is as loud as the programme itself.
    const target = this.targets.get(`${name} ${kind}`) ?? 2 * programme.energy.reduce((sum, e) => sum + e, 0);
    return { mix, gain: loud > 0 ? Math.sqrt(target / loud) : 0, name };
  }

  /** Takes over by which factors cases are equally loud as planned; tells whether one of them is another. */
  measured(stems: Stems, kind: string, programme: Programme, gains: Record<string, number>): boolean {
    let isOther = false;
    for (const [name, feds] of Object.entries(stems.cases)) {
      const gain = gains[name];
      if (gain === undefined) continue;
      const target = gain * gain * loudnessOf(mixed(stems, feds, () => AS_PLANNED), programme.frequency_hz, programme.energy, programme.rate);
      const key = `${name} ${kind}`;
      isOther ||= Math.abs(target / (this.targets.get(key) ?? 0) - 1) > SAME;
      this.targets.set(key, target);
    }
    return isOther;
  }
}
