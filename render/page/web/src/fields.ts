// The design as a form, made from the keys that the server knows: a field for
// each, its unit beside it, its fault under it in the server's words.

import { el, make, say } from "./dom";
import { flagged, numberOf, read, written } from "./fieldtext";
import { scrub } from "./scrub";
import type { State } from "./state";
import type { Fault, KeyRow, Started, TableRow } from "./document";
import type { Trial } from "./trial";
import type { Value } from "./types";

/** How the tables are called, in the order in which they are shown; the first ones stand open. */
const GROUPS: [table: string, words: string, open: boolean][] = [
  ["", "Name", false],
  ["body", "Body", true],
  ["placing", "How it is held", false],
  ["mounts", "Places of the drivers", true],
  ["driver", "Driver", false],
  ["wiring", "Channels and amplifier", true],
  ["spot", "Chair", false],
  ["seats", "What is best for seats", false],
  ["seat", "Seats", false],
  ["area", "Rows of seats", false],
  ["surface", "Table, ceiling or wall", false],
  ["room", "Room", false],
  ["body_at", "More bodies", false],
  ["woofer", "Woofer", false],
  ["air", "Air", false],
  ["timing", "Model and delays", false],
  ["protection", "High-pass", false],
  ["processor", "Processor", false],
  ["box", "Inside", false],
  ["fit", "Clearance", false],
  ["print", "Print", false],
  ["coverage", "Map", false],
];

/** What one more of a table begins with, of which there may be several; a seat has its place from the map. */
const BEGIN: Record<string, [words: string, keys: [name: string, value: Value][]]> = {
  area: ["Add a row of seats", [["shape", "ring"], ["count", 5], ["radius_m", 2], ["z_m", 0.6]]],
  body_at: ["Add a body", [["x_m", 0], ["y_m", 1], ["z_m", 0]]],
};

/** Keys that go with some choices alone, and are shown with those. */
const ONLY_WITH: Record<string, [choices: string[], keys: string[]][]> = {
  "body.shape": [
    [["geodesic"], ["body.base", "body.subdivision"]],
    [[], ["body.m", "body.n"]], // there where the file has them, in place of the subdivision
    [["prism", "antiprism"], ["body.sides", "body.height_mm"]],
    [["file"], ["body.file"]],
  ],
  "mounts.on": [
    [["even"], ["mounts.count", "mounts.over", "mounts.symmetry"]],
    [["list"], ["mounts.list"]],
  ],
  "timing.model": [[["body"], ["timing.solve_to_hz"]]],
};

interface Field {
  row: HTMLElement;
  key: KeyRow;
  input: HTMLInputElement | HTMLSelectElement;
  fault: HTMLElement;
  /** It holds what cannot be read, and keeps it till it is put right. */
  unread: boolean;
}

/** The rows of a table of which there may be several. */
interface Rows {
  table: string;
  keys: KeyRow[];
  box: HTMLElement;
  shown: number;
}

export class Fields {
  private readonly fields = new Map<string, Field>();
  private readonly switches = new Map<string, HTMLInputElement>();
  private readonly box = el("faults");
  private readonly rows: Rows[] = [];

  constructor(private readonly state: State, private readonly trial: Trial, start: Started) {
    const tables = new Map((start.tables ?? []).map((t) => [t.table, t]));
    const form = el<HTMLFormElement>("fields");
    form.onsubmit = (event) => event.preventDefault();
    for (const [table, words, open] of GROUPS) {
      const keys = start.keys.filter((k) => k.table === table);
      if (keys.length > 0) form.append(this.group(words, open, keys, tables.get(table)));
    }
    state.on("plan", () => this.show());
    state.on("faults", () => this.faults());
  }

  private group(words: string, open: boolean, keys: KeyRow[], table: TableRow | undefined): HTMLElement {
    const body = make("div", { class: "group-body" });
    if (table?.remark) body.append(make("p", { class: "remark" }, table.remark));
    if (table?.many) body.append(this.several(table.table, keys));
    else {
      if (table?.optional) body.append(this.presence(table.table, words));
      body.append(...keys.map((k) => this.field(k)));
    }
    return make("details", { class: "group", id: `group-${table?.table || "name"}`, open }, make("summary", {}, words), body);
  }

