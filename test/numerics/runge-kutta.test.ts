import { describe, expect, it } from 'vitest';
import { ERROR_WEIGHTS, NODES, type Rates, RungeKutta, STAGES, stepFactor } from '../../src/numerics/runge-kutta.ts';

const WEIGHTS: readonly number[] = [...STAGES[6], 0];

/** Σ over stages of a product */
const sum = (term: (i: number) => number): number => NODES.reduce<number>((total, _, i) => total + term(i), 0);
/** Σ_j a_ij·v_j */
const through = (v: (j: number) => number) => (i: number) =>
  STAGES[i]!.reduce<number>((total, a, j) => total + a * v(j), 0);
const c = (i: number): number => NODES[i]!;

describe('the coefficients', () => {
  it('of each stage add up to its node', () => {
    for (let i = 0; i < NODES.length; i += 1) expect(Math.abs(through(() => 1)(i) - c(i))).toBeLessThan(1e-14);
  });

  it('fulfil the order conditions 1 to 5 (J. C. Butcher; as in Hairer, Nørsett, Wanner, Solving ODEs I, table II.2.2, from memory)', () => {
    const ac = through(c);
    const ac2 = through((j) => c(j) ** 2);
    const aac = through(ac);
    const conditions: [(i: number) => number, number][] = [
      [() => 1, 1],
      [c, 1 / 2],
      [(i) => c(i) ** 2, 1 / 3],
      [ac, 1 / 6],
      [(i) => c(i) ** 3, 1 / 4],
      [(i) => c(i) * ac(i), 1 / 8],
      [ac2, 1 / 12],
      [aac, 1 / 24],
      [(i) => c(i) ** 4, 1 / 5],
      [(i) => c(i) ** 2 * ac(i), 1 / 10],
      [(i) => c(i) * ac2(i), 1 / 15],
      [(i) => c(i) * aac(i), 1 / 30],
      [(i) => ac(i) ** 2, 1 / 20],
      [through((j) => c(j) ** 3), 1 / 20],
      [through((j) => c(j) * ac(j)), 1 / 40],
      [through(ac2), 1 / 60],
      [through(aac), 1 / 120],
    ];
    conditions.forEach(([term, value], index) => {
      expect(Math.abs(sum((i) => WEIGHTS[i]! * term(i)) - value)).toBeLessThan(2e-15);
      // The estimate compares with a method of order 4: it vanishes on the first eight conditions, not on the others.
      const estimate = Math.abs(sum((i) => ERROR_WEIGHTS[i]! * term(i)));
      if (index < 8) expect(estimate).toBeLessThan(2e-15);
    });
    expect(Math.abs(sum((i) => ERROR_WEIGHTS[i]! * c(i) ** 4))).toBeGreaterThan(1e-5);
  });
});

describe('a pendulum-like swing, z″ = −sin z + cos t', () => {
  const rates: Rates = (t, state, out) => {
    out[0] = state[1]!;
    out[1] = -Math.sin(state[0]!) + Math.cos(t);
  };

  function run(steps: number): { state: Float64Array; estimate: number; local: number } {
    const method = new RungeKutta(2);
    const state = Float64Array.of(1, 0);
    const finer = new Float64Array(2);
    const h = 10 / steps;
    let estimate = 0;
    let local = 0;
    for (let k = 0; k < steps; k += 1) {
      finer.set(state);
      for (let part = 0; part < 4; part += 1) method.step(rates, (k + part / 4) * h, finer, h / 4, finer);
      method.step(rates, k * h, state, h, state);
      estimate = Math.max(estimate, Math.abs(method.error[0]!), Math.abs(method.error[1]!));
      local = Math.max(local, Math.abs(state[0]! - finer[0]!), Math.abs(state[1]! - finer[1]!));
    }
    return { state, estimate, local };
  }

  it('observed order is 5 ± 0.2 over two halvings', () => {
    const exact = run(9600).state;
    const errors = [300, 600, 1200].map((steps) => {
      const { state } = run(steps);
      return Math.max(Math.abs(state[0]! - exact[0]!), Math.abs(state[1]! - exact[1]!));
    });
    const orders = errors.slice(1).map((error, k) => Math.log2(errors[k]! / error));
    const mean = orders.reduce((a, b) => a + b, 0) / orders.length;
    expect(Math.abs(mean - 5), `orders ${orders.join(', ')}`).toBeLessThan(0.2);
  });

  it('the estimate bounds the error of a step', () => {
    for (const steps of [30, 100, 300]) {
      const { estimate, local } = run(steps);
      expect(local).toBeLessThan(estimate);
    }
  });
});

it('the next step aims under the tolerance, growing and shrinking at most fivefold', () => {
  expect(stepFactor(1)).toBeCloseTo(0.9, 12);
  expect(stepFactor(32)).toBeCloseTo(0.45, 12);
  expect(stepFactor(0)).toBe(5);
  expect(stepFactor(1e12)).toBe(0.2);
});
