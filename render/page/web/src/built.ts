// Once it is built: recordings of the sweep, held against the plan.

import * as api from "./api";
import { chip } from "./chip";
import type { Curves } from "./curves";
import { el, make, say } from "./dom";
import { sentence } from "./fields";
import { download } from "./download";
import { SWEEP } from "./files";
import type { State } from "./state";
import type { MeasuredAnswer, MeasuredChannel, MeasuredSeats } from "./document";
import type { Maybe } from "./types";
import { fixed, milliseconds, NONE, typeset } from "./words";

const MOST_BYTES = 250 << 20;
/** Delays that differ by less than this, in microseconds, are the same to any processor. */
const SAME_US = 5;
/** Smaller errors than these are not told. */
const LEAST_ERROR_US = 0.1;
const LEAST_ERROR_DB = 0.1;
/** How many standard errors 95 of 100 measurements lie within. */
const EXPANDED = 2;

export class Built {
  private files: File[] = [];
  private under: AbortController | null = null;
  private readonly box = el("built-found");
  private readonly input = el<HTMLInputElement>("recordings");

  constructor(private readonly state: State, private readonly curves: Curves) {
    el("record").onclick = () => this.input.click();
    this.input.onchange = () => {
      const files = [...(this.input.files ?? [])];
      this.input.value = "";
      if (files.length > 0) void this.measure(files);
    };
    el("sweeps").onclick = () => void this.sweeps();
    el("as-built").onchange = () => {
      if (this.files.length > 0) void this.measure(this.files);
    };
    el("unmeasure").onclick = () => this.putAway();
    this.watchDrops();
    state.on("plan", () => say(el("built-seats"), state.seating === null ? "" : ", and seat_1.wav, with all channels on, at the first seat, and so on"));
  }

  /** Recordings may be dropped anywhere: a browser would else leave the page for them. */
  private watchDrops(): void {
    const section = el("built");
    const hasFiles = (event: DragEvent) => event.dataTransfer?.types.includes("Files") ?? false;
    document.addEventListener("dragover", (event) => {
      if (!hasFiles(event)) return;
      event.preventDefault();
      section.classList.add("dropping");
    });
    document.addEventListener("dragleave", (event) => {
      if (event.relatedTarget === null) section.classList.remove("dropping");
    });
    document.addEventListener("drop", (event) => {
      if (!hasFiles(event)) return;
      event.preventDefault();
      section.classList.remove("dropping");
      const files = [...(event.dataTransfer?.files ?? [])];
      if (files.length === 0) return;
      section.scrollIntoView({ block: "nearest" });
      void this.measure(files);
    });
  }

  private async sweeps(): Promise<void> {
    const button = el<HTMLButtonElement>("sweeps");
    button.disabled = true;
    try {
      download(`pappus-${SWEEP}.zip`, await api.files(this.state.planned?.text ?? this.state.text, SWEEP));
    } catch (error) {
      this.refuse(error);
    }
    button.disabled = false;
  }

  /** Measures the WAV files among some: what else was in their folder does not matter. */
  private async measure(dropped: File[]): Promise<void> {
    const files = dropped.filter((f) => /\.wav$/i.test(f.name));
    if (files.length === 0) return this.refuse(new Error(`${dropped[0]?.name ?? "nothing"} is no WAV file`));
    if (files.reduce((sum, f) => sum + f.size, 0) > MOST_BYTES) return this.refuse(new Error("more than 250 MB at once"));
    const planned = this.state.planned;
    if (planned === null) return;
    this.under?.abort();
    const mine = new AbortController();
    this.under = mine;
    this.files = files;
    this.box.replaceChildren(make("p", { class: "quiet" }, files.length === 1 ? "Looking at the recording…" : `Looking at ${files.length} recordings…`));
    try {
      const found = await api.measure(planned.text, el<HTMLInputElement>("as-built").checked, files, mine.signal);
      if (this.under === mine) this.show(found);
    } catch (error) {
      if (this.under === mine) this.refuse(error);
    }
  }

