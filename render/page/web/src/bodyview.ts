// The body's part of the page: what its drivers are coloured by, the legend,
// and the row of the one that was picked.

import { alone, bodies, centre, driversOf } from "./bodies";
import { chip } from "./chip";
import { channelColour, css, shade } from "./colours";
import type { RGB } from "./colours";
import { el, framed, make, say } from "./dom";
import { canGive, Carry, DriverDo } from "./driverdo";
import { Hands } from "./hands";
import { SolidView } from "./solid";
import type { State } from "./state";
import type { Trial } from "./trial";
import type { PlanAnswer, Triple } from "./document";
import type { Row } from "./types";
import { decibels, fixed, milliseconds } from "./words";

/** A picture that takes longer than this is not drawn while the chair moves: a frame is to be there by then, and where the processor draws it, it takes turns with the figures. */
const SLOW_MS = 33;

type By = "channel" | "delay" | "level";

export class BodyView {
  private by: By = "channel";
  /** The body that is shown, and which drivers it has. */
  private body = 0;
  private own: number[] = [];
  private readonly chooser = el("which-body");
  private picked = -1;
  private solid: SolidView | null = null;
  private readonly canvas = el<HTMLCanvasElement>("solid");
  private readonly select = el<HTMLSelectElement>("pick");
  private readonly held = el<HTMLSelectElement>("held");
  private readonly doing: DriverDo;
  private hands: Hands | null = null;
  private carry: Carry | null = null;
  private channels: number[] = [];
  /** Draws with the next frame. */
  readonly draw: () => void;

  constructor(private readonly state: State, private readonly trial: Trial) {
    this.doing = new DriverDo(state);
    this.draw = framed(() => this.drawNow());
    this.canvas.addEventListener("keydown", (event) => {
      const step = { n: 1, p: -1 }[event.key.toLowerCase()];
      const count = this.channels.length + (state.planned?.empty.length ?? 0);
      if (step !== undefined && count > 0) this.pick((Math.max(this.picked, step < 0 ? 0 : -1) + step + count) % count, true);
    });
    el("colour-by").addEventListener("change", (event) => {
      this.by = (event.target as HTMLInputElement).value as By;
      this.draw();
    });
    this.chooser.addEventListener("change", (event) => {
      this.choose(Number((event.target as HTMLInputElement).value));
      this.draw();
    });
    this.select.onchange = () => this.pick(this.select.selectedIndex - 1, true);
    this.held.onchange = () => void state.change([{ key: "placing.on", value: this.held.value }]);
    state.on("plan", () => this.take());
    state.on("ghost", () => this.solid?.ghost(state.former?.ofDelays ? null : (state.former?.planned ?? null)));
  }

  /** Begins with the picture: after all else is there, since it takes longest. */
  begin(): void {
    const { canvas, state, trial } = this;
    try {
      this.solid = new SolidView(canvas, this.draw, (index) => this.pick(this.ownAt(index)), (event) => this.claims(event));
      this.hands = new Hands(state, trial, this.solid, canvas.parentElement!);
      this.carry = new Carry(canvas, (x, y) => this.channelAt(x, y), (to) => this.doing.give(this.idOf(this.picked), to));
    } catch {
      canvas.hidden = true;
      el("solid-none").hidden = false;
    }
    if (state.planned !== null) this.show(state.planned);
    this.draw();
  }

  /** The place of the plan that a disc of the body shown stands for: a driver, or behind all of them one that is empty. */
  private ownAt(index: number): number {
    const past = index - this.own.length;
    return past < 0 ? (this.own[index] ?? -1) : this.channels.length + past;
  }

  /** The number of a place. */
  private idOf(index: number): number {
    const { planned } = this.state;
    return planned?.drivers[index]?.id ?? planned?.empty[index - planned.drivers.length]?.id ?? 0;
  }

