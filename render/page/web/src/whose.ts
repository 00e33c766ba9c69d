// Whose delays a map is of, and what sound: what the builder may choose, and what the map then says of itself.

import { el, make, say } from "./dom";
import type { Follow } from "./follow";
import type { State } from "./state";
import type { Delays } from "./types";

/** A letter of the words on the map, a line of them, what is round them, and how far they stand from the map's edge, px. */
const [LETTER_PX, LINE_PX, AIR_PX, INSET_PX] = [6, 18, 8, 8];

export class Whose {
  private readonly select = el<HTMLSelectElement>("delays-of");
  private offered = "";

  constructor(private readonly state: State, private readonly follow: Follow, look: () => void) {
    this.select.onchange = () => {
      follow.delays = this.select.value as Delays;
      look();
    };
    const offer = () => {
      if (this.offer()) look();
    };
    state.on("plan", offer);
    offer();
  }

  /** What can be chosen of the design; true: what was chosen can no more. */
  private offer(): boolean {
    const { seating, isChairOwn } = this.state;
    const who = isChairOwn ? "this chair" : "the middle seat";
    const all: [Delays, string][] = seating === null
      ? [["", "This chair’s delays"], ["own", "Each place, its own delays"]]
      : [["", seating.aim === "round" ? "Delays for all round" : "Delays for all seats"], ["chair", `Delays for ${who}`], ["own", "Each place, its own delays"]];
    const key = JSON.stringify(all);
    if (key === this.offered) return false;
    this.offered = key;
    const was = this.follow.delays;
    this.select.replaceChildren(...all.map(([value, words]) => make("option", { value }, words)));
    this.follow.delays = all.some(([value]) => value === was) ? was : "";
    this.select.value = this.follow.delays;
    return this.follow.delays !== was;
  }

  /** Whose delays, and which sound, in words. */
  get words(): string {
    const { state, follow } = this;
    const whose = follow.delays === "own" ? "each place with its own best delays"
      : follow.delays === "chair" || state.seating === null ? state.isChairOwn ? "with this chair’s delays" : "with the middle seat’s delays"
      : state.seating.aim === "round" ? "with the delays for all round" : "with the delays for all seats";
    const tried = state.turned.length > 0 && follow.delays !== "own" ? ", as tried" : "";
    return `${whose}${tried}; ${this.sound}`;
  }

  private get sound(): string {
    const echoes = this.state.measures?.echoes ?? [];
    if (this.follow.quantity !== "level" || echoes.length === 0) return "the direct sound";
    return echoes.length === 1 ? `with the echo of the ${echoes[0]!.by}` : "with the room’s echoes";
  }

  /** What it takes up at most on a map that is so wide, px: two lines where one does not hold it. */
  box(wide: number): [number, number, number, number] {
    const long = LETTER_PX * this.words.length;
    const lines = Math.ceil(long / (wide - 2 * AIR_PX - 2 * INSET_PX));
    const [half, high] = [Math.min(long + 2 * AIR_PX, wide - 2 * INSET_PX) / 2, (LINE_PX * lines + AIR_PX) / 2];
    return [INSET_PX + half, INSET_PX + high, half, high];
  }

  /** Writes it on the map. */
  say(): void {
    const { words } = this;
    say(el("map-of"), `${words.slice(0, 1).toUpperCase()}${words.slice(1)}`);
  }
}