  /** A table of which there may be several: all keys of each, and a button that takes it away. */
  private several(table: string, keys: KeyRow[]): HTMLElement {
    const box = make("div", { class: "group-body" });
    const rows: Rows = { table, keys, box, shown: 0 };
    this.rows.push(rows);
    const add = make("button", { type: "button", class: "plain" }, BEGIN[table]?.[0] ?? "Add a seat");
    add.onclick = () => this.add(rows);
    return make("div", {}, box, add);
  }

  private add({ table, shown }: Rows): void {
    const begin = BEGIN[table]?.[1];
    if (begin === undefined) el("seat-add").click();
    else void this.state.change(begin.map(([name, value]) => ({ key: `${table}[${shown + 1}].${name}`, value })));
  }

  /** Makes as many rows as a plan has. */
  private fit(rows: Rows, there: Set<string>): void {
    const { table, keys, box } = rows;
    let count = 0;
    while (there.has(`${table}[${count + 1}]`)) count++;
    for (; rows.shown > count; rows.shown--) {
      for (const { name } of keys) this.fields.delete(`${table}[${rows.shown}].${name}`);
      box.lastElementChild?.remove();
    }
    for (; rows.shown < count; ) {
      const at = `${table}[${++rows.shown}]`;
      const out = make("button", { type: "button", class: "plain" }, "Remove");
      out.onclick = () => void this.state.takeAway(at);
      const words = `${table.replace("body_at", "body")} ${rows.shown + (table === "body_at" ? 1 : 0)}`;
      out.setAttribute("aria-label", `Remove ${words}`);
      const fields = keys.map((k) => this.field({ ...k, key: `${at}.${k.name}`, remark: "" }));
      box.append(make("fieldset", { class: "one-of" }, make("legend", {}, words), ...fields, out));
    }
  }

  /** A thing that may be away is taken away and brought back whole. */
  private presence(table: string, words: string): HTMLElement {
    const input = make("input", { type: "checkbox", id: `there-${table}` });
    input.onchange = () => void this.state.change([{ key: table, value: input.checked ? true : null }]);
    this.switches.set(table, input);
    return make("label", { class: "tick" }, input, ` ${words} there`);
  }

  private field(key: KeyRow): HTMLElement {
    const id = `f-${key.key.replaceAll(/[.[\]]+/g, "-")}`;
    const input = this.input(key, id);
    const fault = make("p", { class: "fault", id: `${id}-fault`, hidden: true });
    const remark = key.remark === "" ? [] : [make("span", { class: "remark", id: `${id}-remark` }, key.remark)];
    input.setAttribute("aria-describedby", [`${id}-fault`, ...(key.remark === "" ? [] : [`${id}-remark`])].join(" "));
    input.onchange = () => this.changed(key, input);
    const unit = key.unit === "" ? [] : [make("span", { class: "unit" }, key.unit)];
    const words = make("label", { for: id }, key.label);
    if (input instanceof HTMLInputElement && (key.kind === "number" || key.kind === "whole")) {
      scrub(words, key, () => numberOf(this.state.planned?.values[key.key]), (to) => { input.value = String(to); }, this.trial);
    }
    const row = make("div", { class: "field" }, words, make("span", { class: "with-unit" }, input, ...unit), ...remark, fault);
    this.fields.set(key.key, { row, key, input, fault, unread: false });
    return row;
  }

