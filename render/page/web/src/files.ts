// Opening, saving, printing, and everything that can be taken away as a file.

import * as api from "./api";
import { el, make, say } from "./dom";
import type { State } from "./state";
import type { Start } from "./types";

const MOST_BYTES = 1 << 20;
/** What is offered where the recordings are dropped. */
export const SWEEP = "sweep";

/** Hands a file to the browser. */
export function download(name: string, what: Blob): void {
  const link = make("a", { href: URL.createObjectURL(what), download: name });
  document.body.append(link);
  link.click();
  link.remove();
  setTimeout(() => URL.revokeObjectURL(link.href), 10_000);
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
  private read: string;
  private canSave: boolean;
  private fileName: string;

  constructor(private readonly state: State, start: Start) {
    this.read = start.read;
    this.canSave = start.can_save;
    this.fileName = start.path.split(/[\\/]/).at(-1) || "design.toml";
    el("open").onclick = () =>
      pickText(el<HTMLInputElement>("open-file"), (name, text) => this.open(name, text), (words) => this.notice(words));
    el("save").onclick = () => void this.save();
    el("undo").onclick = () => void state.undo();
    el("redo").onclick = () => void state.redo();
    document.addEventListener("keydown", (event) => this.key(event));
    for (const news of ["text", "plan", "busy"] as const) state.on(news, () => this.show());
    this.offer(start);
    this.show();
  }

  private offer(start: Start): void {
    const files = (start.files ?? []).filter((f) => f.name !== SWEEP);
    el("files").append(
      ...files.map((f) => {
        const words = f.words.slice(0, 1).toUpperCase() + f.words.slice(1);
        const button = make("button", { type: "button", "data-what": f.name }, words);
        button.onclick = () => void this.fetch(button, f.name);
        return button;
      }),
      this.button("take-design", "The design", () => this.download()),
      this.button("print", "Print this page", () => window.print()),
    );
  }

  private button(id: string, words: string, then: () => void): HTMLButtonElement {
    const button = make("button", { type: "button", id }, words);
    button.onclick = then;
    return button;
  }

  private notice(words: string): void {
    const notice = el("notice");
    notice.hidden = words === "";
    say(notice, words);
  }

  private open(name: string, text: string): void {
    this.fileName = name;
    this.canSave = false; // the page writes no file but the one it was started with
    void this.state.take(text);
  }

  private download(): void {
    download(this.fileName, new Blob([this.state.text], { type: "application/toml" }));
    this.state.saved = this.state.text;
    this.show();
  }

  private async save(): Promise<void> {
    if (!this.canSave) return this.download();
    const text = this.state.text;
    try {
      this.read = await api.save(text, this.read);
      this.state.saved = text;
      this.notice("");
      this.show();
    } catch (error) {
      this.notice(`Not saved: ${error instanceof Error ? error.message : String(error)}.`);
    }
  }

  private async fetch(button: HTMLButtonElement, what: string): Promise<void> {
    button.disabled = true;
    button.setAttribute("aria-busy", "true");
    try {
      download(`pappus-${what}.zip`, await api.files(this.state.planned?.text ?? this.state.text, what));
      this.notice("");
    } catch (error) {
      this.notice(`Not made: ${error instanceof Error ? error.message : String(error)}.`);
    }
    button.disabled = false;
    button.removeAttribute("aria-busy");
  }

  private show(): void {
    const { state } = this;
    el<HTMLButtonElement>("undo").disabled = !state.canUndo;
    el<HTMLButtonElement>("redo").disabled = !state.canRedo;
    say(el("save"), this.canSave ? "Save" : "Download");
    say(el("design-name"), state.planned?.plan.name ?? "…");
    document.title = `${state.planned?.plan.name ?? "Pappus"} – Pappus`;
    const changed = state.text !== state.saved ? "changed" : "";
    say(el("file-state"), state.busy && state.planned === null ? "reckoning…" : changed);
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
