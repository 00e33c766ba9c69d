// A design that cannot be planned: the page says why, first; what is left of the former
// plan is pale and takes no press, so that nobody builds from it; and one press mends the
// design or takes the change back. Beside it, what was mended for a change that was made.

import { el, make } from "./dom";
import { sentence } from "./fields";
import { notice } from "./notice";
import type { State } from "./state";
import { typeset } from "./words";

const MOST_FAULTS = 5;

export function stopped(state: State): void {
  const box = el("stopped");
  const cure = el<HTMLButtonElement>("cure");
  cure.onclick = () => void state.mend();
  for (const id of ["stopped-undo", "mended-undo"]) el(id).onclick = () => void state.undo();

  const show = () => {
    const { isBroken, faults } = state;
    document.body.dataset.design = isBroken ? "stopped" : "planned";
    el("shown").toggleAttribute("inert", isBroken);
    box.hidden = !isBroken;
    const [fault] = faults;
    notice("edit", isBroken || fault === undefined ? "" : `Not changed: ${sentence(fault)}.`);
    mended(state);
    if (!isBroken) return;
    const more = faults.length - MOST_FAULTS;
    el("stopped-why").replaceChildren(
      ...faults.slice(0, MOST_FAULTS).map((f) => make("li", {}, `${typeset(sentence(f))}.`)),
      ...(more > 0 ? [make("li", {}, `And ${more} more: see “Change the design”.`)] : []),
    );
    el("stopped-former").hidden = state.planned === null;
    cure.hidden = state.cure === null;
    el("stopped-undo").hidden = !state.canUndo;
    el("cure-say").replaceChildren(...(state.cure === null ? [] : lines("To mend it:", state.cure.mended)));
  };
  for (const news of ["faults", "plan", "text"] as const) state.on(news, show);
  show();
}

/** Says what was mended for the last change. */
function mended(state: State): void {
  const box = el("mended");
  box.hidden = state.mended.length === 0 || state.isBroken;
  if (!box.hidden) el("mended-say").replaceChildren(...lines("Changed along with it:", state.mended));
}

function lines(head: string, all: string[]): HTMLElement[] {
  return [make("p", {}, head), make("ul", { class: "lines" }, ...all.map((s) => make("li", {}, `${s}.`)))]; // they begin with the name of a key
}
