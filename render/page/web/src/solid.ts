// The body in three dimensions, with its drivers as discs. It is drawn only
// when something changed.

import {
  BufferAttribute, BufferGeometry, CanvasTexture, CircleGeometry, Color, DirectionalLight, DoubleSide, Group, HemisphereLight,
  InstancedMesh, LineBasicMaterial, LineSegments, Mesh, MeshBasicMaterial, MeshLambertMaterial, Object3D,
  PerspectiveCamera, PlaneGeometry, Raycaster, RingGeometry, Scene, Shape, ShapeGeometry, SphereGeometry, SRGBColorSpace, Vector2,
  Vector3, WebGLRenderer,
} from "three";
import type { Material } from "three";

import type { RGB } from "./colours";
import { inkOn } from "./colours";
import { ink } from "./dom";
import type { PlanAnswer, Triple } from "./document";
import { Turning } from "./turning";

/** Discs with numbers on are drawn up to so many drivers. */
const MOST_LABELS = 240;
const MM = 0.001;
/** How far the shade on the table reaches, in radii of the body. */
const SHADE = 1.34;
/** The arrow to the chair, in radii of the body. */
const ARROW = { from: 1.06, to: 1.36, barb: 0.1, half: 0.014 };
/** A table further below the body than this, in radii, is out of the picture. */
const NEAR_TABLE = 1;
/** Room left round the body. */
const MARGIN = 1.1;
/** The view from behind takes this share of the picture. */
const BEHIND = 0.3;
/** A picture is wide from this ratio of its sides on. */
const WIDE = 1.2;
/** Room for words under the view from behind. */
const WORDS_PX = 20;

export interface Look {
  /** The colour of each driver, in the plan's order. */
  colours: RGB[];
  /** What stands on each disc; empty: nothing. */
  labels: string[];
  picked: number;
}

export class SolidView {
  private readonly renderer: WebGLRenderer;
  private readonly scene = new Scene();
  private readonly camera = new PerspectiveCamera(28, 1, 0.01, 200);
  private readonly turning: Turning;
  private body = new Group();
  private readonly labels = new Group();
  private readonly stand = new Group();
  private cones: InstancedMesh | null = null;
  private flanges: InstancedMesh | null = null;
  private readonly ring: Mesh;
  private readonly arrow: Mesh;
  private readonly sun = new DirectionalLight(0xffffff, 2.1);
  private planned: PlanAnswer | null = null;
  private size = 0.15;
  /** The lowest and the highest point of the body, m, and how far it reaches from its axis. */
  private extent = { low: -0.15, high: 0.15, wide: 0.15 };
  private labelled = "";
  private spot: Triple = [1, 0, 0];

  /** Throws where the browser has no WebGL. */
  constructor(private readonly canvas: HTMLCanvasElement, private readonly changed: () => void, picked: (index: number) => void) {
    this.renderer = new WebGLRenderer({ canvas, antialias: true, alpha: true });
    this.camera.up.set(0, 0, 1);
    this.turning = new Turning(canvas, changed, (x, y) => {
      const index = this.hit(x, y);
      if (index >= 0) picked(index);
    });
    this.scene.add(new HemisphereLight(0xffffff, 0xcfc4b4, 1.5), this.sun, this.camera, this.body, this.labels, this.stand);
    this.ring = new Mesh(new RingGeometry(1.12, 1.3, 48), new MeshBasicMaterial({ side: DoubleSide }));
    this.arrow = new Mesh(arrowhead(), new MeshBasicMaterial({ side: DoubleSide }));
    this.scene.add(this.ring, this.arrow);
    new ResizeObserver(changed).observe(canvas);
  }

