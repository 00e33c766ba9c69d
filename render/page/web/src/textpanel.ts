// The design's panel: open and closed, and the design as text.

import { el, say } from "./dom";
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
  draft(state);
}

/** The text box. What is typed there stays until it is taken or dropped, whatever the design becomes meanwhile. */
function draft(state: State): void {
  const text = el<HTMLTextAreaElement>("text");
  let from = ""; // what the box held before somebody typed
  const show = () => {
    el("text-drop").hidden = !state.hasDraft;
    const isOld = state.hasDraft && from !== state.text;
    say(el("text-say"), !state.hasDraft ? "" : isOld ? "Not taken yet, and the design has changed meanwhile: what is taken takes the place of all of it." : "Not taken yet.");
  };
  const follow = () => {
    if (!state.hasDraft) text.value = from = state.text;
    show();
  };
  text.oninput = () => {
    state.hasDraft = text.value !== from;
    follow();
  };
  state.on("text", follow);
  el("text-drop").onclick = () => {
    state.hasDraft = false;
    follow();
    text.focus();
  };
  el("text-apply").onclick = () => {
    const taken = text.value;
    state.hasDraft = false;
    void state.replace(taken, "the file itself").then(follow);
  };
}
