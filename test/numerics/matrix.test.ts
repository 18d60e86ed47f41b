import { expect, it } from 'vitest';
import { apply, covarianceRoot, multiply, multiplyTransposed, solveByRoot } from '../../src/numerics/matrix.ts';

const A = Float64Array.of(1, 2, 3, 4);
const B = Float64Array.of(5, 6, 7, 8);

it('products are those worked out by hand', () => {
  const out = new Float64Array(4);
  multiply(2, A, B, out);
  expect([...out]).toEqual([19, 22, 43, 50]);
  multiplyTransposed(2, A, B, out);
  expect([...out]).toEqual([17, 23, 39, 53]);
  const vector = new Float64Array(2);
  apply(2, A, Float64Array.of(5, 6), vector);
  expect([...vector]).toEqual([17, 39]);
});

it('the root of a covariance squares to it, and solving by it undoes it', () => {
  const covariance = Float64Array.of(4, 2, 0.6, 2, 5, 1.5, 0.6, 1.5, 3);
  const root = new Float64Array(9);
  covarianceRoot(3, covariance, root);
  const back = new Float64Array(9);
  multiplyTransposed(3, root, root, back);
  for (let i = 0; i < 9; i += 1) expect(back[i]).toBeCloseTo(covariance[i]!, 14);
  const v = new Float64Array(3);
  apply(3, covariance, Float64Array.of(1, -2, 3), v);
  solveByRoot(3, root, v);
  expect(v[0]).toBeCloseTo(1, 13);
  expect(v[1]).toBeCloseTo(-2, 13);
  expect(v[2]).toBeCloseTo(3, 13);
});

it('a direction without spread gets none: the covariance of (u, 2u, w)', () => {
  const covariance = Float64Array.of(1, 2, 0, 2, 4, 0, 0, 0, 9);
  const root = new Float64Array(9);
  covarianceRoot(3, covariance, root);
  expect([...root]).toEqual([1, 0, 0, 2, 0, 0, 0, 0, 3]);
  const v = Float64Array.of(1, 2, 9);
  solveByRoot(3, root, v);
  expect([...v]).toEqual([1, 0, 1]);
});
