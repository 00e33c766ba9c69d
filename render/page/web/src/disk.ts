// The design's file on the disk: where another program, or another page, has changed it, what
// is different stands on the page, and is taken, written over or merged.

import { again } from "./again";
import * as api from "./api";
import { el, make, say } from "./dom";
import { difference, shortened } from "./linediff";
import type { Files } from "./files";
import type { State } from "./state";
import type { Conflict, OnDisk } from "./document";

/** How long to wait before a socket that is gone is opened again. */
const AGAIN_MS = 2000;

export class Disk {
  private theirs: OnDisk | null = null;
  private conflicts: Conflict[] = [];
  /** The keys of conflicts where what is on the page holds. */
  private readonly keep = new Set<string>();

  constructor(private readonly state: State, private readonly files: Files) {
    el("disk-take").onclick = () => void this.take();
    el("disk-keep").onclick = () => this.overrule();
    el("disk-away").onclick = () => void files.download();
    el("disk-merge").onclick = () => void this.merge();
    for (const news of ["text", "plan"] as const) state.on(news, () => this.judge());
    this.open();
  }

  private open(): void {
    const socket = new WebSocket(`${location.origin.replace(/^http/, "ws")}/api/watch`);
    socket.onmessage = (event) => this.hear(JSON.parse(String(event.data)) as OnDisk);
    socket.onclose = (closed) => again(closed, AGAIN_MS, () => this.open());
  }

  private hear(news: OnDisk): void {
    this.theirs = news;
    this.conflicts = [];
    this.keep.clear();
    this.judge();
  }

  /** Shows what is different, where anything is that the page does not know. */
  private judge(): void {
    const { theirs, files, state } = this;
    const isThere = theirs !== null && !theirs.gone && theirs.wrong === "";
    if (isThere && theirs.read !== files.read && theirs.text === state.text && files.origin === state.origin) this.know();
    const isNews = isThere && theirs.read !== files.read;
    el("disk").hidden = !isNews;
    document.body.dataset.disk = theirs === null ? "" : !isThere ? "gone" : isNews ? "changed" : "known";
    files.lost(theirs?.gone === true ? "the design’s file is gone from the disk" : (theirs?.wrong ?? ""));
    if (isNews) this.show(theirs);
  }

  private show({ text }: OnDisk): void {
    const mine = this.mine;
    const isMine = mine !== this.files.origin.saved;
    say(el("disk-say"), isMine
      ? "Another program has changed the file, and you have changed the design here. Red lines are yours and not in the file, green ones are in the file and not here."
      : "Another program has changed the file. Red lines were in it, green ones are in it now.");
    const lines = shortened(difference(mine, text)).map((line) => {
      if (line === null) return make("li", { class: "left-out" }, "…");
      const sign = { same: " ", gone: "−", came: "+" }[line.kind];
      const what = { same: "", gone: "not in the file: ", came: "in the file: " }[line.kind];
      return make("li", { class: line.kind }, make("span", { "aria-hidden": "true" }, sign), make("span", { class: "hidden" }, what), line.text);
    });
    el("disk-lines").replaceChildren(...lines);
    el("disk-merge").hidden = !isMine;
    el("disk-merge").textContent = this.conflicts.length > 0 ? "Merge so" : "Merge both";
    el("disk-keep").textContent = isMine ? "Keep mine" : "Keep what was";
    this.ask();
  }

  /** The design of this file as it is here, whatever else is open. */
  private get mine(): string {
    const { state, files } = this;
    return state.origin === files.origin ? state.text : (state.history.steps.findLast((s) => s.origin === files.origin)?.text ?? files.origin.saved);
  }

  /** Asks whose value holds of each key that both have set. */
  private ask(): void {
    el("disk-conflicts").replaceChildren(...this.conflicts.map(({ key, base, mine, theirs }) => {
      const choice = (isMine: boolean, who: string, value: string) => {
        const input = make("input", { type: "radio", name: `conflict ${key}`, checked: this.keep.has(key) === isMine });
        input.onchange = () => void (isMine ? this.keep.add(key) : this.keep.delete(key));
        return make("label", {}, input, make("span", {}, `${who}: ${value === "" ? "none" : value}`));
      };
      return make("fieldset", { class: "conflict" }, make("legend", {}, `${key}, which was ${base === "" ? "not there" : base}`),
        make("div", { class: "segments" }, choice(false, "in the file", theirs), choice(true, "mine", mine)));
    }));
  }

  private know(): void {
    if (this.theirs !== null) this.files.know(this.theirs.read, this.theirs.text);
  }

  private async take(): Promise<void> {
    const { theirs, files, state } = this;
    if (theirs === null) return;
    this.know();
    await state.replace(theirs.text, "taken from the disk", files.origin);
    this.end();
  }

  /** What is here holds: saving writes over the file. */
  private overrule(): void {
    this.know();
    this.judge();
    this.end();
  }

  private async merge(): Promise<void> {
    const { theirs, files, state } = this;
    if (theirs === null) return;
    const isAsked = this.conflicts.length > 0;
    try {
      const got = await api.merge({ base: files.origin.saved, mine: this.mine, theirs: theirs.text, keep: [...this.keep] });
      if (theirs !== this.theirs) return; // it has changed once more, and is shown
      this.conflicts = got.conflicts;
      if (got.conflicts.length > 0 && !isAsked) {
        this.show(theirs);
        say(el("disk-say"), "Both have set these. Choose, then merge.");
        el("disk-conflicts").querySelector("input")?.focus();
        return;
      }
      this.know();
      await state.replace(got.text, "merged with the disk", files.origin);
      this.end();
    } catch (error) {
      say(el("disk-say"), `Not merged: ${error instanceof Error ? error.message : String(error)}. Take the file or keep yours.`);
    }
  }

  /** What had the focus is away. */
  private end(): void {
    this.judge();
    el("save").focus();
  }
}
