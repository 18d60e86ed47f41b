import { describe, expect, it } from 'vitest';
import { bracketedRoot, firstFall, risingCubicRoot } from '../../src/numerics/root.ts';

describe('a bracketed root', () => {
  const cases: [string, (x: number) => number, number, number, number, number][] = [
    // name, function, bracket, root, calls: measured, with a third to spare
    ['of cos x = x (0.739085133215160642, from memory)', (x) => Math.cos(x) - x, 0, 1, 0.7390851332151607, 12],
    ['of x³ = 2', (x) => x * x * x - 2, 0, 2, Math.cbrt(2), 17],
    ['of a flat one, x⁹ = 1e-9', (x) => x ** 9 - 1e-9, 0, 1, 0.1, 41],
    ['of a jump', (x) => (x < 0.3 ? -1 : 1), 0, 1, 0.3, 84],
    ['in a bracket that runs backward', (x) => x * x - 2, 2, 1, Math.SQRT2, 14],
  ];
  for (const [name, value, a, b, root, most] of cases) {
    it(`${name}: to 2^-51 of its size`, () => {
      let calls = 0;
      const found = bracketedRoot(
        (x) => {
          calls += 1;
          return value(x);
        },
        a,
        b,
      );
      expect(Math.abs(found - root)).toBeLessThanOrEqual(4 * Number.EPSILON * Math.abs(root));
      expect(calls).toBeLessThanOrEqual(most);
    });
  }

  it('at an end is that end', () => {
    expect(bracketedRoot((x) => x, 0, 1)).toBe(0);
    expect(bracketedRoot((x) => x - 1, 0, 1)).toBe(1);
  });
});

it('the rising cubic a·x + c·x³ = r is solved to rounding, on both sides of 0', () => {
  for (const r of [-7, 1e-9, 3, 4e8]) {
    const x = risingCubicRoot(2, 3, r);
    expect(Math.abs(2 * x + 3 * x ** 3 - r)).toBeLessThan(8 * Number.EPSILON * Math.abs(r));
  }
  expect(risingCubicRoot(2, 0, 7)).toBe(3.5);
  expect(risingCubicRoot(2, 3, 0)).toBe(0);
});

describe('the first fall of a parabola below 0', () => {
  it('is at its first downward crossing', () => {
    expect(firstFall(2, -3, 1, 10)).toBe(1); // (t − 1)(t − 2)
    expect(firstFall(6, 1, -1, 10)).toBe(3); // (3 − t)(2 + t)
    expect(firstFall(4, -2, 0, 10)).toBe(2);
    expect(firstFall(0, -1, 0, 10)).toBe(0);
    expect(firstFall(0, 1, -1, 10)).toBe(1);
    expect(firstFall(0, 0, -1, 10)).toBe(0);
    expect(firstFall(-1, 5, 0, 10)).toBe(0);
  });

  it('is none where it only touches, rises, crosses later, or crossed before', () => {
    expect(firstFall(1, -2, 1, 10)).toBe(-1);
    expect(firstFall(1, 1, 1, 10)).toBe(-1);
    expect(firstFall(4, -2, 0, 2)).toBe(-1);
    expect(firstFall(2, 3, 1, 10)).toBe(-1);
  });

  it('keeps a far root of a nearly straight parabola', () => {
    // 1 − t + 1e-20 t²: the textbook formula's subtraction gives 0
    expect(firstFall(1, -1, 1e-20, 10)).toBe(1);
  });
});
