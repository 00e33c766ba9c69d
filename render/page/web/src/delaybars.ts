// The bars of the channels' table: each is a delay that a hand can drag, as a trial. What it does is
// seen and heard at once, and the design stays as it is.

import { channelColour, css } from "./colours";
import type { Desk } from "./desk";
import { el, hide, make, mark } from "./dom";
import type { State } from "./state";
import { fixed, milliseconds } from "./words";

/** One press of an arrow key, and of Page Up and Page Down, µs: the desk's own step, and a tenth of a millisecond. */
const STEP_US = 10;
const LEAP_US = 100;
/** The longest bar's share of its cell, so that there is room to drag it on. */
const FULL = 0.8;
/** The bars are no finer than this, where all delays are short, µs. */
const LEAST_US = 200;

/** A channel's bar; what moves it is DelayBars. */
export function bar(id: number): HTMLElement {
  const share = make("span", { class: "share" });
  share.style.backgroundColor = css(channelColour(id));
  return make("span", { class: "delay-bar", role: "slider", tabindex: 0, "data-bar": id, "aria-label": `Delay of channel ${id}, as a trial` }, make("span", { class: "delay-before", hidden: true }), share);
}

export class DelayBars {
  private readonly body = el("channels").querySelector("tbody")!;
  /** What a cell is as wide as, µs; it stays while a bar is held. */
  private wide = LEAST_US / FULL;
  private held: { id: number; x: number; late: number; perPx: number } | null = null;

  constructor(private readonly state: State, private readonly desk: Desk) {
    this.body.addEventListener("pointerdown", (event) => this.hold(event));
    this.body.addEventListener("pointermove", (event) => {
      const { held } = this;
      if (held !== null) this.desk.late(held.id, held.late + (event.clientX - held.x) * held.perPx);
    });
    for (const end of ["pointerup", "pointercancel"] as const) this.body.addEventListener(end, () => this.release());
    this.body.addEventListener("keydown", (event) => this.key(event));
    this.body.addEventListener("dblclick", (event) => {
      const id = idOf(event);
      if (id !== 0) this.desk.late(id, 0);
    });
  }

  private hold(event: PointerEvent): void {
    const id = idOf(event);
    if (event.button !== 0 || id === 0) return;
    const slide = (event.target as HTMLElement).closest<HTMLElement>("[data-bar]")!;
    this.held = { id, x: event.clientX, late: this.desk.lateOf(id), perPx: this.wide / Math.max(slide.clientWidth, 1) };
    slide.setPointerCapture(event.pointerId);
  }

  private release(): void {
    this.held = null;
    this.draw();
  }

  private key(event: KeyboardEvent): void {
    const id = idOf(event);
    const by = { ArrowRight: STEP_US, ArrowUp: STEP_US, ArrowLeft: -STEP_US, ArrowDown: -STEP_US, PageUp: LEAP_US, PageDown: -LEAP_US }[event.key];
    if (id === 0 || event.ctrlKey || event.metaKey || event.altKey) return;
    if (by !== undefined) this.desk.late(id, this.desk.lateOf(id) + by);
    else if (event.key === "Home") this.desk.late(id, -this.planned(id));
    else if (event.key === "Escape" || event.key === "Delete") this.desk.late(id, 0);
    else return;
    event.preventDefault();
  }

  /** A channel's delay as planned, µs. */
  private planned(id: number): number {
    const { former, channels, turned } = this.state;
    return (turned.length > 0 && former !== null ? former.channels : channels).find((c) => c.id === id)?.delay_us ?? 0;
  }

  draw(): void {
    const { channels } = this.state;
    // What is asked for is shown before its figures are there.
    const all = channels.map(({ id }) => ({ id, planned: this.planned(id), now: this.planned(id) + this.desk.lateOf(id) }));
    if (this.held === null) this.wide = Math.max(LEAST_US, ...all.map((c) => Math.max(c.planned, c.now))) / FULL;
    for (const { id, planned, now } of all) {
      const slide = this.body.querySelector<HTMLElement>(`[data-bar="${id}"]`);
      if (slide === null) continue;
      const [before, share] = slide.children as unknown as [HTMLElement, HTMLElement];
      const part = (us: number) => `${Math.min(Math.max((100 * us) / this.wide, 0), 100).toFixed(1)}%`;
      share.style.inlineSize = part(now);
      before.style.insetInlineStart = part(planned);
      hide(before, Math.abs(now - planned) < 0.5);
      const [low, high] = this.desk.rangeOf(planned);
      for (const [name, value] of [["valuemin", low], ["valuemax", high], ["valuenow", now]] as const) mark(slide, `aria-${name}`, value.toFixed(0));
      const off = now - planned;
      mark(slide, "aria-valuetext", `${milliseconds(now)} ms${Math.abs(off) < 0.5 ? "" : `, ${fixed(Math.abs(off) / 1000, 2)} ms ${off > 0 ? "later" : "earlier"} than planned`}`);
    }
  }
}

/** The channel whose bar an event is of; 0: none. */
function idOf({ target }: Event): number {
  return Number((target as HTMLElement).closest<HTMLElement>("[data-bar]")?.dataset.bar ?? 0);
}
