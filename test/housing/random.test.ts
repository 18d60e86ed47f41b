import { describe, expect, it } from 'vitest';
import { phase } from '../../src/housing/phase.ts';
import { EasedRandom, SINES } from '../../src/housing/shake-random.ts';

const BAND = { density: 0.3, fromFrequency: 20, toFrequency: 84, ease: 0.25 };
/** 1/Δf: over so long every two sines of the sum are orthogonal, half-bin offsets included, as 20/Δf is whole. */
const PERIOD_S = SINES / (BAND.toFrequency - BAND.fromFrequency);
/** More than twice the highest frequency. */
const SAMPLES = 4096;

function samples(law: EasedRandom, what: 'value' | 'rate' | 'acceleration'): Float64Array {
  return Float64Array.from({ length: SAMPLES }, (_, n) => {
    const t = 1 + (n * PERIOD_S) / SAMPLES;
    law.at(t, t, true);
    return law[what];
  });
}

function meanSquare(x: Float64Array): number {
  return x.reduce((sum, value) => sum + value * value, 0) / x.length;
}

describe('shaken at random', () => {
  const law = new EasedRandom(BAND, 7, 0);

  it('the mean square is density times bandwidth, in every run', () => {
    const expected = BAND.density * (BAND.toFrequency - BAND.fromFrequency);
    expect(Math.abs(meanSquare(samples(law, 'acceleration')) / expected - 1)).toBeLessThan(1e-11);
  });

  it('so it is in every single bin, for acceleration, and with 1/Ω and 1/Ω² for speed and place', () => {
    const a = samples(law, 'acceleration');
    const v = samples(law, 'rate');
    const s = samples(law, 'value');
    const step = 1 / PERIOD_S;
    for (const bin of [0, 1, 500, 1023]) {
      const omega = 2 * Math.PI * (BAND.fromFrequency + (bin + 0.5) * step);
      const amplitude = (x: Float64Array): number => {
        let re = 0;
        let im = 0;
        x.forEach((value, n) => {
          const angle = omega * (1 + (n * PERIOD_S) / SAMPLES);
          re += value * Math.cos(angle);
          im += value * Math.sin(angle);
        });
        return (2 / SAMPLES) * Math.sqrt(re * re + im * im);
      };
      const expected = Math.sqrt(2 * BAND.density * step);
      expect(Math.abs(amplitude(a) / expected - 1)).toBeLessThan(1e-9);
      expect(Math.abs((amplitude(v) * omega) / expected - 1)).toBeLessThan(1e-9);
      expect(Math.abs((amplitude(s) * omega * omega) / expected - 1)).toBeLessThan(1e-9);
    }
  });

  it('starts at rest and from its place, and is all there after the easing', () => {
    law.at(0, 0.001, true);
    expect([law.value, law.rate, law.acceleration].map(Math.abs)).toEqual([0, 0, 0]);
    law.at(0.25, 0.24, true);
    const { value, rate, acceleration } = law;
    law.at(0.25, 0.26, true);
    expect([law.value, law.rate]).toEqual([value, rate]);
    expect(Math.abs(law.acceleration - acceleration)).toBeLessThan(1e-15);
  });

  it('asked for the acceleration alone gives the same bits', () => {
    const alone = new EasedRandom(BAND, 7, 0);
    for (const t of [0.1, 0.9, 3.7]) {
      law.at(t, t, true);
      alone.at(t, t, false);
      expect(alone.acceleration).toBe(law.acceleration);
    }
  });

  it('is another pattern for another seed and another start, the same for the same', () => {
    const at = (seed: number, startS: number): number => {
      const other = new EasedRandom(BAND, seed, startS);
      other.at(0.8, 0.8, true);
      return other.acceleration;
    };
    expect(at(7, 0)).toBe(at(7, 0));
    expect(new Set([at(7, 0), at(8, 0), at(7, 0.5), at(2 ** 32 - 1, 0)]).size).toBe(4);
  });

  it('phases are evenly spread: χ² of 64 classes, 65 536 phases of seed 3, and of neighbouring pairs', () => {
    const count = 65_536;
    const single = new Float64Array(64);
    const pairs = new Float64Array(64);
    for (let n = 0; n < count; n++) {
      const u = phase(3, 0.5, n) / (2 * Math.PI);
      const next = phase(3, 0.5, n + 1) / (2 * Math.PI);
      expect(u >= 0 && u < 1).toBe(true);
      single[Math.floor(64 * u)]! += 1;
      pairs[8 * Math.floor(8 * u) + Math.floor(8 * next)]! += 1;
    }
    for (const classes of [single, pairs]) {
      const chiSquare = classes.reduce((sum, found) => sum + (found - count / 64) ** 2 / (count / 64), 0);
      // 63 degrees of freedom: 0.1 % and 99.9 % points 32.9 and 103.4 (any table of χ², from memory)
      expect(chiSquare).toBeGreaterThan(32.9);
      expect(chiSquare).toBeLessThan(103.4);
    }
  });
});
