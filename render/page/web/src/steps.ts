// The steps at the bench: one for each driver of a string in the order of their joints, one
// for the reading of the string alone, one for that of all strings so far.

import type { BenchChannel, BenchString, Reading, Ticked } from "./document";
import { fixed } from "./words";

export type Kind = "driver" | "alone" | "joined";

export interface Step {
  kind: Kind;
  /** Which string of the channel, from 0. */
  string: number;
  drivers: number[];
  /** The driver that is joined. */
  id: number;
  title: string;
  more: string;
  reading: Reading | null;
}

/** What is done of each string, by its drivers. */
export type Ticks = Map<string, Ticked>;

/** The name of a string: its drivers in order. */
export function nameOf(drivers: readonly number[]): string {
  return drivers.join(" ");
}

export function stepsOf(c: BenchChannel): Step[] {
  return c.strings.flatMap((s, i) => [...s.drivers.map((id, k) => joint(s, i, id, k)), ...readings(c, s, i)]);
}

function joint(s: BenchString, string: number, id: number, k: number): Step {
  const before = s.drivers[k - 1];
  const isLast = k === s.drivers.length - 1;
  const title = before === undefined ? `String’s plus lead to ${id} plus` : `${before} minus to ${id} plus`;
  const more = isLast ? `It is the last of its string: ${id} minus to the string’s minus lead.` : "";
  return { kind: "driver", string, drivers: s.drivers, id, title, more, reading: null };
}

function readings(c: BenchChannel, s: BenchString, string: number): Step[] {
  const step = (kind: Kind, title: string, more: string, reading: Reading): Step => ({ kind, string, drivers: s.drivers, id: 0, title, more, reading });
  const alone = step("alone", `String ${string + 1} alone`, "From its plus lead to its minus lead, nothing else joined.", s.alone);
  const isLast = string === c.strings.length - 1;
  if (isLast) {
    const how = c.strings.length === 1 ? "" : "All plus leads together, all minus leads together. ";
    return [alone, step("joined", `Channel ${c.channel} as a whole`, `${how}At the amplifier’s end of the wire, the amplifier not joined.`, c.whole)];
  }
  if (string === 0) return [alone];
  return [alone, step("joined", `Strings 1 to ${string + 1} together`, "All plus leads together, all minus leads together.", s.joined)];
}

/** A reading as the meter's user needs it. */
export function between({ low_ohm, high_ohm }: Reading): string {
  return `good from ${fixed(low_ohm, 1)} to ${fixed(high_ohm, 1)} Ω`;
}

export function isDone(step: Step, ticks: Ticks): boolean {
  const t = ticks.get(nameOf(step.drivers));
  if (t === undefined) return false;
  return step.kind === "driver" ? t.soldered.includes(step.id) : t[step.kind];
}

/** What is done of a step's string once the step is, or is no more. */
export function after(step: Step, done: boolean, ticks: Ticks): Ticked {
  const t = ticks.get(nameOf(step.drivers)) ?? { drivers: step.drivers, soldered: [], alone: false, joined: false };
  if (step.kind !== "driver") return { ...t, [step.kind]: done };
  const soldered = step.drivers.filter((id) => (id === step.id ? done : t.soldered.includes(id)));
  return { ...t, soldered };
}
