// The words on the discs of the picture in three dimensions: each driver's channel, upright to whoever looks.

import { Group, Mesh, PlaneGeometry, Vector3 } from "three";
import type { MeshBasicMaterial, PerspectiveCamera } from "three";

import { inkOn } from "./colours";
import type { RGB } from "./colours";
import type { PlanAnswer } from "./document";
import { empty, MM, set, stamp } from "./solidparts";

/** Discs with words on are drawn up to so many drivers. */
const MOST = 240;

export class DiscWords {
  readonly group = new Group();
  private planned: PlanAnswer | null = null;
  /** All words that were written, in the colours that they were written in: a picture of a word is dear. */
  private readonly made = new Map<string, MeshBasicMaterial>();
  private written = "";

  /** Begins anew on another plan's discs, for a body of a radius in m. */
  take(planned: PlanAnswer, size: number): void {
    empty(this.group);
    for (const word of this.made.values()) {
      word.map?.dispose();
      word.dispose();
    }
    this.made.clear();
    this.written = "";
    this.planned = planned;
    if (planned.drivers.length > MOST) return;
    const square = new PlaneGeometry(2, 2);
    for (const d of planned.drivers) {
      const mesh = new Mesh(square);
      set(mesh, d.at_mm, d.normal, 0.0024 * (size / 0.15), 0.36 * d.cone_mm * MM);
      mesh.userData.normal = new Vector3(...d.normal).normalize();
      this.group.add(mesh);
    }
  }

  /** Writes a word on each disc, of a colour; empty: nothing. */
  write(words: string[], colours: RGB[]): void {
    const key = words.join();
    if (key === this.written || this.planned === null) return;
    this.written = key;
    for (const [i, mesh] of (this.group.children as Mesh[]).entries()) {
      const text = words[i] ?? "";
      mesh.visible = text !== "";
      if (mesh.visible) mesh.material = this.stamped(text, inkOn(colours[i]!));
    }
  }

  private stamped(text: string, colour: string): MeshBasicMaterial {
    const key = `${text} ${colour}`;
    let found = this.made.get(key);
    if (found === undefined) this.made.set(key, (found = stamp(text, colour)));
    return found;
  }

  /** Turns the words so that they are read upright from the camera. */
  upright(camera: PerspectiveCamera): void {
    camera.updateMatrixWorld();
    const above = new Vector3().setFromMatrixColumn(camera.matrixWorld, 1);
    const [right, up] = [new Vector3(), new Vector3()];
    for (const mesh of this.group.children) {
      const normal = mesh.userData.normal as Vector3;
      right.copy(above).cross(normal).normalize();
      mesh.matrix.makeBasis(right, up.copy(normal).cross(right), normal);
      mesh.quaternion.setFromRotationMatrix(mesh.matrix);
    }
  }
}
