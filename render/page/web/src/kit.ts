// The parts to print: made on demand, shown together or taken apart, with what each takes.

import * as api from "./api";
import { el, framed, hide, make, mark, say } from "./dom";
import type { PartsHead, Solving } from "./document";
import { download } from "./download";
import { KitView } from "./kitview";
import type { ShownPart } from "./kitview";
import type { State } from "./state";
import { unpacked } from "./unpacked";
import { going, Waiting } from "./waiting";
import { fixed, typeset } from "./words";

/** The slider's far end is so many times as far as the picture among the files has parts. */
const FURTHEST = 2;
/** What files of parts are called. */
const KIT = "kit";

const BEFORE = "Segments, floor, vents and jigs as they are printed. To make them takes the machine up to a minute.";
const CHANGED = "The design was changed meanwhile, and its parts are others.";
const STALE = "These parts are of a former design.";

export class KitPanel {
  private readonly waiting = new Waiting(true, (news) => this.hear(news));
  private readonly canvas = el<HTMLCanvasElement>("kit-solid");
  private readonly slider = el<HTMLInputElement>("kit-apart");
  private view: KitView | null = null;
  private parts: ShownPart[] = [];
  /** Which parts are shown, and which are being made; empty: none. */
  private shown = "";
  private making = "";
  private apart = 0;
  private picked = -1;
  private over = -1;
  private readonly draw = framed(() => this.drawNow());

  constructor(private readonly state: State) {
    el("kit-make").onclick = () => this.begin();
    el("kit-stop").onclick = () => this.stop(BEFORE);
    el("kit-files").onclick = () => void this.files();
    this.slider.oninput = () => {
      mark(this.slider, "aria-valuetext", `${this.slider.value} percent apart`);
      this.draw();
    };
    this.canvas.addEventListener("pointermove", (event) => this.hover(event));
    this.canvas.addEventListener("pointerleave", () => this.point(-1));
    this.canvas.addEventListener("keydown", (event) => {
      const step = { n: 1, p: -1 }[event.key.toLowerCase()];
      if (step === undefined || this.parts.length === 0 || event.ctrlKey || event.metaKey || event.altKey) return;
      const count = this.listed.length;
      this.pick((Math.max(this.picked, step < 0 ? 0 : -1) + step + count) % count, true);
    });
    state.on("plan", () => this.take());
    this.tell(BEFORE);
  }

  /** Takes the page's colours anew. */
  recolour(): void {
    this.draw();
  }

  /** What is made or shown may be of another design now. */
  private take(): void {
    const { planned, isOther } = this.state;
    if (planned === null || isOther) return;
    if (this.making !== "" && this.making === planned.kit) this.waiting.want(planned.id);
    else if (this.making !== "") this.stop(CHANGED);
    else if (this.shown !== "") this.tell("");
  }

  /** The parts of the list: the others are some of them where they go. */
  private get listed(): ShownPart[] {
    return this.parts.filter((part) => !part.fitted);
  }

  private begin(): void {
    const { planned } = this.state;
    if (planned === null) return;
    this.making = planned.kit;
    this.fault("");
    this.tell("");
    going(el<HTMLProgressElement>("kit-bar"), el("kit-going"), { id: planned.id, done: 0, words: "" });
    this.waiting.want(planned.id);
  }

  private stop(why: string): void {
    this.making = "";
    this.waiting.leave();
    going(el<HTMLProgressElement>("kit-bar"), el("kit-going"), null);
    this.tell(why);
  }

  private hear(news: Solving): void {
    if (news.unknown === true) return void this.state.renew();
    if (news.solved === true) return void this.fetch();
    if (news.error === undefined) return going(el<HTMLProgressElement>("kit-bar"), el("kit-going"), news);
    this.stop("");
    this.fault(news.error);
  }

  private async fetch(): Promise<void> {
    const { planned } = this.state;
    this.stop("");
    if (planned === null) return;
    try {
      this.show(unpacked<PartsHead>(await api.binary("parts", { text: planned.text })));
    } catch (error) {
      this.fault(`Not shown: ${error instanceof Error ? error.message : String(error)}.`);
    }
  }

  private async files(): Promise<void> {
    const button = el<HTMLButtonElement>("kit-files");
    button.disabled = true;
    try {
      download(`pappus-${KIT}.zip`, await api.files(this.state.planned?.text ?? this.state.text, KIT));
      this.fault("");
    } catch (error) {
      this.fault(`Not made: ${error instanceof Error ? error.message : String(error)}.`);
    }
    button.disabled = false;
  }

  private fault(words: string): void {
    el("kit-fault").replaceChildren(...(words === "" ? [] : [make("p", { class: "fault" }, words)]));
  }

