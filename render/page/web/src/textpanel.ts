// The design's panel: open and closed, and the design as text.

import { el } from "./dom";
import type { State } from "./state";

export function textPanel(state: State): void {
  const panel = el("design");
  const button = el<HTMLButtonElement>("change");
  const show = (isOpen: boolean) => {
    panel.hidden = !isOpen;
    button.setAttribute("aria-expanded", String(isOpen));
    document.body.dataset.panel = isOpen ? "open" : "shut";
    state.tell("faults");
    if (isOpen) el("design-title").focus();
    else button.focus();
  };
  button.onclick = () => show(panel.hidden === true);
  el("design-close").onclick = () => show(false);
  panel.addEventListener("keydown", (event) => {
    if (event.key === "Escape") show(false);
  });

  const text = el<HTMLTextAreaElement>("text");
  state.on("text", () => {
    text.value = state.text;
  });
  el("text-apply").onclick = () => void state.take(text.value);
}
