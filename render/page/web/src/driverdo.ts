// What can be done with the driver that is picked: left out and put back, given to another channel.

import { chip } from "./chip";
import type { Change, Output, PlanAnswer, Turned } from "./document";
import { el, make } from "./dom";
import type { State } from "./state";

/** The changes that leave a driver out, or put one into a place that is empty. */
export function leftOut(planned: PlanAnswer, id: number, isOut: boolean): Change[] {
  const now = planned.empty.map((d) => d.id);
  const skip = isOut ? [...now, id].sort((a, b) => a - b) : now.filter((n) => n !== id);
  return [{ key: "mounts.skip", value: skip.length === 0 ? null : skip }, ...without(planned, isOut ? id : -1)];
}

/** The channels of a design that lays them out by hand, without a driver; nothing where the program sorts them. */
function without(planned: PlanAnswer, id: number): Change[] {
  const at = planned.plan.channels.find((c) => c.drivers.includes(id));
  if (at === undefined || !isByHand(planned)) return [];
  const left = at.drivers.filter((d) => d !== id);
  return [{ key: left.length > 0 ? `channel[${at.id}].drivers` : `channel[${at.id}]`, value: left.length > 0 ? left : null }];
}

export function isByHand(planned: PlanAnswer): boolean {
  return planned.given.some((key) => key.startsWith("channel["));
}

/** The changes that give a driver to another channel. All channels are then laid out by hand, as they are now. */
export function givenTo(planned: PlanAnswer, id: number, to: number): Change[] {
  const channels = planned.plan.channels
    .map((c) => ({ ...c, drivers: c.id === to ? [...c.drivers.filter((d) => d !== id), id].sort((a, b) => a - b) : c.drivers.filter((d) => d !== id) }))
    .filter((c) => c.drivers.length > 0);
  const set: Change[] = isByHand(planned) ? [{ key: "channel", value: null }] : [{ key: "wiring.channels", value: null }];
  for (const [i, c] of channels.entries()) {
    set.push({ key: `channel[${i + 1}].drivers`, value: c.drivers });
    if (c.gain_db !== null && c.gain_db !== 0) set.push({ key: `channel[${i + 1}].gain_db`, value: c.gain_db });
    if (c.inverted) set.push({ key: `channel[${i + 1}].invert`, value: true });
  }
  return set;
}

/** The changes that give all channels the delays and polarities that are tried. */
export function tried(planned: PlanAnswer, now: Output[], turned: Turned[]): Change[] {
  const first = Math.min(0, ...now.map((c) => c.delay_us)); // none is before its time
  const isHand = isByHand(planned);
  const set = isHand ? [] : givenTo(planned, 0, 0);
  for (const [i, c] of planned.plan.channels.entries()) {
    const own = now.find(({ id }) => id === c.id) ?? c;
    const key = `channel[${isHand ? c.id : i + 1}]`;
    set.push({ key: `${key}.delay_us`, value: Number((own.delay_us - first).toFixed(2)) });
    if (turned.some((t) => t.channel === c.id && t.reversed)) set.push({ key: `${key}.invert`, value: !c.inverted });
  }
  return set;
}

/** Whether drivers of this plan can be given to other channels: those of several bodies go with their bodies. */
export function canGive(planned: PlanAnswer): boolean {
  return (planned.others?.length ?? 0) === 0 && planned.plan.channels.length > 1;
}

export class DriverDo {
  private readonly box = el("pick-do");
  private readonly out = make("button", { type: "button", id: "pick-out", class: "plain" });
  private readonly channel = make("select", { id: "pick-channel" });
  private readonly label = make("label", { class: "inline" }, make("span", {}, "on channel"), this.channel);
  /** The number of the place that is picked, and the channel of its driver; 0: it is empty. */
  private shown = { id: 0, channel: -1 };

  constructor(private readonly state: State) {
    this.box.append(this.label, this.out);
    this.out.onclick = () => {
      const { planned } = state;
      if (planned !== null) void state.change(leftOut(planned, this.shown.id, this.shown.channel > 0));
    };
    this.channel.onchange = () => this.give(this.shown.id, Number(this.channel.value));
  }

  /** Gives a driver to a channel. */
  give(id: number, to: number): void {
    const { planned } = this.state;
    if (planned !== null && canGive(planned)) void this.state.change(givenTo(planned, id, to));
  }

  /** Offers what can be done with a place; none where id is 0. */
  show(id: number, channel: number): void {
    const { planned } = this.state;
    this.box.hidden = id === 0 || planned === null;
    if (planned === null) return;
    const isFull = channel > 0;
    this.label.hidden = !isFull || !canGive(planned);
    this.out.textContent = isFull ? "Leave it out" : "Put a driver here";
    this.out.disabled = isFull && planned.drivers.length === 1;
    const ids = planned.plan.channels.map((c) => c.id);
    if (this.channel.options.length !== ids.length) this.channel.replaceChildren(...ids.map((c) => make("option", { value: c }, String(c))));
    this.channel.value = String(channel);
    this.shown = { id, channel };
  }
}

/** A driver that is dragged: its channel's number follows the pointer, and where it is let go it has that channel. */
export class Carry {
  private chip: HTMLElement | null = null;

  constructor(private readonly canvas: HTMLCanvasElement, private readonly channelAt: (x: number, y: number) => number, private readonly give: (to: number) => void) {
    canvas.addEventListener("pointermove", (event) => this.move(event));
    canvas.addEventListener("pointerup", (event) => this.drop(event));
    canvas.addEventListener("pointercancel", () => this.away());
  }

  /** Takes a driver of a channel up. */
  take(event: PointerEvent, channel: number): void {
    this.away();
    this.canvas.setPointerCapture(event.pointerId);
    this.chip = chip(channel);
    this.chip.classList.add("carried");
    document.body.append(this.chip);
    this.move(event);
  }

  private move({ clientX, clientY }: PointerEvent): void {
    if (this.chip !== null) this.chip.style.transform = `translate(${clientX}px, ${clientY}px) translate(-50%, -50%)`;
  }

  private drop({ clientX, clientY }: PointerEvent): void {
    if (this.chip === null) return;
    this.away();
    const to = this.channelAt(clientX, clientY);
    if (to > 0) this.give(to);
  }

  private away(): void {
    this.chip?.remove();
    this.chip = null;
  }
}
