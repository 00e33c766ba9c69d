// A channel by its number and colour.

import { channelColour, colourRound, css, inkOn } from "./colours";
import { make } from "./dom";

/** A channel's number on its colour. */
export function chip(id: number): HTMLSpanElement {
  const colour = channelColour(id);
  const out = make("span", { class: "chip", "data-channel": id, "data-again": colourRound(id) > 0 }, String(id));
  out.style.backgroundColor = css(colour);
  out.style.color = inkOn(colour);
  return out;
}
