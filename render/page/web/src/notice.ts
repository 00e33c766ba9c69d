// The line above the page that says what is amiss. Each part of the page has its
// own words there, and takes away no other's.

import { el, make } from "./dom";

/** Who speaks, in the order in which they are shown. */
type Speaker = "link" | "edit" | "saved" | "disk" | "files";

const said: Record<Speaker, string> = { link: "", edit: "", saved: "", disk: "", files: "" };

/** Says something for one part of the page; nothing takes its words away. */
export function notice(speaker: Speaker, words: string): void {
  if (said[speaker] === words) return;
  said[speaker] = words;
  const all = Object.values(said).filter((s) => s !== "");
  const box = el("notice");
  box.replaceChildren(...all.map((s) => make("p", {}, s)));
  box.hidden = all.length === 0;
}