  private input(key: KeyRow, id: string): HTMLInputElement | HTMLSelectElement {
    if (key.kind === "choice" || key.kind === "flag") {
      const choices = key.kind === "flag" ? ["false", "true"] : (key.choices ?? []);
      const said = (c: string) => (key.kind === "flag" ? (c === "true" ? "yes" : "no") : c);
      const none = key.needed ? [] : [make("option", { value: "" }, "–")];
      return make("select", { id }, ...none, ...choices.map((c) => make("option", { value: c }, said(c))));
    }
    const isNumber = key.kind === "number" || key.kind === "whole";
    return make("input", {
      id,
      type: "text",
      inputmode: isNumber ? (key.low < 0 ? "text" : key.kind === "whole" ? "numeric" : "decimal") : "text",
      class: isNumber ? "number" : undefined,
      title: isNumber && key.high > key.low ? `${key.low} to ${key.high}` : undefined,
    });
  }

  private changed(key: KeyRow, input: HTMLInputElement | HTMLSelectElement): void {
    const value = read(key, input.value);
    const field = this.fields.get(key.key);
    if (field !== undefined) field.unread = value === undefined;
    this.faults();
    if (value === undefined) return;
    void this.state.change([{ key: key.key, value }]);
  }

  /** Shows a plan's values: those of the text in the field, those that are taken without in grey. */
  private show(): void {
    const { planned } = this.state;
    if (planned === null) return;
    const given = new Set(planned.given);
    const there = new Set(Object.keys(planned.values).map((key) => key.slice(0, key.lastIndexOf("."))));
    for (const rows of this.rows) this.fit(rows, there);
    for (const { key, input, unread } of this.fields.values()) {
      const value = planned.values[key.key];
      const text = written(value ?? null);
      input.classList.toggle("is-taken", !given.has(key.key));
      if (input instanceof HTMLSelectElement) {
        const none = [...input.options].find((o) => o.value === "");
        if (none !== undefined) none.textContent = text === "" ? "–" : `(${flagged(text)})`;
        input.value = given.has(key.key) ? text : "";
      } else {
        if (document.activeElement !== input && !unread) input.value = given.has(key.key) ? text : "";
        input.placeholder = text;
      }
    }
    for (const [chooser, sets] of Object.entries(ONLY_WITH)) {
      const chosen = String(planned.values[chooser] ?? "");
      for (const [choices, keys] of sets) {
        for (const key of keys) this.fields.get(key)?.row.toggleAttribute("hidden", !choices.includes(chosen) && !given.has(key));
      }
    }
    for (const [table, input] of this.switches) {
      input.checked = Object.keys(planned.values).some((k) => k.startsWith(`${table}.`));
    }
  }

  private faults(): void {
    for (const { key, unread } of this.fields.values()) this.fault(key.key, unread ? "not a number" : "");
    const { faults } = this.state;
    for (const f of faults) this.place(f);
    this.box.replaceChildren(...faults.map((f) => make("p", { class: "fault" }, ...this.pointed(f))));
  }

  /** A fault in words, with a link to its field. */
  private pointed(f: Fault): (Node | string)[] {
    const field = this.fields.get(f.key);
    if (field === undefined) return [sentence(f)];
    const group = GROUPS.find(([table]) => table === field.key.table)?.[1] ?? field.key.table;
    const link = make("a", { href: `#${field.input.id}` }, `${group}, ${field.key.label}`);
    link.onclick = (event) => {
      event.preventDefault();
      field.row.closest("details")?.setAttribute("open", "");
      field.input.scrollIntoView({ block: "center" });
      field.input.focus({ preventScroll: true });
    };
    return [link, `: ${f.reason}`];
  }

  private place(f: Fault): void {
    const field = this.fields.get(f.key);
    if (field === undefined) return;
    this.fault(f.key, f.reason);
    field.row.hidden = false;
    field.row.closest("details")?.setAttribute("open", "");
  }

  private fault(key: string, words: string): void {
    const field = this.fields.get(key);
    if (field === undefined) return;
    field.fault.hidden = words === "";
    say(field.fault, words);
    if (words === "") field.input.removeAttribute("aria-invalid");
    else field.input.setAttribute("aria-invalid", "true");
  }
}

/** A fault that stands by itself. */
export function sentence(f: Fault): string {
  const where = [f.line > 0 ? `line ${f.line}` : "", f.key].filter((s) => s !== "").join(", ");
  return where === "" ? f.reason : `${where}: ${f.reason}`;
}
