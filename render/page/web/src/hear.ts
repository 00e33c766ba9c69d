// Hearing the chair: the programme goes round, and what each channel gives at the ear is summed
// here, so that a moved chair, another case or a channel that is turned is heard at once. A start
// fades for a second and a half, and quietly. What is said to be heard is what the ear gets at
// that instant, not what was pressed.

import * as api from "./api";
import type { Desk } from "./desk";
import { el, make, rested, say } from "./dom";
import { sentence } from "./fields";
import { Levels } from "./levels";
import { outAt, Player, type Wanted } from "./player";
import type { State } from "./state";
import { programmeOf, stemsAt, type Programme, type Stems } from "./stems";
import type { Named, Started, Triple } from "./document";
import { offerWays, Walk, wayOf } from "./walking";

/** How often it is looked whether what was pressed is heard yet. */
const LOOK_MS = 15;
/** How long nothing may have happened before what may be heard is fetched, and loudness measured. */
const IDLE_MS = 300;
export class Hear {
  /** The case that was pressed. */
  private case = "aligned";
  /** The case that the ear gets; empty: none. */
  private heard = "";
  private looks = 0;
  private is: "off" | "wait" | "on" = "off";
  /** What was fetched last, and for whom. */
  private fetched: { key: string; stems: Stems } | null = null;
  private under: AbortController | null = null;
  private wants = false;
  private readonly levels = new Levels();
  private readonly player = new Player((name, at) => this.await(name, at));
  private readonly walking: Walk;
  private readonly play = el<HTMLButtonElement>("play");
  private readonly programme = el<HTMLSelectElement>("programme");
  private readonly volume = el<HTMLInputElement>("volume");
  private readonly idle = rested(IDLE_MS, () => void this.prepare());

  constructor(private readonly state: State, private readonly start: Started, private readonly desk: Desk) {
    this.walking = new Walk(state);
    this.programme.append(...start.programmes.map((p) => make("option", { value: p.name }, p.words)));
    const chosen = start.cases.find((c) => c.name === this.case) ?? start.cases[0];
    this.case = chosen?.name ?? "";
    el("cases").append(
      ...start.cases.map((c) =>
        make("label", { "data-case": c.name }, make("input", { type: "radio", name: "case", value: c.name, checked: c.name === this.case }), make("span", {}, c.words))),
    );
    for (const news of ["plan", "pick", "spot"] as const) state.on(news, () => {
      this.walking.end();
      if (news !== "spot") this.offer();
      this.renew();
    });
    desk.on(() => void this.hearNow());
    el("cases").addEventListener("change", (event) => this.choose((event.target as HTMLInputElement).value));
    this.play.onclick = () => void (this.is === "off" ? this.begin() : this.stop());
    el("swap").onclick = () => this.swap();
    el("hear").addEventListener("keydown", (event) => {
      if (event.key.toLowerCase() !== "b" || event.ctrlKey || event.metaKey || event.altKey) return;
      if (!(event.target instanceof HTMLSelectElement)) this.swap();
    });
    for (const id of ["programme", "two-ears", "dry"]) el(id).onchange = () => this.renew();
    this.volume.oninput = () => this.loudness();
    el("walk").onclick = () => void this.walk();
    state.on("faults", () => {
      if (state.isBroken && this.is !== "off") this.stop();
    });
    this.loudness();
  }

  /** The cases that there are of the design. */
  private get cases(): Named[] {
    return this.start.cases.filter((c) => !c.seats || this.state.seating !== null);
  }

  /** Where the listener sits: at the seat that is picked, or in the chair. */
  private get place(): Triple {
    const { seats, spot, seating, picked } = this.state;
    return [...(seating === null ? spot : (seats[picked] ?? spot))];
  }

