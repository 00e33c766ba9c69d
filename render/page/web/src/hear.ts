// Hearing the chair: every case as a loop, all in step, one of them audible. A
// change fades for 10 ms; a start fades for a second and a half, and quietly. What is
// said to be heard is what the ear gets at that instant, not what was pressed.

import * as api from "./api";
import { el, make, say } from "./dom";
import { sentence } from "./fields";
import type { State } from "./state";
import type { Named, Started, Triple } from "./document";

const COMPUTING = "Computing what the chair hears…";
const CHANGE_S = 0.01;
const BEGIN_S = 1.5;
const END_S = 0.06;
/** How often it is looked whether what was pressed is heard yet. */
const LOOK_MS = 15;

interface Loop {
  source: AudioBufferSourceNode;
  gain: GainNode;
}

export class Hear {
  private context: AudioContext | null = null;
  private master: GainNode | null = null;
  private loops = new Map<string, Loop>();
  private began = 0;
  /** The case that was pressed. */
  private case = "aligned";
  /** The case that the ear gets; empty: none. */
  private heard = "";
  private looks = 0;
  /** What is being fetched or heard: one thing at a time. */
  private under: AbortController | null = null;
  private is: "off" | "loops" | "walk" = "off";
  /** Everything that may sound. */
  private readonly sources = new Set<AudioBufferSourceNode>();
  private readonly play = el<HTMLButtonElement>("play");
  private readonly programme = el<HTMLSelectElement>("programme");
  private readonly volume = el<HTMLInputElement>("volume");

  constructor(private readonly state: State, private readonly start: Started) {
    this.programme.append(...start.programmes.map((p) => make("option", { value: p.name }, p.words)));
    const chosen = start.cases.find((c) => c.name === this.case) ?? start.cases[0];
    this.case = chosen?.name ?? "";
    el("cases").append(
      ...start.cases.map((c) =>
        make("label", { "data-case": c.name }, make("input", { type: "radio", name: "case", value: c.name, checked: c.name === this.case }), make("span", {}, c.words))),
    );
    state.on("plan", () => this.offer());
    state.on("pick", () => this.offer());
    el("cases").addEventListener("change", (event) => this.choose((event.target as HTMLInputElement).value));
    this.play.onclick = () => void (this.is === "off" ? this.begin() : this.stop());
    el("swap").onclick = () => this.swap();
    el("hear").addEventListener("keydown", (event) => {
      if (event.key.toLowerCase() !== "b" || event.ctrlKey || event.metaKey || event.altKey) return;
      if (!(event.target instanceof HTMLSelectElement)) this.swap();
    });
    this.programme.onchange = () => void this.renew();
    for (const id of ["two-ears", "dry"]) el(id).onchange = () => void this.renew();
    this.volume.oninput = () => this.loudness();
    el("walk").onclick = () => void this.walk();
    state.on("plan", () => void this.renew());
    state.on("pick", () => void this.renew());
    state.on("faults", () => {
      if (state.isBroken && this.is !== "off") this.stop();
    });
    this.loudness();
  }

  /** The cases that there are of the design. */
  private get cases(): Named[] {
    return this.start.cases.filter((c) => !c.seats || this.state.seating !== null);
  }

  /** Where the listener is: at the seat that is picked, or in the chair. */
  private get place(): Triple {
    const { seats, spot, seating, picked } = this.state;
    return [...(seating === null ? spot : (seats[picked] ?? spot))];
  }

  /** Offers what goes with seats where there are several, and whose ears are meant. */
  private offer(): void {
    const { seating, picked } = this.state;
    for (const label of el("cases").querySelectorAll("label")) label.hidden = !this.cases.some((c) => c.name === label.dataset.case);
    if (!this.cases.some((c) => c.name === this.case)) this.choose("aligned");
    const to = el<HTMLSelectElement>("walk-to");
    const was = to.value;
    const seats = seating?.each.filter((_, i) => i !== picked).map((s) => make("option", { value: `seat ${s.number}` }, `to ${s.name}`)) ?? [];
    to.replaceChildren(...seats, ...this.start.walks.map((w) => make("option", { value: w.name }, w.words)));
    if ([...to.options].some((o) => o.value === was)) to.value = was;
    const name = seating?.each[picked]?.name;
    say(el("walk-from"), name === undefined ? "walk from the chair" : `walk from ${name}`);
    say(el("hear-title"), name === undefined ? "Hear it" : `Hear it at ${name}`);
  }

