// From one visit to the next: after a reload, or a restart of the program, the page is as it
// was, with changes that are not saved, what undo leads back to, what is chosen and the designs
// that are kept beside this one.

import { el, rested } from "./dom";
import type { Compare } from "./compare";
import type { Files } from "./files";
import { keep, kept } from "./keep";
import type { Origin, State } from "./state";
import type { Started } from "./document";

const VERSION = 1;
/** What happens together is kept once. */
const REST_MS = 300;

interface Kept {
  /** Files that texts came from; the first is the design's own. */
  origins: Origin[];
  /** What undo leads back to, the oldest first, and the text that is there, last. */
  texts: { text: string; origin: number; name: string }[];
  /** What the design's own file was; see Started. */
  read: string;
  chosen: Record<string, string>;
  beside: { name: string; text: string }[];
}

const SELECTS = ["quantity", "band", "round-band"];
const RADIOS = ["view", "colour"];

export class Visit {
  private readonly later = rested(REST_MS, () => this.write());
  private isOpen = false;

  constructor(private readonly state: State, private readonly files: Files, private readonly compare: Compare, private readonly start: Started) {
    state.on("text", () => this.later());
    compare.changed = () => this.later();
    document.addEventListener("change", () => this.later());
    document.addEventListener("click", (event) => event.target instanceof HTMLButtonElement && this.later());
    window.addEventListener("pagehide", () => this.write());
  }

  /** Begins where the last visit ended, or with the file. */
  async begin(): Promise<void> {
    const { state, files, start } = this;
    const was = kept<Kept>("page", start.path, VERSION);
    this.isOpen = true;
    const now = was === null ? undefined : was.texts.at(-1);
    if (was !== null && now !== undefined && this.isWanted(was)) {
      const origins = [files.origin, ...was.origins.slice(1)];
      if (was.read !== start.read) {
        files.origin.saved = was.origins[0]?.saved ?? start.text; // the disk's news tells of the rest
        files.read = was.read;
      }
      for (const { text, origin, name } of was.texts.slice(0, -1)) state.history.push({ text, origin: origins[origin] ?? files.origin, name });
      await state.take(now.text, "begun", "design", origins[now.origin] ?? files.origin);
    } else await state.take(start.text, "begun", "design", files.origin);
    if (was !== null) await this.choose(was);
  }

  /** Changes of a file that is another now are wanted only where there are any that are not in it. */
  private isWanted({ read, texts, origins }: Kept): boolean {
    if (read === this.start.read) return true;
    const own = texts.findLast((t) => t.origin === 0);
    return texts.at(-1)?.origin !== 0 || (own !== undefined && own.text !== origins[0]?.saved && own.text !== this.start.text);
  }

  private async choose({ chosen, beside }: Kept): Promise<void> {
    for (const id of SELECTS) {
      const select = el<HTMLSelectElement>(id);
      const value = chosen[id];
      if (value === undefined || select.value === value || ![...select.options].some((o) => o.value === value)) continue;
      select.value = value;
      select.dispatchEvent(new Event("change", { bubbles: true }));
    }
    for (const name of RADIOS) {
      const radio = document.querySelector<HTMLInputElement>(`input[name="${name}"][value="${CSS.escape(chosen[name] ?? "")}"]`);
      if (radio !== null && !radio.checked) radio.click();
    }
    for (const { name, text } of beside) await this.compare.plan(name, text);
  }

  /** Keeps all, or as much of what undo leads to as there is room for. */
  private write(): void {
    if (!this.isOpen || this.state.text === "") return;
    const { state, files, compare } = this;
    const steps = [...state.history.steps, { text: state.text, origin: state.origin, name: "" }];
    const origins = [...new Set([files.origin, ...steps.map((s) => s.origin)])];
    const chosen: Record<string, string> = {};
    for (const id of SELECTS) chosen[id] = el<HTMLSelectElement>(id).value;
    for (const name of RADIOS) chosen[name] = document.querySelector<HTMLInputElement>(`input[name="${name}"]:checked`)?.value ?? "";
    const texts = steps.map((s) => ({ text: s.text, origin: origins.indexOf(s.origin), name: s.name }));
    const value: Kept = { origins, texts, read: files.read, chosen, beside: compare.texts };
    while (!keep("page", this.start.path, VERSION, value) && value.texts.length > 1) value.texts = value.texts.slice(Math.ceil(value.texts.length / 4));
  }
}

/** The design's text as it was left on the page in this browser, if the file is still the one that it was made of. */
export function leftText({ path, read, text }: Started): string {
  const was = kept<Kept>("page", path, VERSION);
  const own = was?.read === read ? was.texts.at(-1) : undefined;
  return own?.origin === 0 ? own.text : text;
}
