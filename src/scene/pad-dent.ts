/**
 * How the pad's top gives: it lies against whatever of the housing is below y = 0 and rises back to its
 * level around it. Only the depth under the housing is the model's; the slope around it is drawn.
 */
import type { Vector } from '../contract/geometry.ts';

/** The slope around a dent: half its depth about this far away [m]. */
const SLOPE_M = 0.017;

/** Corner pairs of a box whose corners are numbered by the bits of their signs. */
const EDGES: readonly (readonly [number, number])[] = [
  [0, 1],
  [2, 3],
  [4, 5],
  [6, 7],
  [0, 2],
  [1, 3],
  [4, 6],
  [5, 7],
  [0, 4],
  [1, 5],
  [2, 6],
  [3, 7],
];

export class PadDent {
  readonly columns: number;
  readonly rows: number;
  /** Height of the top at each node, row after row from the back [m]. */
  readonly heights: Float32Array;
  readonly width: number;
  readonly depth: number;
  /** Pressing pieces of the housing's edges: from (x, y, z) along (dx, dy, dz), and 1 over its squared length in plan. */
  readonly #pieces = new Float64Array((EDGES.length + 8) * 7);
  /** Attitude as a matrix's rows, and the centre. */
  readonly #line = new Float64Array(9);
  readonly #flat: number;
  #pressed = false;

  constructor(width: number, depth: number, columns: number, rows: number) {
    this.width = width;
    this.depth = depth;
    this.columns = columns;
    this.rows = rows;
    this.heights = new Float32Array(columns * rows);
    // Around a pressing point the top is flat for more than a cell, so that it meets the point itself.
    this.#flat = 1.01 * Math.hypot(width / (columns - 1), depth / (rows - 1));
  }

  nodeX(column: number): number {
    return (column / (this.columns - 1) - 0.5) * this.width;
  }

  nodeZ(row: number): number {
    return (row / (this.rows - 1) - 0.5) * this.depth;
  }

