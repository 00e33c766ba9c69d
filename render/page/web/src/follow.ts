// Follows the chair: figures for every move and a rough map after them, a finer one when it
// rests, and at last the place written into the design.

import { rested } from "./dom";
import { Live } from "./live";
import type { Asked } from "./live";
import { notice } from "./notice";
import { chairAfter, places, seatsAfter } from "./seating";
import { same, sittingOf, type Sitting, type State } from "./state";
import { beside } from "./beside";
import { figures, put } from "./strips";
import type { Change, Drawn, Move, Moved, Triple } from "./document";
import type { Delays, Heat, Quantity, View } from "./types";

/** Cells along a side of the map: of one that is dragged at the most, and of one that rests. */
const ROUGH_CELLS = 32;
const FINE_CELLS = 96;
const REST_MS = 150;
const WRITE_MS = 700;

/** What a map of a design is of; another one is of something else. */
function keyOf(design: string, a: Pick<Move, "view" | "quantity" | "band_hz" | "delays">): string {
  return `${a.view} ${a.quantity} ${a.band_hz} ${a.delays} ${design}`;
}

export class Follow {
  view: View = "above";
  quantity: Quantity = "comb_onset";
  band = 1000;
  /** Whose delays the map is of. */
  delays: Delays = "";
  /** How the sound turns over frequency is wanted too. */
  phase = false;
  /** The newest map, as far as it has come. */
  heat: Heat | null = null;
  /** What that is of. */
  answered = "";

  /** The question whose map it is. */
  drawnSeq = 0;
  private asked = "";
  /** Where everybody sits in the design's text. */
  private written: Sitting | null = null;
  private readonly live: Live;
  private readonly rest = rested(REST_MS, () => this.ask(FINE_CELLS));
  private readonly write = rested(WRITE_MS, () => this.commit());

  constructor(private readonly state: State) {
    this.live = new Live(
      (answer, asked) => this.heard(answer, asked),
      (drawn, asked, isNewest) => this.drawn(drawn, asked, isNewest),
      (isOpen, why) => this.linked(isOpen, why),
    );
    state.on("plan", () => this.refine());
    state.on("turned", () => this.look());
    state.on("settle", () => this.commit());
  }

  /** Why the spot cannot be planned for, in the server's words. */
  get fault(): string {
    return this.state.spotFault;
  }

  /** What the map is to be of now. */
  get wanted(): string {
    return keyOf(this.state.designID, { view: this.view, quantity: this.quantity, band_hz: this.band, delays: this.delays });
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
    state.leaveOff();
    this.state.tell("spot");
    this.look();
    this.write();
  }

  /** Shows something else of the same spot: roughly at once, finely after a while. */
  look(): void {
    this.ask(ROUGH_CELLS);
    this.rest();
  }

  /** Shows a design that is new. */
  private refine(): void {
    this.written = this.state.planned === null ? null : sittingOf(this.state.planned);
    if (this.asked !== this.state.liveID || (this.state.turned.length > 0 && this.state.former === null)) this.look();
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
      delays: this.delays,
      turned: this.state.turned,
      phase: this.phase,
      cells,
    });
  }

  private heard(answer: Moved, asked: Asked): void {
    const { state } = this;
    if (asked.id !== state.liveID || state.planned === null) return; // it tells of a design that is no more
    if (answer.unknown) return this.remind(asked.id);
    const found = figures(answer, state.planned);
    state.spotFault = found === null ? (answer.fault ?? answer.error ?? "the server did not answer") : "";
    if (found !== null) {
      state.moved = found;
      state.movedID = asked.id;
      beside(state, answer, found);
      state.movedOf = { spot: found.spot_m, seats: asked.seats_m };
      if (!state.isChairOwn && !state.isFormer) state.spot = [...found.spot_m]; // the middle may be another seat
      if (state.spotWaits) this.write();
    }
    state.tell("moved");
    if (asked.cells > ROUGH_CELLS) state.tell("rest");
  }

  /** Takes in a part of a map: of a fine one only of the newest question, of a rough one what is newer than what there is. */
  private drawn({ seq, polar, strip, lean }: Drawn, asked: Asked, isNewest: boolean): void {
    const { state } = this;
    if (asked.id !== state.liveID) return;
    if (polar !== undefined && state.moved?.seq === seq) {
      state.moved.polar = polar;
      state.tell("round");
    }
    if (lean !== undefined && state.moved?.seq === seq) {
      state.moved.lean = { view: asked.view, lines: lean };
      state.tell("map");
    }
    const key = keyOf(state.designID, asked);
    if (strip === undefined || key !== this.wanted || seq < this.drawnSeq || (strip.fine && !isNewest)) return;
    this.heat = put(this.answered === key ? this.heat : null, strip);
    this.answered = key;
    this.drawnSeq = seq;
    state.tell("map");
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
    if (set.length === 0) return state.resume();
    this.written = now;
    void state.change(set, "chair");
  }
}

function rounded(at: Triple): Triple {
  return at.map((v) => Math.round(1000 * v) / 1000) as Triple;
}
