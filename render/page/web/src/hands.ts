// Handles on the picture of the body: its radius, the height of its cut, and how it is turned. What they
// try is planned while they are dragged.

import type { Change, PlanAnswer, Triple } from "./document";
import { hide, make, mark, rested, say } from "./dom";
import { plus } from "./seating";
import type { SolidView } from "./solid";
import type { State } from "./state";
import type { Trial } from "./trial";

/** A number of the design that stands at a place of the picture. */
interface Grip {
  id: string;
  words: string;
  unit: string;
  low: number;
  high: number;
  /** The number that a plan has. */
  value: (planned: PlanAnswer) => number;
  /** Where it stands for a number, in m from the body's centre. Right leads to the right across the picture. */
  at: (planned: PlanAnswer, value: number, right: Triple) => Triple;
  write: (planned: PlanAnswer, value: number) => Change[];
}

/** Keys wait so long before what they tried becomes the design. */
const REST_MS = 600;
/** A handle that a unit moves by less than this, in px, is seen end on and stays. */
const END_ON_PX = 0.02;
/** The handle of the cut stands beside the body, that of the front before it, in radii. */
const BESIDE = 1.08;
const BEFORE = 1.1;
const LONG_STEP = 10;

const GRIPS: Grip[] = [
  {
    id: "radius", words: "Radius", unit: "mm", low: 20, high: 5000,
    value: radius,
    at: (_, r, right) => scaled(right, r / 1000),
    write: (_, r) => [{ key: "body.radius_mm", value: r }],
  },
  {
    id: "cut", words: "Height of the cut", unit: "mm", low: -5000, high: 5000,
    value: (p) => cut(p) ?? -radius(p),
    at: (p, height, right) => plus(scaled(frame(p).top, height / 1000), scaled(right, (-BESIDE * radius(p)) / 1000)),
    write: (p, height) => [{ key: "body.cut_height_mm", value: height <= -radius(p) ? null : Math.min(height, radius(p) - 1) }],
  },
  {
    id: "turn", words: "Turned to the left by", unit: "°", low: -180, high: 180,
    value: (p) => number(p, "placing.yaw_deg") ?? 0,
    at: (p, yaw) => scaled(turned(frame(p).front, yaw - (number(p, "placing.yaw_deg") ?? 0)), (BEFORE * radius(p)) / 1000),
    write: (_, yaw) => [{ key: "placing.yaw_deg", value: yaw }],
  },
];

export class Hands {
  private readonly handles: { grip: Grip; element: HTMLElement }[];
  private drag: { grip: Grip; x: number; y: number; from: number; now: number; per: [number, number] } | null = null;
  private typed: { grip: Grip; now: number } | null = null;
  private readonly rest = rested(REST_MS, () => this.settle());

  constructor(private readonly state: State, private readonly trial: Trial, private readonly solid: SolidView, stage: HTMLElement) {
    this.handles = GRIPS.map((grip) => ({ grip, element: this.handle(grip) }));
    stage.append(...this.handles.map((h) => h.element));
    state.on("settle", () => this.settle());
  }

  private handle(grip: Grip): HTMLElement {
    const element = make("div", { class: "grip", id: `grip-${grip.id}`, role: "slider", tabindex: 0, "aria-label": grip.words }, make("span", { class: "grip-say", "aria-hidden": "true" }));
    element.addEventListener("pointerdown", (event) => this.take(event, grip, element));
    element.addEventListener("pointermove", (event) => this.move(event));
    element.addEventListener("pointerup", () => this.end(true));
    element.addEventListener("pointercancel", () => this.end(false));
    element.addEventListener("keydown", (event) => this.key(event, grip));
    element.addEventListener("blur", () => this.settle());
    return element;
  }

  /** Puts the handles where the body is in the picture now. Of several bodies only the first has them. */
  place(planned: PlanAnswer, isFirst: boolean): void {
    const right = this.solid.rightwards();
    for (const { grip, element } of this.handles) {
      hide(element, !isFirst);
      const value = this.drag?.grip === grip ? this.drag.now : this.typed?.grip === grip ? this.typed.now : grip.value(planned);
      const [x, y] = this.solid.project(grip.at(planned, value, right));
      element.style.transform = `translate(${x.toFixed(1)}px, ${y.toFixed(1)}px)`;
      const words = grip.id === "cut" && value <= -radius(planned) ? "whole" : `${value} ${grip.unit}`;
      mark(element, "aria-valuenow", String(value));
      mark(element, "aria-valuemin", String(grip.id === "cut" ? -radius(planned) : grip.low));
      mark(element, "aria-valuemax", String(grip.id === "cut" ? radius(planned) : grip.high));
      mark(element, "aria-valuetext", words);
      say(element.firstElementChild!, `${grip.words.toLowerCase()} ${words}`);
    }
  }

