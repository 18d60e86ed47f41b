/** A force arrow: flat, over everything; filled for a contact force, hollow for gravity. Only seven corners move. */
import { BufferAttribute, BufferGeometry, Group, type Material, Mesh } from 'three';
import { arrowCorners, CUT_LIFTS, CUT_SHARE } from './arrow-corners.ts';

const INDEX = [0, 1, 2, 0, 2, 6, 5, 3, 4];

class Face {
  readonly mesh: Mesh;
  readonly #corners = new Float32Array(21);
  readonly #geometry = new BufferGeometry();

  constructor(material: Material, order: number) {
    this.#geometry.setAttribute('position', new BufferAttribute(this.#corners, 3));
    this.#geometry.setIndex(INDEX);
    this.mesh = new Mesh(this.#geometry, material);
    this.mesh.renderOrder = order;
    this.mesh.frustumCulled = false;
  }

  shape(length: number, width: number, edge: number): void {
    arrowCorners(this.#corners, length, width, edge);
    this.#geometry.getAttribute('position').needsUpdate = true;
  }
}

/** Two slanted strokes across the shaft, for a shaft of width 1. */
function cutMarks(material: Material, order: number): Mesh {
  const points: number[] = [];
  const index: number[] = [];
  for (const lift of CUT_LIFTS) {
    const at = points.length / 3;
    for (const side of [-1, 1]) {
      for (const edge of [-0.11, 0.11]) points.push(side * 0.8, lift + side * 0.3 + edge, 0);
    }
    index.push(at, at + 2, at + 1, at + 1, at + 2, at + 3);
  }
  const geometry = new BufferGeometry();
  geometry.setAttribute('position', new BufferAttribute(new Float32Array(points), 3));
  geometry.setIndex(index);
  const mesh = new Mesh(geometry, material);
  mesh.renderOrder = order;
  mesh.frustumCulled = false;
  return mesh;
}

export class ArrowModel {
  readonly group = new Group();
  readonly #edge: Face;
  readonly #fill: Face;
  readonly #cut: Mesh;
  readonly #edgeWidth: number;

  constructor(fill: Material, edge: Material, edgeWidth: number, order: number) {
    this.#edge = new Face(edge, order);
    this.#fill = new Face(fill, order + 1);
    this.#edgeWidth = edgeWidth;
    this.#cut = cutMarks(edge, order + 2);
    this.group.add(this.#edge.mesh, this.#fill.mesh, this.#cut);
    this.group.visible = false;
  }

  /** From (x, y) along (dx, dy), which is also its length; `unit` is one pixel in the group's own measure; `cut`: longer in truth. */
  place(x: number, y: number, z: number, dx: number, dy: number, width: number, unit: number, cut: boolean): void {
    const length = Math.sqrt(dx * dx + dy * dy);
    this.group.visible = length > 3 * unit;
    if (!this.group.visible) return;
    this.#fill.shape(length, width, 0);
    this.#edge.shape(length, width, this.#edgeWidth * unit);
    this.#cut.visible = cut;
    this.#cut.scale.setScalar(width);
    this.#cut.position.y = length * CUT_SHARE;
    this.group.position.set(x, y, z);
    this.group.rotation.z = Math.atan2(-dx, dy);
  }
}