  /** Shows another plan's body. */
  take(planned: PlanAnswer): void {
    const same = this.planned !== null && JSON.stringify(this.planned.solid) === JSON.stringify(planned.solid)
      && JSON.stringify(this.planned.drivers) === JSON.stringify(planned.drivers);
    const isOther = this.planned === null || hangs(this.planned) !== hangs(planned);
    this.planned = planned;
    if (isOther) this.turning.from(hangs(planned));
    if (same) return;
    this.size = Number(planned.values["body.radius_mm"] ?? 150) * MM;
    this.extent = reach(planned, this.size);
    empty(this.body);
    empty(this.stand);
    this.labelled = "";
    this.shell(planned);
    this.discs(planned);
    this.table();
  }

  /** Draws the body twice: from near the chair's side, and from behind, so that no driver stays unseen. */
  draw(spot: Triple, look: Look): void {
    const { clientWidth: w, clientHeight: h } = this.canvas;
    if (w === 0 || h === 0 || this.planned === null) return;
    this.renderer.setPixelRatio(Math.min(window.devicePixelRatio || 1, 2));
    this.renderer.setSize(w, h, false);
    this.spot = spot;
    this.paint(look);
    this.light(spot);
    this.renderer.setScissorTest(true);
    for (const pane of panes(w, h)) {
      this.aim(pane, spot);
      this.upright();
      this.renderer.setViewport(pane.x, h - pane.y - pane.h, pane.w, pane.h);
      this.renderer.setScissor(pane.x, h - pane.y - pane.h, pane.w, pane.h);
      this.renderer.render(this.scene, this.camera);
    }
  }

