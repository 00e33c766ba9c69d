// Follows the chair: a rough answer for every move, a finer one when it rests,
// and at last the place written into the design.

import { rested } from "./dom";
import { Live, MOST_ROUGH_CELLS } from "./live";
import { notice } from "./notice";
import { chairAfter, places, seatsAfter } from "./seating";
import { same, sittingOf, type Sitting, type State } from "./state";
import type { Change, Move, Triple } from "./document";
import type { Answer, Quantity, View } from "./types";

const LEAST_CELLS = 12;
/** Cells of the finer map: as many as are worked out in about so long. */
const LEAST_FINE_CELLS = 40;
const MOST_FINE_CELLS = 96;
const FINE_MS = 2500;
/** A fine map has so many times the frequencies of a rough one. */
const FINER = 2.4;
const REST_MS = 150;
const WRITE_MS = 700;
/** An answer that takes longer makes the next rough map coarser. */
const SLOW_MS = 60;

/** What a map of a design is of; another one is of something else. */
function keyOf(design: string, a: Pick<Move, "view" | "quantity" | "band_hz">): string {
  return `${a.view} ${a.quantity} ${a.band_hz} ${design}`;
}

export class Follow {
  view: View = "above";
  quantity: Quantity = "comb_onset";
  band = 1000;
  /** True for the finer answer of a chair that rests. */
  isFine = false;
  /** What the newest answer's map is of. */
  answered = "";

  private cells = MOST_ROUGH_CELLS;
  private fineCells = MOST_FINE_CELLS;
  /** What the cells of the finer map were last chosen for. */
  private priced = "";
  private asked = "";
  /** Where everybody sits in the design's text. */
  private written: Sitting | null = null;
  private readonly live: Live;
  private readonly rest = rested(REST_MS, () => this.ask(this.fineCells));
  private readonly write = rested(WRITE_MS, () => this.commit());

  constructor(private readonly state: State) {
    this.live = new Live(
      (answer, asked, ms) => this.heard(answer, asked, ms),
      (isOpen, why) => this.linked(isOpen, why),
    );
    state.on("plan", () => this.refine());
    state.on("settle", () => this.commit());
  }

  /** Why the spot cannot be planned for, in the server's words. */
  get fault(): string {
    return this.state.spotFault;
  }

  /** What the map is to be of now. */
  get wanted(): string {
    return keyOf(this.state.designID, { view: this.view, quantity: this.quantity, band_hz: this.band });
  }

  /** Moves the chair, or a seat with those of its row. */
  move(to: Triple, seat = -1): void {
    const { state } = this;
    const chair = chairAfter(state, to, seat);
    if (chair !== null) return this.move(chair);
    if (seat < 0) state.spot = to;
    else if (!state.isChairOwn && same(state.seats[seat]!, state.spot)) state.spot = to;
    state.seats = seatsAfter(state, to, seat);
    state.spotWaits = true;
    this.state.tell("spot");
    this.look();
    this.write();
  }

  /** Shows something else of the same spot: roughly at once, finely after a while. */
  look(): void {
    this.ask(this.cells);
    this.rest();
  }

  /** Shows a design that is new. */
  private refine(): void {
    this.written = this.state.planned === null ? null : sittingOf(this.state.planned);
    if (this.asked !== this.state.liveID) this.look();
  }

  private ask(cells: number): void {
    if (this.state.liveID === "") return;
    this.asked = this.state.liveID;
    this.live.ask({
      id: this.state.liveID,
      spot_m: [...this.state.spot],
      seats_m: this.state.seats.map((at) => at.map((v) => Math.round(1e6 * v) / 1e6) as Triple),
      view: this.view,
      quantity: this.quantity,
      band_hz: this.band,
      cells,
    });
  }

  private heard(answer: Answer, asked: Omit<Move, "seq">, ms: number): void {
    if (asked.id !== this.state.liveID) return; // it tells of a design that is no more
    if ("unknown" in answer) return this.remind(asked.id);
    this.state.spotFault = "";
    if (!("spot_m" in answer)) this.state.spotFault = answer.fault ?? answer.error ?? "the server did not answer";
    else {
      this.state.moved = answer;
      this.state.movedID = asked.id;
      this.state.movedOf = { spot: answer.spot_m, seats: asked.seats_m };
      if (!this.state.isChairOwn && !this.state.isFormer) this.state.spot = [...answer.spot_m]; // the middle may be another seat
      this.answered = keyOf(this.state.designID, asked);
      this.isFine = asked.cells > MOST_ROUGH_CELLS;
      if (!this.isFine) this.pace(asked, ms);
      if (this.state.spotWaits) this.write();
    }
    this.state.tell("moved");
    if (this.isFine) this.state.tell("rest");
  }

  /** Fits the next maps to how long a rough one took. The first of its kind is the dear one: later ones only sum up. */
  private pace(asked: Omit<Move, "seq">, ms: number): void {
    this.cells = ms > SLOW_MS ? Math.max(LEAST_CELLS, this.cells - 4) : Math.min(MOST_ROUGH_CELLS, this.cells + 2);
    if (this.priced === this.answered) return;
    this.priced = this.answered;
    const cells = asked.cells * Math.sqrt(FINE_MS / (FINER * Math.max(ms, 1)));
    this.fineCells = Math.round(Math.min(Math.max(cells, LEAST_FINE_CELLS), MOST_FINE_CELLS));
  }

  /** Goes on with a plan that the server still knows. */
  private remind(id: string): void {
    const newest = this.state.planned?.id ?? "";
    if (newest !== "" && newest !== id) {
      this.state.liveID = newest;
      this.look();
    } else {
      void this.state.again();
    }
  }

  private linked(isOpen: boolean, why: string | null): void {
    document.body.dataset.live = isOpen ? "open" : "lost";
    this.state.link = isOpen ? "open" : "lost";
    if (why !== null) notice("link", why === "" ? "" : `${why.slice(0, 1).toUpperCase()}${why.slice(1)}.`);
    this.state.tell("link");
    if (!isOpen || this.state.planned === null) return;
    this.state.resume();
    this.look();
  }

  /** Writes the places of the chair and of seats into the design. */
  private commit(): void {
    const { state, written } = this;
    if (!state.spotWaits || this.fault !== "" || written === null) return;
    const now: Sitting = { spot: rounded(state.spot), seats: state.seats.map(rounded) };
    const set: Change[] = places(state, written, now);
    state.spotWaits = false;
    if (set.length === 0) return;
    this.written = now;
    void state.change(set, "chair");
  }
}

function rounded(at: Triple): Triple {
  return at.map((v) => Math.round(1000 * v) / 1000) as Triple;
}