  /** The way that was chosen: one that is offered, or to a seat. */
  private get way(): { way: string; to_m: Triple | null } {
    const way = el<HTMLSelectElement>("walk-to").value;
    const at = this.state.seats[Number(way.replace("seat ", "")) - 1];
    return way.startsWith("seat ") && at !== undefined ? { way: "", to_m: [...at] } : { way, to_m: null };
  }

  private say(words: string): void {
    say(el("hear-say"), words);
  }

  private choose(name: string): void {
    this.case = name;
    for (const radio of el("cases").querySelectorAll("input")) radio.checked = radio.value === name;
    if (this.context === null || !this.loops.has(name)) return; // it is heard as soon as it is there
    const now = this.context.currentTime + 0.02;
    for (const [which, { gain }] of this.loops) fade(gain, which === name ? 1 : 0, now, CHANGE_S);
    if (name !== this.heard) this.await(name, now + CHANGE_S);
  }

  /** Says that a case is heard once it is. */
  private await(name: string, at: number): void {
    window.clearTimeout(this.looks);
    const look = () => {
      if (this.context === null || !this.loops.has(name)) return;
      if (outAt(this.context) >= at) this.hears(name);
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
    if (this.master !== null && this.context !== null && this.sources.size > 0) fade(this.master, this.level(), this.context.currentTime, 0.05);
  }

  private level(): number {
    const db = Number(this.volume.value);
    return db <= Number(this.volume.min) ? 0 : 10 ** (db / 20);
  }

  private open(): { context: AudioContext; master: GainNode } {
    if (this.context === null || this.master === null) {
      this.context = new AudioContext();
      this.master = this.context.createGain();
      this.master.gain.value = 0;
      this.master.connect(this.context.destination);
    }
    void this.context.resume();
    return { context: this.context, master: this.master };
  }

  private async begin(): Promise<void> {
    this.is = "loops";
    this.shown("wait");
    await this.fetch();
  }

  /** From nothing to the chosen volume, slowly. */
  private rise(): void {
    const { context, master } = this.open();
    master.gain.cancelScheduledValues(context.currentTime);
    master.gain.setValueAtTime(0, context.currentTime);
    fade(master, this.level(), context.currentTime, BEGIN_S);
    this.shown("on");
  }

  /** Ends what is being fetched, and begins to fetch something else. */
  private fresh(): AbortController {
    this.under?.abort();
    this.under = new AbortController();
    return this.under;
  }

  /** Fetches every case anew, the chosen one first; what plays is replaced in step. */
  private async fetch(): Promise<void> {
    const { context } = this.open();
    const mine = this.fresh();
    this.say(COMPUTING);
    const wish = {
      text: this.state.planned?.text ?? this.state.text,
      spot_m: this.place,
      programme: this.programme.value,
      two_ears: el<HTMLInputElement>("two-ears").checked,
      dry: el<HTMLInputElement>("dry").checked,
    };
    const get = async (name: string) => context.decodeAudioData(await api.sound({ ...wish, case: name }, mine.signal));
    try {
      const chosen = this.case;
      const first = await get(chosen);
      if (this.under !== mine) return;
      const isFirst = this.loops.size === 0;
      this.replace(chosen, first);
      if (isFirst) this.rise();
      // What was pressed meanwhile comes next.
      const rest = this.cases.map((c) => c.name).filter((name) => name !== chosen).sort((p, q) => Number(q === this.case) - Number(p === this.case));
      void this.join(rest, get, mine);
    } catch (error) {
      if (this.under === mine) this.fail(error);
    }
  }

  /** Lets the other cases join as they come. */
  private async join(names: string[], get: (name: string) => Promise<AudioBuffer>, mine: AbortController): Promise<void> {
    try {
      for (const name of names) {
        const buffer = await get(name);
        if (this.under !== mine) return;
        this.add(name, buffer);
        if (name === this.case) this.choose(name);
      }
      if (el("hear-say").textContent === COMPUTING) this.say("");
    } catch (error) {
      if (this.under === mine) this.fail(error);
    }
  }

  /** Puts one loop in the place of all that play, at the same point of the sound. */
  private replace(name: string, buffer: AudioBuffer): void {
    const now = this.open().context.currentTime + 0.02;
    const old = [...this.loops.values()];
    if (old.length === 0) this.began = now;
    this.loops = new Map();
    this.add(name, buffer);
    const { gain } = this.loops.get(name)!;
    fade(gain, 1, now, CHANGE_S);
    this.await(name, now + CHANGE_S);
    for (const loop of old) end(loop, now);
  }

  /** Starts a loop, silent and in step with the others. */
  private add(name: string, buffer: AudioBuffer): void {
    const { context, master } = this.open();
    const now = context.currentTime + 0.02;
    const source = this.source(context, buffer);
    source.loop = true;
    const gain = context.createGain();
    gain.gain.value = 0;
    source.connect(gain).connect(master);
    source.start(now, (now - this.began) % buffer.duration);
    this.loops.set(name, { source, gain });
  }

  private async renew(): Promise<void> {
    if (this.is === "loops") await this.fetch();
  }

  /** Stops what is computed and everything that sounds. */
  private stop(): void {
    this.under?.abort();
    this.under = null;
    this.is = "off";
    this.hears("");
    if (this.context === null) return this.shown("off");
    const { context, master } = this.open();
    const now = context.currentTime;
    fade(master, 0, now, END_S);
    for (const source of this.sources) source.stop(now + END_S + 0.02);
    this.loops = new Map();
    this.shown("off");
    this.say("");
  }

  /** Says why there is no sound. What was heard before is no longer what the chair hears. */
  private fail(error: unknown): void {
    this.stop();
    this.say(error instanceof api.Faulty ? error.faults.map(sentence).join("; ") : error instanceof Error ? error.message : String(error));
  }

  private shown(is: "on" | "off" | "wait"): void {
    this.play.textContent = is === "off" ? "Play" : "Stop";
    this.play.setAttribute("aria-pressed", String(is !== "off"));
    el("hear").dataset.state = is;
  }

  /** A source that is stopped with all others. */
  private source(context: AudioContext, buffer: AudioBuffer): AudioBufferSourceNode {
    const source = context.createBufferSource();
    source.buffer = buffer;
    this.sources.add(source);
    source.addEventListener("ended", () => this.sources.delete(source));
    return source;
  }

  private async walk(): Promise<void> {
    this.stop();
    const { context, master } = this.open();
    const mine = this.fresh();
    this.is = "walk";
    this.shown("wait");
    this.say("Computing the walk…");
    const from = this.place;
    try {
      const wav = await api.walk({
        text: this.state.planned?.text ?? this.state.text, from_m: from, ...this.way,
        case: this.case, programme: this.programme.value, two_ears: el<HTMLInputElement>("two-ears").checked,
        dry: el<HTMLInputElement>("dry").checked,
      }, mine.signal);
      const buffer = await context.decodeAudioData(wav);
      if (this.under !== mine) return;
      const source = this.source(context, buffer);
      source.connect(master);
      source.addEventListener("ended", () => {
        if (this.under === mine) this.stop();
      });
      source.start();
      this.rise();
      this.say(this.state.seating === null ? "Walking from the chair." : "Walking.");
    } catch (error) {
      if (this.under === mine) this.fail(error);
    }
  }
}

/** The instant of the graph's time that comes out of the loudspeaker or the headphones now, s. */
function outAt(context: AudioContext): number {
  const { contextTime = 0, performanceTime = 0 } = context.getOutputTimestamp();
  if (contextTime > 0) return contextTime + Math.max(0, performance.now() - performanceTime) / 1000;
  return context.currentTime - (context.outputLatency || context.baseLatency || 0);
}

/** Brings a gain to another in so many seconds. */
function fade(node: GainNode, to: number, at: number, seconds: number): void {
  node.gain.cancelScheduledValues(at);
  node.gain.setValueAtTime(node.gain.value, at);
  node.gain.linearRampToValueAtTime(to, at + seconds);
}

function end({ source, gain }: Loop, at: number): void {
  fade(gain, 0, at, CHANGE_S);
  source.stop(at + CHANGE_S + 0.05);
}
