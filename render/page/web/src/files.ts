// Opening, saving, printing, and everything that can be taken away as a file.

import * as api from "./api";
import { el, make, say } from "./dom";
import { download } from "./download";
import { sentence } from "./fields";
import { notice } from "./notice";
import type { Origin, State } from "./state";
import type { Started } from "./document";

const MOST_BYTES = 1 << 20;
/** What is offered where the recordings are dropped. */
export const SWEEP = "sweep";

/** The file that the page was started with. */
function originOf(start: Started): Origin {
  return { name: start.path.split(/[\\/]/).at(-1) || "design.toml", canSave: start.can_save, saved: start.text };
}

/** Has a field that is being typed in tell what is in it. */
function finish(): void {
  const field = document.activeElement;
  if (!(field instanceof HTMLInputElement) || field.closest("#fields") === null) return;
  field.blur();
  field.focus();
}

/** Reads a text file that somebody picks. */
export function pickText(input: HTMLInputElement, then: (name: string, text: string) => void, refused: (words: string) => void): void {
  input.onchange = async () => {
    const file = input.files?.[0];
    input.value = "";
    if (file === undefined) return;
    if (file.size > MOST_BYTES) return refused(`${file.name} is larger than 1 MB.`);
    then(file.name, await file.text());
  };
  input.click();
}

export class Files {
  /** What the file on the disk was when it was last read or written. */
  read: string;
  /** The file that the page was started with. */
  readonly origin: Origin;
  /** The text that was saved though it cannot be planned; null: none. */
  private broken: string | null = null;

  constructor(private readonly state: State, start: Started) {
    this.read = start.read;
    this.origin = originOf(start);
    el("open").onclick = () =>
      pickText(el<HTMLInputElement>("open-file"), (name, text) => this.open(name, text), (words) => notice("files", words));
    el("save").onclick = () => void this.save();
    document.addEventListener("keydown", (event) => this.key(event));
    for (const news of ["text", "plan", "busy", "spot"] as const) state.on(news, () => this.show());
    state.on("faults", () => this.judge());
    window.addEventListener("beforeunload", (event) => {
      if (state.isUnsaved) event.preventDefault();
    });
    this.offer(start);
    this.show();
  }

  private offer(start: Started): void {
    const files = (start.files ?? []).filter((f) => f.name !== SWEEP);
    el("files").append(
      ...files.map((f) => {
        const words = f.words.slice(0, 1).toUpperCase() + f.words.slice(1);
        const button = make("button", { type: "button", "data-what": f.name, class: f.name === "plan" ? "strong" : "plain" }, f.name === "plan" ? "Everything, as a zip" : words);
        button.onclick = () => void this.fetch(button, f.name);
        return button;
      }),
      this.button("take-design", "The design", () => void this.download()),
      this.button("print", "Print this page", () => window.print()),
    );
  }

  private button(id: string, words: string, then: () => void): HTMLButtonElement {
    const button = make("button", { type: "button", id, class: "plain" }, words);
    button.onclick = then;
    return button;
  }

  /** The file is known to hold that. */
  know(read: string, text: string): void {
    this.read = read;
    this.origin.saved = text;
    notice("files", "");
    this.show();
  }

  /** Says what has become of the file; empty: it is there. */
  lost(what: string): void {
    notice("disk", what === "" ? "" : `${what.slice(0, 1).toUpperCase()}${what.slice(1)}. What is here can be downloaded.`);
  }

  private open(name: string, text: string): void {
    notice("files", "");
    void this.state.replace(text, `opened ${name}`, { name, canSave: false, saved: text });
  }

  /** Gives the design away as a file. Only where there is no other is it saved by that. */
  async download(): Promise<void> {
    await this.state.settle();
    const { text, origin } = this.state;
    download(origin.name, new Blob([text], { type: "application/toml" }));
    if (!origin.canSave) origin.saved = text;
    this.show();
  }

  private async save(): Promise<void> {
    finish();
    if (!this.state.origin.canSave) return this.download();
    await this.state.settle();
    const { text, origin } = this.state;
    try {
      this.read = await api.save(text, this.read);
      origin.saved = text;
      this.broken = text;
      notice("files", this.state.hasDraft ? "Saved, but without the text that waits to be taken in “The file itself”." : "");
      this.judge();
      this.show();
    } catch (error) {
      notice("files", `Not saved: ${error instanceof Error ? error.message : String(error)}.`);
    }
  }

  /** Says of a text that was saved whether it cannot be planned. */
  private judge(): void {
    if (this.broken === null) return;
    const [fault] = this.state.faults;
    const isBroken = fault !== undefined && this.broken === this.state.text;
    if (!isBroken && this.broken === this.state.text && this.state.planned?.text !== this.broken) return; // not known yet
    if (!isBroken) this.broken = null;
    notice("saved", isBroken ? `Saved, but it cannot be planned: ${sentence(fault)}.` : "");
  }

  private async fetch(button: HTMLButtonElement, what: string): Promise<void> {
    button.disabled = true;
    button.setAttribute("aria-busy", "true");
    try {
      const made = await api.files(this.state.planned?.text ?? this.state.text, what);
      if (this.state.isBroken) throw new Error("the design was changed meanwhile and cannot be planned");
      download(`pappus-${what}.zip`, made);
      notice("files", "");
    } catch (error) {
      notice("files", `Not made: ${error instanceof Error ? error.message : String(error)}.`);
    }
    button.disabled = false;
    button.removeAttribute("aria-busy");
  }

  private show(): void {
    const { state } = this;
    say(el("save"), state.origin.canSave ? "Save" : "Download");
    say(el("design-name"), state.planned?.plan.name ?? state.origin.name);
    document.title = `${state.planned?.plan.name ?? "Pappus"} – Pappus`;
    const states = [state.isChanged || state.spotWaits ? "changed" : "", state.busy ? "computing…" : ""];
    say(el("file-state"), states.filter((s) => s !== "").join(", "));
    document.body.dataset.busy = state.busy ? "yes" : "no";
  }

  private key(event: KeyboardEvent): void {
    if (!(event.ctrlKey || event.metaKey) || event.altKey) return;
    const isTyping = event.target instanceof HTMLTextAreaElement || (event.target instanceof HTMLInputElement && event.target.type === "text");
    const key = event.key.toLowerCase();
    if (key === "s") {
      event.preventDefault();
      void this.save();
    } else if (key === "z" && !isTyping) {
      event.preventDefault();
      void (event.shiftKey ? this.state.redo() : this.state.undo());
    } else if (key === "y" && !isTyping) {
      event.preventDefault();
      void this.state.redo();
    }
  }
}
