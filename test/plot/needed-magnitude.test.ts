import { describe, expect, it } from 'vitest';
import { LineLayer } from '../../src/plot/line-layer.ts';
import { type Needed, neededMagnitude } from '../../src/plot/needed-magnitude.ts';
import type { PaperView } from '../../src/plot/paper-view.ts';
import { Tape } from '../../src/recording/tape.ts';

const G = 9.80665;
const COLUMNS = 500;

/** A drop of 0.2 s that lands with 50 g for 10 ms at 1 s; a stiff mass follows, a soft one rings to 4 g. */
function dropTape(): Tape {
  const tape = new Tape({
    rateHz: 2000,
    capacityRows: 10_000,
    channels: ['felt', 'stiff', 'soft'].map((name) => ({ name, unit: 'm/s2' as const, keep: 'f64' as const })),
  });
  const values = new Float64Array(3);
  for (let row = 0; row < 8000; row++) {
    const t = row / 2000;
    values[0] = t < 0.8 ? G : t < 1 ? 0 : t < 1.01 ? 50 * G : G;
    values[1] = 0.98 * values[0]!;
    values[2] = t < 1 ? values[0]! : G + 3 * G * Math.cos(50 * (t - 1)) * Math.max(0, 1.6 - t);
    tape.row(values);
  }
  return tape;
}

const tape = dropTape();

function need(mass: 'stiff' | 'soft' | undefined, over: Partial<PaperView>): Needed {
  const lines = [
    { kind: 'felt' as const, channel: 'felt' },
    ...(mass ? [{ kind: 'mass' as const, channel: mass }] : []),
  ];
  const view: PaperView = {
    tape,
    samples: undefined,
    reported: 'none',
    events: [],
    nowS: 3.9,
    endS: 3.9,
    spanS: 3,
    lines,
    unit: 'g_n',
    sign: 1,
    range: 'automatic',
    stopMS2: undefined,
    theme: 'day',
    stage: false,
    marked: undefined,
    sketch: undefined,
    notes: [],
    drag: 'pull',
    ...over,
  };
  const layers = lines.map((line) => new LineLayer(line));
  for (const layer of layers)
    layer.fetch(view, { fromS: view.endS - view.spanS, toS: view.endS, columnsPerS: COLUMNS / view.spanS });
  return neededMagnitude(view, layers, COLUMNS);
}

const needed = (...of: Parameters<typeof need>): number => need(...of).magnitudeMS2 / G;

describe('what the pen’s scale must hold', () => {
  it('a 50 g landing does not flatten the fall, in what happened or in a stiff sensor', () => {
    expect(needed('stiff', {})).toBeCloseTo(1.5, 9);
    expect(needed(undefined, {})).toBeCloseTo(1.5, 9);
  });

  it('a ringing mass is held but for its first swing', () => {
    expect(needed('soft', {})).toBeGreaterThan(1.5);
    expect(needed('soft', {})).toBeLessThanOrEqual(3);
  });

  it('seen closely enough to look at, the landing is held', () => {
    expect(needed('stiff', { endS: 1.05, spanS: 0.1 })).toBeCloseTo(49, 5);
  });

  it('a marked landing is held in every line', () => {
    expect(needed('stiff', { marked: { fromS: 0.9, toS: 1.1 } })).toBeCloseTo(50, 5);
  });

  it('a marked calm part is looked at closely', () => {
    expect(needed('stiff', { marked: { fromS: 0.85, toS: 0.95 } })).toBeLessThan(0.001);
  });

  it('a mark outside the paper changes nothing', () => {
    expect(needed('stiff', { marked: { fromS: 0.1, toS: 0.2 } })).toBeCloseTo(1.5, 9);
  });

  it('stops nearby stay in sight, far ones do not', () => {
    expect(needed('soft', { stopMS2: 6 * G })).toBeCloseTo(6, 9);
    expect(needed('stiff', { stopMS2: 16 * G })).toBeCloseTo(1.5, 9);
  });

  it('room is kept for growth, but not past the stops', () => {
    const open = need('soft', {});
    expect(open.mayGrowToMS2 / open.magnitudeMS2).toBeCloseTo(1.25, 9);
    const stopped = need('soft', { stopMS2: 3 * G });
    expect(stopped.mayGrowToMS2).toBeLessThanOrEqual(3 * G);
  });

  it('is at least ±1.5 g before there is any ink', () => {
    expect(needed('stiff', { nowS: 0, endS: 0 })).toBeCloseTo(1.5, 9);
  });
});
