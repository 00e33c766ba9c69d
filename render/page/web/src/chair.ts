// The chair on the map, the page's largest handle: it is dragged, moved by keys, or put
// where one taps.

import type { Heat, Triple } from "./document";
import { el, say } from "./dom";
import type { Follow } from "./follow";
import type { Place } from "./heat";
import { flat, radius } from "./slice";
import type { State } from "./state";
import { fixed, length } from "./words";

const STEP_M = 0.05;
const LONG_STEP_M = 0.25;
/** No chair comes nearer to the body than this. */
const CLEAR_M = 0.08;

/** How far a hand is from the middle of the chair on the screen, and how much further the tag is that would be in its way. */
const HAND_PX = 35;
const TAG_PX = 40;
const TAG_OVER_HAND_PX = 18;

export class Chair {
  private readonly chair = el("chair");
  private readonly tag = el("chair-tag");
  private readonly hands = { left: el("hand-left"), right: el("hand-right") };
  private readonly turn = document.getElementById("chair-turn");
  private hasMoved = false;
  /** Half the width of the chair's tag, for words of a length: to ask for it lays the page out. */
  private tagged = { length: 0, half: 0 };
  private grip: { dx: number; dy: number } | null = null;

  constructor(private readonly state: State, private readonly follow: Follow, private readonly canvas: HTMLCanvasElement, private readonly heat: () => Heat | null) {
    this.pointer();
    this.chair.addEventListener("keydown", (event) => this.key(event));
  }

  /** Says whether one can sit here. */
  judge(): void {
    if (this.state.planned !== null) this.chair.dataset.state = this.follow.fault === "" ? "fits" : "fault";
  }

  /** Puts the chair where it is on the map. */
  put(at: Place, wide: number, high: number): void {
    const [x, y] = at(...flat(this.state.spot, this.state.spot, this.follow.view));
    const [x0, y0] = at(0, 0);
    this.chair.style.left = `${((100 * x) / wide).toFixed(2)}%`;
    this.chair.style.top = `${((100 * y) / high).toFixed(2)}%`;
    const facing = (Math.atan2(y0 - y, x0 - x) * 180) / Math.PI - 90;
    this.turn?.setAttribute("transform", `rotate(${facing.toFixed(1)} 24 24)`);
    this.putHands([x0 - x, y0 - y], [this.chair.style.left, this.chair.style.top]);
    const { place } = this.state;
    const words = this.hasMoved && place !== null ? `${fixed(place.along_m, 2)} m along the floor` : "drag me";
    say(this.tag, words);
    if (words.length !== this.tagged.length) this.tagged = { length: words.length, half: this.tag.offsetWidth / 2 + 6 };
    const { half } = this.tagged;
    const tx = Math.min(Math.max(x, half), wide - half);
    this.tag.style.transform = `translate(${tx.toFixed(1)}px, ${(y + this.tagAt(x0 - x, y0 - y)).toFixed(1)}px) translate(-50%, -50%)`;
    this.chair.setAttribute("aria-label", `Chair, ${place?.tape ?? ""}`);
    say(el("slice-say"), this.follow.view === "above"
      ? `The map is at the ears’ height, ${(place?.high ?? "").replace("its middle", "the loudspeaker’s middle")}. L and R are the hands of who sits there and faces the loudspeaker.`
      : "The map is upright, through the middle of the body and the chair.");
  }

  /** Shows the hands of who faces the body, where it is seen from above; dx and dy lead to it on the screen. */
  private putHands([dx, dy]: [number, number], [left, top]: [string, string]): void {
    const d = Math.hypot(dx, dy) || 1;
    const isAbove = this.follow.view === "above";
    // On the screen y runs down, so that a quarter turn to the left of (dx, dy) is (dy, -dx).
    for (const [hand, sign] of [["left", 1], ["right", -1]] as const) {
      const box = this.hands[hand];
      box.hidden = !isAbove;
      Object.assign(box.style, { left, top });
      box.style.transform = `translate(-50%, -50%) translate(${((sign * HAND_PX * dy) / d).toFixed(1)}px, ${((-sign * HAND_PX * dx) / d).toFixed(1)}px)`;
    }
  }

