// What is drawn over the map: the body, the way to the chair, the front and a scale of length.

import type { PlanAnswer } from "./document";
import { ink } from "./dom";
import type { Box, Place } from "./heat";
import { nice } from "./scale";
import { reach } from "./slice";

type Point = readonly [number, number];

/** Draws the way from the body to the chair. */
export function drawWay(c: CanvasRenderingContext2D, [x0, y0]: Point, [x1, y1]: Point): void {
  c.beginPath();
  c.moveTo(x0, y0);
  c.lineTo(x1, y1);
  c.setLineDash([2, 5]);
  c.lineCap = "round";
  c.strokeStyle = "rgb(30 22 30 / 55%)";
  c.lineWidth = 4;
  c.stroke();
  c.strokeStyle = "rgb(255 250 240 / 95%)";
  c.lineWidth = 2;
  c.stroke();
  c.setLineDash([]);
}

/** Draws lines that say how far one may lean. */
export function drawLean(c: CanvasRenderingContext2D, at: Place, lines: [number, number][][]): void {
  c.setLineDash([7, 4]);
  c.lineJoin = "round";
  for (const [colour, width] of [["rgb(30 22 30 / 60%)", 3.5], ["rgb(255 250 240 / 95%)", 1.75]] as const) {
    c.strokeStyle = colour;
    c.lineWidth = width;
    for (const line of lines) {
      c.beginPath();
      for (const [u, v] of line) c.lineTo(...at(u, v));
      c.stroke();
    }
  }
  c.setLineDash([]);
}

/** Marks where the ears are of somebody who walks. */
export function drawEars(c: CanvasRenderingContext2D, [x, y]: Point): void {
  for (const [r, colour] of [[9, "#fffdf8"], [7, "#0b6a6b"], [3, "#fffdf8"]] as const) {
    c.fillStyle = colour;
    c.beginPath();
    c.arc(x, y, r, 0, 2 * Math.PI);
    c.fill();
  }
}

/** Draws a scale of length. */
export function drawMetre(c: CanvasRenderingContext2D, at: Place, h: number): void {
  const perMetre = at(1, 0)[0] - at(0, 0)[0];
  const long = nice(60 / perMetre);
  const w = long * perMetre;
  const words = `${long} m`;
  c.fillStyle = "rgb(252 247 236 / 90%)";
  c.beginPath();
  c.roundRect(10, h - 36, w + 20, 26, 6);
  c.fill();
  c.strokeStyle = "#2a2320";
  c.lineWidth = 1.25;
  c.beginPath();
  c.moveTo(20, h - 20);
  c.lineTo(20, h - 16);
  c.lineTo(20 + w, h - 16);
  c.lineTo(20 + w, h - 20);
  c.stroke();
  c.fillStyle = "#2a2320";
  c.textAlign = "center";
  c.textBaseline = "alphabetic";
  c.fillText(words, 20 + w / 2, h - 21);
}

/** A front mark that points more steeply up or down than this is on no side, seen from above. */
const LEVEL = 0.3;

/** Says which way is forward, seen from above, and where the front mark of a body that is turned is. Returns what the words take up. */
export function drawFront(c: CanvasRenderingContext2D, at: Place, planned: PlanAnswer): Box[] {
  const held = planned.plan.held?.[0];
  if (held === undefined) return [drawArrow(c, at, planned, [1, 0], "front")];
  const [x, y] = held.front;
  const out = [drawArrow(c, at, planned, [1, 0], "forward")];
  if (Math.hypot(x, y) > LEVEL && x < Math.hypot(x, y) * (1 - 1e-3)) out.push(drawArrow(c, at, planned, [x, y], "front mark"));
  return out;
}

/** Draws an arrow from the first body in a direction along the floor, with a word at its tip. Returns what the word takes up. */
function drawArrow(c: CanvasRenderingContext2D, at: Place, planned: PlanAnswer, [u, v]: Point, word: string): Box {
  const d = Math.hypot(u, v);
  const far = reach(planned, [u / d, v / d, 0]);
  const [x0, y0] = at((u / d) * far, (v / d) * far);
  const [dx, dy] = [u / d, -v / d];
  const place = (along: number, aside: number): Point => [x0 + along * dx - aside * dy, y0 + along * dy + aside * dx];
  c.beginPath();
  c.moveTo(...place(5, 0));
  c.lineTo(...place(20, 0));
  c.moveTo(...place(15, -4));
  c.lineTo(...place(20, 0));
  c.lineTo(...place(15, 4));
  for (const [width, ink] of [[4.5, "rgb(30 22 30 / 60%)"], [2, "rgb(255 250 240 / 97%)"]] as const) {
    c.lineWidth = width;
    c.strokeStyle = ink;
    c.stroke();
  }
  c.font = `600 11.5px ${ink("--sans")}`;
  c.textAlign = dx < -LEVEL ? "right" : dx > LEVEL ? "left" : "center";
  c.textBaseline = "middle";
  const [tx, ty] = place(Math.abs(dx) > LEVEL ? 25 : 30, 0);
  c.lineWidth = 3.5;
  c.strokeStyle = "rgb(30 22 30 / 65%)";
  c.strokeText(word, tx, ty);
  c.fillStyle = "rgb(255 250 240)";
  c.fillText(word, tx, ty);
  return [tx + (dx < -LEVEL ? -5 : dx > LEVEL ? 5 : 0), ty, 34, 10];
}
