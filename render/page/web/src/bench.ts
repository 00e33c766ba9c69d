// At the bench: one channel, one step at a time, for a phone that is held over the work.

import * as api from "./api";
import { el, make, say } from "./dom";
import { inside, count } from "./inside";
import { phone } from "./phone";
import { sheets } from "./benchpaper";
import { between, isDone, stepsOf, type Step } from "./steps";
import { theme } from "./theme";
import { Kept } from "./ticks";
import { leftText } from "./visit";
import type { BenchAnswer, BenchChannel } from "./document";
import { fixed } from "./words";

/** How often it is looked what others ticked: somebody who looks up from one screen to the other sees it there. */
const LOOK_MS = 2000;
const STOPPED = "The program does not answer: start it again, then load this page anew.";

class Bench {
  private steps: Step[] = [];
  private channel: BenchChannel;
  private at = 0;
  /** What the design's file was when this was opened. */
  private readonly read: string;

  constructor(private readonly bench: BenchAnswer, private readonly kept: Kept) {
    this.channel = bench.channels[0]!;
    this.read = kept.read;
    const which = el<HTMLSelectElement>("channel");
    which.onchange = () => this.open(Number(which.value), true);
    el("before").onclick = () => this.go(this.at - 1);
    el("after").onclick = () => this.go(this.at + 1);
    el("tick").onclick = () => void this.tick();
    el("print").onclick = () => window.print();
    document.addEventListener("keydown", (event) => this.key(event));
    say(el("name"), bench.name);
    say(el("seen-from"), bench.halves
      ? "Seen from inside: the upper half from below, so that its left is at your right; the lower half from above. The front mark is up."
      : "Seen from inside, from below: the front mark is up, and the loudspeaker’s left is at your right.");
    el("mind").replaceChildren(...bench.say.map((s) => make("li", {}, s)));
    say(el("kept"), kept.file === "" ? "Ticks are kept in this browser." : `Ticks are kept in ${kept.file}, beside the design.`);
    const asked = new URLSearchParams(location.search).get("channel");
    const first = bench.channels.findIndex((c) => String(c.channel) === asked);
    const open = bench.channels.findIndex((c) => count(stepsOf(c), kept.ticks) < stepsOf(c).length);
    this.open(first >= 0 ? first : Math.max(open, 0), false);
    window.setInterval(() => void this.look(), LOOK_MS);
    document.addEventListener("visibilitychange", () => void this.look());
  }

  /** Shows what was ticked elsewhere, and tells when the design is another. */
  private async look(): Promise<void> {
    if (document.hidden) return;
    try {
      if (await this.kept.look()) this.show();
      if (this.kept.read !== this.read) complain("The design’s file has changed since: load this page anew, or you solder what was planned before.");
      else if (el("notice").textContent === STOPPED) complain("");
    } catch (error) {
      complain(wrong(error));
    }
  }

  /** Opens a channel at its first step that is not done. */
  private open(index: number, isAsked: boolean): void {
    this.channel = this.bench.channels[index]!;
    this.steps = stepsOf(this.channel);
    const first = this.steps.findIndex((s) => !isDone(s, this.kept.ticks));
    if (isAsked) history.replaceState(null, "", `?channel=${this.channel.channel}`);
    this.go(first < 0 ? this.steps.length - 1 : first);
  }

  private go(to: number): void {
    this.at = Math.min(Math.max(to, 0), this.steps.length - 1);
    this.show();
  }

  private async tick(): Promise<void> {
    const step = this.steps[this.at]!;
    const done = !isDone(step, this.kept.ticks);
    const put = this.kept.put(step, done);
    if (done && this.at < this.steps.length - 1) this.at++;
    this.show();
    try {
      await put;
      complain("");
      this.show();
    } catch (error) {
      complain(`Not kept: ${error instanceof Error ? error.message : String(error)}.`);
      await this.kept.look().catch(() => undefined);
      this.show();
    }
  }

