/** The felt pad on its board. Its top and the upper rims of its sides follow `PadDent`. */
import { BufferAttribute, BufferGeometry, Group, Mesh } from 'three';
import type { Materials } from './materials.ts';
import { MeshKit } from './mesh-kit.ts';
import { PadDent } from './pad-dent.ts';

const COLUMNS = 41;
const ROWS = 29;
const NODES = COLUMNS * ROWS;

export class PadModel {
  readonly group = new Group();
  readonly dent: PadDent;
  readonly #geometry = new BufferGeometry();
  /** The top's nodes first, then two for each place around the edge: its rim and its foot. */
  readonly #position: Float32Array;
  readonly #normal: Float32Array;
  /** Nodes around the edge, in turn, the first again at the end. */
  readonly #edge: readonly number[];

  constructor(width: number, depth: number, thickness: number, board: number, materials: Materials) {
    this.dent = new PadDent(width, depth, COLUMNS, ROWS);
    this.#edge = edgeNodes();
    const points = NODES + 2 * this.#edge.length;
    this.#position = new Float32Array(points * 3);
    this.#normal = new Float32Array(points * 3);
    const uv = new Float32Array(points * 2);
    const index: number[] = [];
    this.#buildTop(uv, index);
    this.#buildSides(thickness, uv, index);
    this.#geometry.setAttribute('position', new BufferAttribute(this.#position, 3));
    this.#geometry.setAttribute('normal', new BufferAttribute(this.#normal, 3));
    this.#geometry.setAttribute('uv', new BufferAttribute(uv, 2));
    this.#geometry.setIndex(index);
    const felt = new Mesh(this.#geometry, materials.felt);
    felt.castShadow = felt.receiveShadow = true;
    felt.frustumCulled = false;
    this.group.add(felt);
    const kit = new MeshKit();
    const rim = 0.016;
    kit.box(
      materials.wood,
      -width / 2 - rim,
      -thickness - board,
      -depth / 2 - rim,
      width / 2 + rim,
      -thickness,
      depth / 2 + rim,
      0.0028,
    );
    kit.build(this.group);
  }

  /** Rewrites heights and normals after the dent has changed. */
  update(): void {
    const { heights, width, depth } = this.dent;
    const stepX = width / (COLUMNS - 1);
    const stepZ = depth / (ROWS - 1);
    for (let row = 0; row < ROWS; row++) {
      for (let column = 0; column < COLUMNS; column++) {
        const node = row * COLUMNS + column;
        const left = heights[column > 0 ? node - 1 : node]!;
        const right = heights[column < COLUMNS - 1 ? node + 1 : node]!;
        const back = heights[row > 0 ? node - COLUMNS : node]!;
        const front = heights[row < ROWS - 1 ? node + COLUMNS : node]!;
        const nx = (left - right) / (2 * stepX);
        const nz = (back - front) / (2 * stepZ);
        const unit = 1 / Math.sqrt(nx * nx + 1 + nz * nz);
        const at = node * 3;
        this.#position[at + 1] = heights[node]!;
        this.#normal[at] = nx * unit;
        this.#normal[at + 1] = unit;
        this.#normal[at + 2] = nz * unit;
      }
    }
    for (let place = 0; place < this.#edge.length; place++) {
      this.#position[(NODES + 2 * place) * 3 + 1] = heights[this.#edge[place]!]!;
    }
    this.#geometry.getAttribute('position').needsUpdate = true;
    this.#geometry.getAttribute('normal').needsUpdate = true;
  }

  #buildTop(uv: Float32Array, index: number[]): void {
    const { width } = this.dent;
    for (let row = 0; row < ROWS; row++) {
      for (let column = 0; column < COLUMNS; column++) {
        const node = row * COLUMNS + column;
        const x = this.dent.nodeX(column);
        const z = this.dent.nodeZ(row);
        this.#position[node * 3] = x;
        this.#position[node * 3 + 2] = z;
        this.#normal[node * 3 + 1] = 1;
        uv[node * 2] = x / width;
        uv[node * 2 + 1] = z / width;
        if (row === ROWS - 1 || column === COLUMNS - 1) continue;
        index.push(node, node + COLUMNS, node + 1, node + 1, node + COLUMNS, node + COLUMNS + 1);
      }
    }
  }

  #buildSides(thickness: number, uv: Float32Array, index: number[]): void {
    const { width, depth } = this.dent;
    for (let place = 0; place < this.#edge.length; place++) {
      const node = this.#edge[place]!;
      const x = this.#position[node * 3]!;
      const z = this.#position[node * 3 + 2]!;
      // Outward; between two faces at an upright edge, which so looks rounded.
      const nx = Math.abs(x) > width / 2 - 1e-6 ? Math.sign(x) : 0;
      const nz = Math.abs(z) > depth / 2 - 1e-6 ? Math.sign(z) : 0;
      const unit = 1 / Math.max(1, Math.hypot(nx, nz));
      for (const [lower, y] of [
        [0, 0],
        [1, -thickness],
      ] as const) {
        const point = NODES + 2 * place + lower;
        this.#position[point * 3] = x;
        this.#position[point * 3 + 1] = y;
        this.#position[point * 3 + 2] = z;
        this.#normal[point * 3] = nx * unit;
        this.#normal[point * 3 + 2] = nz * unit;
        uv[point * 2] = (x + z) / width;
        uv[point * 2 + 1] = -y / width;
      }
      if (place === this.#edge.length - 1) continue;
      const a = NODES + 2 * place;
      index.push(a, a + 1, a + 2, a + 1, a + 3, a + 2);
    }
  }
}

function edgeNodes(): number[] {
  const nodes: number[] = [];
  for (let row = 0; row < ROWS; row++) nodes.push(row * COLUMNS);
  for (let column = 1; column < COLUMNS; column++) nodes.push((ROWS - 1) * COLUMNS + column);
  for (let row = ROWS - 2; row >= 0; row--) nodes.push(row * COLUMNS + COLUMNS - 1);
  for (let column = COLUMNS - 2; column >= 0; column--) nodes.push(column);
  return nodes;
}
