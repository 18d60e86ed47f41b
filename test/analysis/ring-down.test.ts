/**
 * Against test/reference/ring_down.json: closed-form ring-downs computed with NumPy and SciPy, clean and with noise from a
 * stated generator.
 */
import { describe, expect, it } from 'vitest';
import { ringDown } from '../../src/analysis/ring-down.ts';
import type { Series } from '../../src/analysis/series.ts';
import reference from '../reference/ring_down.json' with { type: 'json' };

const series = (values: readonly number[], rateHz: number): Series => ({
  startS: 0,
  rateHz,
  values: Float64Array.from(values),
});

describe.each(reference.linear.cases)('a ring-down of $f0_hz Hz with ζ = $zeta', (ring) => {
  it('clean, gives frequency, decrement, damping and natural frequency to 1e-10', () => {
    const found = ringDown(series(ring.clean, ring.fs_hz))!;
    // The reference is written with twelve digits.
    expect(Math.abs(found.frequencyHz / ring.fd_hz - 1)).toBeLessThan(1e-10);
    expect(Math.abs(found.decrement / ring.log_decrement - 1)).toBeLessThan(1e-10);
    expect(Math.abs(found.dampingRatio / ring.zeta - 1)).toBeLessThan(1e-10);
    expect(Math.abs(found.naturalFrequencyHz / ring.f0_hz - 1)).toBeLessThan(1e-10);
    expect(Math.abs(found.level)).toBeLessThan(1e-12 * ring.x0);
  });

  it('with an offset and noise of up to 4 % of its first swing, gives them within four standard errors', () => {
    const { values, offset, noise_peak_to_peak: noise } = ring.noisy;
    const found = ringDown(series(values, ring.fs_hz))!;
    // Uniform noise has the standard deviation s = width/√12. From the Fisher information of A·e^(−σt)·cos(ωt + φ), all
    // four unknown, in a record much longer than 1/σ: sd(σ) = sd(ω) = 2σ·(s/A)·√(2/n), n = rate/(2σ).
    const spread = noise / Math.sqrt(12) / ring.x0;
    const sigma = 2 * Math.PI * ring.f0_hz * ring.zeta;
    const samples = Math.min(ring.clean.length, ring.fs_hz / (2 * sigma));
    const error = 4 * 2 * spread * Math.sqrt(2 / samples);
    expect(Math.abs(found.dampingRatio / ring.zeta - 1)).toBeLessThan(error);
    expect(Math.abs(found.frequencyHz / ring.fd_hz - 1)).toBeLessThan(error);
    expect(Math.abs(found.level - offset)).toBeLessThan(4 * (noise / Math.sqrt(12 * samples)));
    expect(Math.abs(found.residual / (noise / Math.sqrt(12)) - 1)).toBeLessThan(0.1);
  });
});

describe('what is no ring-down is not taken for one', () => {
  const swing = (k: number) => Math.sin(0.3 * k) * Math.exp(-0.02 * k);
  it.each([
    ['a straight line', (k: number) => 0.1 * k],
    ['a creep without a swing', (k: number) => Math.exp(-0.05 * k)],
    ['a single hump', (k: number) => Math.exp(-((k - 100) * (k - 100)) / 800)],
    ['rest', () => 1],
  ])('%s', (_, line) => {
    expect(
      ringDown(
        series(
          Array.from({ length: 200 }, (_value, k) => line(k)),
          100,
        ),
      ),
    ).toBeUndefined();
  });

  it('a ring that is struck anew halfway leaves a residual that tells', () => {
    const struck = Array.from({ length: 400 }, (_, k) => swing(k) + (k > 200 ? swing(k - 200) : 0));
    const clean = Array.from({ length: 400 }, (_, k) => swing(k));
    const found = ringDown(series(struck, 100));
    expect(found === undefined || found.residual > 0.05).toBe(true);
    expect(ringDown(series(clean, 100))!.residual).toBeLessThan(1e-12);
  });

  it('the start of the series does not matter, only its shape', () => {
    const values = Array.from({ length: 300 }, (_, k) => 3 + swing(k));
    const early = ringDown(series(values, 100))!;
    const late = ringDown({ ...series(values, 100), startS: 12.345 })!;
    expect(late).toEqual(early);
    expect(Math.abs(early.level - 3)).toBeLessThan(1e-12);
  });
});