  private key(event: KeyboardEvent): void {
    if (event.ctrlKey || event.metaKey || event.altKey || event.target instanceof HTMLSelectElement) return;
    if (event.key === "ArrowLeft") this.go(this.at - 1);
    else if (event.key === "ArrowRight") this.go(this.at + 1);
  }

  private show(): void {
    const { steps, at, kept, channel, bench } = this;
    const step = steps[at]!;
    const done = isDone(step, kept.ticks);
    channels(bench, channel, kept);
    el("discs").dataset.halves = bench.halves ? "yes" : "no";
    el("discs").replaceChildren(...inside(bench, channel, kept.ticks, step));
    const all = count(steps, kept.ticks);
    say(el("done"), all === steps.length ? "All done on this channel." : `${all} of ${steps.length} steps done`);
    say(el("now-where"), `String ${step.string + 1} of ${channel.strings.length}, step ${at + 1} of ${steps.length}`);
    say(el("now-title"), step.title);
    say(el("now-more"), step.reading === null ? step.more : `${between(step.reading)}. ${step.more}`.replace(/^g/, "G"));
    el("now-reading").hidden = step.reading === null;
    if (step.reading !== null) say(el("now-reading"), `${fixed(step.reading.ohm, 1)} Ω`);
    const tick = el<HTMLButtonElement>("tick");
    tick.setAttribute("aria-pressed", String(done));
    say(tick, done ? "Done ✓" : step.reading === null ? "Soldered" : "Reads well");
    el<HTMLButtonElement>("before").disabled = at === 0;
    el<HTMLButtonElement>("after").disabled = at === steps.length - 1;
    this.list();
    sheets(bench, kept.ticks);
    document.body.dataset.step = String(at);
    document.body.dataset.ready = "yes";
  }

  private list(): void {
    el("steps").replaceChildren(...this.steps.map((s, i) => {
      const words = s.reading === null ? s.title : `${s.title}: ${fixed(s.reading.ohm, 1)} Ω`;
      const button = make("button", { type: "button", "aria-current": i === this.at ? "step" : undefined },
        make("span", { "aria-hidden": "true" }, isDone(s, this.kept.ticks) ? "✓" : "○"), make("span", {}, words),
        make("span", { class: "hidden" }, isDone(s, this.kept.ticks) ? "done" : "to do"));
      button.onclick = () => this.go(i);
      return make("li", {}, button);
    }));
  }
}

/** The channels, and how far each is. */
function channels(bench: BenchAnswer, now: BenchChannel, kept: Kept): void {
  el("channel").replaceChildren(...bench.channels.map((c, i) => {
    const steps = stepsOf(c);
    const left = steps.length - count(steps, kept.ticks);
    const drivers = c.strings.reduce((sum, s) => sum + s.drivers.length, 0);
    return make("option", { value: i, selected: c === now }, `${c.channel}: ${drivers === 1 ? "1 driver" : `${drivers} drivers`}${left === 0 ? ", done ✓" : ""}`);
  }));
}

/** What went wrong, in words. */
function wrong(error: unknown): string {
  return error instanceof api.Gone ? STOPPED : `${error instanceof Error ? error.message : String(error)}.`.replace(/^[a-z]/, (c) => c.toUpperCase());
}

function complain(words: string): void {
  const box = el("notice");
  say(box, words);
  box.hidden = words === "";
}

async function run(): Promise<void> {
  theme(() => undefined);
  try {
    const how = await api.phone();
    phone(how);
    if (how.on_phone) await held();
    else await beside();
  } catch (error) {
    complain(wrong(error));
  }
}

/** On the computer: the design as it was left on the page. */
async function beside(): Promise<void> {
  const start = await api.start();
  const kept = new Kept(start.path);
  await kept.look();
  const text = leftText(start);
  new Bench(await api.bench(text), kept);
  if (text !== start.text) complain("This is the design as it is on the page, with changes that are not saved.");
}

/** On a phone: the design as it is saved. The cookie has the address's secret now, so that nobody reads it off the screen. */
async function held(): Promise<void> {
  history.replaceState(null, "", `bench${location.search}`);
  const kept = new Kept("");
  await kept.look();
  new Bench(await api.bench(null), kept);
}

void run();
