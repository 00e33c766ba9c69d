// What the page knows: one design's text with its history, and the plan of the
// newest text that could be planned.

import * as api from "./api";
import type { Change, Edited, Fault, KeyRow, PlanAnswer } from "./document";
import { History, nameOf } from "./history";
import { rowsOf, Shown, sittingOf } from "./shown";

export { same, sittingOf } from "./shown";
export type { News, Sitting } from "./shown";

/** Why a text became the design, or is planned anew: a chair that came to rest leaves the room as it is drawn, and what is known better of the body all that somebody does. */
export type Reason = "chair" | "design" | "body";

/** The file that a text came from. */
export interface Origin {
  name: string;
  /** The page writes no file but the one it was started with. */
  canSave: boolean;
  /** What it holds, as far as the page knows. */
  saved: string;
}

export class State extends Shown {
  text = "";
  origin: Origin = { name: "", canSave: false, saved: "" };
  /** The place of the chair, or of a seat, is not in the text yet. */
  spotWaits = false;
  /** Why it cannot be planned for, in the server's words. */
  spotFault = "";
  faults: Fault[] = [];
  /** The text cannot be planned: what there is of a plan is of a former design. */
  isBroken = false;
  /** What one press makes of such a text; null: none is known. */
  cure: Edited | null = null;
  /** What was mended for the last change, in sentences. */
  mended: string[] = [];
  busy = false;
  link: "new" | "open" | "lost" = "new";
  /** Somebody's text is in the text box and not taken. */
  hasDraft = false;

  /** The keys of a design, by their names, for what is said of a change. */
  keys: ReadonlyMap<string, KeyRow> = new Map();
  readonly history = new History<Origin>();
  private under: AbortController | null = null;
  /** True while a change of the design, and not only of the chair, waits for its plan. */
  private owesDesign = false;
  /** What could not be told to a program that was gone. */
  private owed: { set: Change[]; reason: Reason }[] = [];
  private owesPlan = false;
  private queue: Promise<void> = Promise.resolve();


  get canUndo(): boolean {
    return this.history.done.length > 0;
  }

  get canRedo(): boolean {
    return this.history.undone.length > 0;
  }

  /** The text is not what its file holds. */
  get isChanged(): boolean {
    return this.text !== this.origin.saved;
  }

  /** Something would be lost with the page: of this design, of one opened before, of a text or a place not taken yet. */
  get isUnsaved(): boolean {
    const newest = new Map<Origin, string>();
    for (const { text, origin } of [...this.history.steps, { text: this.text, origin: this.origin }]) newest.set(origin, text);
    return this.hasDraft || this.spotWaits || this.owed.length > 0 || [...newest].some(([origin, text]) => text !== origin.saved);
  }

  /** Changes some keys. Changes are made one after the other, each of the text that the one before left. */
  change(set: Change[], reason: Reason = "design"): Promise<void> {
    this.queue = this.queue.then(() => this.put(set, reason));
    return this.queue;
  }

  /** Takes one of several tables away, once what was done to the others is written: they close up. */
  async takeAway(table: string): Promise<void> {
    await this.settle();
    await this.change([{ key: table, value: null }]);
  }

  private async put(set: Change[], reason: Reason): Promise<void> {
    for (;;) {
      const { text: before, origin } = this;
      try {
        const { text, mended } = await api.edit(before, set);
        const name = reason === "chair" ? "who sits where" : nameOf(set, this.keys);
        if (origin !== this.origin) this.history.slip({ text, origin, name }); // another was opened meanwhile: undo leads here
        else if (before !== this.text) continue; // undone meanwhile: the change is made of what is there now
        else if (text !== before) void this.take(text, name, reason, origin, mended);
      } catch (error) {
        if (error instanceof api.Gone) this.owed.push({ set, reason });
        else this.fail(error, set[0]?.key ?? "");
      }
      return;
    }
  }

  /** Waits until what somebody did is in the text. */
  async settle(): Promise<void> {
    this.tell("settle");
    await this.queue;
  }

  /** Puts a whole text in the design's place, and the chair where it says. */
  async replace(text: string, name: string, origin: Origin = this.origin): Promise<void> {
    await this.settle();
    this.spotWaits = false;
    await this.take(text, name, "design", origin);
  }

  /** Takes a text for the design, by a name for what was done, and plans it. */
  async take(text: string, name: string, reason: Reason = "design", origin: Origin = this.origin, mended: string[] = []): Promise<void> {
    if (reason === "design") this.mended = mended;
    if (this.text !== "" && (text !== this.text || origin !== this.origin)) this.history.push({ text: this.text, origin: this.origin, name });
    this.origin = origin;
    await this.plan(text, reason);
  }

