// What was done to the design, step by step, each by its name, so that it can be taken back.

import type { Change, KeyRow } from "./document";
import type { Value } from "./types";

const LONGEST_HISTORY = 200;
/** A step that sets more keys than these is told by how many. */
const MOST_NAMED = 2;

/** A text with the file that it came from, and what was done to it next. */
export interface Step<Origin> {
  text: string;
  origin: Origin;
  name: string;
}

export class History<Origin> {
  private past: Step<Origin>[] = [];
  private future: Step<Origin>[] = [];

  /** What undo takes back, the newest first. */
  get done(): string[] {
    return this.past.map((s) => s.name).reverse();
  }

  /** What redo does again, the next first. */
  get undone(): string[] {
    return this.future.map((s) => s.name).reverse();
  }

  /** All texts that undo leads back to, the oldest first. */
  get steps(): readonly Step<Origin>[] {
    return this.past;
  }

  /** Remembers a text, and what was done to it. Nothing can be done again after that. */
  push(step: Step<Origin>): void {
    this.past = [...this.past, step].slice(-LONGEST_HISTORY);
    this.future = [];
  }

  /** Remembers a text that undo is to lead to, while what can be done again stays. */
  slip(step: Step<Origin>): void {
    this.past.push(step);
  }

  /** Goes back so many steps from what is there now, or forth where count is below 0. */
  go(now: Omit<Step<Origin>, "name">, count: number): Step<Origin> | null {
    let at: Step<Origin> | null = null;
    const [from, to] = count > 0 ? [this.past, this.future] : [this.future, this.past];
    for (let i = Math.abs(count); i > 0; i--) {
      const step = from.pop();
      if (step === undefined) break;
      to.push({ ...(at ?? now), name: step.name });
      at = step;
    }
    return at;
  }
}

/** Says what changes of keys do: which key becomes what. */
export function nameOf(set: Change[], keys: ReadonlyMap<string, KeyRow>): string {
  const said = set.map(({ key, value }) => one(key, value as Value, keys));
  const some = [...new Set(said)];
  return some.length <= MOST_NAMED ? some.join(", ") : `${some[0]} and ${some.length - 1} more`;
}

function one(key: string, value: Value, keys: ReadonlyMap<string, KeyRow>): string {
  const table = key.replace(/\.[^.\]]*$/, "");
  const many = /^(\w+)\[(\d+)\]/.exec(key);
  const place = many === null ? "" : `${many[1]!.replace("_at", "")} ${many[2]}: `;
  const row = keys.get(key.replace(/\[\d+\]/, ""));
  if (row === undefined) return value === null ? `${place}${key} taken out` : `${place}${key}`;
  const words = `${place}${row.label}`;
  if (value === null) return `${words} left to the program`;
  if (row.kind === "list" || table === "channel") return words;
  return `${words} ${value === true ? "yes" : value === false ? "no" : String(value)}${row.unit === "" ? "" : ` ${row.unit}`}`;
}
