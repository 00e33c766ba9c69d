// The body in three dimensions, with its drivers as discs. It is drawn only
// when something changed.

import {
  CircleGeometry, Color, DirectionalLight, DoubleSide, Group, HemisphereLight, InstancedMesh, LineSegments, Mesh,
  MeshBasicMaterial, PerspectiveCamera, PlaneGeometry, Raycaster, RingGeometry, Scene, SRGBColorSpace, Vector2, Vector3,
} from "three";
import type { WebGLRenderer } from "three";

import type { RGB } from "./colours";
import { DiscWords } from "./discwords";
import { ink, sizeOf } from "./dom";
import { Easel } from "./easel";
import type { Subject } from "./easel";
import type { PlanAnswer, Triple } from "./document";
import { ARROW, arrowhead, edges, empty, hangs, laid, MM, panes, reach, set, shell, softShade } from "./solidparts";
import type { Pane } from "./solidparts";
import { Turning } from "./turning";

/** How far the shade on the table reaches, in radii of the body. */
const SHADE = 1.34;
/** A table further below the body than this, in radii, is out of the picture. */
const NEAR_TABLE = 1;
/** Room left round the body. */
const MARGIN = 1.1;

export interface Look {
  /** The colour of each driver, in the plan's order. */
  colours: RGB[];
  /** What stands on each disc; empty: nothing. */
  labels: string[];
  picked: number;
}

export class SolidView {
  private readonly easel: Easel;
  private readonly scene = new Scene();
  private readonly camera = new PerspectiveCamera(28, 1, 0.01, 200);
  private readonly turning: Turning;
  private body = new Group();
  private readonly words = new DiscWords();
  private readonly stand = new Group();
  private cones: InstancedMesh | null = null;
  private flanges: InstancedMesh | null = null;
  private places: InstancedMesh | null = null;
  private readonly ghosts = new Group();
  private readonly ring: Mesh;
  private readonly arrow: Mesh;
  private readonly sun = new DirectionalLight(0xffffff, 2.1);
  private planned: PlanAnswer | null = null;
  private size = 0.15;
  /** The lowest and the highest point of the body, m, and how far it reaches from its axis. */
  private extent = { low: -0.15, high: 0.15, wide: 0.15 };
  private spot: Triple = [1, 0, 0];

  /** Throws where the browser has no WebGL. */
  constructor(private readonly canvas: HTMLCanvasElement, private readonly changed: () => void, picked: (index: number) => void, claimed: (event: PointerEvent) => boolean) {
    this.easel = new Easel(canvas, changed);
    this.camera.up.set(0, 0, 1);
    this.turning = new Turning(canvas, changed, (x, y) => {
      const index = this.hit(x, y);
      if (index >= 0) picked(index);
    }, claimed);
    this.scene.add(new HemisphereLight(0xffffff, 0xcfc4b4, 1.5), this.sun, this.camera, this.body, this.words.group, this.stand, this.ghosts);
    this.ring = new Mesh(new RingGeometry(1.12, 1.3, 48), new MeshBasicMaterial({ side: DoubleSide }));
    this.arrow = new Mesh(arrowhead(), new MeshBasicMaterial({ side: DoubleSide }));
    this.scene.add(this.ring, this.arrow);
    new ResizeObserver(changed).observe(canvas);
  }

  /** Shows another plan's body. */
  take(planned: PlanAnswer): void {
    const was = this.planned;
    const same = was !== null && alike(was.empty, planned.empty) && alike(was.solid, planned.solid) && alike(was.drivers, planned.drivers);
    const isOther = this.planned === null || hangs(this.planned) !== hangs(planned);
    this.planned = planned;
    if (isOther) this.turning.from(hangs(planned));
    if (same) return;
    this.size = Number(planned.values["body.radius_mm"] ?? 150) * MM;
    this.extent = reach(planned, this.size);
    empty(this.body);
    empty(this.stand);
    this.body.add(...shell(planned, this.size));
    this.discs(planned);
    this.words.take(planned, this.size);
    this.table();
    this.easel.renew();
  }

  /** What the newest picture took, ms; null: not known. */
  get takes(): number | null {
    return this.easel.takes;
  }

