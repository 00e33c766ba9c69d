// A part of a picture that is kept while the rest of it follows the chair.

import type { Paper } from "./dom";

export class Layer {
  private readonly canvas = document.createElement("canvas");
  private of: unknown[] = [];

  /** Puts it on a picture; it is painted anew only where one of the things that it shows is another than the last time. */
  put(on: Paper, of: unknown[], paint: (p: Paper) => void): void {
    const { context } = on;
    const { width, height } = context.canvas;
    const own = this.canvas.getContext("2d");
    if (own === null) return paint(on);
    const now = [width, height, on.width, on.height, ...of];
    if (now.length !== this.of.length || now.some((v, i) => v !== this.of[i])) {
      this.of = now;
      if (this.canvas.width !== width || this.canvas.height !== height) [this.canvas.width, this.canvas.height] = [width, height];
      own.resetTransform();
      own.clearRect(0, 0, width, height);
      own.setTransform(context.getTransform());
      paint({ ...on, context: own });
    }
    context.save();
    context.resetTransform(); // point on point, so that nothing blurs
    context.drawImage(this.canvas, 0, 0);
    context.restore();
  }
}