  /**
   * Corners of the housing about the pad's centre [m]; position and attitude likewise. Returns whether
   * the top changed.
   */
  press(corners: Float64Array, position: Vector, attitude: ArrayLike<number>, size: Vector): boolean {
    const count = this.#gather(corners);
    if (count === 0) {
      if (!this.#pressed) return false;
      this.heights.fill(0);
      this.#pressed = false;
      return true;
    }
    this.#pressed = true;
    const pieces = this.#pieces;
    const flat = this.#flat;
    const reach = Math.sqrt(size[0] * size[0] + size[1] * size[1] + size[2] * size[2]) / 2;
    this.#aimLine(attitude);
    for (let row = 0; row < this.rows; row++) {
      const z = this.nodeZ(row);
      for (let column = 0; column < this.columns; column++) {
        const x = this.nodeX(column);
        let height = 0;
        for (let at = 0; at < count * 7; at += 7) {
          const px = x - pieces[at]!;
          const pz = z - pieces[at + 2]!;
          const dx = pieces[at + 3]!;
          const dz = pieces[at + 5]!;
          let share = (px * dx + pz * dz) * pieces[at + 6]!;
          share = Math.max(0, Math.min(1, share));
          const ex = px - share * dx;
          const ez = pz - share * dz;
          const away = Math.sqrt(ex * ex + ez * ez) - flat;
          const near = away > 0 ? 1 / (1 + (away * away) / (SLOPE_M * SLOPE_M)) : 1;
          const low = (pieces[at + 1]! + share * pieces[at + 4]!) * near * near;
          if (low < height) height = low;
        }
        const ox = x - position[0];
        const oz = z - position[2];
        if (ox * ox + oz * oz < reach * reach) {
          const under = this.#underside(ox, -position[1], oz, size);
          if (under < height) height = under;
        }
        this.heights[row * this.columns + column] = height;
      }
    }
    return true;
  }

  /** Height of the drawn top under a place [m about the pad's centre]; 0 beyond its edge. */
  heightAt(x: number, z: number): number {
    const u = (x / this.width + 0.5) * (this.columns - 1);
    const v = (z / this.depth + 0.5) * (this.rows - 1);
    if (!(u >= 0 && v >= 0 && u <= this.columns - 1 && v <= this.rows - 1)) return 0;
    const column = Math.min(Math.floor(u), this.columns - 2);
    const row = Math.min(Math.floor(v), this.rows - 2);
    const at = row * this.columns + column;
    const a = this.heights[at]!;
    const b = this.heights[at + 1]!;
    const c = this.heights[at + this.columns]!;
    const d = this.heights[at + this.columns + 1]!;
    const s = u - column;
    const t = v - row;
    // Two triangles a cell, parted along b–c, as the mesh has them.
    return s + t <= 1 ? a + s * (b - a) + t * (c - a) : d + (1 - s) * (c - d) + (1 - t) * (b - d);
  }

  /** The pieces of the housing's edges below y = 0, and its corners there. */
  #gather(corners: Float64Array): number {
    let count = 0;
    const add = (x: number, y: number, z: number, dx: number, dy: number, dz: number): void => {
      const plan = dx * dx + dz * dz;
      this.#pieces.set([x, y, z, dx, dy, dz, plan > 1e-12 ? 1 / plan : 0], count * 7);
      count++;
    };
    for (let corner = 0; corner < 8; corner++) {
      const y = corners[corner * 3 + 1]!;
      if (y < 0) add(corners[corner * 3]!, y, corners[corner * 3 + 2]!, 0, 0, 0);
    }
    if (count === 0) return 0;
    for (const [a, b] of EDGES) {
      const low = corners[a * 3 + 1]! < corners[b * 3 + 1]! ? a : b;
      const high = low === a ? b : a;
      const y0 = corners[low * 3 + 1]!;
      if (y0 >= 0) continue;
      const y1 = corners[high * 3 + 1]!;
      const share = y1 > 0 ? y0 / (y0 - y1) : 1;
      const dx = (corners[high * 3]! - corners[low * 3]!) * share;
      const dz = (corners[high * 3 + 2]! - corners[low * 3 + 2]!) * share;
      add(corners[low * 3]!, y0, corners[low * 3 + 2]!, dx, (y1 - y0) * share, dz);
    }
    return count;
  }

  /** The rotation room → housing, row by row. */
  #aimLine(attitude: ArrayLike<number>): void {
    const x = -attitude[0]!;
    const y = -attitude[1]!;
    const z = -attitude[2]!;
    const w = attitude[3]!;
    const line = this.#line;
    line[0] = 1 - 2 * (y * y + z * z);
    line[1] = 2 * (x * y - w * z);
    line[2] = 2 * (x * z + w * y);
    line[3] = 2 * (x * y + w * z);
    line[4] = 1 - 2 * (x * x + z * z);
    line[5] = 2 * (y * z - w * x);
    line[6] = 2 * (x * z - w * y);
    line[7] = 2 * (y * z + w * x);
    line[8] = 1 - 2 * (x * x + y * y);
  }

  /** Height at which an upright line through a place (from the housing's centre) meets the housing from below; +∞ beside it. */
  #underside(px: number, py: number, pz: number, size: Vector): number {
    const line = this.#line;
    let enter = Number.NEGATIVE_INFINITY;
    let leave = Number.POSITIVE_INFINITY;
    for (let side = 0; side < 3; side++) {
      const row = side * 3;
      const origin = line[row]! * px + line[row + 1]! * py + line[row + 2]! * pz;
      const along = line[row + 1]!;
      const half = size[side]! / 2;
      if (along < 1e-9 && along > -1e-9) {
        if (origin > half || origin < -half) return Number.POSITIVE_INFINITY;
        continue;
      }
      const a = (-half - origin) / along;
      const b = (half - origin) / along;
      const first = Math.min(a, b);
      const last = Math.max(a, b);
      if (first > enter) enter = first;
      if (last < leave) leave = last;
    }
    return enter <= leave ? enter : Number.POSITIVE_INFINITY;
  }
}