  /** Copies what is drawn, at once: a browser does not keep it for its printer. */
  copyTo(still: HTMLCanvasElement): void {
    still.width = this.canvas.width;
    still.height = this.canvas.height;
    still.getContext("2d")?.drawImage(this.canvas, 0, 0);
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

  private shell(planned: PlanAnswer): void {
    const { vertices_mm: vertices, faces } = planned.solid;
    const skin = new MeshLambertMaterial({ color: new Color(ink("--shell")), flatShading: true, polygonOffset: true, polygonOffsetFactor: 1, polygonOffsetUnits: 1 });
    if (vertices.length === 0) {
      skin.flatShading = false;
      const cut = planned.values["body.cut_height_mm"];
      const isCut = typeof cut === "number" && planned.given.includes("body.cut_height_mm");
      const angle = isCut ? Math.acos(Math.max(-1, Math.min(1, (cut * MM) / this.size))) : Math.PI;
      const ball = new Mesh(new SphereGeometry(this.size, 64, 40, 0, 2 * Math.PI, 0, angle), skin);
      ball.rotation.x = Math.PI / 2;
      skin.side = DoubleSide;
      this.body.add(ball);
      return;
    }
    const corners: number[] = [];
    const edges: number[] = [];
    const push = (to: number[], i: number) => to.push(...vertices[i]!.map((v) => v * MM));
    for (const face of faces) {
      for (let k = 1; k + 1 < face.length; k++) for (const i of [face[0]!, face[k]!, face[k + 1]!]) push(corners, i);
      for (const [k, i] of face.entries()) {
        const j = face[(k + 1) % face.length]!;
        if (i < j) {
          push(edges, i);
          push(edges, j);
        }
      }
    }
    const skinned = new BufferGeometry().setAttribute("position", new BufferAttribute(new Float32Array(corners), 3));
    skinned.computeVertexNormals();
    const lines = new BufferGeometry().setAttribute("position", new BufferAttribute(new Float32Array(edges), 3));
    this.body.add(new Mesh(skinned, skin), new LineSegments(lines, new LineBasicMaterial({ color: new Color(ink("--edge")) })));
  }

  private discs(planned: PlanAnswer): void {
    const n = planned.drivers.length;
    const disc = new CircleGeometry(1, 36);
    this.flanges = new InstancedMesh(disc, new MeshBasicMaterial({ color: new Color(ink("--flange")) }), n);
    this.cones = new InstancedMesh(disc, new MeshBasicMaterial(), n);
    const at = new Object3D();
    for (const [i, d] of planned.drivers.entries()) {
      set(at, d.at_mm, d.normal, 0.0006 * (this.size / 0.15), (d.flange_mm / 2) * MM);
      this.flanges.setMatrixAt(i, at.matrix);
      set(at, d.at_mm, d.normal, 0.0014 * (this.size / 0.15), (d.cone_mm / 2) * MM);
      this.cones.setMatrixAt(i, at.matrix);
    }
    this.body.add(this.flanges, this.cones);
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
    this.write(look);
    const d = this.planned.drivers[look.picked];
    this.ring.visible = d !== undefined;
    if (d === undefined) return;
    (this.ring.material as MeshBasicMaterial).color.set(ink("--accent"));
    set(this.ring, d.at_mm, d.normal, 0.002 * (this.size / 0.15), (d.cone_mm / 2) * MM);
  }

  /** Writes on the discs, where it changed. */
  private write(look: Look): void {
    const key = look.labels.length > MOST_LABELS ? "" : look.labels.join();
    if (key === this.labelled || this.planned === null) return;
    this.labelled = key;
    empty(this.labels);
    if (key === "") return;
    const made = new Map<string, MeshBasicMaterial>();
    const square = new PlaneGeometry(2, 2);
    for (const [i, text] of look.labels.entries()) {
      const d = this.planned.drivers[i];
      if (text === "" || d === undefined) continue;
      let written = made.get(text);
      if (written === undefined) made.set(text, (written = stamp(text, inkOn(look.colours[i]!))));
      const mesh = new Mesh(square, written);
      set(mesh, d.at_mm, d.normal, 0.0024 * (this.size / 0.15), 0.36 * d.cone_mm * MM);
      mesh.userData.normal = new Vector3(...d.normal).normalize();
      this.labels.add(mesh);
    }
  }

  /** Turns the numbers so that they are read upright from the camera. */
  private upright(): void {
    this.camera.updateMatrixWorld();
    const above = new Vector3().setFromMatrixColumn(this.camera.matrixWorld, 1);
    const normal = new Vector3();
    const right = new Vector3();
    for (const mesh of this.labels.children) {
      normal.copy(mesh.userData.normal as Vector3);
      right.copy(above).cross(normal).normalize();
      mesh.matrix.makeBasis(right, normal.clone().cross(right), normal);
      mesh.quaternion.setFromRotationMatrix(mesh.matrix);
    }
  }

  private point(ux: number, uy: number): void {
    this.arrow.position.set(0, 0, this.ground() + 0.004 * this.size * this.upwards);
    this.arrow.rotation.z = Math.atan2(uy, ux);
    this.arrow.scale.setScalar(this.size);
    (this.arrow.material as MeshBasicMaterial).color.set(ink("--accent"));
  }

  /** The driver under a place of the screen, or -1. */
  private hit(clientX: number, clientY: number): number {
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
    return first?.object === this.flanges || first?.object === this.cones ? (first.instanceId ?? -1) : -1;
  }

  /** Looks anew from near the chair's side, as at another body. */
  afresh(): void {
    this.turning.afresh();
  }

  /** Turns a driver to the front. */
  face(index: number): void {
    const d = this.planned?.drivers[index];
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

/** Whether the body's top is below. */
function hangs(planned: PlanAnswer): boolean {
  return (planned.plan.held?.[0]?.top[2] ?? 1) < -0.5;
}

const Z = new Vector3(0, 0, 1);

/** Lays an object of unit size flat on the body. */
function set(o: Object3D, at: Triple, normal: Triple, lift: number, scale: number): void {
  const n = new Vector3(...normal).normalize();
  o.position.set(...at).multiplyScalar(MM).addScaledVector(n, lift);
  o.quaternion.setFromUnitVectors(Z, n);
  o.scale.setScalar(scale);
  o.updateMatrix();
}

/** A part of the picture, from its upper left corner. */
interface Pane {
  x: number;
  y: number;
  w: number;
  h: number;
  isBehind: boolean;
}

/** A wide picture has the view from behind at its right, a high one below. */
function panes(w: number, h: number): Pane[] {
  if (w > WIDE * h) {
    const left = Math.round((1 - BEHIND) * w);
    const high = Math.round(Math.min(h - WORDS_PX, 0.9 * (w - left)));
    return [{ x: 0, y: 0, w: left, h, isBehind: false }, { x: left, y: h - high - WORDS_PX, w: w - left, h: high, isBehind: true }];
  }
  const high = Math.round(BEHIND * h);
  const top = h - high - WORDS_PX;
  const wide = Math.round(Math.min(w, 1.4 * high));
  return [{ x: 0, y: 0, w, h: top, isBehind: false }, { x: w - wide, y: top, w: wide, h: high, isBehind: true }];
}

/** How far a body reaches. */
function reach(planned: PlanAnswer, radius: number): { low: number; high: number; wide: number } {
  const { vertices_mm: vertices } = planned.solid;
  if (vertices.length === 0) {
    const cut = planned.values["body.cut_height_mm"];
    const low = typeof cut === "number" && planned.given.includes("body.cut_height_mm") ? Math.max(-radius, cut * MM) : -radius;
    return { low, high: radius, wide: radius };
  }
  const heights = vertices.map((v) => v[2] * MM);
  return { low: Math.min(...heights), high: Math.max(...heights), wide: Math.max(...vertices.map((v) => Math.hypot(v[0], v[1]) * MM)) };
}

/** The arrow to the chair, flat, along x, for a body of radius 1. */
function arrowhead(): ShapeGeometry {
  const { from, to, barb, half } = ARROW;
  return new ShapeGeometry(new Shape([
    [from, half], [to - 3 * half, half], [to - barb, barb - half], [to - barb, barb + 1.4 * half], [to, 0],
    [to - barb, -barb - 1.4 * half], [to - barb, half - barb], [to - 3 * half, -half], [from, -half],
  ].map(([x, y]) => new Vector2(x, y))));
}

/** A shade that fades from the middle outwards. */
function softShade(): CanvasTexture {
  const canvas = document.createElement("canvas");
  canvas.width = canvas.height = 256;
  const c = canvas.getContext("2d");
  if (c !== null) {
    const fade = c.createRadialGradient(128, 128, 0, 128, 128, 128);
    const dark = ink("--shade");
    for (const [at, share] of [[0, 1], [0.66, 0.9], [0.76, 0.5], [0.88, 0.14], [1, 0]] as const) fade.addColorStop(at, `rgb(${dark} / ${share * 0.5})`);
    c.fillStyle = fade;
    c.fillRect(0, 0, 256, 256);
  }
  const map = new CanvasTexture(canvas);
  map.colorSpace = SRGBColorSpace;
  return map;
}

/** A number to be laid on a disc. */
function stamp(text: string, colour: string): MeshBasicMaterial {
  const canvas = document.createElement("canvas");
  canvas.width = canvas.height = 128;
  const c = canvas.getContext("2d");
  if (c !== null) {
    c.font = `600 ${text.length > 2 ? 56 : 78}px ${ink("--sans")}`;
    c.fillStyle = colour;
    c.textAlign = "center";
    c.textBaseline = "middle";
    c.fillText(text, 64, 68);
  }
  const map = new CanvasTexture(canvas);
  map.colorSpace = SRGBColorSpace;
  map.anisotropy = 4;
  return new MeshBasicMaterial({ map, transparent: true, depthWrite: false });
}

/** Empties a group and frees what it held. */
function empty(group: Group): void {
  for (const child of [...group.children]) {
    group.remove(child);
    const { geometry, material } = child as Mesh;
    geometry.dispose();
    for (const m of [material].flat() as (Material & { map?: CanvasTexture })[]) {
      m.map?.dispose();
      m.dispose();
    }
  }
}
