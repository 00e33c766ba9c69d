// Every driver's row, in a table that may have a thousand: filled a part in each frame.

import { chip } from "./chip";
import { el, make, say } from "./dom";
import type { Row } from "./types";
import { decibels, fixed, milliseconds } from "./words";

/** So many rows are filled in a frame, which takes a few ms. */
const PART = 60;
/** Delay, level, both ways, when it is heard; and whether it is seen. */
const CELLS = 6;

interface Line {
  row: HTMLElement;
  id: HTMLElement;
  channel: HTMLElement;
  cells: HTMLElement[];
}

export class DriverTable {
  private readonly body = el("drivers").querySelector("tbody")!;
  private readonly lines: Line[] = [];
  private rows: Row[] = [];
  private picked = "";
  private at = 0;
  private isUnder = false;

  /** Shows rows, of which one is picked by its number. */
  show(rows: Row[], picked: string): void {
    Object.assign(this, { rows, picked, at: 0 });
    for (const { row } of this.lines.splice(rows.length)) row.remove();
    if (!this.isUnder) this.part();
  }

  private part(): void {
    const end = Math.min(this.at + PART, this.rows.length);
    for (; this.at < end; this.at++) this.fill(this.lines[this.at] ?? this.add(), this.rows[this.at]!);
    this.isUnder = this.at < this.rows.length;
    if (this.isUnder) requestAnimationFrame(() => this.part());
  }

  private add(): Line {
    const [id, channel] = [make("th", { scope: "row" }), make("td", {})];
    const cells = Array.from({ length: CELLS }, (_, i) => make("td", { class: i < CELLS - 1 ? "number" : undefined }));
    const line = { row: make("tr", {}, id, channel, ...cells), id, channel, cells };
    this.lines.push(line);
    this.body.append(line.row);
    return line;
  }

  private fill({ row, id, channel, cells }: Line, d: Row): void {
    row.classList.toggle("picked-row", String(d.id) === this.picked);
    say(id, String(d.id));
    if (channel.textContent !== String(d.channel)) channel.replaceChildren(chip(d.channel));
    const texts = [milliseconds(d.delay_us), decibels(d.level_db), ...ways(d), d.way === null ? "…" : d.way.seen ? "yes" : "hidden"];
    for (const [i, cell] of cells.entries()) say(cell, texts[i]!);
  }
}

/** A driver's ways and when it is heard; dots while the chair moves. */
function ways({ way }: Row): string[] {
  if (way === null) return ["…", "…", "…"];
  return [fixed(way.path_m, 3), fixed(way.straight_path_m, 3), milliseconds(way.field_arrival_us ?? way.arrival_us)];
}
