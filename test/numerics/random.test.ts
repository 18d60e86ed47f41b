import { describe, expect, it } from 'vitest';
import { gaussianAt, gaussianPairAt, philox } from '../../src/numerics/random.ts';

describe('Philox4x32-10', () => {
  // Known answers published with the generator's reference code (from memory).
  const known = [
    [
      [0, 0, 0, 0],
      [0, 0],
      [0x6627e8d5, 0xe169c58d, 0xbc57ac4c, 0x9b00dbd8],
    ],
    [
      [0xffffffff, 0xffffffff, 0xffffffff, 0xffffffff],
      [0xffffffff, 0xffffffff],
      [0x408f276d, 0x41c83b0e, 0xa20bc7c6, 0x6d5451fd],
    ],
    [
      [0x243f6a88, 0x85a308d3, 0x13198a2e, 0x03707344],
      [0xa4093822, 0x299f31d0],
      [0xd16cfe09, 0x94fdcceb, 0x5001e420, 0x24126ea1],
    ],
  ] as const;
  it('gives its known answers', () => {
    for (const [counter, [key0, key1], answer] of known) {
      const block = Uint32Array.from(counter);
      philox(block, key0, key1);
      expect([...block]).toEqual([...answer]);
    }
  });
});

describe('normal deviates', () => {
  const N = 200_000;

  it('have mean 0, variance 1, kurtosis 3 and no lag-1 correlation, within 4 standard errors (seed 7, 200 000 of them)', () => {
    let mean = 0;
    let square = 0;
    let fourth = 0;
    let lag = 0;
    let last = 0;
    for (let n = 0; n < N; n += 1) {
      const value = gaussianAt(7, 3, n);
      mean += value / N;
      square += (value * value) / N;
      fourth += value ** 4 / N;
      lag += (value * last) / N;
      last = value;
    }
    // Standard errors of N normal deviates: 1, √2, √96 and 1, over √N.
    const root = Math.sqrt(N);
    expect(Math.abs(mean)).toBeLessThan(4 / root);
    expect(Math.abs(square - 1)).toBeLessThan((4 * Math.SQRT2) / root);
    expect(Math.abs(fourth - 3)).toBeLessThan((4 * Math.sqrt(96)) / root);
    expect(Math.abs(lag)).toBeLessThan(4 / root);
  });

  it('of a pair, of neighbouring streams, parts and seeds are independent, within 4 standard errors (seed 7, 50 000 of each)', () => {
    const out = new Float64Array(10);
    const sums = new Float64Array(5);
    const M = 50_000;
    for (let n = 0; n < M; n += 1) {
      gaussianPairAt(7, 3, n, 0, out, 0);
      gaussianPairAt(7, 4, n, 0, out, 2);
      gaussianPairAt(7, 3, n, 1, out, 4);
      gaussianPairAt(8, 3, n, 0, out, 6);
      gaussianPairAt(7, 3, n + 2 ** 32, 0, out, 8);
      sums[0]! += out[0]! * out[1]!;
      for (let other = 1; other < 5; other += 1) sums[other]! += out[0]! * out[2 * other]!;
    }
    for (const sum of sums) expect(Math.abs(sum)).toBeLessThan(4 * Math.sqrt(M));
  });

  it('are functions of their names: the same in any order, and after any others', () => {
    const forward = [0, 1, 2, 2 ** 40].map((n) => gaussianAt(1, 2, n));
    const backward = [2 ** 40, 2, 1, 0].map((n) => gaussianAt(1, 2, n)).reverse();
    expect(backward).toEqual(forward);
    expect(new Set(forward).size).toBe(4);
  });
});
