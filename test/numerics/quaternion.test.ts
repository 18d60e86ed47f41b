import { describe, expect, it } from 'vitest';
import {
  fromAxisAngle,
  fromRotationVector,
  multiply,
  normalize,
  quaternion,
  rotate,
  rotateBack,
  toMatrix,
  toRotationVector,
  turnBetween,
} from '../../src/numerics/quaternion.ts';
import { norm, vector } from '../../src/numerics/vector.ts';

const DEGREE = Math.PI / 180;

/** Largest difference of components. */
function apart(a: ArrayLike<number>, b: ArrayLike<number>): number {
  return Math.max(...Array.from(a, (x, i) => Math.abs(x - b[i]!)));
}

function turned(axis: readonly number[], degrees: number): Float64Array {
  const q = quaternion();
  fromAxisAngle(axis, degrees * DEGREE, q);
  return q;
}

describe('attitudes', () => {
  it('a quarter turn about z takes x to y, and the other way back', () => {
    const q = turned([0, 0, 1], 90);
    const out = vector();
    rotate(q, [1, 0, 0], out);
    expect(apart(out, [0, 1, 0])).toBeLessThan(3e-16);
    rotateBack(q, out, out);
    expect(apart(out, [1, 0, 0])).toBeLessThan(5e-16);
  });

  it('agrees with the rotation matrix of Rodrigues, R = I + sin θ [e]× + (1 − cos θ)[e]×²', () => {
    const e = [2 / 7, 3 / 7, -6 / 7] as const;
    const angle = 40 * DEGREE;
    const k = [
      [0, -e[2], e[1]],
      [e[2], 0, -e[0]],
      [-e[1], e[0], 0],
    ] as const;
    const matrix = new Float64Array(9);
    toMatrix(turned(e, 40), matrix);
    for (let i = 0; i < 3; i++) {
      for (let j = 0; j < 3; j++) {
        const square = k[i]![0]! * k[0]![j]! + k[i]![1]! * k[1]![j]! + k[i]![2]! * k[2]![j]!;
        const expected = (i === j ? 1 : 0) + Math.sin(angle) * k[i]![j]! + (1 - Math.cos(angle)) * square;
        expect(Math.abs(matrix[3 * i + j]! - expected)).toBeLessThan(4e-16);
      }
    }
  });

  it('a product turns by the right factor first', () => {
    const product = quaternion();
    multiply(turned([0, 1, 0], 90), turned([1, 0, 0], 90), product);
    const out = vector();
    rotate(product, [0, 1, 0], out); // about x: y → z; about y: z → x
    expect(apart(out, [1, 0, 0])).toBeLessThan(5e-16);
  });

  it('the turn between two attitudes leads from the one to the other', () => {
    const from = turned([0.6, 0.8, 0], 130);
    const to = turned([0, -0.6, 0.8], 25);
    const between = quaternion();
    turnBetween(from, to, between);
    multiply(between, from, between);
    expect(apart(between, to)).toBeLessThan(4e-16);
  });

  it('rotation vectors go there and back, over nine decades and near half a turn', () => {
    const q = quaternion();
    const back = vector();
    for (const angle of [0, 1e-9, 1e-4, 0.3, 2, Math.PI - 1e-6]) {
      const turn = [(2 / 7) * angle, (-3 / 7) * angle, (6 / 7) * angle];
      fromRotationVector(turn, q);
      expect(Math.abs(norm(q.subarray(0, 3)) ** 2 + q[3]! ** 2 - 1)).toBeLessThan(5e-16);
      toRotationVector(q, back);
      // the sine of half the angle keeps its relative accuracy: 4 ulp of the angle
      expect(apart(back, turn)).toBeLessThanOrEqual(4 * 2.2e-16 * angle);
    }
  });

  it('of two ways round the rotation vector takes the shorter', () => {
    const back = vector();
    toRotationVector(turned([0, 0, 1], 270), back);
    expect(apart(back, [0, 0, -90 * DEGREE])).toBeLessThan(1e-15);
    toRotationVector(quaternion(0, 0, 0, -1), back);
    expect(norm(back)).toBe(0);
  });

  it('normalising keeps the turn and restores the length', () => {
    const q = Float64Array.from([1, 2, 2, 4]);
    normalize(q);
    expect(Array.from(q)).toEqual([0.2, 0.4, 0.4, 0.8]);
  });
});
