import { describe, expect, it } from 'vitest';
import { faultSentence } from '../../src/scenario/fault.ts';
import { NAMED_SCENARIOS } from '../../src/scenario/named.ts';
import { parseScenario } from '../../src/scenario/parse-scenario.ts';
import { simulate } from '../../src/scenario/simulate.ts';
import { FILES } from './support/full-scenario.ts';

const G = 9.80665;

interface Seen {
  /** Specific force and deflection of an element by its name, at each row. */
  readonly felt: Readonly<Record<string, readonly number[]>>;
  readonly deflection: Readonly<Record<string, readonly number[]>>;
  readonly reported: readonly number[];
  /** Row at or just after an instant [s]. */
  row(timeS: number): number;
}

const runs = new Map<string, Seen>();

/** Runs a named scenario once. */
function seen(id: string): Seen {
  const known = runs.get(id);
  if (known) return known;
  const named = NAMED_SCENARIOS.find((scenario) => scenario.id === id);
  const { run, faults } = parseScenario(JSON.stringify(named?.scenario), FILES);
  if (run === undefined) throw new Error(faults.map(faultSentence).join('\n'));
  const felt: Record<string, number[]> = {};
  const deflection: Record<string, number[]> = {};
  const reported: number[] = [];
  simulate(run, {
    row(_row, values) {
      let column = 4;
      for (const { name, readout } of run.elements) {
        felt[name] ??= [];
        deflection[name] ??= [];
        felt[name].push(values[column]!);
        deflection[name].push(values[column + 1]!);
        column += readout ? 5 : 3;
      }
    },
    sample(_element, _timeS, valueG) {
      reported.push(valueG);
    },
  });
  const result: Seen = { felt, deflection, reported, row: (timeS) => Math.ceil(timeS * run.record.rate) };
  runs.set(id, result);
  return result;
}

const between = (values: readonly number[] | undefined, from: number, to: number): readonly number[] =>
  values?.slice(from, to) ?? [];
const largest = (values: readonly number[]): number =>
  values.reduce((most, value) => Math.max(most, Math.abs(value)), 0);
const mean = (values: readonly number[]): number => values.reduce((sum, value) => sum + value, 0) / values.length;
const spread = (values: readonly number[]): number =>
  Math.sqrt(mean(values.map((value) => (value - mean(values)) ** 2)));
const last = (values: readonly number[] | undefined): number => values?.at(-1) ?? Number.NaN;

it('ids, titles and words are there, and each id once', () => {
  expect(new Set(NAMED_SCENARIOS.map(({ id }) => id)).size).toBe(NAMED_SCENARIOS.length);
  for (const { id, title, words } of NAMED_SCENARIOS) {
    expect(id).toMatch(/^[a-z]+(?:-[a-z]+)*$/);
    expect(title.length).toBeGreaterThan(3);
    expect(words).toMatch(/\.$/);
  }
});

