import { describe, expect, it } from 'vitest';
import { addScaled, cross, dot, norm, scale, vector } from '../../src/numerics/vector.ts';

describe('vectors', () => {
  const a = vector(1, -2, 3);
  const b = vector(0.5, 4, -1);
  const out = vector();

  it('a cross product stands square on both factors and follows the right hand', () => {
    cross(a, b, out);
    expect(Array.from(out)).toEqual([2 - 12, 1.5 + 1, 4 + 1]);
    expect(dot(out, a)).toBe(0);
    expect(dot(out, b)).toBe(0);
    cross([1, 0, 0], [0, 1, 0], out);
    expect(Array.from(out)).toEqual([0, 0, 1]);
  });

  it('an output may be an input', () => {
    const c = vector(1, -2, 3);
    cross(c, b, c);
    expect(Array.from(c)).toEqual([-10, 2.5, 5]);
    addScaled(c, 2, c, c);
    expect(Array.from(c)).toEqual([-30, 7.5, 15]);
    scale(-1, c, c);
    expect(Array.from(c)).toEqual([30, -7.5, -15]);
  });

  it('the 2, 3, 6 box has a diagonal of 7', () => {
    expect(norm([2, 3, 6])).toBe(7);
  });
});
