import { describe, expect, it } from 'vitest';
import {
  smoothstep,
  smoothstepArea,
  smoothstepCurvature,
  smoothstepSecondArea,
  smoothstepSlope,
} from '../../src/numerics/smoothstep.ts';

describe('the quintic that eases', () => {
  it('runs from 0 to 1 with its middle at one half and nothing beyond', () => {
    expect([-1, 0, 0.5, 1, 2].map(smoothstep)).toEqual([0, 0, 0.5, 1, 1]);
    expect([-1, 0, 1, 2].map(smoothstepSlope)).toEqual([0, 0, 0, 0]);
    expect([-1, 0, 0.5, 1, 2].map(smoothstepCurvature)).toEqual([0, 0, 0, 0, 0]);
    expect(smoothstepSlope(0.5)).toBe(1.875);
  });

  it('equals 10u³ − 15u⁴ + 6u⁵ term by term', () => {
    for (const u of [0.1, 0.37, 0.8]) {
      expect(smoothstep(u)).toBeCloseTo(10 * u ** 3 - 15 * u ** 4 + 6 * u ** 5, 15);
    }
  });

  const chain = [
    ['S″ is the slope of S′', smoothstepSlope, smoothstepCurvature],
    ['S′ is the slope of S', smoothstep, smoothstepSlope],
    ['S is the slope of ∫S', smoothstepArea, smoothstep],
    ['∫S is the slope of ∫∫S', smoothstepSecondArea, smoothstepArea],
  ] as const;
  for (const [name, whole, slope] of chain) {
    it(name, () => {
      // central difference of step e: error e²/6 times a third derivative of at most 360, rounding 1e-16/e
      const e = 1e-5;
      for (const u of [-0.3, 0.05, 0.31, 0.5, 0.77, 0.95, 1.4]) {
        const difference = (whole(u + e) - whole(u - e)) / (2 * e);
        expect(Math.abs(difference - slope(u))).toBeLessThan(60 * e * e + 1e-10);
      }
    });
  }

  it('the integrals go on smoothly past the end', () => {
    expect(smoothstepArea(1)).toBe(0.5);
    expect(smoothstepSecondArea(1)).toBe(1 / 7);
    expect(smoothstepSecondArea(1 - 1e-9)).toBeCloseTo(1 / 7 - 0.5e-9, 15);
    expect(smoothstepSecondArea(3)).toBeCloseTo(1 / 7 + 3, 15);
  });
});
