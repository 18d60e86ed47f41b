import { describe, expect, it } from 'vitest';
import reference from '../reference/ring_down.json' with { type: 'json' };
import { drive, newElement, none, type Signal, stateAt } from './drive.ts';
import { solve } from './odex-solve.ts';

/** Runs from the start that the specification gives and returns x at the end of every `every`-th tick. */
function deflections(
  spec: Parameters<typeof newElement>[0],
  ticks: number,
  tickS: number,
  every: number,
  force: Signal,
  spin: Signal = none,
): number[] {
  const element = newElement(spec, tickS);
  const out: number[] = [];
  drive(
    element,
    ticks,
    tickS,
    force,
    (tick) => {
      if ((tick + 1) % every === 0) out.push(stateAt(element, tickS).deflection);
    },
    spin,
  );
  return out;
}

/**
 * test/reference/ring_down.json, computed with SciPy 1.10.1 (eighth-order Runge–Kutta, rtol 1e-12) and checked there
 * against the elliptic function cn to 1e-9 of the amplitude; values have 11 digits.
 */
describe('the cubic spring rings down as the Duffing equation does (12 periods at most)', () => {
  for (const test of reference.duffing.cases) {
    const { f0_hz, zeta, x0_m, k3_over_m_per_m2_s2, dt, n } = test;
    it(`κx₀²/ω² = ${test.hardening_k3_x0_squared_over_w0_squared}, ζ = ${zeta}`, () => {
      for (const perRow of [1, 4, 50]) {
        const spec = {
          naturalFrequency: f0_hz,
          dampingRatio: zeta,
          cubicStiffness: k3_over_m_per_m2_s2,
          start: { deflection: x0_m, velocity: 0 },
        };
        const x = deflections(spec, (n - 1) * perRow, dt / perRow, perRow, () => 0);
        const worst = Math.max(...x.map((value, k) => Math.abs(value - test.x_m[k + 1]!))) / x0_m;
        // The reference's own error, 1e-9 allowed there; measured here 4e-11.
        expect(worst).toBeLessThan(2e-10);
      }
    });
  }

  it('with the exact period of the elliptic function: back at the start after ten of them', () => {
    for (const { f0_hz, zeta, x0_m, k3_over_m_per_m2_s2, period_exact_s } of reference.duffing.cases) {
      if (zeta !== 0) continue;
      const spec = {
        naturalFrequency: f0_hz,
        dampingRatio: 0,
        cubicStiffness: k3_over_m_per_m2_s2,
        start: { deflection: x0_m, velocity: 0 },
      };
      const tickS = period_exact_s! / 64;
      const x = deflections(spec, 640, tickS, 640, () => 0);
      // At the turning point an error of phase counts squared; measured: 1.1e-11.
      expect(Math.abs(x[0]! / x0_m - 1)).toBeLessThan(3e-11);
    }
  });
});

describe('against odex, 1e-13, in the same run', () => {
  const omega = 20 * Math.PI;
  const start = { deflection: 0.002, velocity: 0.1 };
  const tickS = 1 / 1024;
  const instants = Array.from({ length: 9 }, (_, k) => k * 64 * tickS);
  const force: Signal = (t) => 40 - 300 * t + 500 * t * t; // a parabola, so the tick adds nothing

  it('forced and damped on a cubic spring: to 1e-9 of the amplitude', () => {
    const cubicStiffness = 3e8;
    const exact = solve(
      (t, [x, v]) => [v!, -force(t) - 2 * 0.05 * omega * v! - (omega ** 2 + cubicStiffness * x! * x!) * x!],
      [start.deflection, start.velocity],
      instants,
      0.005,
    );
    const x = deflections({ cubicStiffness, start }, 512, tickS, 64, force);
    const worst = Math.max(...x.map((value, k) => Math.abs(value - exact[k + 1]![0]!)));
    expect(worst / 0.005).toBeLessThan(1e-9);
  });

  it('with the field taken at the mass while the housing spins up: to 1e-9 of the amplitude', () => {
    const spin: Signal = (t) => (70 * t) ** 2; // ω⊥² to 1225 of ω₀² = 3948
    const exact = solve(
      (t, [x, v]) => [v!, -force(t) - 2 * 0.05 * omega * v! - (omega ** 2 - spin(t)) * x!],
      [start.deflection, start.velocity],
      instants,
      0.01,
    );
    const x = deflections({ fieldAtMass: true, start }, 512, tickS, 64, force, spin);
    const worst = Math.max(...x.map((value, k) => Math.abs(value - exact[k + 1]![0]!)));
    expect(worst / 0.01).toBeLessThan(1e-9);
  });
});

describe('settled', () => {
  it('on a cubic spring it sits at the root of ω²x + κx³ = −f', () => {
    const omega = 20 * Math.PI;
    for (const f of [0, 9.80665, -2000]) {
      const element = newElement({ cubicStiffness: 1e8 }, 1e-3);
      element.settle(f, 0);
      const { deflection } = stateAt(element, 0);
      expect(Math.abs(omega ** 2 * deflection + 1e8 * deflection ** 3 + f)).toBeLessThan(
        1e-14 * Math.abs(f) + Number.MIN_VALUE,
      );
    }
  });

  it('and stays there: the reading moves by less than 1e-11 in 2000 ticks', () => {
    const element = newElement({ cubicStiffness: 1e8, dampingRatio: 0.01 }, 1e-3);
    element.settle(30, 0);
    const { reading } = stateAt(element, 0);
    let worst = 0;
    drive(
      element,
      2000,
      1e-3,
      () => 30,
      () => {
        worst = Math.max(worst, Math.abs(stateAt(element, 1e-3).reading / reading - 1));
      },
    );
    expect(worst).toBeLessThan(1e-11);
  });

  it('in a spin, with the field at the mass, it sits at −f/(ω₀² − ω⊥²)', () => {
    const element = newElement({ fieldAtMass: true }, 1e-3);
    element.settle(9, 500);
    expect(Math.abs(stateAt(element, 0).deflection / (-9 / ((20 * Math.PI) ** 2 - 500)) - 1)).toBeLessThan(1e-14);
    expect(() => element.settle(9, 4000)).toThrow(/4000/);
  });
});
