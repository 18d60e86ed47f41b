import { describe, expect, it } from 'vitest';
import { oscillatorStep, STEP_NUMBERS } from '../../src/numerics/oscillator.ts';

/** [ζ, ωτ, I_0, I_0′ − 1, I_1, I_2, I_3] at ω = 1, from the closed forms with 60 digits (mpmath 1.3.0). */
const SIXTY_DIGITS = [
  [0, 1e-8, 1e-8, -5e-17, 5e-17, 1.6666666666666668e-25, 4.166666666666667e-34],
  [0, 18.8, -0.04953564087836742, -0.0012276434127897757, 0.0012276434127897757, 18.84953564087837, 176.71877235658724],
  [0.01, 300, -0.04975529864469341, -1.0013490634918858, 1.0023441694647797, 300.0297084152554, 44992.99706166223],
  [
    0.7, 0.001, 0.0009993001600023246, -0.0013995199907099215, 4.997667066671319e-7, 1.6660834133341091e-10,
    4.165500133334442e-14,
  ],
  [0.7, 2, 0.3418043012262629, -1.2042391525120608, 0.7257131307952929, 0.6421973156603271, 0.3752106272802491],
  [
    0.9999999, 0.3, 0.22224547220514304, -0.4814272137416949, 0.03693631378050318, 0.00388190762111333,
    0.00029987175365168094,
  ],
  [1, 5, 0.03368973499542734, -1.026951787996342, 0.9595723180054871, 3.047165628993598, 5.446096424007316],
  [
    1.0000001, 0.3, 0.22224546020388788, -0.4814272773038982, 0.036936312447030384, 0.0038819075147888543,
    0.000299871747010403,
  ],
  [1.3, 1, 0.3049721541496159, -1.0243762993535126, 0.23144869856451128, 0.09326122958265477, 0.026072104520586305],
  [
    10, 0.05, 0.03159307475880229, -0.6327810157793556, 0.0009195206033098202, 1.6513175001310676e-5,
    2.1589666396643094e-7,
  ],
  [10, 400, 9.850058002911152e-11, -1.0000000000049374, 0.9999999980349258, 380.000000039203, 72398.99999921791],
  [
    100, 1e-6, 9.999000066661666e-7, -0.0001999800018332, 4.99966668333225e-13, 1.666583336666472e-19,
    4.166500005555257e-26,
  ],
  [
    100, 0.7, 0.004982779298502577, -1.0000249145193711, 0.003469054818855518, 0.001206256930393754,
    0.0002795591023936624,
  ],
] as const;

function step(omega: number, zeta: number, tauS: number): Float64Array {
  const out = new Float64Array(STEP_NUMBERS);
  oscillatorStep(omega, zeta, tauS, out, 0);
  return out;
}

/** State after τ from (x, v) under f, f′, f″ at the start. */
function stateAfter(
  numbers: Float64Array,
  omega: number,
  [x, v]: readonly number[],
  [f0, f1, f2]: readonly number[],
): number[] {
  const [i0, slope, i1, i2, i3] = numbers as unknown as [number, number, number, number, number];
  const g0 = f0! + omega * omega * x!;
  return [x! + v! * i0 - g0 * i1 - f1! * i2 - f2! * i3, v! + v! * slope - g0 * i0 - f1! * i1 - f2! * i2];
}

const DAMPING = [0, 0.02, 0.7, 1 - 1e-7, 1, 1 + 1e-7, 1.3, 3, 10];

describe('the step of an oscillator', () => {
  it('agrees with the closed forms worked out with 60 digits, from ωτ = 1e-8 to 400 and ζ = 0 to 100', () => {
    for (const [zeta, tau, ...exact] of SIXTY_DIGITS) {
      const numbers = step(1, zeta, tau);
      // I_0 passes 0, so it is measured by its largest value; the phase's own rounding grows with ωτ.
      const largest = Math.min(tau, 1 / Math.max(1, 2 * zeta));
      const tolerance = 4e-15 + 2e-16 * tau;
      expect(Math.abs(numbers[0]! - exact[0]) / largest).toBeLessThan(tolerance);
      for (const k of [1, 2, 3, 4]) {
        const scale =
          k === 1 || k === 2 ? Math.max(Math.abs(exact[k]!), zeta === 0 ? Math.min(1, (tau * tau) / 2) : 0) : exact[k]!;
        expect(Math.abs(numbers[k]! - exact[k]!) / scale, `ζ ${zeta}, ωτ ${tau}, number ${k}`).toBeLessThan(tolerance);
      }
    }
  });

  it('composes: two steps of h are one of 2h, to 1e-14 of the amplitude in every regime', () => {
    for (const zeta of DAMPING) {
      for (const phase of [1e-5, 0.01, 0.3, 1, 4, 30]) {
        const omega = 77;
        const h = phase / omega;
        const force = [3, 20 * omega, -11 * omega * omega] as const;
        const start = [0.002, -0.01];
        const half = step(omega, zeta, h);
        const later = [force[0] + force[1] * h + (force[2] * h * h) / 2, force[1] + force[2] * h, force[2]];
        const twice = stateAfter(half, omega, stateAfter(half, omega, start, force), later);
        const once = stateAfter(step(omega, zeta, 2 * h), omega, start, force);
        const amplitude = Math.max(0.002, Math.abs(once[0]!), Math.abs(later[0]!) / (omega * omega));
        expect(Math.abs(twice[0]! - once[0]!) / amplitude).toBeLessThan(1e-14 * Math.max(1, phase));
        expect(Math.abs(twice[1]! - once[1]!) / (omega * amplitude)).toBeLessThan(1e-14 * Math.max(1, phase));
      }
    }
  });

  it('passes critical damping smoothly: at ζ = 1 ± 1e-7 it differs from ζ = 1 by its slope in ζ only', () => {
    for (const tau of [0.01, 0.5, 3, 20]) {
      const [below, at, above] = [1 - 1e-7, 1, 1 + 1e-7].map((zeta) => step(1, zeta, tau));
      for (let k = 0; k < STEP_NUMBERS; k += 1) {
        // Second difference: the curvature in ζ is of the size of the number, times 1e-14; the rest is rounding.
        const second = above![k]! - 2 * at![k]! + below![k]!;
        const scale = Math.max(Math.abs(at![k]!), Math.min(tau, 1));
        expect(Math.abs(second) / scale).toBeLessThan(4e-15 + 1e-14 * tau * tau);
      }
    }
  });

  it('leaves a mass in balance where it is, however short the step', () => {
    for (const tau of [1e-12, 1e-6, 0.1, 50]) {
      const omega = 12;
      const x = -9.80665 / (omega * omega);
      const [xAfter] = stateAfter(step(omega, 0.3, tau), omega, [x, 0], [-omega * omega * x, 0, 0]);
      expect(xAfter).toBe(x);
    }
  });

  it('stays finite for steps that outlast all motion: 1e9 rad, ζ = 100', () => {
    const [i0, slope, i1] = step(1e7, 100, 100);
    expect(Math.abs(i0!)).toBeLessThan(1e-16);
    expect(slope).toBeCloseTo(-1, 14);
    expect(i1! * 1e14).toBeCloseTo(1, 12);
  });
});
