/**
 * shock_spectrum.json: the greatest |ω₀²x|/A of an element under a pulse against pulse duration over natural period, computed with
 * NumPy/SciPy from closed forms and integrals; nine digits. Known points: half-sine undamped 1.7685 at τ/T₀ = 0.8099 (shape in
 * Harris' Shock and Vibration Handbook, chapter on transient response by R. S. Ayre, from memory), rectangle 2 sin(πτ/T₀), then 2.
 */
import { describe, expect, it } from 'vitest';
import { recordFile, type SmoothLaw } from './record-file.ts';
import { highestPoint, rowsOf, scenario } from './scenario-run.ts';
import vectors from './shock_spectrum.json' with { type: 'json' };

const X = [1, 0, 0] as const;
const F0 = 20;
const W0 = 2 * Math.PI * F0;
const A = 7;
/** Rows fall on the edges of every pulse, for the highest point is looked for between rows. */
const RATE = 400 * F0;
/** Off the tick. */
const FROM_S = 99 / RATE;
const LINES = 1000;

const ratios = [...new Set(vectors.rows.map(([, ratio]) => ratio!))];

/** Peaks of |ω₀²x|/A of elements of the given damping ratios over a pulse of τ [s], given as motions, and after it. */
function maximax(zetas: readonly number[], tauS: number, motions: readonly object[], file?: string): number[] {
  const elements = zetas.map((zeta, i) => ({ name: `e${i}`, axis: X, naturalFrequency: F0, dampingRatio: zeta }));
  const run = scenario({
    duration: FROM_S + tauS + 1.2 / F0,
    record: { rate: RATE },
    elements,
    motions: [{ kind: 'held', from: 0 }, ...motions],
  });
  const rows = rowsOf(run, file === undefined ? {} : { 'pulse.csv': file });
  return zetas.map(
    (_, i) =>
      (W0 * W0 * highestPoint(rows.column(`e${i}_deflection_m`), rows.column(`e${i}_velocity_m_s`), 1 / RATE)) / A,
  );
}

const recordedPulse = [
  {
    kind: 'recorded',
    from: FROM_S,
    file: 'pulse.csv',
    time: 't',
    columns: ['a'],
    unit: 'm/s2',
    is: 'acceleration',
    axis: X,
  },
];

function halfSine(tauS: number): SmoothLaw {
  const w = Math.PI / tauS;
  return { at: (t) => A * Math.sin(w * t), curvatureAt: (t) => -A * w * w * Math.sin(w * t) };
}

/** A(1 − cos 2πt/τ)/2 */
function versine(tauS: number): SmoothLaw {
  const w = (2 * Math.PI) / tauS;
  return { at: (t) => (A / 2) * (1 - Math.cos(w * t)), curvatureAt: (t) => (A / 2) * w * w * Math.cos(w * t) };
}

describe('maximax shock spectrum', () => {
  const zetas = [...new Set(vectors.rows.map(([zeta]) => zeta!))];
  const expected = (ratio: number, column: 2 | 3 | 4): number[] =>
    zetas.map((zeta) => vectors.rows.find(([z, r]) => z === zeta && r === ratio)![column]!);
  const compare = (found: readonly number[], table: readonly number[]): void =>
    // The cubic between rows ω₀d = 0.0157 apart errs by (ω₀d)⁴/384 = 2e-10, the record's lines by fourth order; the table
    // has nine digits.
    found.forEach((value, i) => expect(Math.abs(value - table[i]!)).toBeLessThan(1e-8));

  it.for(ratios)('half-sine, τ/T₀ = %d', (ratio) => {
    const tau = ratio / F0;
    compare(maximax(zetas, tau, recordedPulse, recordFile(halfSine(tau), tau, LINES, 1)), expected(ratio, 2));
  });

  it.for(ratios)('rectangle (two pushes), τ/T₀ = %d', (ratio) => {
    const tau = ratio / F0;
    const push = { kind: 'push', axis: X, within: 0 };
    const motions = [
      { ...push, from: FROM_S, acceleration: A },
      { ...push, from: FROM_S + tau, acceleration: 0 },
    ];
    compare(maximax(zetas, tau, motions), expected(ratio, 3));
  });

  it.for(ratios)('versine, τ/T₀ = %d', (ratio) => {
    const tau = ratio / F0;
    compare(maximax(zetas, tau, recordedPulse, recordFile(versine(tau), tau, LINES, 1)), expected(ratio, 4));
  });

  it('half-sine undamped: 1.7685 at τ/T₀ = 0.8099 is the greatest, π/2 at 0.5, 1.7321 at 1, 1.5 at 1.5', () => {
    const at = (ratio: number): number => {
      const tau = ratio / F0;
      return maximax([0], tau, recordedPulse, recordFile(halfSine(tau), tau, LINES, 1))[0]!;
    };
    const { at_tau_over_T0: best, ratio: greatest } = vectors.known_points.half_sine_undamped_maximum;
    expect(Math.abs(at(best) - greatest)).toBeLessThan(1e-7);
    expect(at(best - 0.02)).toBeLessThan(greatest);
    expect(at(best + 0.02)).toBeLessThan(greatest);
    expect(at(0.5)).toBeCloseTo(Math.PI / 2, 7);
    expect(at(1)).toBeCloseTo(1.7321, 4);
    expect(at(1.5)).toBeCloseTo(1.5, 4);
  });
});