  private refuse(error: unknown): void {
    const words = error instanceof api.Faulty ? error.faults.map(sentence).join("; ") : error instanceof Error ? error.message : String(error);
    this.putAway();
    this.box.replaceChildren(make("p", { class: "fault", role: "alert" }, `Not measured: ${words}.`));
  }

  private putAway(): void {
    this.under?.abort();
    this.under = null;
    this.files = [];
    this.curves.measured(null);
    this.box.replaceChildren();
    el("unmeasure").hidden = true;
    say(el("built-say"), "");
  }

  private show(found: MeasuredAnswer): void {
    const { channels, level } = found;
    const lines = [...found.sentences];
    if (channels !== null && found.faults.length === 0) lines.unshift("No channel is silent, weak or reversed.");
    this.box.replaceChildren(
      ...(found.faults.length === 0 ? [] : [make("ul", { class: "lines warn" }, ...found.faults.map((f) => make("li", {}, `${typeset(f)}.`)))]),
      make("ul", { class: "lines" }, ...lines.map((l) => make("li", {}, typeset(l)))),
      ...(found.seats === null ? [] : [ofSeats(found.seats)]),
      ...(channels === null ? [] : [table(channels)]),
    );
    this.curves.measured(level === null ? null : { frequency_hz: level.frequency_hz, level_db: level.smoothed_db });
    el("unmeasure").hidden = false;
    say(el("built-say"), level === null ? "" : "Drawn above, in What the chair hears.");
  }
}

/** A value with what 95 of 100 measurements lie within, which is twice its standard error. */
function within(value: Maybe, error: Maybe, least: number): string {
  if (value === null) return NONE;
  if (error === null) return fixed(value, 1);
  const wide = EXPANDED * error;
  if (wide < least) return `${fixed(value, 1)} ± under ${least}`;
  const places = wide >= 10 ? 0 : 1;
  return `${fixed(value, places)} ± ${fixed(wide, places)}`;
}

/** Whether a measurement asks for another delay than was set; one of which nothing is known does not. */
function differs({ set_delay_us, proposed_delay_us }: MeasuredChannel): boolean {
  return set_delay_us !== null && proposed_delay_us !== null && Math.abs(proposed_delay_us - set_delay_us) > SAME_US;
}

/** What was lost at the seats where it was recorded. */
function ofSeats({ each }: MeasuredSeats): HTMLElement {
  const head = ["Seat", "Planned dB", "Measured dB"];
  return make("div", { class: "scroll", tabindex: "0", role: "region", "aria-label": "What was measured at each seat" },
    make("table", {},
      make("caption", { class: "hidden" }, "What each seat loses against all drivers in step"),
      make("thead", {}, make("tr", {}, ...head.map((h, i) => make("th", { scope: "col", class: i > 0 ? "number" : undefined }, h)))),
      make("tbody", {}, ...each.map((s) => make("tr", {},
        make("th", { scope: "row" }, s.name),
        make("td", { class: "number" }, fixed(s.planned_db, 1)),
        make("td", { class: "number" }, within(s.measured_db, s.error_db, LEAST_ERROR_DB)))))));
}

function table(channels: MeasuredChannel[]): HTMLElement {
  const head = ["Channel", "Set ms", "Proposed ms", "Late µs", "Level dB"];
  return make("div", { class: "scroll", tabindex: "0", role: "region", "aria-label": "What each channel measured" },
    make("table", {},
      make("caption", { class: "hidden" }, "What each channel measured, and the delay that follows"),
      make("thead", {}, make("tr", {}, ...head.map((h, i) => make("th", { scope: "col", class: i > 0 ? "number" : undefined }, h)))),
      make("tbody", {}, ...channels.map((c) => make("tr", {},
        make("th", { scope: "row" }, chip(c.id)),
        make("td", { class: "number" }, milliseconds(c.set_delay_us)),
        make("td", { class: `number${differs(c) ? " strong" : ""}` }, milliseconds(c.proposed_delay_us)),
        make("td", { class: "number" }, within(c.late_us, c.error_us, LEAST_ERROR_US)),
        make("td", { class: "number" }, within(c.level_db, c.level_error_db, LEAST_ERROR_DB)))))));
}
