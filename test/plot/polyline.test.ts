import { describe, expect, it } from 'vitest';
import { DashedLine, phaseAt } from '../../src/plot/dashed-line.ts';
import { fastRuns } from '../../src/plot/fast-swings.ts';
import { findOvershoots } from '../../src/plot/overshoot.ts';
import { Polyline, type Projection, project } from '../../src/plot/polyline.ts';
import { Trace } from '../../src/plot/trace.ts';

const ON: Projection = { fromS: 0, pxPerS: 100, zeroYPx: 50, pxPerUnit: 10, topPx: 0, bottomPx: 100 };

function traceOf(points: readonly (readonly [number, number])[]): Trace {
  const trace = new Trace();
  trace.reserve(points.length);
  for (const [timeS, value] of points) trace.add(timeS, value);
  return trace;
}

function projected(points: readonly (readonly [number, number])[]): [number, number][] {
  const line = new Polyline();
  line.reset(points.length);
  project(traceOf(points), 0, points.length, ON, line);
  return Array.from({ length: line.count }, (_, i) => [line.x[i]!, line.y[i]!]);
}

describe('a line on the paper', () => {
  it('goes where time and value say', () => {
    expect(
      projected([
        [0, 0],
        [1, 2],
        [2, -3],
      ]),
    ).toEqual([
      [0, 50],
      [100, 30],
      [200, 80],
    ]);
  });

  it('is cut exactly at the edge that it leaves over, and taken up again there', () => {
    // 10 units beyond the upper edge (5 units up): crosses it halfway up and halfway down.
    expect(
      projected([
        [0, 0],
        [1, 10],
        [2, 0],
      ]),
    ).toEqual([
      [0, 50],
      [50, 0],
      [NaN, NaN],
      [150, 0],
      [200, 50],
    ]);
  });

  it('crosses the paper between two points that both lie outside', () => {
    expect(
      projected([
        [0, 10],
        [1, -10],
      ]).slice(0, 2),
    ).toEqual([
      [25, 0],
      [75, 100],
    ]);
  });

  it('has a gap where values are missing', () => {
    expect(
      projected([
        [0, 1],
        [1, NaN],
        [2, 1],
      ]),
    ).toEqual([
      [0, 40],
      [NaN, NaN],
      [200, 40],
    ]);
  });

  it('leaves out points that cannot be told apart, never one that can', () => {
    const points = Array.from({ length: 2000 }, (_, i) => [i / 10_000, Math.sin(i / 50)] as const);
    const line = projected(points);
    expect(line.length).toBeLessThan(1700);
    const lost = points.filter(
      ([timeS, value]) =>
        !line.some(([x, y]) => Math.abs(x - 100 * timeS) < 0.31 && Math.abs(y - (50 - 10 * value)) < 0.16),
    );
    expect(lost).toEqual([]);
  });
});

describe('dashes', () => {
  const wave = (t: number): number => 3 * Math.sin(9 * t);
  const lay = (fromS: number, dashed: DashedLine): { phase: number; line: Polyline } => {
    // Vertices at multiples of 10 ms of run time, as columns are.
    const points = Array.from({ length: 120 }, (_, i) => (Math.floor(fromS * 100) + i) / 100).map(
      (t) => [t, wave(t)] as const,
    );
    const line = dashed.begin(points.length);
    const on = { ...ON, fromS };
    project(traceOf(points), 0, points.length, on, line);
    return { phase: dashed.phase(on, 10.5), line };
  };

  it('stay at the same places of the line while the paper moves on and back', () => {
    const dashed = new DashedLine();
    const phaseOf = (timeS: number, fromS: number, laid: { phase: number; line: Polyline }): number =>
      phaseAt(laid.line, (timeS - fromS) * 100, laid.phase) % 10.5;
    const start = phaseOf(0.9, 0, lay(0, dashed));
    for (const fromS of [0.0033, 0.02, 0.05, 0.3001, 0.31, 0.22, 0.1, 0.4]) {
      const there = phaseOf(0.9, fromS, lay(fromS, dashed));
      const apart = Math.abs(there - start);
      expect(Math.min(apart, 10.5 - apart)).toBeLessThan(1e-6);
    }
  });
});

describe('swings too fast for a line', () => {
  const sampled = (periodPx: number, amplitude: number, px = 400): Trace =>
    traceOf(
      Array.from(
        { length: px * 2 },
        (_, i) => [i / 200, amplitude * Math.sin((2 * Math.PI * (i / 2)) / periodPx)] as const,
      ),
    );
  const runs = (trace: Trace): [number, number][] => {
    const out: { from: number; to: number }[] = [];
    const count = fastRuns(trace, 100, 10, out);
    return out.slice(0, count).map(({ from, to }) => [from, to]);
  };

  it('a sine of 4 px period is an area from its beginning to its end', () => {
    const found = runs(sampled(4, 2));
    expect(found).toHaveLength(1);
    expect(found[0]![0]).toBeLessThan(8);
    expect(found[0]![1]).toBeGreaterThan(790);
  });

  it('a sine of 12 px period is a line', () => {
    expect(runs(sampled(12, 2))).toEqual([]);
  });

  it('a tremble of less than a few pixels is a line', () => {
    expect(runs(sampled(4, 0.2))).toEqual([]);
  });

  it('a single spike, or two, is a line', () => {
    const points = Array.from({ length: 400 }, (_, i) => [i / 100, i === 100 || i === 104 ? 4 : 0] as const);
    expect(runs(traceOf(points))).toEqual([]);
  });

  it('a burst between calm parts is found where it is', () => {
    const points = Array.from(
      { length: 800 },
      (_, i) => [i / 200, i > 300 && i < 500 ? 2 * Math.sin(i * 1.5) : 0] as const,
    );
    const found = runs(traceOf(points));
    expect(found).toHaveLength(1);
    expect(found[0]![0]).toBeGreaterThanOrEqual(300);
    expect(found[0]![1]).toBeLessThanOrEqual(500);
  });
});

describe('values that leave the paper', () => {
  const found = (values: readonly number[], apartS = 3): [number, number, number][] => {
    const out: { timeS: number; untilS: number; value: number; edge: 1 | -1 }[] = [];
    const count = findOvershoots(traceOf(values.map((v, i) => [i, v] as const)), 5, 1, apartS, out, 10);
    return out.slice(0, count).map(({ timeS, value, edge }) => [timeS, value, edge]);
  };

  it('are told once for each excursion, with their farthest value and its instant', () => {
    expect(found([0, 6, 33, 7, 0, 0, 0, 0, -9, -8, 0])).toEqual([
      [2, 33, 1],
      [8, -9, -1],
    ]);
  });

  it('that come back within the given time count as one', () => {
    expect(found([0, 6, 0, 8, 0, 7, 0, 0, 0, 0, 6])).toEqual([
      [3, 8, 1],
      [10, 6, 1],
    ]);
  });

  it('a long excursion is one, however long', () => {
    expect(found(Array.from({ length: 100 }, () => 6))).toEqual([[0, 6, 1]]);
  });
});
