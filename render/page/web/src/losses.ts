// What each seat loses: with the delays for all, for the middle seat alone, without any, and at best.

import type { Seating, SeatsLost } from "./document";
import { el, hide, make, mark, say } from "./dom";
import { worst } from "./seats";
import type { State } from "./state";
import type { Maybe } from "./types";
import { decibels } from "./words";

/** What is said of the whole, before each seat. */
const WHOLE: [words: string, of: (lost: SeatsLost) => Maybe][] = [
  ["worst seat", (lost) => lost.worst_db],
  ["mean", (lost) => lost.mean_db],
  ["between seats", (lost) => lost.between_db],
];

/** What one set of delays can be best at, by the words of the file. */
const AIMS: Record<string, string> = { even: "all alike", worst: "the worst seat", mean: "the mean", round: "all round" };

interface Row {
  row: HTMLElement;
  name: HTMLElement;
  cells: HTMLElement[];
}

export class Losses {
  private readonly section = el("losses");
  private readonly table = el("seat-losses");
  private seats: Row[] = [];
  private readonly whole: Row[];

  private readonly aim = el<HTMLSelectElement>("aim");

  constructor(private readonly state: State) {
    this.aim.append(...Object.entries(AIMS).map(([value, words]) => make("option", { value }, words)));
    this.aim.onchange = () => void state.change([{ key: "seats.aim", value: this.aim.value }]);
    this.whole = WHOLE.map(([words]) => row(make("span", {}, words)));
    this.table.querySelector(".whole")!.append(...this.whole.map(({ row }) => row));
  }

  /** Shows the newest figures. */
  draw(): void {
    const { seating } = this.state;
    hide(this.section, seating === null);
    mark(document.body, "data-seats", seating === null ? "none" : "many");
    if (seating === null) return;
    if (document.activeElement !== this.aim) this.aim.value = seating.aim;
    if (this.seats.length !== seating.each.length) this.renew(seating.each.length);
    const least = worst(seating);
    for (const [i, { row, name, cells }] of this.seats.entries()) {
      const seat = seating.each[i]!;
      say(name, seat.name);
      row.toggleAttribute("data-worst", i === least);
      row.toggleAttribute("data-picked", i === this.state.picked);
      mark(name, "aria-pressed", String(i === this.state.picked));
      fill(cells, [seat.planned_db, seat.middle_alone_db, seat.without_db, seat.bound_db]);
    }
    for (const [i, [, of]] of WHOLE.entries()) fill(this.whole[i]!.cells, of4(seating).map(of));
    const isRound = seating.round !== undefined;
    say(el("losses-title"), isRound ? "Loud and even all round" : "What each seat loses");
    say(el("losses-unit"), isRound ? "dB, on circles at three heights" : "dB short of all drivers in step, 500 Hz to 8 kHz");
    const tried = this.state.turned.length === 0 ? "" : isRound ? "As planned: what you try is not worked out all round. " : "For all: with the delays as you try them. ";
    say(el("losses-say"), tried + (isRound ? "Louder than all drivers in parallel, on the mean of the circles. Uneven: the 30-degree mean that is furthest off its circle’s." : `For the middle one: with delays for ${seating.middle_seat} alone. At best: no processing of these channels goes below.`));
  }

  private renew(count: number): void {
    this.seats = Array.from({ length: count }, (_, i) => {
      const name = make("button", { type: "button", class: "plain" });
      name.onclick = () => this.state.pick(i);
      return row(name);
    });
    this.table.querySelector(".each")!.replaceChildren(...this.seats.map(({ row }) => row));
  }
}

function of4({ planned, middle_alone, without, bound }: Seating): SeatsLost[] {
  return [planned, middle_alone, without, bound];
}

function row(name: HTMLElement): Row {
  const cells = Array.from({ length: 4 }, (_, i) => make("td", { class: i === 0 ? "number strong" : "number" }));
  return { row: make("tr", {}, make("th", { scope: "row" }, name), ...cells), name, cells };
}

function fill(cells: HTMLElement[], values: Maybe[]): void {
  for (const [i, cell] of cells.entries()) say(cell, decibels(values[i]));
}