  /** Offers what goes with seats where there are several, and whose ears are meant. */
  private offer(): void {
    const { seating, picked } = this.state;
    for (const label of el("cases").querySelectorAll("label")) label.hidden = !this.cases.some((c) => c.name === label.dataset.case);
    if (!this.cases.some((c) => c.name === this.case)) this.choose("aligned");
    offerWays(this.state, this.start.walks);
    const name = seating?.each[picked]?.name;
    say(el("walk-from"), name === undefined ? "walk from the chair" : `walk from ${name}`);
    say(el("hear-title"), name === undefined ? "Hear it" : `Hear it at ${name}`);
  }

  private say(words: string): void {
    say(el("hear-say"), words);
  }

  private choose(name: string): void {
    this.case = name;
    for (const radio of el("cases").querySelectorAll("input")) radio.checked = radio.value === name;
    if (this.fetched?.stems.cases[name] !== undefined) void this.hearNow();
    else this.renew();
  }

  /** Says that a case is heard once it is. */
  private await(name: string, at: number): void {
    if (name === this.heard) return;
    window.clearTimeout(this.looks);
    const look = () => {
      const { clock } = this.player;
      if (clock === null || !this.player.isOn) return;
      if (outAt(clock) >= at) this.hears(name);
      else this.looks = window.setTimeout(look, LOOK_MS);
    };
    look();
  }

  /** Marks what the ear gets. */
  private hears(name: string): void {
    const isOther = this.heard !== "" && name !== "";
    this.heard = name;
    for (const label of el("cases").querySelectorAll("label")) label.toggleAttribute("data-heard", label.dataset.case === name);
    if (isOther) this.say(`Now ${this.start.cases.find((c) => c.name === name)?.words ?? name}.`);
  }

  /** From with the delays to without, and back. */
  private swap(): void {
    const [a, b] = ["aligned", "as_built"];
    this.choose(this.case === a ? b : a);
  }

  private loudness(): void {
    const db = Number(this.volume.value);
    const words = db <= Number(this.volume.min) ? "off" : `${String(db).replace("-", "\u2212")} dB`;
    say(el("volume-say"), words);
    this.volume.setAttribute("aria-valuetext", words);
    this.player.level(this.level());
  }

  private level(): number {
    const db = Number(this.volume.value);
    return db <= Number(this.volume.min) ? 0 : 10 ** (db / 20);
  }

  /** What is to be heard now, but for the case; empty: nothing is planned. */
  private wish() {
    const text = this.state.planned?.text ?? "";
    const [two_ears, dry] = ["two-ears", "dry"].map((id) => el<HTMLInputElement>(id).checked) as [boolean, boolean];
    return { text, spot_m: this.place, at_m: this.state.ears, two_ears, dry };
  }

  /** Something else is to be heard, as soon as it is there. */
  private renew(): void {
    if (this.is === "off") return this.idle();
    this.wants = true;
    if (this.under === null) void this.fetch();
  }

  /** Fetches what is asked for, one at a time and the newest next, and has it heard. */
  private async fetch(): Promise<void> {
    const mine = new AbortController();
    this.under = mine;
    try {
      while (this.wants && this.under === mine) {
        this.wants = false;
        await this.get(mine.signal);
        if (this.under === mine) await this.hearNow();
      }
      this.idle();
    } catch (error) {
      if (this.under === mine) this.fail(error);
    } finally {
      if (this.under === mine) this.under = null;
    }
  }

  /** Has the stems of what is to be heard; those of each driver's own delay only where they are. */
  private async get(signal: AbortSignal): Promise<void> {
    const wish = this.wish();
    if (wish.text === "") return;
    const cases = this.cases.map((c) => c.name).filter((name) => name !== "per_driver" || name === this.case);
    const key = JSON.stringify([this.state.planned?.id, wish, cases]);
    if (this.fetched?.key === key) return;
    const stems = await stemsAt({ ...wish, cases }, signal);
    if (!signal.aborted) this.fetched = { key, stems };
  }

