// What the delays bring, in two figures and one sentence.

import { el, say } from "./dom";
import type { State } from "./state";
import { fixed, length, microseconds, onset, place } from "./words";

export class Lede {
  constructor(private readonly state: State) {
    state.on("rest", () => say(el("summary"), this.summary()));
  }

  draw(): void {
    const m = this.state.moved?.measures ?? this.state.planned?.plan.measures;
    if (m === undefined) return;
    say(el("smear-before"), microseconds(m.unaligned.smear_us));
    say(el("smear-after"), microseconds(m.aligned.smear_us));
    say(el("comb-before"), onset(m.unaligned.comb_onset_hz));
    say(el("comb-after"), onset(m.aligned.comb_onset_hz));
    const count = this.state.planned?.plan.channels.length ?? 0;
    const drivers = this.state.planned?.plan.drivers.length ?? 0;
    const far = fixed(length(this.state.spot), 2);
    say(el("lede-say"), `Sit at the chair, ${far} m away, and give the ${count === 1 ? "one channel" : `${count} channels`} of these ${drivers} drivers the delays below.`);
  }

  private summary(): string {
    const m = this.state.moved?.measures;
    if (m === undefined) return "";
    return `The chair is ${place(this.state.spot)}. With the delays the smear is ${microseconds(m.aligned.smear_us)}, without ${microseconds(m.unaligned.smear_us)}; no combs up to ${onset(m.aligned.comb_onset_hz)}, without ${onset(m.unaligned.comb_onset_hz)}.`;
  }
}
