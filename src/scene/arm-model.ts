/** The arm: a strip of blued steel whose vertices follow the cantilever's shape. Positions and normals are rewritten, never rebuilt. */
import { BufferAttribute, BufferGeometry, type Material, Mesh } from 'three';
import { cantileverShape, cantileverSlope } from './cantilever.ts';

const SEGMENTS = 28;
/** Four long faces, each with its own two edges: front, top, back, bottom. */
const EDGES = 8;

export class ArmModel {
  readonly mesh: Mesh;
  readonly #position: Float32Array;
  readonly #normal: Float32Array;
  readonly #geometry = new BufferGeometry();
  readonly #rootX: number;
  readonly #length: number;
  readonly #half: number;
  readonly #front: number;
  readonly #back: number;

  /** Clamped at (rootX, 0), tip to the left at rootX − length; z from back to front. */
  constructor(material: Material, rootX: number, length: number, thickness: number, front: number, back: number) {
    this.#rootX = rootX;
    this.#length = length;
    this.#half = thickness / 2;
    this.#front = front;
    this.#back = back;
    const points = (SEGMENTS + 1) * EDGES;
    this.#position = new Float32Array(points * 3);
    this.#normal = new Float32Array(points * 3);
    const uv = new Float32Array(points * 2);
    const index: number[] = [];
    for (let station = 0; station <= SEGMENTS; station++) {
      for (let edge = 0; edge < EDGES; edge++) {
        const at = (station * EDGES + edge) * 2;
        uv[at] = 1 - station / SEGMENTS;
        uv[at + 1] = edge % 2;
        if (station === SEGMENTS || edge % 2 === 1) continue;
        const a = station * EDGES + edge;
        index.push(a, a + 1, a + EDGES, a + 1, a + EDGES + 1, a + EDGES);
      }
    }
    this.#geometry.setAttribute('position', new BufferAttribute(this.#position, 3));
    this.#geometry.setAttribute('normal', new BufferAttribute(this.#normal, 3));
    this.#geometry.setAttribute('uv', new BufferAttribute(uv, 2));
    this.#geometry.setIndex(index);
    this.mesh = new Mesh(this.#geometry, material);
    this.mesh.castShadow = this.mesh.receiveShadow = true;
    this.mesh.frustumCulled = false;
    this.bend(0);
  }

  /** Puts the tip at an offset upward. */
  bend(tipUp: number): void {
    const half = this.#half;
    for (let station = 0; station <= SEGMENTS; station++) {
      const share = station / SEGMENTS;
      const x = this.#rootX - share * this.#length;
      const y = tipUp * cantileverShape(share);
      // The arm runs to −x, so dy/dx is the slope turned round; (nx, ny) points to its upper side.
      const slope = (-tipUp * cantileverSlope(share)) / this.#length;
      const unit = 1 / Math.sqrt(1 + slope * slope);
      const nx = -slope * unit;
      const ny = unit;
      const at = station * EDGES;
      const topX = x + nx * half;
      const topY = y + ny * half;
      const lowX = x - nx * half;
      const lowY = y - ny * half;
      this.#put(at, lowX, lowY, this.#front, 0, 0, 1);
      this.#put(at + 1, topX, topY, this.#front, 0, 0, 1);
      this.#put(at + 2, topX, topY, this.#front, nx, ny, 0);
      this.#put(at + 3, topX, topY, this.#back, nx, ny, 0);
      this.#put(at + 4, topX, topY, this.#back, 0, 0, -1);
      this.#put(at + 5, lowX, lowY, this.#back, 0, 0, -1);
      this.#put(at + 6, lowX, lowY, this.#back, -nx, -ny, 0);
      this.#put(at + 7, lowX, lowY, this.#front, -nx, -ny, 0);
    }
    this.#geometry.getAttribute('position').needsUpdate = true;
    this.#geometry.getAttribute('normal').needsUpdate = true;
  }

  #put(vertex: number, x: number, y: number, z: number, nx: number, ny: number, nz: number): void {
    const at = vertex * 3;
    this.#position[at] = x;
    this.#position[at + 1] = y;
    this.#position[at + 2] = z;
    this.#normal[at] = nx;
    this.#normal[at + 1] = ny;
    this.#normal[at + 2] = nz;
  }
}
