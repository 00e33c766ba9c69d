// What is ticked at the bench: in the file beside the design, or, where there is none, in
// the browser.

import * as api from "./api";
import type { Ticked } from "./document";
import { kept, keep } from "./keep";
import { nameOf, type Ticks } from "./steps";

const VERSION = 1;

export class Kept {
  readonly ticks: Ticks = new Map();
  /** The file's name; empty: the browser keeps them. */
  file = "";

  constructor(private readonly path: string) {}

  async read(): Promise<void> {
    const { file, strings } = await api.ticks();
    this.file = file;
    this.take(file === "" ? (kept<Ticked[]>("bench", this.path, VERSION) ?? []) : strings);
  }

  /** Notes one string's; what others ticked meanwhile comes back with it. */
  async put(one: Ticked): Promise<void> {
    this.ticks.set(nameOf(one.drivers), one);
    if (this.file !== "") this.take((await api.tick(one)).strings);
    else if (!keep("bench", this.path, VERSION, [...this.ticks.values()])) throw new Error("the browser keeps nothing for this page");
  }

  private take(all: Ticked[]): void {
    this.ticks.clear();
    for (const t of all) this.ticks.set(nameOf(t.drivers), t);
  }
}
