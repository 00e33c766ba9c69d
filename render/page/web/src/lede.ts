// What to do, in one sentence, and what it brings, in two figures.

import { signed, whole } from "./allround";
import { el, say } from "./dom";
import type { State } from "./state";
import type { Former } from "./trial";
import type { Echo, Measures, Seating } from "./document";
import { worst } from "./seats";
import { decibels, fixed, inWords, microseconds, onset } from "./words";

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
    const { seating, turned, former } = this.state;
    const isTried = turned.length > 0 && former !== null;
    this.figures(isTried ? ofTrial(former, m, seating) : seating === null ? ofChair(m, echoes) : ofSeats(seating));
    const isFormer = this.isFormer();
    document.body.dataset.figures = isFormer ? "former" : "true";
    say(el("lede-do"), isFormer ? seating === null ? "The figures have not followed the chair." : "The figures have not followed the seats." : isTried ? "You try other delays." : this.answer());
    const more = [planned.rough ? "These delays were found at once; better ones are being sought." : "", isFormer ? this.former() : seating === null ? `By tape: ${this.state.place?.tape ?? ""}.` : priced(seating), echoed(echoes)];
    say(el("lede-more"), more.filter((words) => words !== "").join(" "));
  }

  /** Shows two figures, without delays and with them. */
  private figures(two: Figure[]): void {
    for (const [i, id] of ["smear", "comb"].entries()) {
      const { words, before, after } = two[i]!;
      say(el(`${id}-words`), words);
      say(el(`${id}-before`), before);
      say(el(`${id}-after`), after);
    }
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
    const { seating, place } = this.state;
    if (seating?.aim === "round") return count === 1 ? `${task}.` : `${task} for all round.`;
    if (seating !== null) return count === 1 ? `${task}.` : `${task} for all ${inWords(seating.each.length)} seats.`;
    return `Sit ${place?.short ?? ""}. ${task}.`;
  }

  private former(): string {
    const { place, spotFault } = this.state;
    const far = place === null ? "" : `, ${place.tape}`;
    const isChair = this.state.seating === null;
    const why = spotFault === "" ? "" : ` Nothing can be planned for ${isChair ? "the chair where it is" : "the seats where they are"}: ${spotFault}.`;
    return isChair ? `All figures are for the former place${far}.${why}` : `All figures are for the former places.${why}`;
  }

  private summary(): string {
    const all = this.state.measures;
    if (all === null) return "";
    const { seating } = this.state;
    if (seating !== null) return `${priced(seating)} ${ofSeats(seating).map(({ words, before, after }) => `${words} ${after}, without delays ${before}.`).join(" ")}`.trim();
    const m = all.direct;
    return `The chair is ${this.state.place?.tape ?? ""}. With the delays the smear is ${microseconds(m.aligned.smear_us)}, without ${microseconds(m.unaligned.smear_us)}; no combs ${all.echoes.length === 0 ? "" : "in the direct sound "}up to ${onset(m.aligned.comb_onset_hz)}, without ${onset(m.unaligned.comb_onset_hz)}.`;
  }
}

/** What a trial makes of what is planned. */
function ofTrial({ measures: planned, seating: was }: Former, tried: Measures, seating: Seating | null): Figure[] {
  if (was !== undefined && seating !== null && seating.round === undefined) {
    const loss = (words: string, before: number | null, after: number | null) => ({ words, before: `${decibels(before)} dB`, after: `${decibels(after)} dB` });
    return [
      loss("As tried, the worst seat loses", was.planned.worst_db, seating.planned.worst_db),
      loss("As tried, the seats differ by", was.planned.between_db, seating.planned.between_db),
    ];
  }
  return [
    { words: "As tried, the arrivals are smeared over", before: microseconds(planned.aligned.smear_us), after: microseconds(tried.aligned.smear_us) },
    { words: "As tried, no combs in the direct sound up to", before: onset(planned.aligned.comb_onset_hz), after: onset(tried.aligned.comb_onset_hz) },
  ];
}

interface Figure {
  words: string;
  before: string;
  after: string;
}

function ofChair(m: Measures, echoes: Echo[]): Figure[] {
  return [
    { words: "The arrivals are smeared over", before: microseconds(m.unaligned.smear_us), after: microseconds(m.aligned.smear_us) },
    {
      words: echoes.length === 0 ? "No combs up to" : "No combs in the direct sound up to",
      before: onset(m.unaligned.comb_onset_hz), after: onset(m.aligned.comb_onset_hz),
    },
  ];
}

function ofSeats({ planned, without, round }: Seating): Figure[] {
  if (round !== undefined) {
    const { own, without_db } = whole(round);
    return [
      { words: "The level all round", before: "0.0 dB", after: `${signed(own.gain_db)} dB` },
      { words: "Uneven by", before: `${decibels(without_db)} dB`, after: `${decibels(own.deviation_db)} dB` },
    ];
  }
  return [
    { words: "The worst seat loses", before: `${decibels(without.worst_db)} dB`, after: `${decibels(planned.worst_db)} dB` },
    { words: "The seats differ by", before: `${decibels(without.between_db)} dB`, after: `${decibels(planned.between_db)} dB` },
  ];
}

/** Where most is lost with the delays for all. What others would bring stands in the table of seats. */
function priced(seats: Seating): string {
  if (seats.round !== undefined) return "";
  return `Most is lost at ${seats.each[worst(seats)]?.name ?? ""}: ${decibels(seats.planned.worst_db)} dB.`;
}

/** What a surface or a room does that no delay can mend. */
function echoed([deepest]: Echo[]): string {
  return deepest === undefined ? "" : `The echo of the ${deepest.by} combs from ${onset(deepest.dip_hz)} on, by ${fixed(deepest.depth_db, 0)} dB there, delays or not.`;
}