  /** Says how things are, and offers what can be done. */
  private tell(words: string): void {
    const isStale = this.shown !== "" && this.shown !== this.state.planned?.kit;
    el("kit").dataset.state = this.making !== "" ? "making" : this.shown === "" ? "none" : isStale ? "stale" : "made";
    say(el("kit-say"), words !== "" ? words : isStale && this.making === "" ? STALE : "");
    say(el("kit-make"), this.shown === "" ? "Make the parts" : "Make them anew");
    hide(el("kit-make"), this.making !== "" || (this.shown !== "" && !isStale));
    hide(el("kit-stop"), this.making === "");
    hide(el("kit-files"), this.making !== "" || this.shown === "" || isStale);
  }

  private show({ head, numbers }: ReturnType<typeof unpacked<PartsHead>>): void {
    this.parts = head.parts.map((part) => {
      const corners = numbers(Uint16Array, 3 * part.corners);
      const at = Float32Array.from(corners, (c, i) => part.low_m[i % 3]! + part.step_m * c);
      return { ...part, at, sides: numbers(Uint32Array, 3 * part.triangles) };
    });
    this.shown = head.kit;
    this.apart = FURTHEST * head.apart;
    this.picked = this.over = -1;
    el("kit-both").hidden = false;
    this.list();
    el("kit-words").replaceChildren(...head.say.map((text) => make("li", {}, ...coded(typeset(text)))));
    this.tell("");
    try {
      this.view ??= new KitView(this.canvas, this.draw, (part) => this.pick(part === this.picked ? -1 : part, false));
      this.view.take(this.parts);
    } catch {
      this.canvas.hidden = true;
      el("kit-none").hidden = false;
    }
    this.draw();
  }

  /** Fills the list of parts. */
  private list(): void {
    const rows = this.listed.map((part, i) => {
      const button = make("button", { type: "button", class: "plain", "aria-pressed": "false" }, part.name);
      button.onclick = () => this.pick(this.picked === i ? -1 : i, true);
      const row = make("tr", {}, make("th", { scope: "row" }, button), number(String(part.count)), number(fixed(part.mass_g, 0)), number(fixed(part.hours, 1)));
      row.onpointerenter = () => this.point(i);
      row.onpointerleave = () => this.point(-1);
      return row;
    });
    const sum = (of: (part: ShownPart) => number): number => this.listed.reduce((all, part) => all + part.count * of(part), 0);
    el("kit-parts").querySelector("tbody")!.replaceChildren(...rows);
    el("kit-parts").querySelector("tfoot")!.replaceChildren(make("tr", {}, make("th", { scope: "row" }, "All of it"),
      number(String(sum(() => 1))), number(fixed(sum((p) => p.mass_g ?? 0), 0)), number(fixed(sum((p) => p.hours ?? 0), 1))));
  }

  private hover(event: PointerEvent): void {
    if (event.buttons !== 0 || event.pointerType === "touch") return this.point(-1);
    const part = this.view?.hit(event.clientX, event.clientY) ?? -1;
    this.point(part);
    const tag = el("kit-tag");
    if (part < 0) return;
    const box = this.canvas.getBoundingClientRect();
    hide(tag, false);
    say(tag, this.parts[part]!.name);
    tag.style.transform = `translate(${event.clientX - box.x + 12}px, ${event.clientY - box.y - 26}px)`;
  }

  /** Marks the part that is pointed at; -1: none. */
  private point(part: number): void {
    if (part < 0) hide(el("kit-tag"), true);
    if (part === this.over) return;
    this.over = part;
    this.draw();
  }

  private pick(part: number, turns: boolean): void {
    if (turns) this.point(-1); // it is another that is pointed at by then, if any
    this.picked = part;
    if (turns && part >= 0) this.view?.face(part);
    this.draw();
  }

  private drawNow(): void {
    if (this.parts.length === 0) return;
    const marked = this.over >= 0 && this.parts[this.picked]?.loose !== true ? this.over : this.picked;
    const apart = (this.apart * Number(this.slider.value)) / 100;
    this.view?.draw({ apart, marked, spot: this.state.spot });
    const [named, over] = [this.parts[this.picked]?.name, this.parts[this.over]?.name];
    const part = this.listed.find((p) => p.name === named);
    say(el("kit-picked"), part === undefined ? "" : `${part.name}: ${part.count} of it, ${fixed(part.mass_g, 0)} g and ${fixed(part.hours, 1)} hours each`);
    for (const [i, row] of [...el("kit-parts").querySelectorAll("tbody tr")].entries()) {
      const { name } = this.listed[i]!;
      row.classList.toggle("picked-row", name === named || name === over);
      mark(row.querySelector("button")!, "aria-pressed", String(name === named));
    }
    mark(this.canvas, "data-apart", apart.toFixed(3));
    mark(this.canvas, "data-marked", this.parts[marked]?.name ?? "");
  }
}

/** A sentence with what stands between backticks as code. */
function coded(text: string): (Node | string)[] {
  return text.split("`").map((part, i) => (i % 2 === 1 ? make("code", {}, part) : part));
}

function number(text: string): HTMLElement {
  return make("td", { class: "number" }, text);
}
