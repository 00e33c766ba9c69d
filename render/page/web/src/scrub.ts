// Numbers that change while their words are dragged to the right or to the left.

import type { Change, KeyRow } from "./document";
import type { Trial } from "./trial";

/** Further than this is a drag and no press. */
const DRAG_PX = 3;
/** A whole number changes by one in so many pixels, another by a step. */
const WHOLE_PX = 12;
const STEP_PX = 4;
/** A step is about so much of the number, a fine one a tenth of that. */
const STEP = 0.01;

/** How much one step is: a round share of a number, or of what it may be where it is 0. */
export function stepOf({ kind, low, high }: KeyRow, value: number): number {
  if (kind === "whole") return 1;
  const size = STEP * (Math.abs(value) || Math.min(high - low, 100));
  const ten = 10 ** Math.floor(Math.log10(size));
  return size < 2 * ten ? ten : size < 5 * ten ? 2 * ten : 5 * ten;
}

/** A number so many steps on, within what it may be, without digits that nobody chose. */
export function stepped(key: KeyRow, from: number, steps: number, step: number): number {
  const to = Math.min(Math.max(Math.round((from + steps * step) / step) * step, key.low), key.high);
  return Number(to.toFixed(Math.max(0, -Math.floor(Math.log10(step)))));
}

/** Lets the words of a field change its number; shows is told each one on the way. */
export function scrub(words: HTMLElement, key: KeyRow, value: () => number | null, shows: (to: number) => void, trial: Trial): void {
  let from: { x: number; value: number; now: number; isDrag: boolean } | null = null;
  const change = (to: number): Change[] => [{ key: key.key, value: to }];
  words.classList.add("scrub");
  words.addEventListener("pointerdown", (event) => {
    const v = value();
    if (event.button !== 0 || event.pointerType === "touch" || v === null) return;
    from = { x: event.clientX, value: v, now: v, isDrag: false };
    words.setPointerCapture(event.pointerId);
  });
  words.addEventListener("pointermove", (event) => {
    if (from === null) return;
    const px = event.clientX - from.x;
    if (!from.isDrag && Math.abs(px) < DRAG_PX) return;
    if (!from.isDrag) trial.hold();
    from.isDrag = true;
    const step = stepOf(key, from.value) * (event.shiftKey && key.kind !== "whole" ? 0.1 : 1);
    const to = stepped(key, from.value, Math.round(px / (key.kind === "whole" ? WHOLE_PX : STEP_PX)), step);
    if (to === from.now) return;
    from.now = to;
    shows(to);
    trial.try(change(to));
  });
  const end = (isTaken: boolean) => {
    if (from?.isDrag) {
      const { value: was, now } = from;
      if (!isTaken) shows(was);
      trial.letGo(isTaken && now !== was ? change(now) : []);
    }
    from = null;
  };
  words.addEventListener("pointerup", () => end(true));
  words.addEventListener("pointercancel", () => end(false));
}
