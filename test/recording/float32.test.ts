import { describe, expect, it } from 'vitest';
import { float32Down, float32Up, MAX_FLOAT32 } from '../../src/recording/float32.ts';
import { anySize, seeded } from './seeded.ts';

/** Half the distance from one 32-bit float to the next is less than this: 2⁻²⁴ of the value, or 2⁻¹⁵⁰ near zero. */
const halfStep = (value: number): number => Math.max(Math.abs(value) * 2 ** -24, 2 ** -150);

describe('rounding outward to 32 bits', () => {
  it('encloses every value between neighbours or hits it, seed 2', () => {
    const random = seeded(2);
    for (let n = 0; n < 20_000; n += 1) {
      const value = anySize(random);
      const low = float32Down(value);
      const high = float32Up(value);
      // Neighbours: nothing of 32 bits lies strictly between.
      const middle = Math.fround(low / 2 + high / 2);
      const right =
        Math.fround(low) === low &&
        Math.fround(high) === high &&
        low <= value &&
        value <= high &&
        (middle === low || middle === high) &&
        high - low <= 2 * halfStep(Math.max(Math.abs(low), Math.abs(high)));
      if (!right) expect.unreachable(`${value} between ${low} and ${high}`);
    }
  });

  it('leaves what 32 bits can hold as it is', () => {
    for (const value of [0, -0, 1, -9.5, 2 ** -149, -(2 ** -149), MAX_FLOAT32, -MAX_FLOAT32]) {
      expect(float32Down(value)).toBe(value);
      expect(float32Up(value)).toBe(value);
    }
  });

  it('steps over powers of two, zero and the subnormals', () => {
    // IEEE 754: 32-bit floats just below 1 lie 2⁻²⁴ apart, just above 2⁻²³; the smallest is 2⁻¹⁴⁹.
    expect(float32Down(1 - 1e-12)).toBe(1 - 2 ** -24);
    expect(float32Up(1 + 1e-12)).toBe(1 + 2 ** -23);
    expect(float32Up(1e-60)).toBe(2 ** -149);
    expect(float32Down(1e-60)).toBe(0);
    expect(float32Down(-1e-60)).toBe(-(2 ** -149));
    expect(Math.abs(float32Up(-1e-60))).toBe(0);
    expect(float32Up(MAX_FLOAT32 * (1 - 1e-12))).toBe(MAX_FLOAT32);
  });
});
