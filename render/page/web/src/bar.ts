// The bar below the map: which colour is which value.

import { css, shade } from "./colours";
import { el, ink, paper, say } from "./dom";
import { about } from "./quantity";
import type { Scale } from "./scale";
import { share, ticks } from "./scale";
import type { Quantity } from "./types";

export class Bar {
  private readonly canvas = el<HTMLCanvasElement>("bar");
  private drawn = "";

  draw(scale: Scale, quantity: Quantity): void {
    const { title, good, words } = about(quantity);
    const band = el<HTMLSelectElement>("band").selectedOptions[0]?.textContent ?? "";
    const whole = about(quantity).hasBand ? `${title}, ${band} octave` : title;
    say(el("bar-title"), `${whole}: ${good}`);
    const p = paper(this.canvas);
    if (p === null) return;
    const key = [scale.low, scale.high, scale.lowIsGood, p.width, whole, ink("--quiet")].join();
    if (key === this.drawn) return;
    this.drawn = key;
    const c = p.context;
    c.clearRect(0, 0, p.width, p.height);
    const inset = 2;
    const w = p.width - 2 * inset;
    const ramp = c.createLinearGradient(inset, 0, inset + w, 0);
    for (let i = 0; i <= 32; i++) ramp.addColorStop(i / 32, css(shade(scale.lowIsGood ? 1 - i / 32 : i / 32)));
    c.fillStyle = ramp;
    c.beginPath();
    c.roundRect(inset, 0, w, 10, 5);
    c.fill();
    c.fillStyle = ink("--quiet");
    c.font = `11.5px ${ink("--sans")}`;
    c.textBaseline = "top";
    let last = -40;
    for (const v of ticks(scale, Math.max(3, Math.floor(w / 80)))) {
      const text = words(v);
      const half = c.measureText(text).width / 2;
      const x = Math.min(Math.max(inset + w * share(scale, v), half), p.width - half);
      if (x - half < last + 10) continue;
      c.textAlign = "center";
      c.fillText(text, x, 15);
      last = x + half;
    }
    this.canvas.setAttribute("aria-label", `Colours from ${words(scale.low)}, ${scale.lowIsGood ? "light" : "dark"}, to ${words(scale.high)}, ${scale.lowIsGood ? "dark" : "light"}`);
  }
}
