import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { Converter } from '../../src/readout/converter.ts';
import { G_N } from '../../src/units/standard-gravity.ts';

interface QuantisingCase {
  readonly full_scale_g: number;
  readonly bits: number;
  readonly gain: number;
  readonly offset_m_per_s2: number;
  readonly lsb_m_per_s2: number;
  readonly f_m_per_s2: readonly number[];
  readonly code: readonly number[];
  readonly value_m_per_s2: readonly number[];
}

// Computed with NumPy, printed to 12 digits, every f at least 1e-6 step away from the edge of a step.
const { quantising } = JSON.parse(readFileSync(new URL('../reference/readout.json', import.meta.url), 'utf8')) as {
  readonly quantising: { readonly cases: readonly QuantisingCase[] };
};

describe('converter', () => {
  it.each(quantising.cases)('±$full_scale_g g in $bits bits gives the codes computed elsewhere', (given) => {
    const converter = new Converter({ rate: 1, range: given.full_scale_g * G_N, bits: given.bits });
    expect(given.f_m_per_s2.length).toBeGreaterThan(7);
    expect(Math.abs(converter.lsbMS2 / given.lsb_m_per_s2 - 1)).toBeLessThan(1e-11);
    const ends = [-(2 ** (given.bits - 1)), 2 ** (given.bits - 1) - 1];
    for (const [n, f] of given.f_m_per_s2.entries()) {
      const input = given.gain * f + given.offset_m_per_s2;
      expect(converter.convert(input)).toBe(given.code[n]! * converter.lsbMS2);
      expect(Math.abs(converter.convert(input) - given.value_m_per_s2[n]!)).toBeLessThanOrEqual(
        1e-11 * Math.abs(given.value_m_per_s2[n]!),
      );
      // The same in g_n: two roundings more than the value in m/s².
      const valueG = converter.convert(input) / G_N;
      expect(Math.abs(converter.convertToG(input) - valueG)).toBeLessThanOrEqual(2 * Number.EPSILON * Math.abs(valueG));
      expect(converter.clipped(input)).toBe(ends.includes(given.code[n]!));
    }
  });

  // W. R. Bennett, "Spectra of Quantized Signals", Bell System Technical Journal 27 (1948) 446: lsb²/12.
  it('errs by lsb/√12 on a fine ramp', () => {
    const converter = new Converter({ rate: 1, range: 2 * G_N, bits: 10 });
    const count = 200_000;
    let sum = 0;
    for (let n = 0; n < count; n += 1) {
      const f = ((n + 0.5) / count - 0.5) * 3.8 * G_N;
      sum += ((converter.convert(f) - f) / converter.lsbMS2) ** 2;
    }
    // 973 steps, the broken ones at the ends and 206 points a step: 1/206² of a step and 1/973 of the sum.
    expect(Math.abs(Math.sqrt(sum / count) * Math.sqrt(12) - 1)).toBeLessThan(1e-3);
  });

  it('rounds the edge of a step upward on both sides of zero', () => {
    const converter = new Converter({ rate: 1, range: 8, bits: 4 }); // lsb 1
    expect([0.5, -0.5, 1.5, -1.5, 0.49999, -0.50001].map((f) => converter.convert(f))).toEqual([1, 0, 2, -1, 0, -1]);
    expect(Object.is(converter.convert(-0.25), 0)).toBe(true);
  });

  it('reaches −range but stops one step below +range, and says so', () => {
    const converter = new Converter({ rate: 1, range: 8, bits: 4 });
    expect([-100, -8, -7.4, 6.4, 6.6, 8, 100].map((f) => converter.convert(f))).toEqual([-8, -8, -7, 6, 7, 7, 7]);
    expect([-100, -8, -7.4, 6.4, 6.6, 8, 100].map((f) => converter.clipped(f))).toEqual([
      true,
      true,
      false,
      false,
      true,
      true,
      true,
    ]);
  });

  it('with a range of whole g_n reports whole fractions of g_n', () => {
    const converter = new Converter({ rate: 1, range: 4 * G_N, bits: 12 });
    const codes = Array.from({ length: 4096 }, (_, n) => n - 2048);
    expect(codes.map((code) => converter.convertToG((code + 0.1) * converter.lsbMS2))).toEqual(
      codes.map((code) => code / 512),
    );
  });

  it('takes as many bits as a double holds', () => {
    const converter = new Converter({ rate: 1, range: 1, bits: 32 });
    expect(converter.lsbMS2).toBe(2 ** -31);
    expect(converter.convert(0.1)).toBe(Math.floor(0.1 * 2 ** 31 + 0.5) / 2 ** 31);
  });

  it('with a range alone clips and leaves the rest as it is', () => {
    const converter = new Converter({ rate: 1, range: 20 });
    expect([-30, -20, -0.1234567890123, 20, 21].map((f) => converter.convert(f))).toEqual([
      -20, -20, -0.1234567890123, 20, 20,
    ]);
    expect([-30, -20, -19.999, 0, 20].map((f) => converter.clipped(f))).toEqual([true, true, false, false, true]);
  });

  it('without range and bits passes everything through', () => {
    const converter = new Converter({ rate: 1 });
    for (const f of [0, -1e9, 1e9, 0.1234567890123]) {
      expect(converter.convert(f)).toBe(f);
      expect(converter.clipped(f)).toBe(false);
    }
  });
});
