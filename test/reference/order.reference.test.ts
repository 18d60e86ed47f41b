/** How a run's errors depend on its tick: observed, not believed. No published figures; the exact responses are closed forms. */
import { describe, expect, it } from 'vitest';
import { STANDARD_GRAVITY as G, lookAt, scenario } from './scenario-run.ts';

const UP = [0, 1, 0] as const;
const FROM_S = 0.0123;

/** Deflection of each element at the instant, for a tick. */
function deflections(tick: number, elements: readonly object[], motion: object, sinceS: number): number[] {
  let found: number[] = [];
  const motions = [
    { kind: 'held', from: 0 },
    { ...motion, from: FROM_S },
  ];
  lookAt(scenario({ duration: 5, tick, elements, motions }), [FROM_S + sinceS], (snapshot) => {
    found = snapshot.elements.map(({ deflection }) => deflection);
  });
  return found;
}

/** Mean of log₂ of the ratios of successive errors. */
function observedOrder(errors: readonly number[]): number {
  return Math.log2(errors[0]! / errors.at(-1)!) / (errors.length - 1);
}

const zetas = [0.02, 0.7, 1, 3];
const elementsOf = zetas.map((dampingRatio, i) => ({ name: `e${i}`, axis: UP, naturalFrequency: 9, dampingRatio }));

describe('observed order', () => {
  it('of the response to a sine shake is 4 ± 0.1 at every damping', () => {
    const shake = { kind: 'shake', axis: UP, sine: { frequency: 13, amplitude: 5, ease: 0.2 } };
    const ticks = [1 / 390, 1 / 780, 1 / 1560, 1 / 3120];
    const [reference, ...found] = [1 / 33_280, ...ticks].map((tick) => deflections(tick, elementsOf, shake, 0.777));
    zetas.forEach((_, i) => {
      const errors = found.map((x) => Math.abs(x[i]! - reference![i]!));
      expect(Math.abs(observedOrder(errors) - 4)).toBeLessThan(0.1);
    });
  });
});

describe('composition', () => {
  it.for([
    ['a release', { kind: 'free', height: 50 }],
    ['a step', { kind: 'push', axis: UP, acceleration: 12, within: 0 }],
  ] as const)(
    '%s comes out the same to 1e-12 of the sag whatever the tick, for the input of each is exact',
    ([, motion]) => {
      const found = [1 / 7300, 2 / 7300, 4 / 7300, 0.0937].map((tick) => deflections(tick, elementsOf, motion, 0.777));
      const sag = G / (2 * Math.PI * 9) ** 2;
      for (const other of found.slice(1))
        other.forEach((x, i) => expect(Math.abs(x - found[0]![i]!)).toBeLessThan(1e-12 * sag));
    },
  );

  it('a tumbling fall comes out the same to 1e-9 of the deflection whatever the tick: the turning is stepped as it needs', () => {
    const fall = { kind: 'free', height: 50, spin: [9, -14, 11] };
    const elements = elementsOf.map((element) => ({ ...element, at: [0.05, -0.02, 0.08] }));
    const [fine, ...found] = [1 / 7300, 1 / 800, 1 / 100].map((tick) => deflections(tick, elements, fall, 0.777));
    // About ω²r/ω₀² = 0.01 m: measured 2e-12 m.
    for (const other of found) other.forEach((x, i) => expect(Math.abs(x - fine![i]!)).toBeLessThan(1e-11));
  });
});
