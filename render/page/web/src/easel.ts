// What a picture in three dimensions is drawn on: beside the page, where it takes as long as it takes. It is
// shown once it is there, so that the page never waits for it.

import { WebGLRenderer } from "three";
import type { Camera, Scene } from "three";

/** How often it is asked whether a picture is there, ms. */
const LOOK_MS = 4;

/** What is drawn: a scene that is made ready, and then drawn by a renderer. */
export interface Subject {
  scene: Scene;
  camera: Camera;
  prepare: () => void;
  render: (renderer: WebGLRenderer) => void;
}

export class Easel {
  /** What the newest picture took, ms; null: there is none yet. */
  takes: number | null = null;
  private readonly renderer: WebGLRenderer;
  private readonly own = new OffscreenCanvas(1, 1);
  private readonly shown: ImageBitmapRenderingContext;
  private isNew = true;
  private isUnder = false;
  private isStale = false;

  /** Throws where the browser has no WebGL. Done is told when a picture is there and another was asked for meanwhile. */
  constructor(canvas: HTMLCanvasElement, private readonly done: () => void) {
    this.renderer = new WebGLRenderer({ canvas: this.own, antialias: true, alpha: true });
    this.shown = canvas.getContext("bitmaprenderer")!;
  }

  /** What is drawn has other parts now: they may have to be compiled, for which the page does not wait either. */
  renew(): void {
    this.isNew = true;
  }

  /** Draws, and shows that when it is there; while another picture is drawn it waits for that one. */
  draw(width: number, height: number, subject: Subject): void {
    this.isStale = this.isUnder;
    if (this.isUnder) return;
    this.isUnder = true;
    void this.work(width, height, subject).finally(() => {
      this.isUnder = false;
      if (this.isStale) this.done();
    });
  }

  private async work(width: number, height: number, subject: Subject): Promise<void> {
    subject.prepare();
    if (this.isNew) {
      this.isNew = false;
      await this.renderer.compileAsync(subject.scene, subject.camera);
    }
    const began = performance.now();
    this.put(width, height, subject);
    await this.there();
    this.takes = performance.now() - began;
    this.shown.transferFromImageBitmap(this.own.transferToImageBitmap());
  }

  /** Draws at once, whatever it takes, on a still picture: a printer does not wait. */
  copyTo(still: HTMLCanvasElement, width: number, height: number, subject: Subject): void {
    subject.prepare();
    this.put(width, height, subject);
    [still.width, still.height] = [this.own.width, this.own.height];
    still.getContext("2d")?.drawImage(this.own, 0, 0);
  }

  private put(width: number, height: number, { render }: Subject): void {
    const sharp = Math.min(window.devicePixelRatio || 1, 2);
    // To set a size, even the same, makes the canvas anew.
    if (this.renderer.getPixelRatio() !== sharp) this.renderer.setPixelRatio(sharp);
    if (this.own.width !== Math.floor(width * sharp) || this.own.height !== Math.floor(height * sharp)) this.renderer.setSize(width, height, false);
    render(this.renderer);
  }

  /** Waits until all that was asked for is drawn. */
  private there(): Promise<void> {
    const gl = this.renderer.getContext() as WebGL2RenderingContext;
    const sync = gl.fenceSync(gl.SYNC_GPU_COMMANDS_COMPLETE, 0);
    gl.flush();
    return new Promise((resolve) => {
      const look = () => {
        // Of a browser that has lost its graphics nothing ever comes.
        if (sync !== null && !gl.isContextLost() && gl.getSyncParameter(sync, gl.SYNC_STATUS) !== gl.SIGNALED) return void window.setTimeout(look, LOOK_MS);
        gl.deleteSync(sync);
        resolve();
      };
      window.setTimeout(look, LOOK_MS);
    });
  }
}
