/** Against test/reference/frequency_response.json: gain and phase from the transfer function, computed with NumPy. */
import { describe, expect, it } from 'vitest';
import type { Series } from '../../src/analysis/series.ts';
import { principalAngle, steadySine } from '../../src/analysis/steady-sine.ts';
import { oscillatorStep, STEP_NUMBERS } from '../../src/numerics/oscillator.ts';
import reference from '../reference/frequency_response.json' with { type: 'json' };

const F0 = 8;
const RATE = 2000;

const sine = (values: Float64Array, startS = 0): Series => ({ startS, rateHz: RATE, values });

describe('the sine nearest to a line', () => {
  it('finds mean, amplitude and phase of a pure one to rounding', () => {
    const values = Float64Array.from(
      { length: 1234 },
      (_, k) => 0.3 + 2 * Math.sin(2 * Math.PI * 7.3 * (1.5 + k / RATE) + 0.9),
    );
    const fit = steadySine(sine(values, 1.5), 7.3);
    expect(Math.abs(fit.mean - 0.3)).toBeLessThan(1e-12);
    expect(Math.abs(fit.amplitude - 2)).toBeLessThan(1e-12);
    expect(Math.abs(fit.phaseRad - 0.9)).toBeLessThan(1e-12);
  });

  it('over whole periods is deaf to other multiples', () => {
    const values = Float64Array.from(
      { length: 2000 },
      (_, k) => Math.sin((2 * Math.PI * 5 * k) / RATE) + Math.sin((2 * Math.PI * 11 * k) / RATE),
    );
    expect(Math.abs(steadySine(sine(values), 5).amplitude - 1)).toBeLessThan(1e-12);
    expect(steadySine(sine(values), 7).amplitude).toBeLessThan(1e-12);
  });
});

/** The steady response −ω²x of an oscillator to f = sin, and f, by its exact step; the transient has died away. */
function response(zeta: number, ratio: number): { readonly output: Series; readonly input: Series } {
  const omega = 2 * Math.PI * F0;
  const drive = 2 * Math.PI * F0 * ratio;
  const h = 1 / RATE;
  const [i0, i0slope, i1, i2, i3] = stepOf(omega, zeta, h);
  const settle = Math.ceil((30 / (zeta * omega)) * RATE);
  const keep = Math.round((4 / (F0 * ratio)) * RATE);
  const output = new Float64Array(keep);
  const input = new Float64Array(keep);
  let x = 0;
  let v = 0;
  for (let k = 0; k < settle + keep; k += 1) {
    if (k >= settle) {
      output[k - settle] = -omega * omega * x;
      input[k - settle] = Math.sin(drive * k * h);
    }
    const [f0, fm, f1] = [k, k + 0.5, k + 1].map((at) => Math.sin(drive * at * h)) as [number, number, number];
    const slope = (-3 * f0 + 4 * fm - f1) / h;
    const curve = (4 * (f0 - 2 * fm + f1)) / (h * h);
    const g0 = f0 + omega * omega * x;
    const next = x + v * i0! - g0 * i1! - slope * i2! - curve * i3!;
    v = v + v * i0slope! - g0 * i0! - slope * i1! - curve * i2!;
    x = next;
  }
  return { output: sine(output, settle * h), input: sine(input, settle * h) };
}

function stepOf(omega: number, zeta: number, h: number): Float64Array {
  const numbers = new Float64Array(STEP_NUMBERS);
  oscillatorStep(omega, zeta, h, numbers, 0);
  return numbers;
}

describe('gain and phase of a driven oscillator', () => {
  const cases = reference.rows
    .map(([zeta, ratio, gain, phase]) => ({ zeta: zeta!, ratio: ratio!, gain: gain!, phase: phase! }))
    .filter(({ zeta, ratio }) => [0.05, 0.3, 0.7, 1].includes(zeta) && [0.1, 0.5, 0.95, 1, 1.5, 3].includes(ratio));

  it('has the cases', () => expect(cases.length).toBe(24));

  it.each(cases)('ζ = $zeta at $ratio of its natural frequency', ({ zeta, ratio, gain, phase }) => {
    const { output, input } = response(zeta, ratio);
    const out = steadySine(output, F0 * ratio);
    const into = steadySine(input, F0 * ratio);
    // The parabola through a sine errs by (Ωh)⁴/… < 1e-6 at 75 steps a period and more.
    expect(Math.abs(out.amplitude / into.amplitude / gain - 1)).toBeLessThan(1e-6);
    const degrees = (principalAngle(out.phaseRad - into.phaseRad) * 180) / Math.PI;
    expect(Math.abs(degrees - phase)).toBeLessThan(1e-3);
  });

  it('an angle is brought within half a turn', () => {
    for (const turns of [-3, -1, 0, 2]) expect(principalAngle(0.5 + 2 * Math.PI * turns)).toBeCloseTo(0.5, 12);
    expect(Math.abs(principalAngle(4))).toBeLessThanOrEqual(Math.PI);
  });
});
