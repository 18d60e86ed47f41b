/** The exact step of the proof mass against odex, and its cost by modes. */
import type { ElementSpec } from '../../src/contract/run.ts';
import { Element, type ElementState } from '../../src/element/element.ts';
import { solve } from '../housing/reference-solver.ts';
import { elementSpec } from '../support/run-spec.ts';
import { line, ratioOf, scaled, timesOf } from './pairs.ts';

const F0 = 10;
const ZETA = 0.05;
const DRIVE = 2 * Math.PI * 11;
const SPAN_S = 10;
const force = (t: number): number => 3 * Math.sin(DRIVE * t);

function elementOf(spec: ElementSpec, tickS: number): Element {
  const element = new Element(spec, { seed: 1, index: 0, temperatureK: 293.15, tickS });
  element.settle(0, 0);
  return element;
}

/** Deflection after the span by ticks of h. */
function byTicks(ticks: number): number {
  const h = SPAN_S / ticks;
  const element = elementOf(elementSpec({ naturalFrequency: F0, dampingRatio: ZETA }), h);
  let f0 = force(0);
  for (let tick = 0; tick < ticks; tick += 1) {
    const f1 = force((tick + 1) * h);
    element.beginTick(tick);
    element.advance(0, h, f0, force((tick + 0.5) * h), f1, 0, 0, 0);
    element.endTick();
    f0 = f1;
  }
  const state: ElementState = { deflection: 0, velocity: 0, reading: 0, onStop: 0 };
  element.at(h, state);
  return state.deflection;
}

/** The same by odex, which need not stop at any tick. */
function byOdex(tolerance: number): number {
  const w0 = 2 * Math.PI * F0;
  const rates = (t: number, [x, v]: readonly number[]): number[] => [v!, -force(t) - 2 * ZETA * w0 * v! - w0 * w0 * x!];
  return solve(rates, 0, [0, 0], SPAN_S, tolerance)[0]!;
}

/** Ticks of the exact step and the tolerance of odex with which both first come within an error, as a share of x. */
function atEqualError(share: number): { readonly ticks: number; readonly tolerance: number } {
  const exact = byOdex(1e-14);
  const errorOf = (x: number): number => Math.abs(x / exact - 1);
  let ticks = 400;
  while (errorOf(byTicks(ticks)) > share) ticks = Math.ceil(ticks * 1.15);
  let tolerance = 1e-2;
  while (errorOf(byOdex(tolerance)) > share) tolerance /= 1.5;
  return { ticks, tolerance };
}

/** A record of straight lines, 1000 a second: values from a generator of pseudo-random numbers (D. H. Lehmer's). */
const RECORD_RATE = 1000;
const record = ((): Float64Array => {
  let n = 1234567890;
  return Float64Array.from({ length: 2 * RECORD_RATE + 1 }, () => {
    n = (16807 * n) % 2147483647;
    return 6 * (n / 2147483647 - 0.5);
  });
})();

/** The response to the record, by one exact step a line. */
function recordByTicks(): number {
  const h = 1 / RECORD_RATE;
  const element = elementOf(elementSpec({ naturalFrequency: F0, dampingRatio: ZETA }), h);
  const state: ElementState = { deflection: 0, velocity: 0, reading: 0, onStop: 0 };
  let sum = 0;
  for (let k = 0; k + 1 < record.length; k += 1) {
    const f0 = record[k]!;
    const f1 = record[k + 1]!;
    element.beginTick(k);
    element.advance(0, h, f0, (f0 + f1) / 2, f1, 0, 0, 0);
    element.endTick();
    element.at(h, state);
    sum += state.deflection;
  }
  return sum;
}

/** The same by odex, line by line: over their corners it must not step. */
function recordByOdex(tolerance: number): number {
  const h = 1 / RECORD_RATE;
  const w0 = 2 * Math.PI * F0;
  let state: readonly number[] = [0, 0];
  let sum = 0;
  for (let k = 0; k + 1 < record.length; k += 1) {
    const f0 = record[k]!;
    const slope = (record[k + 1]! - f0) / h;
    const rates = (t: number, [x, v]: readonly number[]): number[] => [
      v!,
      -f0 - slope * t - 2 * ZETA * w0 * v! - w0 * w0 * x!,
    ];
    state = solve(rates, 0, state, h, tolerance);
    sum += state[0]!;
  }
  return sum;
}

/** Nanoseconds a tick of elements with 1 … 16 modes. */
function tickCost(modes: number): () => number {
  const mode = { dampingRatio: 0.02, participation: 1, shape: 1, modalMass: 1 };
  const spec = elementSpec(
    modes === 0
      ? {}
      : { modes: Array.from({ length: modes }, (_, n) => ({ ...mode, naturalFrequency: 10 * (1 + n) })) },
  );
  const h = 1 / 20_000;
  return () => {
    const element = elementOf(spec, h);
    for (let tick = 0; tick < TICKS; tick += 1) {
      element.beginTick(tick);
      element.advance(0, h, tick & 1, 0.5, (tick + 1) & 1, 0, 0, 0);
      element.endTick();
    }
    const state: ElementState = { deflection: 0, velocity: 0, reading: 0, onStop: 0 };
    element.at(h, state);
    return state.deflection;
  };
}
const TICKS = 100_000;

export function propagation(): string[] {
  const lines = ['The proof mass'];
  const noise = ratioOf(
    () => byTicks(20_000),
    () => byTicks(20_000),
  );
  lines.push(line('exact steps against themselves (noise)', noise, '×'));
  const repeats = 50;
  const exact = (): number => {
    let sum = 0;
    for (let k = 0; k < repeats; k += 1) sum += recordByTicks();
    return sum / repeats;
  };
  const exactSum = recordByTicks();
  for (const tolerance of [1e-6, 1e-9, 1e-12]) {
    const error = Math.abs(recordByOdex(tolerance) / exactSum - 1);
    const ratio = scaled(
      ratioOf(() => recordByOdex(tolerance), exact, 9),
      repeats,
    );
    lines.push(line(`a record of 1000 lines a second: odex, ${error.toExponential(0)} off, over exact`, ratio, '×'));
  }
  for (const share of [1e-4, 1e-7, 1e-10]) {
    const { ticks, tolerance } = atEqualError(share);
    // A run takes well below a millisecond: repeated, so that both can be timed.
    const times = Math.ceil(40_000 / ticks);
    const steps = (): number => {
      let sum = 0;
      for (let k = 0; k < times; k += 1) sum += byTicks(ticks);
      return sum / times;
    };
    const ratio = scaled(
      ratioOf(() => byOdex(tolerance), steps, 15),
      times,
    );
    lines.push(
      line(`a sine, end only, both ${share} off: odex over ${(ticks / SPAN_S).toFixed(0)} exact steps/s`, ratio, '×'),
    );
  }
  for (const modes of [0, 1, 2, 4, 8, 16]) {
    const time = scaled(timesOf(tickCost(modes)), 1e6 / TICKS);
    lines.push(
      line(modes === 0 ? 'a tick of a single mass' : `a tick of ${modes} mode${modes > 1 ? 's' : ''}`, time, 'ns'),
    );
  }
  return lines;
}
