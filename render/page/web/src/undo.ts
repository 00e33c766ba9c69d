// Undo and redo, and the list of all that was done, from which one goes back to any step.

import { el, make, say } from "./dom";
import type { State } from "./state";

/** The list shows so many steps at a time. */
const MOST_SHOWN = 20;

export function undo(state: State): void {
  const [back, forth] = [el<HTMLButtonElement>("undo"), el<HTMLButtonElement>("redo")];
  const box = el<HTMLDetailsElement>("history");
  back.onclick = () => void state.undo();
  forth.onclick = () => void state.redo();
  const show = () => {
    const { done, undone } = state.history;
    for (const [button, words, name] of [[back, "Undo", done[0]], [forth, "Redo", undone[0]]] as const) {
      button.disabled = name === undefined;
      button.title = name === undefined ? "" : `${words}: ${name}`;
    }
    box.hidden = done.length + undone.length === 0;
    say(el("history-count"), String(done.length));
    if (box.open) list(state);
  };
  box.ontoggle = show;
  box.onkeydown = (event) => {
    if (event.key !== "Escape" || !box.open) return;
    box.open = false;
    box.querySelector("summary")?.focus();
  };
  document.addEventListener("pointerdown", (event) => {
    if (box.open && !box.contains(event.target as Node)) box.open = false;
  });
  for (const news of ["text", "plan"] as const) state.on(news, show);
  show();
}

/** Lists what was done, the newest first, with what can be done again above it. */
function list(state: State): void {
  const { done, undone } = state.history;
  const again = undone.slice(0, MOST_SHOWN).map((name, i) => step(state, name, -(i + 1), `Do again up to: ${name}`, "undone")).reverse();
  const back = done.slice(0, MOST_SHOWN).map((name, i) => step(state, name, i + 1, `Take back down to: ${name}`));
  el("history-list").replaceChildren(...again, make("li", { class: "now", "aria-current": "step" }, "as it is now"), ...back);
}

function step(state: State, name: string, count: number, words: string, of?: string): HTMLLIElement {
  const button = make("button", { type: "button", class: "plain", "aria-label": words }, name);
  button.onclick = () => void state.step(count);
  return make("li", { class: of }, button);
}