  /** A driver that is picked already is carried to another channel; all else turns the body. */
  private claims(event: PointerEvent): boolean {
    const { planned } = this.state;
    const index = this.ownAt(this.solid?.hit(event.clientX, event.clientY) ?? -1);
    const channel = this.channels[index];
    if (planned === null || index < 0 || index !== this.picked || channel === undefined || !canGive(planned)) return false;
    this.carry?.take(event, channel);
    return true;
  }

  /** The channel at a place of the screen: of a number below the picture, or of another driver; 0: none. */
  private channelAt(x: number, y: number): number {
    const { channel } = document.elementFromPoint(x, y)?.closest<HTMLElement>(".chip, [data-channel]")?.dataset ?? {};
    const to = channel === undefined ? (this.channels[this.ownAt(this.solid?.hit(x, y) ?? -1)] ?? 0) : Number(channel);
    return to === this.channels[this.picked] ? 0 : to;
  }

  /** Draws in this frame, for a chair that moves; a machine that is slow at it waits until the chair rests. */
  follow(isRest: boolean): void {
    const takes = this.solid?.takes ?? null;
    if (isRest || (takes !== null && takes <= SLOW_MS)) this.drawNow();
  }

  recolour(): void {
    this.solid?.recolour();
  }

  /** Draws for the printer. */
  forPaper(): void {
    this.solid?.recolour();
    this.drawNow(el<HTMLCanvasElement>("solid-still"));
  }

  private take(): void {
    const { planned } = this.state;
    if (planned === null) return;
    this.body = Math.min(this.body, bodies(planned) - 1);
    this.show(planned);
    this.held.value = String(planned.values["placing.on"] ?? "surface");
    const places = [...planned.drivers.map((d) => [d.id, String(d.id)] as const), ...planned.empty.map((d) => [d.id, `${d.id}, empty`] as const)];
    if (this.select.options.length !== places.length + 1 || places.some(([, words], i) => this.select.options[i + 1]!.text !== words)) {
      const id = Number(this.select.value);
      this.select.replaceChildren(make("option", { value: "" }, "none"), ...places.map(([value, words]) => make("option", { value }, words)));
      this.picked = places.findIndex(([value]) => value === id);
      this.select.selectedIndex = this.picked + 1;
    }
    this.draw();
  }

  /** Shows one of the bodies. */
  private show(planned: PlanAnswer): void {
    this.own = driversOf(planned, this.body);
    this.solid?.take(alone(planned, this.body));
    const many = bodies(planned);
    this.chooser.hidden = many === 1;
    if (this.chooser.childElementCount - 1 !== many) {
      this.chooser.replaceChildren(make("legend", { class: "hidden" }, "Which body"), ...Array.from({ length: many }, (_, i) =>
        make("label", {}, make("input", { type: "radio", name: "which-body", value: i, checked: i === this.body }), make("span", {}, `Body ${i + 1}`))));
    }
    for (const radio of this.chooser.querySelectorAll("input")) radio.checked = Number(radio.value) === this.body;
  }

  private choose(body: number): void {
    if (body === this.body || this.state.planned === null) return;
    this.body = body;
    this.solid?.afresh();
    this.show(this.state.planned);
  }

  private pick(index: number, turns = false): void {
    this.picked = index;
    this.choose(this.state.planned?.drivers[index]?.body ?? this.body);
    if (turns) this.solid?.face(this.onBody(index));
    this.select.selectedIndex = index + 1;
    this.row(this.state.rows);
    document.dispatchEvent(new CustomEvent("picked", { detail: index }));
    this.draw();
  }

