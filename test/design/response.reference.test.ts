/**
 * frequency_response.json, step_characteristics.json: textbook second-order formulas evaluated with NumPy (12 digits).
 * shock_spectrum.json: greatest |ω₀²x|/A under a half-sine by SciPy integrals (9 digits); its undamped maximum 1.7685 at
 * τ/T₀ = 0.81 is that of Harris' Shock and Vibration Handbook, chapter on transient response (from memory).
 */
import { describe, expect, it } from 'vitest';
import { flatUpTo, frequencies, halfPowerAt, Response } from '../../src/design/response.ts';
import response from '../reference/frequency_response.json' with { type: 'json' };
import shock from '../reference/shock_spectrum.json' with { type: 'json' };
import steps from '../reference/step_characteristics.json' with { type: 'json' };

const F0 = 20;
const W0 = 2 * Math.PI * F0;
const single = (dampingRatio: number) =>
  new Response({ naturalFrequency: F0, dampingRatio, modes: undefined, staticRemainder: 0 });

it('amplitude and phase over frequency', () => {
  for (const [zeta = 0, r = 0, gain = 0, phaseDeg = 0] of response.rows) {
    const found = single(zeta).atFrequency(r * F0);
    expect(found.gain / gain).toBeCloseTo(1, 9);
    expect((found.phaseRad * 180) / Math.PI).toBeCloseTo(phaseDeg, 7);
  }
});

it('the step’s overshoot and its instant', () => {
  for (const { zeta, percent_overshoot, peak_time_x_w0 } of steps.rows) {
    if (!(zeta < 1)) continue;
    expect(100 * (single(zeta).afterStep(peak_time_x_w0! / W0) - 1)).toBeCloseTo(percent_overshoot!, 8);
  }
});

it('the greatest reading under half-sines of every duration', () => {
  for (const [zeta = 0, ratio = 0, halfSine = 0] of shock.rows) {
    const durationS = ratio / F0;
    const answer = single(zeta);
    let most = 0;
    // To the peak within 1e-6 of itself: 20 000 looks over the pulse and 1.2 periods after it.
    for (let k = 0; k <= 20_000; k += 1) {
      const timeS = (k / 20_000) * (durationS + 1.2 / F0);
      most = Math.max(most, Math.abs(answer.afterHalfSine(durationS, timeS)));
    }
    expect(Math.abs(most / halfSine - 1)).toBeLessThan(1e-6);
  }
});

describe('bandwidths', () => {
  it('−3 dB of ζ = 1/√2 is the natural frequency, its 5 % and 1 % bands from |H|⁻² = 1 + r⁴', () => {
    // With ζ = 1/√2, |H| = (1 + r⁴)^(−1/2) (Butterworth): r = ((1/g)² − 1)^(1/4).
    const answer = single(Math.SQRT1_2);
    const band = (gain: number): number => F0 * (gain ** -2 - 1) ** 0.25;
    expect(halfPowerAt(answer, 0.1, 1000) / F0).toBeCloseTo(1, 9);
    expect(flatUpTo(answer, 0.05, 0.1, 1000) / band(0.95)).toBeCloseTo(1, 9);
    expect(flatUpTo(answer, 0.01, 0.1, 1000) / band(0.99)).toBeCloseTo(1, 9);
  });

  it('an undamped mass lags by half a turn beyond resonance, and a creeping one is true nowhere', () => {
    expect(single(0).atFrequency(2 * F0).phaseRad).toBeCloseTo(-Math.PI, 12);
    expect(flatUpTo(single(100), 0.01, 0.1, 1000)).toBe(0);
    expect(single(0.1).afterHalfSine(0.01, -0.001)).toBe(0);
  });

  it('an undamped mass is within 5 % up to r² = 1 − 1/1.05', () => {
    expect(flatUpTo(single(0), 0.05, 0.1, 1000) / (F0 * Math.sqrt(1 - 1 / 1.05))).toBeCloseTo(1, 9);
  });
});

it('several modes: still 1 at rest, and the sum of its parts', () => {
  const mode = (naturalFrequency: number, shape: number) => ({
    naturalFrequency,
    dampingRatio: 0.05,
    participation: 1.2,
    shape,
    modalMass: 1,
  });
  const answer = new Response({
    naturalFrequency: 20,
    dampingRatio: 0.05,
    modes: [mode(20, 1), mode(130, -0.4)],
    staticRemainder: 1e-7,
  });
  expect(answer.atFrequency(0).gain).toBeCloseTo(1, 12);
  expect(answer.afterStep(100)).toBeCloseTo(1, 12);
  const [low, high] = [answer.atFrequency(129).gain, answer.atFrequency(250).gain];
  expect(low).toBeGreaterThan(3 * high);
});

it('frequencies in equal ratios', () => {
  const list = frequencies(1, 1000, 4);
  expect([...list].map((f) => Math.round(f * 1e9) / 1e9)).toEqual([1, 10, 100, 1000]);
});
