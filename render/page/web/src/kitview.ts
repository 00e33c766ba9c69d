// The printed parts in three dimensions, together or taken apart.

import {
  BufferAttribute, BufferGeometry, Color, DirectionalLight, Group, HemisphereLight, Mesh, MeshLambertMaterial, PerspectiveCamera, Raycaster, Scene,
  SRGBColorSpace, Vector2, Vector3,
} from "three";

import { channelColour } from "./colours";
import { ink, sizeOf } from "./dom";
import { Easel } from "./easel";
import type { PartHead, Triple } from "./document";
import { empty } from "./solidparts";
import { Turning } from "./turning";

/** Room left round the parts. */
const MARGIN = 1.04;
/** How much of a colour that tells parts apart is in that of the shell. */
const TINT = 0.42;
/** How much beside a part that is marked. */
const TINT_BESIDE = 0.1;

/** One part with its mesh, in m. */
export interface ShownPart extends PartHead {
  at: Float32Array;
  sides: Uint32Array;
}

/** What is drawn. */
export interface KitLook {
  /** How far apart, over each part's own way. */
  apart: number;
  /** The part that is marked, or -1; one that is not in the whole is shown by itself. */
  marked: number;
  /** Where the chair is, from which one looks at first. */
  spot: Triple;
}

export class KitView {
  private readonly easel: Easel;
  private readonly scene = new Scene();
  private readonly camera = new PerspectiveCamera(28, 1, 0.01, 200);
  private readonly turning: Turning;
  private readonly group = new Group();
  private readonly sun = new DirectionalLight(0xffffff, 2.1);
  private parts: ShownPart[] = [];
  private look: KitLook = { apart: 0, marked: -1, spot: [1, 0, 0] };
  /** The look for which `reach` was found; empty: for none. */
  private reached = "";
  private reach = 0;

  /** Throws where the browser has no WebGL. */
  constructor(private readonly canvas: HTMLCanvasElement, changed: () => void, picked: (part: number) => void) {
    this.easel = new Easel(canvas, changed);
    this.camera.up.set(0, 0, 1);
    this.turning = new Turning(canvas, changed, (x, y) => picked(this.hit(x, y)), () => false);
    this.scene.add(new HemisphereLight(0xffffff, 0xcfc4b4, 1.5), this.sun, this.camera, this.group);
    new ResizeObserver(changed).observe(canvas);
  }

  take(parts: ShownPart[]): void {
    this.parts = parts;
    this.reached = "";
    empty(this.group);
    for (const part of parts) {
      const form = new BufferGeometry();
      form.setAttribute("position", new BufferAttribute(part.at, 3));
      form.setIndex(new BufferAttribute(part.sides, 1));
      form.computeBoundingSphere();
      this.group.add(new Mesh(form, new MeshLambertMaterial({ flatShading: true })));
    }
    this.easel.renew();
  }

  draw(look: KitLook): void {
    const { width, height } = sizeOf(this.canvas);
    if (width === 0 || height === 0 || this.parts.length === 0) return;
    this.look = look;
    this.easel.draw(width, height, {
      scene: this.scene,
      camera: this.camera,
      prepare: () => this.arrange(),
      render: (renderer) => {
        this.aim(width / height);
        renderer.render(this.scene, this.camera);
      },
    });
  }

  private get meshes(): Mesh<BufferGeometry, MeshLambertMaterial>[] {
    return this.group.children as Mesh<BufferGeometry, MeshLambertMaterial>[];
  }

  /** Puts every part in its place, in its colour. */
  private arrange(): void {
    const { apart, marked, spot } = this.look;
    const alone = this.parts[marked]?.loose === true;
    const shell = new Color(ink("--shell"));
    for (const [i, mesh] of this.meshes.entries()) {
      const part = this.parts[i]!;
      mesh.visible = alone ? i === marked : !part.loose;
      mesh.position.set(...part.away_m).multiplyScalar(part.loose ? 0 : apart);
      mesh.updateMatrixWorld();
      const [r, g, b] = channelColour(i + 1);
      mesh.material.color.setRGB(r / 255, g / 255, b / 255, SRGBColorSpace).lerp(shell, 1 - (marked < 0 ? TINT : TINT_BESIDE));
      if (i === marked && !alone) mesh.material.color.set(ink("--accent"));
    }
    const d = Math.hypot(spot[0], spot[1]) || 1;
    const [x, y] = [spot[0] / d, spot[1] / d];
    this.sun.position.set(x + 0.75 * y, y - 0.75 * x, 1.25);
  }

  /** Sets the camera so that all that is shown fills the picture from wherever one looks. */
  private aim(aspect: number): void {
    const seen = this.meshes.filter((m) => m.visible).map((m) => ({ at: m.position.clone().add(m.geometry.boundingSphere!.center), wide: m.geometry.boundingSphere!.radius }));
    const low = Math.min(...seen.map((s) => s.at.z - s.wide));
    const high = Math.max(...seen.map((s) => s.at.z + s.wide));
    const middle = new Vector3(0, 0, (low + high) / 2);
    const round = this.round(middle);
    const half = (this.camera.fov * Math.PI) / 360;
    this.camera.aspect = aspect;
    const far = (MARGIN * round) / Math.sin(Math.min(half, Math.atan(Math.tan(half) * aspect)));
    this.turning.aim(this.camera, far, this.look.spot, middle.z, false);
    this.camera.updateProjectionMatrix();
  }

  /** How far what is shown reaches from a point, m: found once for a look, since it goes through all corners. */
  private round({ z: height }: Vector3): number {
    const { apart, marked } = this.look;
    const look = `${apart} ${this.parts[marked]?.loose === true ? marked : -1}`;
    if (look === this.reached) return this.reach;
    let most = 0;
    for (const [i, { visible, position }] of this.meshes.entries()) {
      const { at } = this.parts[i]!;
      for (let k = 0; visible && k < at.length; k += 3) {
        const [x, y, z] = [at[k]! + position.x, at[k + 1]! + position.y, at[k + 2]! + position.z - height];
        most = Math.max(most, x * x + y * y + z * z);
      }
    }
    this.reached = look;
    this.reach = Math.sqrt(most);
    return this.reach;
  }

  /** The part under a place of the screen, or -1. */
  hit(clientX: number, clientY: number): number {
    if (this.parts.length === 0) return -1;
    const box = this.canvas.getBoundingClientRect();
    this.arrange(); // the last picture may be of a former look
    this.aim(box.width / box.height);
    this.camera.updateMatrixWorld();
    const ray = new Raycaster();
    ray.setFromCamera(new Vector2((2 * (clientX - box.x)) / box.width - 1, 1 - (2 * (clientY - box.y)) / box.height), this.camera);
    const first = ray.intersectObjects(this.meshes.filter((m) => m.visible), false)[0];
    return first === undefined ? -1 : this.group.children.indexOf(first.object);
  }

  /** Turns a part to the front. */
  face(part: number): void {
    const { away_m: away, loose } = this.parts[part]!;
    if (!loose && Math.hypot(...away) > 0) this.turning.face(away.map((v) => v / Math.hypot(...away)) as Triple);
  }
}
