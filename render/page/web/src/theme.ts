// Light or dark: what the system wants, until somebody chooses.

import { el, forgetInks } from "./dom";

const STORE = "pappus-theme";
const dark = matchMedia("(prefers-color-scheme: dark)");

function stored(): string | null {
  try {
    return localStorage.getItem(STORE);
  } catch {
    return null; // storage may be forbidden; the system's wish then holds
  }
}

function isDark(): boolean {
  const chosen = document.documentElement.dataset.theme;
  return chosen === undefined ? dark.matches : chosen === "dark";
}

/** Sets the theme up; changed is told after every change. */
export function theme(changed: () => void): void {
  const button = el<HTMLButtonElement>("theme");
  const chosen = stored();
  if (chosen === "dark" || chosen === "light") document.documentElement.dataset.theme = chosen;
  const show = () => {
    button.textContent = isDark() ? "Light" : "Dark";
    forgetInks();
    changed();
  };
  button.onclick = () => {
    const next = isDark() ? "light" : "dark";
    document.documentElement.dataset.theme = next;
    try {
      localStorage.setItem(STORE, next);
    } catch {
      // it then holds for this visit only
    }
    show();
  };
  dark.addEventListener("change", show);
  show();
}
