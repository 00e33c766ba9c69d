// What is ticked at the bench: in the file beside the design, or, where there is none, in
// the browser.

import * as api from "./api";
import type { Ticked } from "./document";
import { kept, keep } from "./keep";
import { after, nameOf, type Step, type Ticks } from "./steps";

const VERSION = 1;

export class Kept {
  readonly ticks: Ticks = new Map();
  /** The file's name; empty: the browser keeps them. */
  file = "";
  /** What the design's file is; see Started. */
  read = "";
  /** How many ticks were sent, and how many of them are not answered. */
  private sent = 0;
  private open = 0;

  constructor(private readonly path: string) {}

  /** Takes in what is ticked, here or elsewhere, and tells whether that is news. */
  async look(): Promise<boolean> {
    if (this.open > 0) return false; // its answer tells
    const sent = this.sent;
    const { file, strings, read } = await api.ticks();
    if (sent !== this.sent) return false; // it is older than what was ticked since
    const is = JSON.stringify([...this.ticks.values()]);
    this.file = file;
    this.take(file === "" ? (kept<Ticked[]>("bench", this.path, VERSION) ?? []) : strings);
    const isNews = read !== this.read || is !== JSON.stringify([...this.ticks.values()]);
    this.read = read;
    return isNews;
  }

  /** Notes a step; what others ticked meanwhile comes back with it. */
  async put(step: Step, done: boolean): Promise<void> {
    const one = after(step, done, this.ticks);
    this.ticks.set(nameOf(one.drivers), one);
    if (this.file === "") {
      if (!keep("bench", this.path, VERSION, [...this.ticks.values()])) throw new Error("the browser keeps nothing for this page");
      return;
    }
    const sent = ++this.sent;
    this.open++;
    try {
      const { strings } = await api.tick({ drivers: step.drivers, step: step.kind, driver: step.id, done });
      if (sent === this.sent) this.take(strings);
    } finally {
      this.open--;
    }
  }

  private take(all: Ticked[]): void {
    this.ticks.clear();
    for (const t of all) this.ticks.set(nameOf(t.drivers), t);
  }
}