describe('each ready-made scenario shows what its words say', () => {
  it('hold-drop-land: one g held, exactly nothing in the fall, tens of g on the pad', () => {
    const { felt, row } = seen('hold-drop-land');
    expect(felt.z?.[row(0.4)]).toBe(G);
    expect(largest(between(felt.z, row(0.5), row(0.74)))).toBe(0);
    // Undamped, Mindlin's flat drop would peak at 1 + √(1 + 2hk/mg) = 50.5 g; the damped pad takes little off.
    expect(largest(felt.z ?? []) / G).toBeGreaterThan(40);
  });

  it('damped-drop: the lively one rings in the fall, the calm one has settled', () => {
    const { deflection, row } = seen('damped-drop');
    const swing = (name: string): number => largest(between(deflection[name], row(0.7), row(0.74)));
    expect(swing('calm')).toBeLessThan(0.1 * swing('lively'));
  });

  it('throw: nothing is felt from the hand to the pad, up or down', () => {
    const { felt, row } = seen('throw');
    expect(felt.z?.[row(0.5)]).toBeCloseTo(G + 20, 9);
    expect(largest(between(felt.z, row(0.55), row(1.6)))).toBe(0);
  });

  it('shake-at-resonance: the swing grows to Q = 1/2ζ = 10 static shares', () => {
    const { deflection, row } = seen('shake-at-resonance');
    const sag = G / (20 * Math.PI) ** 2;
    const swing = (from: number): number =>
      largest(between(deflection.z, row(from), row(from + 0.2)).map((x) => x + sag)) / (0.5 / (20 * Math.PI) ** 2);
    expect(swing(0.4)).toBeLessThan(6);
    expect(swing(2.7)).toBeCloseTo(10, 1);
  });

  it('sweep: from the static share through the overshoot to what lags behind', () => {
    const { deflection, row } = seen('sweep');
    const sag = G / (20 * Math.PI) ** 2;
    // 2 Hz to 40 Hz in 20 s: 10 Hz comes after ln 5/ln 20 of it, at 11.2 s.
    const swing = (name: string, at: number): number =>
      largest(between(deflection[name], row(at - 0.4), row(at + 0.4)).map((x) => x + sag)) * (20 * Math.PI) ** 2;
    expect(swing('z', 3)).toBeGreaterThan(1);
    expect(swing('z', 3)).toBeLessThan(1.3);
    expect(swing('z', 11.3)).toBeGreaterThan(7);
    expect(swing('calm', 11.3)).toBeLessThan(1.2);
    expect(swing('z', 20)).toBeLessThan(0.15);
  });

  it('random-vibration: the density makes the rms, the resonance makes more of it', () => {
    const { felt, deflection, row } = seen('random-vibration');
    // √(0.05·59) = 1.72 m/s² felt; 10 s of it stand for the whole within about a tenth.
    expect(spread(between(felt.z, row(4), row(10)))).toBeGreaterThan(1.5);
    expect(spread(between(felt.z, row(4), row(10)))).toBeLessThan(1.95);
    expect(spread(between(deflection.z, row(4), row(10)))).toBeGreaterThan(
      2 * spread(between(deflection.calm, row(4), row(10))),
    );
  });

  it('tilt: gravity goes from y to x, one g together', () => {
    const { felt } = seen('tilt');
    expect(last(felt.x)).toBeCloseTo(G, 12);
    expect(last(felt.y)).toBeCloseTo(0, 12);
    expect(last(felt.z)).toBeCloseTo(0, 12);
  });

  it('spin-off-centre: ω²r at 5 cm, nothing at the centre', () => {
    const { felt, row } = seen('spin-off-centre');
    expect(felt.centre?.[row(1.5)]).toBeCloseTo(0, 12);
    expect(felt.outside?.[row(1.5)]).toBeCloseTo(-0.05 * (2 * Math.PI) ** 2, 12);
  });

  it('corner-landing: all three axes feel it, and it lies still at the end', () => {
    const { felt } = seen('corner-landing');
    for (const name of ['x', 'y', 'z']) expect(largest(felt[name] ?? [])).toBeGreaterThan(3 * G);
    expect(Math.hypot(last(felt.x), last(felt.y), last(felt.z)) / G).toBeCloseTo(1, 2);
  });

  it('chip-noise: a sag of 28 nm, and the trembling of √(k_BT/mω²)', () => {
    const { deflection } = seen('chip-noise');
    const x = deflection.chip ?? [];
    expect(mean(x)).toBeCloseTo(-27.6e-9, 10);
    // Equipartition, with the Boltzmann constant of the SI (exact since 2019); 5 % are four standard errors of some 3000 independent ones among 10 000 rows.
    const expected = Math.sqrt((1.380649e-23 * 293.15) / 2e-9) / (6000 * Math.PI);
    expect(Math.abs(spread(x) / expected - 1)).toBeLessThan(0.05);
  });

  it('isolated: at 15 Hz the mount of 4 Hz keeps most of it away', () => {
    const { deflection, row } = seen('isolated');
    expect(spread(between(deflection.mounted, row(3), row(4)))).toBeLessThan(
      0.2 * spread(between(deflection.direct, row(3), row(4))),
    );
  });

  it('hardening-spring: it swings on to 11 Hz, where the plain one has long given up, and then drops off', () => {
    const { deflection, row } = seen('hardening-spring');
    // 5 Hz to 14 Hz in 15 s: 0.6 Hz a second.
    const swing = (name: string, at: number): number =>
      largest(between(deflection[name], row((at - 5) / 0.6), row((at - 4.8) / 0.6)));
    expect(swing('hardening', 10.8)).toBeGreaterThan(8 * swing('plain', 10.8));
    expect(swing('hardening', 12.4)).toBeLessThan(0.2 * swing('hardening', 10.8));
  });

  it('lift: more while speeding up, one g while rising evenly, less while slowing down', () => {
    const { felt, row } = seen('lift');
    expect(felt.z?.[row(2.2)]).toBeCloseTo(G + 1.2, 9);
    expect(felt.z?.[row(4)]).toBeCloseTo(G, 9);
    expect(Math.min(...between(felt.z, row(4.6), row(6)))).toBeLessThan(G - 1.2);
  });

  it('led-by-hand: less than an arm can do, and one g again at the end', () => {
    const { felt } = seen('led-by-hand');
    expect(largest(felt.z ?? [])).toBeGreaterThan(G + 1);
    expect(largest(felt.z ?? [])).toBeLessThan(G + 31);
    expect(last(felt.z)).toBeCloseTo(G, 1);
  });

  it('changed-on-the-way: the Moon’s gravity from 1 s on, and ringing after the damper is let out', () => {
    const { felt, deflection, row } = seen('changed-on-the-way');
    expect(felt.z?.[row(0.9)]).toBe(G);
    expect(felt.z?.[row(1.1)]).toBe(1.62);
    expect(spread(between(deflection.z, row(1.8), row(2.4)))).toBeLessThan(1e-7);
    expect(spread(between(deflection.z, row(3), row(3.4)))).toBeGreaterThan(1e-4);
  });

  it('is tested here', () => {
    expect(NAMED_SCENARIOS.map(({ id }) => id).filter((id) => !runs.has(id))).toEqual([]);
  });
});