  /** Has what is there heard as it is turned now. */
  private async hearNow(): Promise<void> {
    const programme = await programmeOf(this.programme.value);
    const wanted = this.wanted(programme);
    if (this.is !== "on" || wanted === null) return;
    this.player.change(programme);
    this.player.put(wanted);
  }

  private wanted(programme: Programme): Wanted | null {
    if (this.fetched === null) return null;
    return this.levels.wanted(this.fetched.stems, this.case, this.kind(), programme, (channel) => this.desk.of(channel));
  }

  /** What is asked for but for the place and the case. */
  private kind(): string {
    const { two_ears, dry } = this.wish();
    return `${this.programme.value} ${two_ears} ${dry}`;
  }

  /** Fetches what may be heard next, and measures how loud it is. */
  private async prepare(): Promise<void> {
    if (this.under !== null || this.walking.isOn || this.state.busy) return;
    const { signal } = new AbortController();
    try {
      const programme = await programmeOf(this.programme.value);
      if (this.is === "off") await this.get(signal);
      const wish = this.wish();
      if (wish.text === "" || wish.at_m !== null) return;
      const { gains } = await api.loudness({ ...wish, programme: this.programme.value }, signal);
      if (JSON.stringify(wish) !== JSON.stringify(this.wish()) || this.fetched === null) return;
      if (this.levels.measured(this.fetched.stems, this.kind(), programme, gains)) void this.hearNow();
    } catch {
      // It is said once somebody wants to hear it.
    }
  }

  private async begin(): Promise<void> {
    this.is = "wait";
    this.shown();
    const mine = new AbortController();
    this.under?.abort();
    this.under = mine;
    try {
      const [programme] = await Promise.all([programmeOf(this.programme.value), this.get(mine.signal)]);
      const wanted = this.wanted(programme);
      if (this.under !== mine) return;
      if (wanted === null) throw new Error("There is nothing to hear yet");
      if (!(await this.player.begin(programme, wanted, this.level()))) return;
      if (this.under !== mine) return this.player.stop();
      this.under = null;
      this.is = "on";
      this.shown();
      if (this.wants) void this.fetch();
      this.idle();
    } catch (error) {
      if (this.under === mine) this.fail(error);
    }
  }

  /** Stops what is computed and everything that sounds. */
  private stop(): void {
    this.under?.abort();
    this.under = null;
    this.is = "off";
    this.wants = false;
    this.walking.end();
    this.player.stop();
    this.hears("");
    this.shown();
    this.say("");
  }

  /** Says why there is no sound. What was heard before is no longer what the chair hears. */
  private fail(error: unknown): void {
    this.stop();
    this.say(error instanceof api.Faulty ? error.faults.map(sentence).join("; ") : error instanceof Error ? error.message : String(error));
  }

  private shown(): void {
    this.play.textContent = this.is === "off" ? "Play" : "Stop";
    this.play.setAttribute("aria-pressed", String(this.is !== "off"));
    el("hear").dataset.state = this.is;
  }

  /** Walks, or is back where one sits. What plays goes on; where nothing did, it plays for so long. */
  private async walk(): Promise<void> {
    if (this.walking.isOn) {
      this.walking.end();
      return this.renew();
    }
    const wasOff = this.is === "off";
    try {
      const going = this.walking.go({ from_m: this.place, ...wayOf(this.state) }, this.state.planned?.text ?? "", () => this.hearAt());
      if (wasOff) await this.begin();
      this.say(this.state.seating === null ? "Walking from the chair." : "Walking.");
      const isThere = await going;
      if (!isThere) return;
      if (wasOff) this.stop();
      else this.renew();
      this.say(wasOff ? "" : "Back again.");
    } catch (error) {
      if (!(error instanceof DOMException && error.name === "AbortError")) this.fail(error);
    }
  }

  /** Has a place of a walk heard. */
  private async hearAt(): Promise<void> {
    if (this.is !== "on" || this.under !== null) return new Promise((then) => setTimeout(then, LOOK_MS));
    this.wants = true;
    await this.fetch();
  }
}