  private take(event: PointerEvent, grip: Grip, element: HTMLElement): void {
    const { planned } = this.state;
    if (event.button !== 0 || planned === null) return;
    this.settle();
    const from = grip.value(planned);
    const right = this.solid.rightwards();
    const [x0, y0] = this.solid.project(grip.at(planned, from, right));
    const [x1, y1] = this.solid.project(grip.at(planned, from + 1, right));
    this.drag = { grip, x: event.clientX, y: event.clientY, from, now: from, per: [x1 - x0, y1 - y0] };
    element.setPointerCapture(event.pointerId);
    element.dataset.drag = "yes";
    this.trial.hold();
  }

  private move(event: PointerEvent): void {
    const { drag, state: { planned } } = this;
    if (drag === null || planned === null) return;
    const [px, py] = drag.per;
    const size = Math.hypot(px, py);
    if (size < END_ON_PX) return;
    const by = ((event.clientX - drag.x) * px + (event.clientY - drag.y) * py) / size ** 2;
    this.show(drag.grip, clamped(drag.grip, drag.from + by), (now) => (drag.now = now), drag.now);
  }

  private show(grip: Grip, to: number, keep: (now: number) => void, was: number): void {
    const { planned } = this.state;
    if (to === was || planned === null) return;
    keep(to);
    this.trial.try(grip.write(planned, to));
    this.place(planned, true);
  }

  private end(isTaken: boolean): void {
    const { drag, state: { planned } } = this;
    this.drag = null;
    for (const { element } of this.handles) delete element.dataset.drag;
    if (drag !== null && planned !== null) this.trial.letGo(isTaken && drag.now !== drag.from ? drag.grip.write(planned, drag.now) : []);
  }

  private key(event: KeyboardEvent, grip: Grip): void {
    const { planned } = this.state;
    if (event.key === "Escape" && this.drag !== null) return this.end(false);
    const sign = { ArrowRight: 1, ArrowUp: 1, ArrowLeft: -1, ArrowDown: -1 }[event.key];
    if (sign === undefined || planned === null || event.ctrlKey || event.metaKey || event.altKey) return;
    event.preventDefault();
    if (this.typed === null) this.trial.hold();
    this.typed ??= { grip, now: grip.value(planned) };
    const { typed } = this;
    this.show(grip, clamped(grip, typed.now + sign * (event.shiftKey ? LONG_STEP : 1)), (now) => (typed.now = now), typed.now);
    this.rest();
  }

  /** Makes what keys have tried the design. */
  private settle(): void {
    const { typed, state: { planned } } = this;
    this.typed = null;
    if (typed !== null && planned !== null) this.trial.letGo(typed.grip.write(planned, typed.now));
  }
}

function clamped({ low, high }: Grip, value: number): number {
  return Math.min(Math.max(Math.round(value), low), high);
}

function number(planned: PlanAnswer, key: string): number | null {
  const v = planned.values[key];
  return typeof v === "number" ? v : null;
}

function radius(planned: PlanAnswer): number {
  return number(planned, "body.radius_mm") ?? 150;
}

function cut(planned: PlanAnswer): number | null {
  return planned.given.includes("body.cut_height_mm") ? number(planned, "body.cut_height_mm") : null;
}

/** Where the first body's front mark and its top point. */
function frame(planned: PlanAnswer): { front: Triple; top: Triple } {
  return planned.plan.held?.[0] ?? { front: [1, 0, 0], top: [0, 0, 1] };
}

function scaled([x, y, z]: Triple, by: number): Triple {
  return [x * by, y * by, z * by];
}

/** A direction turned to the left about the upright, by an angle in degrees. */
function turned([x, y, z]: Triple, deg: number): Triple {
  const [sin, cos] = [Math.sin((deg * Math.PI) / 180), Math.cos((deg * Math.PI) / 180)];
  return [x * cos - y * sin, x * sin + y * cos, z];
}
