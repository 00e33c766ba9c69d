// The body in three dimensions, with its drivers as discs. It is drawn only
// when something changed.

import {
  AmbientLight, BufferAttribute, BufferGeometry, CanvasTexture, CircleGeometry, Color, DirectionalLight, DoubleSide, Group,
  InstancedMesh, LineBasicMaterial, LineLoop, LineSegments, Mesh, MeshBasicMaterial, MeshLambertMaterial, Object3D,
  PerspectiveCamera, PlaneGeometry, Raycaster, RingGeometry, Scene, SphereGeometry, SRGBColorSpace, Vector2, Vector3, WebGLRenderer,
} from "three";
import type { Material } from "three";

import type { RGB } from "./colours";
import { inkOn } from "./colours";
import { ink } from "./dom";
import type { Planned, Triple } from "./types";
import { Turning } from "./turning";

/** Discs with numbers on are drawn up to so many drivers. */
const MOST_LABELS = 240;
const MM = 0.001;
/** How far the table is drawn, in radii of the body. */
const TABLE = 1.42;

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
  private readonly arrow: LineSegments;
  private planned: Planned | null = null;
  private size = 0.15;
  private labelled = "";

  /** Throws where the browser has no WebGL. */
  constructor(private readonly canvas: HTMLCanvasElement, private readonly changed: () => void, picked: (index: number) => void) {
    this.renderer = new WebGLRenderer({ canvas, antialias: true, alpha: true });
    this.camera.up.set(0, 0, 1);
    this.turning = new Turning(canvas, changed, (x, y) => {
      const index = this.hit(x, y);
      if (index >= 0) picked(index);
    });
    const sun = new DirectionalLight(0xffffff, 1.7);
    sun.position.set(-0.4, 0.5, 1.6);
    this.camera.add(sun);
    this.scene.add(new AmbientLight(0xffffff, 1.55), this.camera, this.body, this.labels, this.stand);
    this.ring = new Mesh(new RingGeometry(1.12, 1.3, 48), new MeshBasicMaterial({ side: DoubleSide }));
    this.arrow = new LineSegments(new BufferGeometry(), new LineBasicMaterial());
    this.scene.add(this.ring, this.arrow);
    new ResizeObserver(changed).observe(canvas);
  }

  /** Shows another plan's body. */
  take(planned: Planned): void {
    const same = this.planned !== null && JSON.stringify(this.planned.solid) === JSON.stringify(planned.solid)
      && JSON.stringify(this.planned.drivers) === JSON.stringify(planned.drivers);
    this.planned = planned;
    if (same) return;
    this.size = Number(planned.values["body.radius_mm"] ?? 150) * MM;
    empty(this.body);
    empty(this.stand);
    this.labelled = "";
    this.shell(planned);
    this.discs(planned);
    this.table(planned);
  }

  /** Points the arrow at the chair and sets out the camera. */
  draw(spot: Triple, look: Look): void {
    const { clientWidth: w, clientHeight: h } = this.canvas;
    if (w === 0 || h === 0 || this.planned === null) return;
    this.renderer.setPixelRatio(Math.min(window.devicePixelRatio || 1, 2));
    this.renderer.setSize(w, h, false);
    this.camera.aspect = w / h;
    const wide = Math.max(1, 1.12 / this.camera.aspect);
    this.turning.aim(this.camera, this.size * 5.4 * wide, spot, this.middle());
    this.camera.updateProjectionMatrix();
    this.paint(look);
    this.upright();
    this.point(spot);
    this.renderer.render(this.scene, this.camera);
  }

  private middle(): number {
    const heights = this.planned?.solid.vertices_mm.map((v) => v[2]) ?? [];
    const low = this.planned?.floor_m ?? Math.min(0, ...heights) * MM;
    return heights.length === 0 ? 0 : 0.6 * low + 0.4 * Math.max(...heights) * MM;
  }

  private shell(planned: Planned): void {
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

  private discs(planned: Planned): void {
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

  private table(planned: Planned): void {
    if (planned.floor_m === null) return;
    const top = new Mesh(new CircleGeometry(this.size * TABLE, 72), new MeshBasicMaterial({ color: new Color(ink("--table")), side: DoubleSide }));
    top.position.z = planned.floor_m;
    const rim = new LineLoop(round(this.size * TABLE), new LineBasicMaterial({ color: new Color(ink("--edge")) }));
    rim.position.z = planned.floor_m;
    this.stand.add(top, rim);
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

  private point([x, y]: Triple): void {
    const d = Math.hypot(x, y);
    this.arrow.visible = d > 0;
    if (d === 0 || this.planned === null) return;
    const z = this.planned.floor_m ?? -this.size;
    const [ux, uy] = [x / d, y / d];
    const [from, to, barb] = [1.06 * this.size, 1.35 * this.size, 0.1 * this.size];
    const points: number[] = [];
    const line = (a: number, as: number, b: number, bs: number) =>
      points.push(ux * a - uy * as, uy * a + ux * as, z + 0.002 * this.size, ux * b - uy * bs, uy * b + ux * bs, z + 0.002 * this.size);
    for (const aside of [-0.006, -0.003, 0, 0.003, 0.006].map((k) => k * this.size)) {
      line(from, aside, to, aside);
      line(to + aside, 0, to - barb + aside, barb);
      line(to + aside, 0, to - barb + aside, -barb);
    }
    this.arrow.geometry.dispose();
    this.arrow.geometry = new BufferGeometry().setAttribute("position", new BufferAttribute(new Float32Array(points), 3));
    (this.arrow.material as LineBasicMaterial).color.set(ink("--accent"));
  }

  /** The driver under a place of the screen, or -1. */
  private hit(clientX: number, clientY: number): number {
    if (this.flanges === null) return -1;
    const box = this.canvas.getBoundingClientRect();
    const ray = new Raycaster();
    ray.setFromCamera(new Vector2((2 * (clientX - box.x)) / box.width - 1, 1 - (2 * (clientY - box.y)) / box.height), this.camera);
    const first = ray.intersectObjects(this.body.children, false).find((h) => !(h.object instanceof LineSegments));
    return first?.object === this.flanges || first?.object === this.cones ? (first.instanceId ?? -1) : -1;
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

const Z = new Vector3(0, 0, 1);

/** Lays an object of unit size flat on the body. */
function set(o: Object3D, at: Triple, normal: Triple, lift: number, scale: number): void {
  const n = new Vector3(...normal).normalize();
  o.position.set(...at).multiplyScalar(MM).addScaledVector(n, lift);
  o.quaternion.setFromUnitVectors(Z, n);
  o.scale.setScalar(scale);
  o.updateMatrix();
}

/** A circle round the axis. */
function round(radius: number): BufferGeometry {
  const points = Array.from({ length: 96 }, (_, i) => [radius * Math.cos((i * Math.PI) / 48), radius * Math.sin((i * Math.PI) / 48), 0]);
  return new BufferGeometry().setAttribute("position", new BufferAttribute(new Float32Array(points.flat()), 3));
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
