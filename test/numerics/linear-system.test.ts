import { describe, expect, it } from 'vitest';
import { LinearSystem, newLinearStep } from '../../src/numerics/linear-system.ts';
import { oscillatorStep, STEP_NUMBERS } from '../../src/numerics/oscillator.ts';

const OMEGA = 40;

/** x″ + 2ζωx′ + ω²x = −f + white noise of two-sided intensity 1 */
function oscillator(zeta: number): LinearSystem {
  const a = Float64Array.of(0, 1, -OMEGA * OMEGA, -2 * zeta * OMEGA);
  return new LinearSystem(a, [Float64Array.of(0, -1)], OMEGA * (1 + 2 * zeta), Float64Array.of(0, 0, 0, 1));
}

describe('the step of a linear system', () => {
  it('is that of an oscillator where it is one', () => {
    for (const zeta of [0, 0.1, 1, 6]) {
      for (const phase of [1e-4, 0.2, 2, 19]) {
        const tau = phase / OMEGA;
        const step = newLinearStep(2, 1);
        oscillator(zeta).step(tau, step);
        const numbers = new Float64Array(STEP_NUMBERS);
        oscillatorStep(OMEGA, zeta, tau, numbers, 0);
        const [i0, slope, i1, i2, i3] = numbers as unknown as [number, number, number, number, number];
        const size = [1, 1 / OMEGA, OMEGA, 1];
        const change = [-OMEGA * OMEGA * i1, i0, -OMEGA * OMEGA * i0, slope];
        // Rounding of the entries, grown by the doublings: 2^m ≤ 4(1 + 2ζ)ωτ of them.
        const tolerance = 4e-16 * (4 + 4 * (1 + 2 * zeta) * phase);
        for (let i = 0; i < 4; i += 1)
          expect(Math.abs(step.change[i]! - change[i]!) / size[i]!).toBeLessThan(tolerance);
        const inputs = [step.input0, step.input1, step.input2];
        const exact = [
          [-i1, -i0],
          [-i2, -i1],
          [-i3, -i2],
        ];
        for (let k = 0; k < 3; k += 1) {
          expect(Math.abs(inputs[k]![0]! / exact[k]![0]! - 1)).toBeLessThan(100 * tolerance);
          expect(Math.abs(inputs[k]![1]! - exact[k]![1]!)).toBeLessThan(
            tolerance * Math.max(1 / OMEGA, tau) ** (k + 1),
          );
        }
      }
    }
  });

  it('adds, over a long step, the covariance of equilibrium: ⟨x²⟩ = 1/(4ζω³), ⟨v²⟩ = 1/(4ζω), none of x with v', () => {
    for (const zeta of [0.05, 1, 4]) {
      const step = newLinearStep(2, 1);
      oscillator(zeta).step(1000 / (zeta * OMEGA) + (1000 * zeta) / OMEGA, step);
      const [xx, xv, , vv] = step.covariance;
      expect(xx! * 4 * zeta * OMEGA ** 3).toBeCloseTo(1, 12);
      expect(vv! * 4 * zeta * OMEGA).toBeCloseTo(1, 12);
      expect(Math.abs(xv!) * OMEGA ** 2).toBeLessThan(1e-14);
    }
  });

  it('adds, over a short step, what a free particle gets: τ³/3, τ²/2, τ, without cancellation', () => {
    const tau = 1e-9 / OMEGA;
    const step = newLinearStep(2, 1);
    oscillator(0.3).step(tau, step);
    const [xx, xv, vx, vv] = step.covariance;
    // The next terms are smaller by ζωτ ≈ 1e-9.
    expect(Math.abs(xx! / (tau ** 3 / 3) - 1)).toBeLessThan(2e-9);
    expect(Math.abs(xv! / (tau ** 2 / 2) - 1)).toBeLessThan(2e-9);
    expect(vx).toBe(xv);
    expect(Math.abs(vv! / tau - 1)).toBeLessThan(2e-9);
  });

  it('composes: covariance of 2h = that of h + that of h carried over h, to 1e-14', () => {
    for (const phase of [1e-3, 0.4, 7]) {
      const [once, twice] = [phase, 2 * phase].map((angle) => {
        const step = newLinearStep(2, 1);
        oscillator(0.2).step(angle / OMEGA, step);
        return step;
      });
      const [a, b, c, d] = once!.change;
      const [xx, xv, , vv] = once!.covariance as unknown as [number, number, number, number];
      const carriedX = (1 + a!) * (1 + a!) * xx + 2 * (1 + a!) * b! * xv + b! * b! * vv;
      const carriedV = c! * c! * xx + 2 * c! * (1 + d!) * xv + (1 + d!) * (1 + d!) * vv;
      expect(Math.abs((xx + carriedX) / twice!.covariance[0]! - 1)).toBeLessThan(1e-14);
      expect(Math.abs((vv + carriedV) / twice!.covariance[3]! - 1)).toBeLessThan(1e-14);
    }
  });

  it('keeps several inputs apart', () => {
    const a = Float64Array.of(0, 1, -OMEGA * OMEGA, -3);
    const system = new LinearSystem(a, [Float64Array.of(0, -1), Float64Array.of(2, 0.5)], 2 * OMEGA);
    const both = newLinearStep(2, 2);
    system.step(0.03, both);
    const second = newLinearStep(2, 1);
    new LinearSystem(a, [Float64Array.of(2, 0.5)], 2 * OMEGA).step(0.03, second);
    for (const key of ['input0', 'input1', 'input2'] as const)
      expect([...both[key].slice(2)]).toEqual([...second[key]]);
  });
});