  /** Takes what mends a design that cannot be planned. */
  async mend(): Promise<void> {
    const { cure } = this;
    if (cure === null) return;
    await this.settle();
    if (this.cure === cure) await this.take(cure.text, "mended", "design", this.origin, cure.mended);
  }

  undo(): Promise<void> {
    return this.step(1);
  }

  redo(): Promise<void> {
    return this.step(-1);
  }

  /** Takes so many steps back; below 0 does them again. */
  async step(count: number): Promise<void> {
    await this.settle();
    const step = this.history.go({ text: this.text, origin: this.origin }, count);
    if (step === null) return;
    this.origin = step.origin;
    this.spotWaits = false;
    this.mended = [];
    await this.plan(step.text, "design");
  }

  /** Plans the text once more, for a server that has forgotten it. The chair stays where it is. */
  again(): Promise<void> {
    this.owesDesign = true;
    return this.plan(this.text, "chair");
  }

  /** Plans the text once more, for there is more known of its body now. Where something else is under way, that is planned by it. */
  async renew(): Promise<void> {
    if (!this.busy && !this.isOther && !this.isBroken) await this.plan(this.text, "body");
  }

  /** Tells a program that is there again what it missed. */
  resume(): void {
    for (const { set, reason } of this.owed.splice(0)) void this.change(set, reason);
    if (this.owesPlan) void this.queue.then(() => (this.owesPlan && !this.busy ? this.again() : undefined));
  }

  /** Leaves off seeking the best for seats that are being moved: that takes the machine from what follows the hand. It is sought once they rest. */
  leaveOff(): void {
    if (this.seats.length < 2 || this.under === null || this.owesDesign) return;
    this.under.abort();
    this.under = null;
    this.owesPlan = true;
    this.setBusy(false);
  }

  private async plan(text: string, reason: Reason): Promise<void> {
    this.text = text;
    this.tell("text");
    this.under?.abort();
    this.owesDesign ||= reason !== "chair";
    const mine = new AbortController();
    this.under = mine;
    this.setBusy(true);
    try {
      // Seats are served at once first, and as well as can be once that is found.
      for (let roughly = reason === "design"; ; roughly = false) {
        const planned = await api.plan(text, roughly, mine.signal);
        if (this.under !== mine || (reason === "body" && this.isOther)) return;
        this.settleOn(planned, reason);
        if (!planned.rough) break;
      }
    } catch (error) {
      if (this.under !== mine) return;
      if (error instanceof api.Gone) this.owesPlan = true;
      else if (!(error instanceof DOMException && error.name === "AbortError")) {
        this.isBroken = true;
        this.cure = error instanceof api.Faulty ? error.cure : null;
        this.fail(error, "");
      }
    } finally {
      if (this.under === mine) {
        this.under = null;
        this.setBusy(false);
      }
    }
  }

  /** Shows a plan of the newest text. */
  private settleOn(planned: PlanAnswer, reason: Reason): void {
    this.faults = [];
    this.isBroken = false;
    this.cure = null;
    this.owesDesign ||= this.planned?.model.waits !== planned.model.waits;
    this.planned = planned;
    if (this.former !== null) this.ghost(null); // who changed the design sees it
    this.ownRows = rowsOf(planned);
    if (this.owesDesign || planned.seats.length > 1) this.liveID = planned.id;
    if (this.owesDesign) {
      this.designID = planned.id;
      this.moved = this.movedOf = null;
    }
    if (reason === "design" && (!this.spotWaits || planned.seats.length !== this.seats.length)) {
      this.spotWaits = false;
      Object.assign(this, sittingOf(planned));
      this.picked = this.isChairOwn ? Math.min(this.picked, this.seats.length - 1) : Math.min(Math.max(this.picked, 0), this.seats.length - 1);
      this.spotFault = "";
    }
    this.owesDesign = this.owesPlan = false;
    this.tell("faults");
    this.tell("plan");
  }

  private fail(error: unknown, key: string): void {
    if (error instanceof DOMException && error.name === "AbortError") return;
    if (error instanceof api.Faulty) this.faults = error.faults;
    else this.faults = [{ line: 0, key, value: "", reason: error instanceof Error ? error.message : String(error) }];
    this.tell("faults");
  }

  private setBusy(busy: boolean): void {
    this.busy = busy;
    this.tell("busy");
  }
}
