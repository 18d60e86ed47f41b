/**
 * Thermal noise of whole runs. mechanics.json, worked numbers: x_rms = √(k_BT/k), a_n = √(4k_BTω₀/(mQ)), T. B. Gabrielson,
 * "Mechanical-thermal noise in micromachined acoustic and vibration sensors", IEEE Trans. Electron Devices 40 (1993) 903–909
 * (located; formula from memory). All with seed 11; the limits are five standard errors of the estimates.
 */
import { describe, expect, it } from 'vitest';
import vectors from './mechanics.json' with { type: 'json' };
import { rowsOf, scenario } from './scenario-run.ts';

const worked = vectors.brownian.cases.slice(0, 3);
const LIMIT = 5;

function trembling(
  { m_kg, f0_hz, Q, T_K }: (typeof worked)[number],
  tick: number,
  rate: number,
  rows: number,
): Float64Array {
  const element = {
    name: 'e',
    axis: [1, 0, 0],
    naturalFrequency: f0_hz,
    dampingRatio: 1 / (2 * Q),
    mass: m_kg,
    thermalNoise: true,
  };
  return rowsOf(
    scenario({
      seed: 11,
      temperature: T_K,
      tick,
      duration: (rows - 1) / rate,
      record: { rate },
      elements: [element],
      motions: [{ kind: 'held', from: 0 }],
    }),
  ).column('e_deflection_m');
}

const mean = (values: ArrayLike<number>): number => {
  let sum = 0;
  for (let i = 0; i < values.length; i += 1) sum += values[i]!;
  return sum / values.length;
};

describe('equipartition: x_rms = √(kT/k)', () => {
  const ROWS = 1200;
  for (const c of worked) {
    // A tick of a hundredth of a period would make too many of them where the memory is long.
    it.for(c.Q > 2 ? [0.3, 7] : [0.01, 0.3, 7])(
      `${c.f0_hz} Hz, Q = ${c.Q.toFixed(2)}, ticks of %d periods`,
      (share) => {
        const tick = share / c.f0_hz;
        // Rows lie twice as far apart as the memory Q/(πf₀) of x, and not on ticks.
        const spacing = Math.max(tick * 1.37, (2 * c.Q) / (Math.PI * c.f0_hz));
        const x = trembling(c, tick, 1 / spacing, ROWS);
        const meanSquare = mean(x.map((value) => value * value));
        // Squares of nearly independent normal deviates have the variance 2σ⁴; what is left of the memory, e⁻⁴, adds less than a tenth.
        const limit = LIMIT * Math.sqrt((2 / ROWS) * 1.1);
        expect(Math.abs(meanSquare / c.x_rms_m_sqrt_kT_over_k ** 2 - 1)).toBeLessThan(limit);
      },
    );
  }
});

describe('what the noise is worth in acceleration', () => {
  it('1 µg, 3 kHz, Q = 1 at 300 K: 56.99 µg/√Hz one-sided, from the low end of the spectrum', () => {
    const c = worked[0]!;
    const rate = 2 * c.f0_hz;
    const blocks = 400;
    const perBlock = 150; // 25 ms against 1/(πf₀) = 0.1 ms of memory
    const x = trembling(c, 1 / 19_997, rate, blocks * perBlock);
    const w0 = 2 * Math.PI * c.f0_hz;
    const means = Array.from(
      { length: blocks },
      (_, b) => -w0 * w0 * mean(x.subarray(b * perBlock, (b + 1) * perBlock)),
    );
    // The mean over T of a noise of one-sided density S has variance S/2T, here less 1/(Q·ω₀T) for what the edges cut off.
    const density = 2 * (perBlock / rate) * mean(means.map((value) => value * value));
    expect(Math.abs(density / c.a_n_m_per_s2_per_rtHz ** 2 - 1)).toBeLessThan(LIMIT * Math.sqrt(2 / blocks));
    expect((c.a_n_m_per_s2_per_rtHz / 9.80665) * 1e6).toBeCloseTo(56.99, 2);
  });
});
