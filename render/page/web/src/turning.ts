// Turns a camera round the body: by mouse, by finger, by keys. Up and down
// stays with the page for fingers, so that the page can still be scrolled.

import { Vector3 } from "three";
import type { PerspectiveCamera } from "three";

import type { Triple } from "./document";

const PER_PIXEL = 0.009;
const PER_KEY = Math.PI / 24;
const STEEPEST = 1.5;
/** One looks past the way to the chair, from so far to its side and from above. */
const ASIDE = -0.62;
const ABOVE = 0.42;
/** Further than this between down and up is a turn and no choice. */
const TAP_PX = 5;

export class Turning {
  private azimuth = ASIDE;
  private elevation = ABOVE;
  private near = 1;
  private towards: number | null = null;

  constructor(private readonly canvas: HTMLCanvasElement, private readonly changed: () => void, private readonly tapped: (x: number, y: number) => void, private readonly claimed: (event: PointerEvent) => boolean) {
    this.drag();
    canvas.addEventListener("keydown", (event) => this.key(event));
    canvas.addEventListener(
      "wheel",
      (event) => {
        if (document.activeElement !== canvas && !event.ctrlKey) return;
        event.preventDefault();
        this.zoom(Math.exp(0.0012 * event.deltaY));
      },
      { passive: false },
    );
  }

  /** Looks from above, or from below at what hangs there. */
  from(isBelow: boolean): void {
    this.elevation = isBelow ? -ABOVE : ABOVE;
  }

  /** Looks anew from near the chair's side. */
  afresh(): void {
    this.towards = null;
    this.azimuth = ASIDE;
  }

  /** How far above the level the camera looks from, rad. */
  get steepness(): number {
    return this.elevation;
  }

  /** Sets a camera; the first time it looks from near the chair's side. From behind is from the other side. */
  aim(camera: PerspectiveCamera, far: number, spot: Triple, height: number, isBehind: boolean): void {
    this.towards ??= Math.atan2(spot[1], spot[0]);
    const a = this.towards + this.azimuth + (isBehind ? Math.PI : 0);
    const d = far * this.near;
    const flat = d * Math.cos(this.elevation);
    camera.position.set(flat * Math.cos(a), flat * Math.sin(a), height + d * Math.sin(this.elevation));
    camera.lookAt(new Vector3(0, 0, height));
    camera.near = d / 50;
    camera.far = d * 10;
  }

  /** Looks at what stands out along a normal. */
  face([x, y, z]: Triple): void {
    if (Math.hypot(x, y) > 1e-6) this.azimuth = Math.atan2(y, x) - (this.towards ?? 0);
    this.elevation = Math.min(Math.max(Math.asin(z), ABOVE / 2), STEEPEST);
    this.changed();
  }

  private turn(azimuth: number, elevation: number): void {
    this.azimuth += azimuth;
    this.elevation = Math.min(Math.max(this.elevation + elevation, -STEEPEST), STEEPEST);
    this.changed();
  }

  private zoom(by: number): void {
    this.near = Math.min(Math.max(this.near * by, 0.35), 2.5);
    this.changed();
  }

  private drag(): void {
    let last: { x: number; y: number; far: number } | null = null;
    this.canvas.addEventListener("pointerdown", (event) => {
      if (event.button !== 0 || this.claimed(event)) return;
      last = { x: event.clientX, y: event.clientY, far: 0 };
      this.canvas.setPointerCapture(event.pointerId);
    });
    this.canvas.addEventListener("pointermove", (event) => {
      if (last === null) return;
      const dx = event.clientX - last.x;
      const dy = event.clientY - last.y;
      last = { x: event.clientX, y: event.clientY, far: last.far + Math.hypot(dx, dy) };
      if (last.far > TAP_PX) this.turn(-PER_PIXEL * dx, PER_PIXEL * dy);
    });
    this.canvas.addEventListener("pointerup", (event) => {
      if (last !== null && last.far <= TAP_PX) this.tapped(event.clientX, event.clientY);
      last = null;
    });
    this.canvas.addEventListener("pointercancel", () => {
      last = null;
    });
  }

  private key(event: KeyboardEvent): void {
    const acts: Record<string, () => void> = {
      ArrowLeft: () => this.turn(-PER_KEY, 0),
      ArrowRight: () => this.turn(PER_KEY, 0),
      ArrowUp: () => this.turn(0, PER_KEY),
      ArrowDown: () => this.turn(0, -PER_KEY),
      "+": () => this.zoom(0.88),
      "=": () => this.zoom(0.88),
      "-": () => this.zoom(1 / 0.88),
    };
    const act = acts[event.key];
    if (act === undefined || event.ctrlKey || event.metaKey || event.altKey) return;
    event.preventDefault();
    act();
  }
}
