// What the page knows: one design's text with its history, and the plan of the
// newest text that could be planned.

import * as api from "./api";
import type { Channel, DriverRow, Fault, Moved, Planned, Triple } from "./types";

export type News = "plan" | "text" | "faults" | "moved" | "spot" | "busy" | "rest";

/** Why a text became the design: a chair that came to rest leaves the room as it is drawn. */
export type Reason = "chair" | "design";

const LONGEST_HISTORY = 200;

export class State {
  text = "";
  /** The text as it stands in the file. */
  saved = "";
  planned: Planned | null = null;
  /** The plan that moves are asked of; a chair's rest does not change it. */
  liveID = "";
  spot: Triple = [1, 0, 0];
  moved: Moved | null = null;
  faults: Fault[] = [];
  busy = false;

  private past: string[] = [];
  private future: string[] = [];
  private under: AbortController | null = null;
  /** True while a change of the design, and not only of the chair, waits for its plan. */
  private owesDesign = false;
  private queue: Promise<void> = Promise.resolve();
  private readonly listeners = new Map<News, (() => void)[]>();

  on(news: News, then: () => void): void {
    this.listeners.set(news, [...(this.listeners.get(news) ?? []), then]);
  }

  tell(news: News): void {
    for (const then of this.listeners.get(news) ?? []) then();
  }

  /** Every driver's row as it is at the chair now. */
  get rows(): DriverRow[] {
    return this.moved?.drivers ?? this.planned?.plan.drivers ?? [];
  }

  /** What each channel is set to now. */
  get channels(): Channel[] {
    return this.moved?.channels ?? this.planned?.plan.channels ?? [];
  }

  get canUndo(): boolean {
    return this.past.length > 0;
  }

  get canRedo(): boolean {
    return this.future.length > 0;
  }

  /** Changes some keys. Changes are made one after the other, each of the text that the one before left. */
  change(set: api.Change[], reason: Reason = "design"): Promise<void> {
    const step = async () => {
      try {
        const text = await api.edit(this.text, set);
        if (text !== this.text) void this.take(text, reason);
      } catch (error) {
        this.fail(error, set[0]?.key ?? "");
      }
    };
    this.queue = this.queue.then(step);
    return this.queue;
  }

  /** Takes a text for the design and plans it. */
  async take(text: string, reason: Reason = "design"): Promise<void> {
    if (this.text !== "" && text !== this.text) {
      this.past = [...this.past, this.text].slice(-LONGEST_HISTORY);
      this.future = [];
    }
    await this.plan(text, reason);
  }

  /** Begins with another design, without a history. */
  async begin(text: string, saved: string): Promise<void> {
    this.past = [];
    this.future = [];
    this.saved = saved;
    await this.plan(text, "design");
  }

  async undo(): Promise<void> {
    const text = this.past.pop();
    if (text === undefined) return;
    this.future.push(this.text);
    await this.plan(text, "design");
  }

  async redo(): Promise<void> {
    const text = this.future.pop();
    if (text === undefined) return;
    this.past.push(this.text);
    await this.plan(text, "design");
  }

  /** Plans the text once more, for a server that has forgotten it. */
  again(): Promise<void> {
    return this.plan(this.text, "design");
  }

  private async plan(text: string, reason: Reason): Promise<void> {
    this.text = text;
    this.tell("text");
    this.under?.abort();
    this.owesDesign ||= reason === "design";
    const mine = new AbortController();
    this.under = mine;
    this.setBusy(true);
    try {
      const planned = await api.plan(text, mine.signal);
      if (this.under !== mine) return;
      this.faults = [];
      this.planned = planned;
      if (this.owesDesign) {
        this.liveID = planned.id;
        this.moved = null;
      }
      if (reason === "design") this.spot = [...planned.spot_m];
      this.owesDesign = false;
      this.tell("faults");
      this.tell("plan");
    } catch (error) {
      if (this.under === mine) this.fail(error, "");
    } finally {
      if (this.under === mine) {
        this.under = null;
        this.setBusy(false);
      }
    }
  }

  private fail(error: unknown, key: string): void {
    if (error instanceof DOMException && error.name === "AbortError") return;
    if (error instanceof api.Faulty) this.faults = error.faults;
    else this.faults = [{ line: 0, key, reason: error instanceof Error ? error.message : String(error) }];
    this.tell("faults");
  }

  private setBusy(busy: boolean): void {
    this.busy = busy;
    this.tell("busy");
  }
}
