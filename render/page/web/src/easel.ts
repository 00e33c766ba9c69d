// What a picture in three dimensions is drawn on: beside the page, where it takes as long as it takes. It is
// shown once it is there, so that the page never waits for it.

import { WebGLRenderer } from "three";

/** How often it is asked whether a picture is there, ms. */
const LOOK_MS = 4;

export class Easel {
  readonly renderer: WebGLRenderer;
  /** What the newest picture took, ms; null: there is none yet. */
  takes: number | null = null;
  private readonly own = new OffscreenCanvas(1, 1);
  private readonly shown: ImageBitmapRenderingContext;
  private sync: WebGLSync | null = null;
  private isStale = false;

  /** Throws where the browser has no WebGL. Done is told when one picture is there and another was asked for meanwhile. */
  constructor(canvas: HTMLCanvasElement, private readonly done: () => void) {
    this.renderer = new WebGLRenderer({ canvas: this.own, antialias: true, alpha: true });
    this.shown = canvas.getContext("bitmaprenderer")!;
  }

  /** Draws with a function, and shows it when it is there; while another is drawn nothing is. */
  draw(width: number, height: number, render: () => void): void {
    this.isStale = this.sync !== null;
    if (this.isStale) return;
    const began = performance.now();
    this.put(width, height, render);
    const gl = this.gl;
    this.sync = gl.fenceSync(gl.SYNC_GPU_COMMANDS_COMPLETE, 0);
    gl.flush();
    const look = () => {
      if (this.sync === null) return;
      // A picture that is lost, as that of a browser that has lost its graphics, never comes.
      if (!gl.isContextLost() && gl.getSyncParameter(this.sync, gl.SYNC_STATUS) !== gl.SIGNALED) return void window.setTimeout(look, LOOK_MS);
      this.takes = performance.now() - began;
      this.show();
      if (this.isStale) this.done();
    };
    window.setTimeout(look, LOOK_MS);
  }

  /** Draws at once, whatever it takes, on a still picture: a printer does not wait. */
  copyTo(still: HTMLCanvasElement, width: number, height: number, render: () => void): void {
    this.put(width, height, render);
    [still.width, still.height] = [this.own.width, this.own.height];
    still.getContext("2d")?.drawImage(this.own, 0, 0);
  }

  private get gl(): WebGL2RenderingContext {
    return this.renderer.getContext() as WebGL2RenderingContext;
  }

  private put(width: number, height: number, render: () => void): void {
    const sharp = Math.min(window.devicePixelRatio || 1, 2);
    // To set a size, even the same, makes the canvas anew.
    if (this.renderer.getPixelRatio() !== sharp) this.renderer.setPixelRatio(sharp);
    if (this.own.width !== Math.floor(width * sharp) || this.own.height !== Math.floor(height * sharp)) this.renderer.setSize(width, height, false);
    render();
  }

  private show(): void {
    if (this.sync !== null) this.gl.deleteSync(this.sync);
    this.sync = null;
    this.shown.transferFromImageBitmap(this.own.transferToImageBitmap());
  }
}
