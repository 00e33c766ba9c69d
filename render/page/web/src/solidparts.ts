// What the picture in three dimensions is made of.

import {
  BufferAttribute, BufferGeometry, CanvasTexture, Color, DoubleSide, InstancedMesh, LineBasicMaterial, LineSegments, Mesh, MeshBasicMaterial,
  MeshLambertMaterial, Object3D, Shape, ShapeGeometry, SphereGeometry, SRGBColorSpace, Vector2, Vector3,
} from "three";
import type { Group, Material } from "three";

import { ink } from "./dom";
import type { Mounted, PlanAnswer, Triple } from "./document";

export const MM = 0.001;
/** The arrow to the chair, in radii of the body. */
export const ARROW = { from: 1.06, to: 1.36, barb: 0.1, half: 0.014 };
/** The view from behind takes this share of the picture. */
const BEHIND = 0.3;
/** A picture is wide from this ratio of its sides on. */
const WIDE = 1.2;
/** Room for words under the view from behind. */
const WORDS_PX = 20;

/** The body: its skin and its edges; a ball of a radius in m has none of these. */
export function shell(planned: PlanAnswer, size: number): Object3D[] {
  const { vertices_mm: vertices, faces } = planned.solid;
  const skin = new MeshLambertMaterial({ color: new Color(ink("--shell")), flatShading: true, polygonOffset: true, polygonOffsetFactor: 1, polygonOffsetUnits: 1 });
  if (vertices.length === 0) {
    skin.flatShading = false;
    const cut = planned.values["body.cut_height_mm"];
    const isCut = typeof cut === "number" && planned.given.includes("body.cut_height_mm");
    const angle = isCut ? Math.acos(Math.max(-1, Math.min(1, (cut * MM) / size))) : Math.PI;
    const ball = new Mesh(new SphereGeometry(size, 64, 40, 0, 2 * Math.PI, 0, angle), skin);
    ball.rotation.x = Math.PI / 2;
    skin.side = DoubleSide;
    return [ball];
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
  return [new Mesh(skinned, skin), new LineSegments(lines, new LineBasicMaterial({ color: new Color(ink("--edge")) }))];
}

/** The edges of a body alone, for a ghost of it; of a ball its outline from above and from both sides. */
export function edges(planned: PlanAnswer, size: number): LineSegments {
  const lines = shell(planned, size).find((part) => part instanceof LineSegments) ?? rings(size);
  (lines.material as LineBasicMaterial).color.set(ink("--accent"));
  return lines;
}

function rings(size: number): LineSegments {
  const at: number[] = [];
  const steps = 72;
  for (const [u, v] of [[0, 1], [0, 2], [1, 2]] as const) {
    for (let i = 0; i < 2 * steps; i++) {
      const a = (Math.PI * 2 * ((i + 1) >> 1)) / steps;
      const p = [0, 0, 0];
      [p[u], p[v]] = [size * Math.cos(a), size * Math.sin(a)];
      at.push(...p);
    }
  }
  return new LineSegments(new BufferGeometry().setAttribute("position", new BufferAttribute(new Float32Array(at), 3)), new LineBasicMaterial());
}

/** Whether the body's top is below. */
export function hangs(planned: PlanAnswer): boolean {
  return (planned.plan.held?.[0]?.top[2] ?? 1) < -0.5;
}

const Z = new Vector3(0, 0, 1);

/** Lays an object of unit size flat on the body. */
export function set(o: Object3D, at: Triple, normal: Triple, lift: number, scale: number): void {
  const n = new Vector3(...normal).normalize();
  o.position.set(...at).multiplyScalar(MM).addScaledVector(n, lift);
  o.quaternion.setFromUnitVectors(Z, n);
  o.scale.setScalar(scale);
  o.updateMatrix();
}

/** Flat things that lie on the body at some places, each as wide as it is there, in mm. */
export function laid(places: Mounted[], form: BufferGeometry, skin: Material, lift: number, wide: (d: Mounted) => number): InstancedMesh {
  const all = new InstancedMesh(form, skin, places.length);
  const at = new Object3D();
  for (const [i, d] of places.entries()) {
    set(at, d.at_mm, d.normal, lift, (wide(d) / 2) * MM);
    all.setMatrixAt(i, at.matrix);
  }
  return all;
}

/** A part of the picture, from its upper left corner. */
export interface Pane {
  x: number;
  y: number;
  w: number;
  h: number;
  isBehind: boolean;
}

/** A wide picture has the view from behind at its right, a high one below. */
export function panes(w: number, h: number): Pane[] {
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
export function reach(planned: PlanAnswer, radius: number): { low: number; high: number; wide: number } {
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
export function arrowhead(): ShapeGeometry {
  const { from, to, barb, half } = ARROW;
  return new ShapeGeometry(new Shape([
    [from, half], [to - 3 * half, half], [to - barb, barb - half], [to - barb, barb + 1.4 * half], [to, 0],
    [to - barb, -barb - 1.4 * half], [to - barb, half - barb], [to - 3 * half, -half], [from, -half],
  ].map(([x, y]) => new Vector2(x, y))));
}

/** A shade that fades from the middle outwards. */
export function softShade(): CanvasTexture {
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
export function stamp(text: string, colour: string): MeshBasicMaterial {
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
export function empty(group: Group): void {
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