  private drawNow(still: HTMLCanvasElement | null = null): void {
    const rows = this.state.rows;
    this.channels = rows.map((d) => d.channel);
    if (rows.length === 0) return;
    const values = rows.map((d) => (this.by === "delay" ? d.delay_us : (d.level_db ?? Number.NaN)));
    const known = values.filter(Number.isFinite);
    const low = Math.min(...known);
    const high = Math.max(...known);
    const colour = (i: number): RGB => (this.by === "channel" ? channelColour(this.channels[i] ?? 1) : shade((values[i]! - low) / (high - low || 1)));
    const colours = this.own.map(colour);
    const labels = this.own.map((i) => (this.by === "channel" ? String(this.channels[i] ?? "") : ""));
    this.solid?.draw(this.towards(), { colours, labels, picked: this.onBody(this.picked) }, still);
    this.mark();
    if (this.state.planned !== null) this.hands?.place(this.state.planned, this.body === 0);
    this.legend(low, high);
    this.row(rows);
  }

  /** Says where on the canvas the place that is picked is: its number, and x and y in px. */
  private mark(): void {
    const { planned } = this.state;
    const d = planned?.drivers[this.picked];
    const canvas = el("solid");
    if (d === undefined || this.solid === null) delete canvas.dataset.picked;
    else canvas.dataset.picked = [d.id, ...this.solid.project(minus(d.at_mm, centre(planned!, this.body)))].join(" ");
  }

  /** Which disc of the body that is shown stands for a place of the plan; -1: none. */
  private onBody(index: number): number {
    const past = index - this.channels.length;
    return past < 0 || this.body > 0 ? this.own.indexOf(index) : this.own.length + past;
  }

  /** Where the chair is from the body that is shown. */
  private towards(): Triple {
    const { planned, spot } = this.state;
    const [x, y, z] = planned === null ? [0, 0, 0] : centre(planned, this.body);
    return [spot[0] - x, spot[1] - y, spot[2] - z];
  }

  private legend(low: number, high: number): void {
    const box = el("legend");
    const words = this.by === "delay" ? [`${fixed(low / 1000, 2)} ms`, `${fixed(high / 1000, 2)} ms`] : [`${decibels(low)} dB`, `${decibels(high)} dB`];
    const ids = this.by === "channel" ? [...new Set(this.own.map((i) => this.channels[i]!))].sort((a, b) => a - b) : [];
    const key = `${this.by} ${this.by === "channel" ? ids.join() : words.join()}`;
    if (box.dataset.shows === key) return;
    box.dataset.shows = key;
    if (this.by !== "channel") {
      const ramp = make("canvas", { width: 128, height: 1, class: "ramp", "aria-hidden": "true" });
      const c = ramp.getContext("2d");
      for (let i = 0; c !== null && i < 128; i++) {
        c.fillStyle = css(shade(i / 127));
        c.fillRect(i, 0, 1, 1);
      }
      box.replaceChildren(make("span", {}, words[0]!), ramp, make("span", {}, words[1]!));
      return;
    }
    box.replaceChildren(make("span", { class: "quiet" }, "Channel"), ...ids.map(chip));
  }

  private row(rows: Row[]): void {
    const d = rows[this.picked];
    this.doing.show(this.idOf(this.picked), d === undefined ? 0 : (this.channels[this.picked] ?? 0));
    if (d === undefined && this.picked >= rows.length) return say(el("row"), `Place ${this.idOf(this.picked)} is left empty.`);
    if (d === undefined) return say(el("row"), "Pick a driver to read its row.");
    say(el("row"), `Channel ${this.channels[this.picked]}: delay ${milliseconds(d.delay_us)} ms, ${decibels(d.level_db)} dB at the chair${wayTo(d)}.`);
  }
}

/** A place in mm, in m from another. */
function minus(at: Triple, from: Triple): Triple {
  return [at[0] / 1000 - from[0], at[1] / 1000 - from[1], at[2] / 1000 - from[2]];
}

/** The way from a driver to the chair in words; none while the chair moves. */
function wayTo({ way }: Row): string {
  if (way === null) return "";
  const round = way.path_m - way.straight_path_m;
  return way.seen ? `, ${fixed(way.straight_path_m, 3)} m straight` : `, ${fixed(way.path_m, 3)} m, ${fixed(1000 * round, 0)} mm of it round the body`;
}
