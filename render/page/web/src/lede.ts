// What to do, in one sentence, and what it brings, in two figures.

import { el, say } from "./dom";
import type { State } from "./state";
import type { Echo } from "./document";
import { fixed, inWords, microseconds, onset } from "./words";

/** Figures may trail the chair for so long before it is said that they do. */
const TRAIL_MS = 500;

export class Lede {
  /** Since when the figures have been of another place than the chair's; 0: they are not. */
  private since = 0;

  constructor(private readonly state: State) {
    state.on("rest", () => say(el("summary"), this.summary()));
    for (const news of ["link", "busy", "faults"] as const) state.on(news, () => this.draw());
  }

  draw(): void {
    const all = this.state.measures;
    const { planned } = this.state;
    if (all === null || planned === null) return;
    const { direct: m, echoes } = all;
    say(el("smear-before"), microseconds(m.unaligned.smear_us));
    say(el("smear-after"), microseconds(m.aligned.smear_us));
    say(el("comb-before"), onset(m.unaligned.comb_onset_hz));
    say(el("comb-after"), onset(m.aligned.comb_onset_hz));
    say(el("comb-words"), echoes.length === 0 ? "No combs up to" : "No combs in the direct sound up to");
    const isFormer = this.isFormer();
    document.body.dataset.figures = isFormer ? "former" : "true";
    say(el("lede-do"), isFormer ? "The figures have not followed the chair." : this.answer());
    const more = [isFormer ? this.former() : `By tape: ${this.state.place?.tape ?? ""}.`, echoed(echoes)];
    say(el("lede-more"), more.filter((words) => words !== "").join(" "));
  }

  /** Whether the figures are of another place; a trail that is soon made up for is none. */
  private isFormer(): boolean {
    const { state } = this;
    if (!state.isFormer && state.spotFault === "") this.since = 0;
    else if (this.since === 0) {
      this.since = performance.now();
      window.setTimeout(() => this.draw(), TRAIL_MS + 20);
    }
    if (this.since === 0) return false;
    return state.spotFault !== "" || state.link === "lost" || performance.now() - this.since > TRAIL_MS;
  }

  private answer(): string {
    const count = this.state.channels.length;
    const task = count === 1 ? "One channel needs no delay" : `Set these ${inWords(count)} delays`;
    return `Sit ${this.state.place?.short ?? ""}. ${task}.`;
  }

  private former(): string {
    const { place, spotFault } = this.state;
    const far = place === null ? "" : `, ${place.tape}`;
    const why = spotFault === "" ? "" : ` Nothing can be planned for the chair where it is: ${spotFault}.`;
    return `All figures are for the former place${far}.${why}`;
  }

  private summary(): string {
    const all = this.state.measures;
    if (all === null) return "";
    const m = all.direct;
    return `The chair is ${this.state.place?.tape ?? ""}. With the delays the smear is ${microseconds(m.aligned.smear_us)}, without ${microseconds(m.unaligned.smear_us)}; no combs ${all.echoes.length === 0 ? "" : "in the direct sound "}up to ${onset(m.aligned.comb_onset_hz)}, without ${onset(m.unaligned.comb_onset_hz)}.`;
  }
}

/** What a surface or a room does that no delay can mend. */
function echoed([deepest]: Echo[]): string {
  return deepest === undefined ? "" : `The echo of the ${deepest.by} combs from ${onset(deepest.dip_hz)} on, by ${fixed(deepest.depth_db, 0)} dB there, delays or not.`;
}
