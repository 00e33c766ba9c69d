// The chair on the map, the page's largest handle: it is dragged, moved by keys, or put
// where one taps.

import type { Triple } from "./document";
import { el, hide, mark, say } from "./dom";
import { Handle } from "./handle";
import type { Ground } from "./handle";
import type { Place } from "./heat";
import { flat } from "./slice";
import { fixed } from "./words";

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
  private readonly handle: Handle;

  constructor(private readonly ground: Ground) {
    const { state } = ground;
    this.handle = new Handle(this.chair, ground, () => state.spot, (to) => this.moved(to));
    for (const taken of ["focus", "pointerdown"] as const) this.chair.addEventListener(taken, () => state.pick(-1));
  }

  private moved(to: Triple): void {
    this.hasMoved = true;
    this.ground.follow.move(to);
  }

  /** Puts it where the screen was touched. */
  to(clientX: number, clientY: number): void {
    this.handle.to(clientX, clientY);
  }

  /** Says whether one can sit here. */
  judge(): void {
    const { follow, state } = this.ground;
    if (state.planned !== null) mark(this.chair, "data-state", follow.fault === "" ? "fits" : "fault");
  }

  /** Puts the chair where it is on the map. */
  put(at: Place, wide: number, high: number): void {
    const { state, follow } = this.ground;
    const isOwn = state.isChairOwn;
    for (const part of [this.chair, this.tag]) hide(part, !isOwn);
    const [x, y] = at(...flat(state.spot, state.spot, follow.view));
    const [x0, y0] = at(0, 0);
    this.chair.style.left = `${((100 * x) / wide).toFixed(2)}%`;
    this.chair.style.top = `${((100 * y) / high).toFixed(2)}%`;
    const facing = (Math.atan2(y0 - y, x0 - x) * 180) / Math.PI - 90;
    if (this.turn !== null) mark(this.turn, "transform", `rotate(${facing.toFixed(1)} 24 24)`);
    this.putHands([x0 - x, y0 - y], [this.chair.style.left, this.chair.style.top]);
    const { place } = state;
    const words = this.hasMoved && place !== null ? `${fixed(place.along_m, 2)} m along the floor` : "drag me";
    say(this.tag, words);
    if (words.length !== this.tagged.length) this.tagged = { length: words.length, half: this.tag.offsetWidth / 2 + 6 };
    const { half } = this.tagged;
    const tx = Math.min(Math.max(x, half), wide - half);
    this.tag.style.transform = `translate(${tx.toFixed(1)}px, ${(y + this.tagAt(x0 - x, y0 - y)).toFixed(1)}px) translate(-50%, -50%)`;
    mark(this.chair, "aria-label", `Chair, ${place?.tape ?? ""}`);
    say(el("slice-say"), this.slice(place?.high ?? ""));
  }

  /** What slice of the room the map is, in words. */
  private slice(high: string): string {
    const { state, follow } = this.ground;
    const who = state.isChairOwn ? "the chair" : "the middle seat";
    if (follow.view === "side") return `The map is upright, through the middle of the body and ${who}.`;
    const ears = state.isChairOwn ? "the ears’ height" : "the height of the ears at the middle seat";
    const hands = state.isChairOwn ? " L and R are the hands of who sits there and faces the loudspeaker." : "";
    return `The map is at ${ears}, ${high.replace("its middle", "the loudspeaker’s middle")}.${hands}`;
  }

  /** Shows the hands of who faces the body, where it is seen from above; dx and dy lead to it on the screen. */
  private putHands([dx, dy]: [number, number], [left, top]: [string, string]): void {
    const d = Math.hypot(dx, dy) || 1;
    const isAbove = this.ground.follow.view === "above" && !this.chair.hidden;
    // On the screen y runs down, so that a quarter turn to the left of (dx, dy) is (dy, -dx).
    for (const [hand, sign] of [["left", 1], ["right", -1]] as const) {
      const box = this.hands[hand];
      hide(box, !isAbove);
      Object.assign(box.style, { left, top });
      box.style.transform = `translate(-50%, -50%) translate(${((sign * HAND_PX * dy) / d).toFixed(1)}px, ${((-sign * HAND_PX * dx) / d).toFixed(1)}px)`;
    }
  }

  /** How far below the chair its tag is; it keeps off the way to the body and off the hands. */
  tagAt(dx: number, dy: number): number {
    const d = Math.hypot(dx, dy) || 1;
    const far = TAG_PX + (this.ground.follow.view === "above" ? (TAG_OVER_HAND_PX * Math.abs(dx)) / d : 0);
    return dy < 0 ? far : -far;
  }
}
