/**
 * All 105 cases of test/reference/linear_responses.json: step, release from 1 g, half-sine, multi-sine and sine sweep on
 * 2, 50 and 3000 Hz at five damping ratios. Computed with NumPy 1.24.2 and SciPy 1.10.1: closed forms, checked there
 * against an eighth-order Runge–Kutta integration (worst disagreement 8.3e-12 of the peak); the sweep by that alone.
 *
 * Tolerance: 1e-8 of the case's peak. The parabola through a sine of angular frequency Ω misses its area over a tick by
 * (Ωh)⁴/2880 and its first moment by as much as a force of (Ωh)⁴/720 of it would; resonance raises that by 1/(2ζ) ≤ 50 at
 * most. With Ωh ≤ 0.012 at the highest frequency that is 1.5e-9; the rest covers the peaks below static.
 */
import { describe, expect, it } from 'vitest';
import reference from '../reference/linear_responses.json' with { type: 'json' };
import { newElement, type Signal, stateAt } from './drive.ts';

type Case = (typeof reference.cases)[number];

/** Highest Ωh. */
const FINEST = 0.012;

interface Input {
  readonly force: Signal;
  /** Instant of a kink or jump in the force [s]. */
  readonly cutS?: number;
  /** Highest angular frequency [rad/s]; 0: constant. */
  readonly highest: number;
}

function inputOf(test: Case): Input {
  const { A_m_per_s2: amplitude = 0, tau_s: tau = 0 } = test as { A_m_per_s2?: number; tau_s?: number };
  switch (test.kind) {
    case 'step':
      return { force: () => amplitude, highest: 0 };
    case 'release_from_1g':
      return { force: () => 0, highest: 0 };
    case 'half_sine':
      return {
        force: (t) => (t < tau * (1 + 1e-12) ? amplitude * Math.sin((Math.PI * t) / tau) : 0),
        cutS: tau,
        highest: Math.PI / tau,
      };
    case 'multi_sine': {
      const terms = (test as { terms: { A_m_per_s2: number; f_hz: number; phase_rad: number }[] }).terms;
      return {
        force: (t) =>
          terms.reduce(
            (sum, { A_m_per_s2, f_hz, phase_rad }) => sum + A_m_per_s2 * Math.sin(2 * Math.PI * f_hz * t + phase_rad),
            0,
          ),
        highest: Math.max(...terms.map(({ f_hz }) => 2 * Math.PI * f_hz)),
      };
    }
    default: {
      const { f1_hz, f2_hz, sweep_s } = test as unknown as { f1_hz: number; f2_hz: number; sweep_s: number };
      return {
        force: (t) => amplitude * Math.sin(2 * Math.PI * (f1_hz * t + ((f2_hz - f1_hz) * t * t) / (2 * sweep_s))),
        highest: 2 * Math.PI * f2_hz,
      };
    }
  }
}

/** Largest error of deflection and velocity, each as a share of its own peak. */
function worstError(test: Case): number {
  const { force, cutS = Infinity, highest } = inputOf(test);
  const perRow = Math.max(1, Math.ceil((highest * test.dt) / FINEST));
  const h = test.dt / perRow;
  const element = newElement(
    {
      naturalFrequency: test.f0_hz,
      dampingRatio: test.zeta,
      start: { deflection: test.x0_m, velocity: test.v0_m_per_s },
    },
    h,
  );
  element.settle(force(0), 0);
  const piece = (startTau: number, tick: number, endTau: number): void => {
    const start = tick * h + startTau;
    const end = tick * h + endTau;
    // Past a kink the force is taken from its right side.
    const at = (t: number): number => (start >= cutS * (1 - 1e-12) ? 0 : force(Math.min(t, cutS)));
    element.advance(startTau, endTau - startTau, at(start), at((start + end) / 2), at(end), 0, 0, 0);
  };
  const peakX = Math.max(...test.x_m.map(Math.abs));
  const peakV = Math.max(...test.v_m_per_s.map(Math.abs));
  let worst = 0;
  for (let tick = 0; tick < perRow * (test.n - 1); tick += 1) {
    element.beginTick(tick);
    const cut = cutS - tick * h;
    if (cut > h * 1e-9 && cut < h * (1 - 1e-9)) {
      piece(0, tick, cut);
      piece(cut, tick, h);
    } else piece(0, tick, h);
    element.endTick();
    if ((tick + 1) % perRow !== 0) continue;
    const row = (tick + 1) / perRow;
    const { deflection, velocity } = stateAt(element, h);
    worst = Math.max(
      worst,
      Math.abs(deflection - test.x_m[row]!) / peakX,
      Math.abs(velocity - test.v_m_per_s[row]!) / peakV,
    );
  }
  return worst;
}

describe(`${reference.cases.length} linear responses, to 1e-8 of the peak`, () => {
  it('has the 105 cases', () => expect(reference.cases.length).toBe(105));
  for (const kind of new Set(reference.cases.map((test) => test.kind))) {
    it(`${kind}`, () => {
      for (const test of reference.cases.filter((other) => other.kind === kind))
        expect(worstError(test), `f₀ ${test.f0_hz} Hz, ζ ${test.zeta}`).toBeLessThan(1e-8);
    });
  }
});
