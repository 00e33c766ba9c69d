// A handle on the map: a chair or a seat that is dragged, or moved by keys.

import type { Triple } from "./document";
import type { Follow } from "./follow";
import { flat, radius, raised } from "./slice";
import type { State } from "./state";
import type { Heat } from "./types";
import { length } from "./words";

const STEP_M = 0.05;
const LONG_STEP_M = 0.25;
/** No chair comes nearer to the body than this. */
const CLEAR_M = 0.08;

/** The map that handles are on. */
export interface Ground {
  state: State;
  follow: Follow;
  canvas: HTMLCanvasElement;
  heat: () => Heat | null;
}

export class Handle {
  private grip: { dx: number; dy: number } | null = null;

  constructor(
    readonly element: HTMLElement,
    private readonly ground: Ground,
    private readonly place: () => Triple,
    private readonly moved: (to: Triple) => void,
  ) {
    element.addEventListener("pointerdown", (event) => this.take(event));
    element.addEventListener("pointermove", (event) => {
      if (this.grip !== null) this.to(event.clientX + this.grip.dx, event.clientY + this.grip.dy);
    });
    for (const end of ["pointerup", "pointercancel"] as const) {
      element.addEventListener(end, () => {
        this.grip = null;
        delete element.dataset.drag;
      });
    }
    element.addEventListener("keydown", (event) => this.key(event));
  }

  private take(event: PointerEvent): void {
    if (event.button !== 0) return;
    const box = this.element.getBoundingClientRect();
    this.grip = { dx: box.x + box.width / 2 - event.clientX, dy: box.y + box.height / 2 - event.clientY };
    this.element.setPointerCapture(event.pointerId);
    this.element.dataset.drag = "yes";
  }

  /** Moves it to where the screen was touched. */
  to(clientX: number, clientY: number): void {
    const { state, follow, canvas } = this.ground;
    const heat = this.ground.heat();
    if (heat === null) return;
    const box = canvas.getBoundingClientRect();
    const u = heat.low_m[0] + ((clientX - box.x) / box.width) * (heat.high_m[0] - heat.low_m[0]);
    const v = heat.low_m[1] + ((box.bottom - clientY) / box.height) * (heat.high_m[1] - heat.low_m[1]);
    const at = this.place();
    const isChair = at.every((c, i) => c === state.spot[i]);
    this.move(raised([isChair && follow.view === "side" ? Math.max(u, 0.02) : u, v], at, state.spot, follow.view));
  }

  private key(event: KeyboardEvent): void {
    const step = event.shiftKey ? LONG_STEP_M : STEP_M;
    const { state, follow } = this.ground;
    const at = this.place();
    const [u, v] = flat(at, state.spot, follow.view);
    const by = (du: number, dv: number): Triple => raised([u + du, v + dv], at, state.spot, follow.view);
    const [x, y, z] = at;
    const moves: Record<string, Triple> = {
      ArrowRight: by(step, 0),
      ArrowLeft: by(-step, 0),
      ArrowUp: by(0, step),
      ArrowDown: by(0, -step),
      PageUp: [x, y, z + step],
      PageDown: [x, y, z - step],
    };
    const to = moves[event.key];
    if (to === undefined) return;
    event.preventDefault();
    this.move(to);
  }

  private move(to: Triple): void {
    this.moved(kept(to, this.ground));
  }
}

/** The nearest place that is on the map, in the room, above the floor, below the ceiling and clear of the body. */
export function kept(to: Triple, { state, follow, heat: map }: Ground): Triple {
  const { planned } = state;
  const low: Triple = [-100, -100, -100];
  const high: Triple = [100, 100, 100];
  const heat = map();
  if (heat !== null && follow.view === "above") {
    const edge = 0.02 * (heat.high_m[0] - heat.low_m[0]);
    for (const i of [0, 1] as const) {
      low[i] = heat.low_m[i] + edge;
      high[i] = heat.high_m[i] - edge;
    }
  } else if (heat !== null) {
    low[2] = heat.low_m[1] + 0.02;
    high[2] = heat.high_m[1] - 0.02;
    const most = heat.high_m[0] - 0.02;
    const d = Math.hypot(to[0], to[1]);
    if (d > most) to = [(to[0] / d) * most, (to[1] / d) * most, to[2]];
  }
  if (planned?.floor_m != null) low[2] = planned.floor_m + 0.02;
  if (planned?.ceiling_m != null) high[2] = Math.min(high[2], planned.ceiling_m - 0.02);
  if (planned?.wall_m != null) low[0] = Math.max(low[0], planned.wall_m + 0.02);
  if (planned?.room != null) {
    for (const i of [0, 1, 2] as const) {
      low[i] = Math.max(low[i], planned.room.low_m[i] + 0.05);
      high[i] = Math.min(high[i], planned.room.high_m[i] - 0.05);
    }
  }
  const spot = to.map((v, i) => Math.min(Math.max(v, low[i]!), high[i]!)) as Triple;
  const r = radius(planned, 0) / 1000 + CLEAR_M;
  const far = length(spot);
  if (far < r) {
    const k = far < 1e-6 ? 0 : r / far;
    return k === 0 ? [r, 0, Math.min(Math.max(0, low[2]), high[2])] : (spot.map((v, i) => Math.min(Math.max(v * k, low[i]!), high[i]!)) as Triple);
  }
  return spot.map((v) => Math.round(1000 * v) / 1000) as Triple;
}
