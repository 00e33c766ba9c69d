// Buttons that look for a better place for the chair, or for the body, take it, and say what it brings.

import * as api from "./api";
import { el, say } from "./dom";
import type { State } from "./state";

export function where(state: State): void {
  const buttons = [...el("where").querySelectorAll<HTMLButtonElement>("button")];
  let under: AbortController | null = null;
  /** The text that what is said is of. */
  let told = "";
  const look = async (what: "chair" | "body") => {
    under?.abort();
    const mine = (under = new AbortController());
    await state.settle();
    say(el("where-say"), "Looking for a better place…");
    try {
      const { set, words } = await api.where(state.text, what, mine.signal);
      if (under !== mine) return;
      if (set.length > 0) await state.change(set);
      told = state.text;
      say(el("where-say"), words);
    } catch (error) {
      if (under === mine) say(el("where-say"), error instanceof Error ? `${error.message}.` : "");
    }
  };
  for (const button of buttons) button.onclick = () => void look(button.dataset.what === "body" ? "body" : "chair");
  const show = () => {
    el("where").hidden = state.seats.length > 0;
    if (told !== "" && told !== state.text) say(el("where-say"), (told = ""));
  };
  for (const news of ["text", "plan", "spot"] as const) state.on(news, show);
}