  /** Draws the body twice: from near the chair's side, and from behind, so that no driver stays unseen. It is there soon; on a still picture for paper at once. */
  draw(spot: Triple, look: Look, still: HTMLCanvasElement | null): void {
    const { width, height } = sizeOf(this.canvas);
    if (width === 0 || height === 0 || this.planned === null) return;
    this.spot = spot;
    const { scene, camera } = this;
    const prepare = () => {
      this.paint(look);
      this.light(spot);
    };
    const subject: Subject = { scene, camera, prepare, render: (renderer) => this.render(renderer, width, height, spot) };
    if (still === null) this.easel.draw(width, height, subject);
    else this.easel.copyTo(still, width, height, subject);
  }

  private render(renderer: WebGLRenderer, w: number, h: number, spot: Triple): void {
    renderer.setScissorTest(true);
    for (const pane of panes(w, h)) {
      this.aim(pane, spot);
      this.words.upright(this.camera);
      renderer.setViewport(pane.x, h - pane.y - pane.h, pane.w, pane.h);
      renderer.setScissor(pane.x, h - pane.y - pane.h, pane.w, pane.h);
      renderer.render(this.scene, this.camera);
    }
  }

  /** Sets the camera so that the body, and the arrow on the table, fill a pane. */
  private aim(pane: Pane, spot: Triple): void {
    const { low, high, wide } = this.extent;
    const e = this.turning.steepness;
    const half = (high - low) / 2;
    const middle = (low + high) / 2;
    const up = half * Math.cos(e) + 0.5 * wide * Math.sin(Math.abs(e));
    const isOnTable = this.level() === this.ground();
    const ground = pane.isBehind ? wide * (isOnTable ? SHADE : 1) : ARROW.to * this.size;
    const down = Math.abs(middle - this.ground()) * Math.cos(e) + 0.92 * ground * Math.sin(Math.abs(e));
    const upright = Math.tan((this.camera.fov * Math.PI) / 360);
    this.camera.aspect = pane.w / pane.h;
    const far = MARGIN * Math.max((up + down) / 2 / upright, (1.08 * wide) / (upright * this.camera.aspect)) + 0.35 * wide;
    this.turning.aim(this.camera, far, spot, middle + (this.upwards * (up - down)) / 2 / Math.max(Math.cos(e), 0.3), pane.isBehind);
    this.camera.updateProjectionMatrix();
  }

  /** 1 for a body that stands, -1 for one that hangs. */
  private get upwards(): number {
    return this.planned !== null && hangs(this.planned) ? -1 : 1;
  }

  /** The height of the table under the body, or of the ceiling over one that hangs; null: there is none. */
  private level(): number | null {
    return (this.upwards < 0 ? this.planned?.ceiling_m : this.planned?.floor_m) ?? null;
  }

  /** That height where it is near; else that of the body's end there. */
  private ground(): number {
    const level = this.level();
    const end = this.upwards < 0 ? this.extent.high : this.extent.low;
    return level !== null && Math.abs(end - level) < NEAR_TABLE * this.size ? level : end;
  }

  /** The light comes from above the chair, a little from its side; for a body that hangs from below. */
  private light([x, y]: Triple): void {
    const d = Math.hypot(x, y) || 1;
    const [ux, uy] = [x / d, y / d];
    this.sun.position.set(ux + 0.75 * uy, uy - 0.75 * ux, 1.25 * this.upwards);
    this.point(ux, uy);
  }

  /** The drivers, and places that are left empty as rings. */
  private discs({ drivers, empty: free }: PlanAnswer): void {
    const lift = 0.0006 * (this.size / 0.15);
    const [disc, ring] = [new CircleGeometry(1, 36), new RingGeometry(0.82, 1, 36)];
    this.flanges = laid(drivers, disc, new MeshBasicMaterial({ color: new Color(ink("--flange")) }), lift, (d) => d.flange_mm);
    this.cones = laid(drivers, disc, new MeshBasicMaterial(), 2.3 * lift, (d) => d.cone_mm);
    this.places = laid(free, ring, new MeshBasicMaterial({ color: new Color(ink("--quiet")), side: DoubleSide }), 2.3 * lift, (d) => d.flange_mm);
    this.body.add(this.flanges, this.cones);
    if (free.length > 0) this.body.add(this.places);
  }

  /** Shows the edges of a former plan's body beside that of now; null: no more. */
  ghost(former: PlanAnswer | null): void {
    empty(this.ghosts);
    if (former !== null) this.ghosts.add(edges(former, Number(former.values["body.radius_mm"] ?? 150) * MM));
    this.easel.renew();
    this.changed();
  }

  /** The part of the picture that is seen from the chair's side. */
  private get front(): Pane {
    const { width, height } = sizeOf(this.canvas);
    return panes(width, height)[0]!;
  }

