// Follows the chair: a rough answer for every move, a finer one when it rests,
// and at last the place written into the design.

import { rested } from "./dom";
import { Live, MOST_ROUGH_CELLS } from "./live";
import type { State } from "./state";
import type { Answer, Ask, Quantity, Triple, View } from "./types";

const LEAST_CELLS = 12;
const FINE_CELLS = 96;
const REST_MS = 150;
const WRITE_MS = 700;
/** An answer that takes longer makes the next rough map coarser. */
const SLOW_MS = 60;

export class Follow {
  view: View = "above";
  quantity: Quantity = "comb_onset";
  band = 1000;
  /** Why the spot cannot be planned for, in the server's words. */
  fault = "";
  /** True for the finer answer of a chair that rests. */
  isFine = false;

  private cells = MOST_ROUGH_CELLS;
  private asked = 0;
  private readonly live: Live;
  private readonly rest = rested(REST_MS, () => this.ask(FINE_CELLS));
  private readonly write = rested(WRITE_MS, () => this.commit());

  constructor(private readonly state: State) {
    this.live = new Live(
      (answer, asked) => this.heard(answer, asked),
      (isOpen) => {
        document.body.dataset.live = isOpen ? "open" : "lost";
      },
    );
    state.on("plan", () => this.refine());
  }

  /** Moves the chair. */
  move(spot: Triple): void {
    this.state.spot = spot;
    this.state.tell("spot");
    this.ask(this.cells);
    this.rest();
    this.write();
  }

  /** Shows something else of the same spot. */
  look(): void {
    this.ask(this.cells);
    this.rest();
  }

  private refine(): void {
    this.ask(FINE_CELLS);
  }

  private ask(cells: number): void {
    if (this.state.liveID === "") return;
    this.asked = performance.now();
    this.live.ask({
      id: this.state.liveID,
      spot_m: [...this.state.spot],
      view: this.view,
      quantity: this.quantity,
      band_hz: this.band,
      cells,
    });
  }

  private heard(answer: Answer, asked: Omit<Ask, "seq">): void {
    if ("unknown" in answer) return this.remind(asked.id);
    this.fault = "";
    if (!("spot_m" in answer)) this.fault = answer.fault ?? answer.error ?? "the server did not answer";
    else {
      this.state.moved = answer;
      this.isFine = asked.cells >= FINE_CELLS;
      if (!this.isFine) this.pace(performance.now() - this.asked);
    }
    this.state.tell("moved");
    if (this.isFine) this.state.tell("rest");
  }

  private pace(ms: number): void {
    this.cells = ms > SLOW_MS ? Math.max(LEAST_CELLS, this.cells - 4) : Math.min(MOST_ROUGH_CELLS, this.cells + 2);
  }

  /** Goes on with a plan that the server still knows. */
  private remind(id: string): void {
    const newest = this.state.planned?.id ?? "";
    if (newest !== "" && newest !== id) {
      this.state.liveID = newest;
      this.refine();
    } else {
      void this.state.again();
    }
  }

  private commit(): void {
    const names = ["spot.x_m", "spot.y_m", "spot.z_m"];
    const old = this.state.planned?.spot_m;
    const set = names.flatMap((key, i) => {
      const value = Math.round(1000 * this.state.spot[i]!) / 1000;
      return old !== undefined && Math.abs(old[i]! - value) < 5e-4 ? [] : [{ key, value }];
    });
    if (set.length > 0 && this.fault === "") void this.state.change(set, "chair");
  }
}
