// The limiter, as a worklet: it looks ahead, so that it has come down when a peak arrives, and
// lets nothing past its ceiling. What stays below passes as it is, late by the look-ahead. As
// preview/limit has it, but for peaks between samples.

declare const sampleRate: number;
declare class AudioWorkletProcessor {
  constructor(options: { processorOptions: unknown });
}
declare function registerProcessor(name: string, of: typeof AudioWorkletProcessor): void;

/** How the limiter is set. */
export interface Limit {
  ceiling: number;
  look_ahead_s: number;
  release_s: number;
}

class Limiter extends AudioWorkletProcessor {
  private readonly ceiling: number;
  private readonly back: number;
  private readonly ahead: number;
  private readonly held: Float32Array[];
  /** The gains that peaks need, oldest first, each less than all after it: Lemire's queue. */
  private readonly least: { gain: number; at: number }[] = [];
  private readonly gains: Float64Array;
  private sum: number;
  private gain = 1;
  private at = 0;

  constructor(options: { processorOptions: Limit }) {
    super(options);
    const { ceiling, look_ahead_s, release_s } = options.processorOptions;
    this.ceiling = ceiling;
    this.ahead = Math.max(1, Math.round(look_ahead_s * sampleRate));
    this.back = 1 - Math.exp(-1 / (release_s * sampleRate));
    this.held = [0, 1].map(() => new Float32Array(this.ahead));
    this.gains = new Float64Array(this.ahead).fill(1);
    this.sum = this.ahead;
  }

  process([input]: Float32Array[][], [output]: Float32Array[][]): boolean {
    const [left, right] = [input?.[0], input?.[1] ?? input?.[0]];
    for (let i = 0; i < output![0]!.length; i++) {
      const now = [finite(left?.[i] ?? 0), finite(right?.[i] ?? 0)];
      const factor = this.next(Math.max(Math.abs(now[0]!), Math.abs(now[1]!)));
      const slot = this.at++ % this.ahead;
      for (const [side, out] of output!.entries()) {
        out[i] = Math.min(Math.max(factor * this.held[side]![slot]!, -this.ceiling), this.ceiling);
        this.held[side]![slot] = now[side]!;
      }
    }
    return true;
  }

  /** Takes a peak in, and returns the gain of the sample that goes out. */
  private next(peak: number): number {
    const need = peak > this.ceiling ? this.ceiling / peak : 1;
    while (this.least.length > 0 && this.least.at(-1)!.gain >= need) this.least.pop();
    this.least.push({ gain: need, at: this.at });
    while (this.least[0]!.at < this.at - this.ahead) this.least.shift();
    this.gain = Math.min(this.least[0]!.gain, this.gain + this.back * (1 - this.gain));
    const slot = this.at % this.ahead;
    this.sum += this.gain - this.gains[slot]!;
    this.gains[slot] = this.gain;
    if (slot === 0) this.sum = this.gains.reduce((sum, g) => sum + g, 0); // rounding does not gather
    return this.sum / this.ahead;
  }
}

function finite(v: number): number {
  return Number.isFinite(v) ? v : 0;
}

registerProcessor("limiter", Limiter as unknown as typeof AudioWorkletProcessor);