  /** Where a point of the picture, in m from the body's centre, is on the canvas in px, seen from the chair's side. */
  project(at: Triple): [x: number, y: number] {
    const pane = this.front;
    this.aim(pane, this.spot);
    this.camera.updateMatrixWorld();
    const p = new Vector3(...at).project(this.camera);
    return [pane.x + ((p.x + 1) / 2) * pane.w, pane.y + ((1 - p.y) / 2) * pane.h];
  }

  /** The direction across the picture to the right, of unit length. */
  rightwards(): Triple {
    this.aim(this.front, this.spot);
    this.camera.updateMatrixWorld();
    return new Vector3().setFromMatrixColumn(this.camera.matrixWorld, 0).toArray();
  }

  /** The table, or the ceiling, is there by the shade that the body throws on it. */
  private table(): void {
    const level = this.level();
    if (level === null || this.ground() !== level) return;
    const side = 2 * SHADE * this.extent.wide;
    const shade = new Mesh(new PlaneGeometry(side, side), new MeshBasicMaterial({ map: softShade(), transparent: true, depthWrite: false, side: DoubleSide }));
    shade.position.z = level;
    this.stand.add(shade);
  }

  private paint(look: Look): void {
    if (this.cones === null || this.planned === null) return;
    const colour = new Color();
    for (const [i, [r, g, b]] of look.colours.entries()) this.cones.setColorAt(i, colour.setRGB(r / 255, g / 255, b / 255, SRGBColorSpace));
    if (this.cones.instanceColor !== null) this.cones.instanceColor.needsUpdate = true;
    this.words.write(look.labels, look.colours);
    const d = this.planned.drivers[look.picked] ?? this.planned.empty[look.picked - this.planned.drivers.length];
    this.ring.visible = d !== undefined;
    if (d === undefined) return;
    (this.ring.material as MeshBasicMaterial).color.set(ink("--accent"));
    set(this.ring, d.at_mm, d.normal, 0.002 * (this.size / 0.15), ((this.planned.drivers[0] ?? d).cone_mm / 2) * MM);
  }

  private point(ux: number, uy: number): void {
    this.arrow.position.set(0, 0, this.ground() + 0.004 * this.size * this.upwards);
    this.arrow.rotation.z = Math.atan2(uy, ux);
    this.arrow.scale.setScalar(this.size);
    (this.arrow.material as MeshBasicMaterial).color.set(ink("--accent"));
  }

  /** The driver under a place of the screen, or -1; behind the drivers count the places that are left empty. */
  hit(clientX: number, clientY: number): number {
    if (this.flanges === null) return -1;
    const box = this.canvas.getBoundingClientRect();
    const [x, y] = [clientX - box.x, clientY - box.y];
    const pane = panes(box.width, box.height).find((p) => x >= p.x && x < p.x + p.w && y >= p.y && y < p.y + p.h);
    if (pane === undefined) return -1;
    this.aim(pane, this.spot);
    this.camera.updateMatrixWorld();
    const ray = new Raycaster();
    ray.setFromCamera(new Vector2((2 * (x - pane.x)) / pane.w - 1, 1 - (2 * (y - pane.y)) / pane.h), this.camera);
    const first = ray.intersectObjects(this.body.children, false).find((h) => !(h.object instanceof LineSegments));
    if (first?.object === this.places && first !== undefined) return (this.planned?.drivers.length ?? 0) + (first.instanceId ?? 0);
    return first?.object === this.flanges || first?.object === this.cones ? (first.instanceId ?? -1) : -1;
  }

  /** Looks anew from near the chair's side, as at another body. */
  afresh(): void {
    this.turning.afresh();
  }

  /** Turns a driver to the front. */
  face(index: number): void {
    const d = this.planned?.drivers[index] ?? this.planned?.empty[index - this.planned.drivers.length];
    if (d !== undefined) this.turning.face(d.normal);
  }

  /** Takes the page's colours anew. */
  recolour(): void {
    const planned = this.planned;
    this.planned = null;
    if (planned !== null) this.take(planned);
    this.changed();
  }
}

/** Whether two things that were read from JSON are the same. */
function alike(a: unknown, b: unknown): boolean {
  if (a === b) return true;
  if (typeof a !== "object" || typeof b !== "object" || a === null || b === null) return false;
  const keys = Object.keys(a);
  return keys.length === Object.keys(b).length && keys.every((k) => alike((a as Record<string, unknown>)[k], (b as Record<string, unknown>)[k]));
}
