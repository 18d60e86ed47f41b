/**
 * linear_responses.json: deflection and velocity of x″ + 2ζω₀x′ + ω₀²x = −f(t), five damping ratios at three natural
 * frequencies, computed from closed forms and with an eighth-order Runge–Kutta solver (SciPy) that agree to 8e-12 of the peak;
 * twelve digits. Each signal is handed over off the tick; rows stand on the vectors' own instants.
 */
import { describe, expect, it } from 'vitest';
import vectors from './linear_responses.json' with { type: 'json' };
import { recordFile, type SmoothLaw } from './record-file.ts';
import { type Files, rowsOf, STANDARD_GRAVITY, scenario, worstShare } from './scenario-run.ts';

type Case = (typeof vectors.cases)[number];

/** Rows before the signal begins. */
const LEAD = 3;

/** Straight lines of a record between two rows; rows stand on knots, where the lines' own error has averaged out. */
const KNOTS_PER_ROW = 160;

/** The cases of one kind, those that differ in their damping only together: they are the elements of one run. */
function groups(kind: string): [string, readonly Case[]][] {
  const found = new Map<string, Case[]>();
  for (const one of vectors.cases) {
    if (one.kind !== kind) continue;
    const key = `${one.f0_hz} Hz${one.tau_over_T0 === undefined ? '' : `, ${one.tau_over_T0} periods`}`;
    found.set(key, [...(found.get(key) ?? []), one]);
  }
  return [...found];
}

/** Runs the elements of a group through a signal; returns the worst departure of x and of ẋ as shares of their peaks. */
function departures(
  cases: readonly Case[],
  axis: readonly number[],
  signal: (from: number) => object,
  files?: Files,
): number {
  const { dt, n } = cases[0]!;
  const elements = cases.map((one, index) => ({
    name: `e${index}`,
    axis,
    at: [0.03, -0.02, 0.07],
    naturalFrequency: one.f0_hz,
    dampingRatio: one.zeta,
  }));
  const from = LEAD * dt;
  const rows = rowsOf(
    scenario({
      duration: (LEAD + n - 1) * dt,
      record: { rate: 1 / dt },
      elements,
      motions: [{ kind: 'held', from: 0 }, signal(from)],
    }),
    files,
  );
  expect(rows.count).toBe(LEAD + n);
  return Math.max(
    ...cases.flatMap((one, index) => [
      worstShare(rows.column(`e${index}_deflection_m`).slice(LEAD), one.x_m),
      worstShare(rows.column(`e${index}_velocity_m_s`).slice(LEAD), one.v_m_per_s),
    ]),
  );
}

const X = [1, 0, 0] as const;
const UP = [0, 1, 0] as const;

/** A recorded motion along x made from a law. */
function recorded(law: SmoothLaw, spanS: number, segments: number, unit: 'm/s2' | 'g' | 'mg', is: string) {
  const unitMS2 = { 'm/s2': 1, g: STANDARD_GRAVITY, mg: STANDARD_GRAVITY / 1000 }[unit];
  return {
    signal: (from: number) => ({
      kind: 'recorded',
      from,
      file: 'law.csv',
      time: 't',
      columns: ['a'],
      unit,
      is,
      axis: X,
    }),
    files: { 'law.csv': recordFile(law, spanS, segments, unitMS2) },
  };
}

describe('the element follows linear_responses.json', () => {
  // Exact whatever the tick, 2.6 radians of the stiffest element here: what is left, 4e-12, is the vectors' own rounding.
  it.for(groups('step'))('step of acceleration, %s', ([, cases]) => {
    const signal = (from: number) => ({ kind: 'push', from, axis: X, acceleration: cases[0]!.A_m_per_s2, within: 0 });
    expect(departures(cases, X, signal)).toBeLessThan(2e-11);
  });

  it.for(groups('release_from_1g'))('release from 1 g, %s', ([, cases]) => {
    expect(departures(cases, UP, (from) => ({ kind: 'free', from, height: 1000 }))).toBeLessThan(2e-11);
  });

  it.for(groups('half_sine'))('half-sine pulse, recorded in g, %s', ([, cases]) => {
    const { A_m_per_s2: amplitude = 0, tau_s: tau = 0 } = cases[0]!;
    const w = Math.PI / tau;
    const law = {
      at: (t: number) => amplitude * Math.sin(w * t),
      curvatureAt: (t: number) => -w * w * amplitude * Math.sin(w * t),
    };
    const { signal, files } = recorded(law, tau, 1000, 'g', 'acceleration');
    // Fourth order in the spacing of the record's lines: measured 1e-8, 2e-9, 4e-12.
    expect(departures(cases, X, signal, files)).toBeLessThan(2e-8);
  });

  it.for(groups('multi_sine'))('four sines, recorded as felt in m/s², %s', ([, cases]) => {
    const { terms = [], dt, n } = cases[0]!;
    const sum = (power: number) => (t: number) =>
      terms.reduce((total, { A_m_per_s2: a, f_hz: f, phase_rad: phase }) => {
        const w = 2 * Math.PI * f;
        return total + a * (power === 0 ? 1 : -w * w) * Math.sin(w * t + phase);
      }, 0);
    const { signal, files } = recorded(
      { at: sum(0), curvatureAt: sum(2) },
      n * dt,
      n * KNOTS_PER_ROW,
      'm/s2',
      'specificForce',
    );
    // The same: measured 8e-9 with 50 lines to a row, 3e-11 with 200.
    expect(departures(cases, X, signal, files)).toBeLessThan(2e-8);
  });

  it.for(groups('linear_sine_sweep'))('linear sine sweep, recorded in mg, %s', ([, cases]) => {
    const { A_m_per_s2: a = 0, f1_hz: f1 = 0, f2_hz: f2 = 0, sweep_s: over = 0, dt, n } = cases[0]!;
    const rate = (2 * Math.PI * (f2 - f1)) / over;
    const phase = (t: number): number => 2 * Math.PI * f1 * t + (rate * t * t) / 2;
    const law = {
      at: (t: number) => a * Math.sin(phase(t)),
      curvatureAt(t: number) {
        const w = 2 * Math.PI * f1 + rate * t;
        return a * (rate * Math.cos(phase(t)) - w * w * Math.sin(phase(t)));
      },
    };
    const { signal, files } = recorded(law, n * dt, n * KNOTS_PER_ROW, 'mg', 'acceleration');
    // The same: measured 6e-7 with 50 lines to a row, 2e-9 with 200.
    expect(departures(cases, X, signal, files)).toBeLessThan(2e-8);
  });
});