  /** How far below the chair its tag is; it keeps off the way to the body and off the hands. */
  tagAt(dx: number, dy: number): number {
    const d = Math.hypot(dx, dy) || 1;
    const far = TAG_PX + (this.follow.view === "above" ? (TAG_OVER_HAND_PX * Math.abs(dx)) / d : 0);
    return dy < 0 ? far : -far;
  }

  private pointer(): void {
    this.chair.addEventListener("pointerdown", (event) => {
      if (event.button !== 0) return;
      const box = this.chair.getBoundingClientRect();
      this.grip = { dx: box.x + box.width / 2 - event.clientX, dy: box.y + box.height / 2 - event.clientY };
      this.chair.setPointerCapture(event.pointerId);
      this.chair.dataset.drag = "yes";
    });
    this.chair.addEventListener("pointermove", (event) => {
      if (this.grip !== null) this.to(event.clientX + this.grip.dx, event.clientY + this.grip.dy);
    });
    for (const end of ["pointerup", "pointercancel"] as const) {
      this.chair.addEventListener(end, () => {
        this.grip = null;
        delete this.chair.dataset.drag;
      });
    }
    this.canvas.addEventListener("click", (event) => this.to(event.clientX, event.clientY));
  }

  /** Puts the chair where the screen was touched. */
  private to(clientX: number, clientY: number): void {
    const heat = this.heat();
    if (heat === null) return;
    const box = this.canvas.getBoundingClientRect();
    const u = heat.low_m[0] + ((clientX - box.x) / box.width) * (heat.high_m[0] - heat.low_m[0]);
    const v = heat.low_m[1] + ((box.bottom - clientY) / box.height) * (heat.high_m[1] - heat.low_m[1]);
    const [x, y, z] = this.state.spot;
    if (this.follow.view === "above") return this.move([u, v, z]);
    const d = Math.hypot(x, y);
    const along = Math.max(u, 0.02);
    this.move(d === 0 ? [along, 0, v] : [(x / d) * along, (y / d) * along, v]);
  }

  private key(event: KeyboardEvent): void {
    const step = event.shiftKey ? LONG_STEP_M : STEP_M;
    const [x, y, z] = this.state.spot;
    const d = Math.hypot(x, y) || 1;
    const isSide = this.follow.view === "side";
    const along = (s: number): Triple => [x + (s * x) / d, y + (s * y) / d, z];
    const moves: Record<string, Triple> = {
      ArrowRight: isSide ? along(step) : [x + step, y, z],
      ArrowLeft: isSide ? along(-step) : [x - step, y, z],
      ArrowUp: isSide ? [x, y, z + step] : [x, y + step, z],
      ArrowDown: isSide ? [x, y, z - step] : [x, y - step, z],
      PageUp: [x, y, z + step],
      PageDown: [x, y, z - step],
    };
    const to = moves[event.key];
    if (to === undefined) return;
    event.preventDefault();
    this.move(to);
  }

  private move(to: Triple): void {
    this.hasMoved = true;
    this.follow.move(this.kept(to));
  }

  /** The nearest place that is on the map, in the room, above the floor, below the ceiling and clear of the body. */
  private kept(to: Triple): Triple {
    const { planned } = this.state;
    const low: Triple = [-100, -100, -100];
    const high: Triple = [100, 100, 100];
    const heat = this.heat();
    if (heat !== null && this.follow.view === "above") {
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
      return k === 0 ? [r, 0, Math.max(0, low[2])] : (spot.map((v, i) => Math.min(Math.max(v * k, low[i]!), high[i]!)) as Triple);
    }
    return spot.map((v) => Math.round(1000 * v) / 1000) as Triple;
  }
}
