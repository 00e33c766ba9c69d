// The printed sheet is light, whatever the screen is, and its pictures are drawn
// for it at once: a printer does not wait for a frame.

import { forgetInks } from "./dom";

/** Sets printing up; draw is told whether it is for paper. */
export function printing(draw: (isPaper: boolean) => void): void {
  const root = document.documentElement;
  let theme: string | undefined;
  window.addEventListener("beforeprint", () => {
    theme = root.dataset.theme;
    root.dataset.theme = "light";
    forgetInks();
    draw(true);
  });
  window.addEventListener("afterprint", () => {
    if (theme === undefined) delete root.dataset.theme;
    else root.dataset.theme = theme;
    forgetInks();
    draw(false);
  });
}
