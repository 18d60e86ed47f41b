import { describe, expect, it } from 'vitest';
import { graphPath, nearestIndex } from '../../src/plot/graph-path.ts';
import { type AxisScale, extentOf, roundRange, ruling, shareOf, valueAtShare } from '../../src/plot/graph-scale.ts';
import { Polyline } from '../../src/plot/polyline.ts';
import { uniform } from './support/tape-of.ts';

const linear = (from: number, to: number): AxisScale => ({ law: 'linear', from, to });
const logarithmic = (from: number, to: number): AxisScale => ({ law: 'logarithmic', from, to });

describe('axes of a graph', () => {
  it('a decade is as long as any other on a logarithmic axis', () => {
    const scale = logarithmic(0.1, 1000);
    expect([0.1, 1, 10, 100, 1000].map((value) => shareOf(scale, value))).toEqual(
      [0, 0.25, 0.5, 0.75, 1].map((share) => expect.closeTo(share, 12)),
    );
  });

  it('place and value undo each other', () => {
    for (const scale of [linear(-3, 7), logarithmic(0.02, 500)])
      for (const share of [0, 0.1, 0.77, 1]) expect(shareOf(scale, valueAtShare(scale, share))).toBeCloseTo(share, 12);
  });

  it('automatic ranges hold the data, end on round numbers and at zero where the data do not pass it', () => {
    expect(roundRange([0.3, 9.2], 'linear')).toEqual([0, 10]);
    expect(roundRange([-4.1, -0.2], 'linear')).toEqual([expect.closeTo(-4.4, 12), 0]);
    expect(roundRange([0.0017, 4.27], 'logarithmic')).toEqual([0.001, 5]);
    expect(roundRange([30, 30], 'logarithmic')).toEqual([20, 50]);
    expect(roundRange(undefined, 'logarithmic')).toEqual([1, 10]);
  });

  it('what an axis cannot show does not count for its range', () => {
    expect(extentOf([[NaN, 3, 1, Infinity]], 'linear')).toEqual([1, 3]);
    expect(extentOf([[0, -2, 0.5, 8]], 'logarithmic')).toEqual([0.5, 8]);
    expect(extentOf([[NaN]], 'linear')).toBeUndefined();
  });

  it('figures stand at 1, 2 and 5 where decades are long, at decades where they are short', () => {
    expect(ruling(logarithmic(1, 100), 600, 60).figures).toEqual(['1', '2', '5', '10', '20', '50', '100']);
    expect(ruling(logarithmic(1, 1e4), 400, 60).figures).toEqual(['1', '10', '100', '1000', '10000']);
    expect(ruling(logarithmic(1e-6, 1), 400, 60).figures).toEqual([
      '10⁻⁶',
      '10⁻⁵',
      '10⁻⁴',
      '0.001',
      '0.01',
      '0.1',
      '1',
    ]);
    expect(ruling(linear(-1, 1), 200, 40).figures).toEqual(['−1.0', '−0.5', '0', '0.5', '1.0']);
  });

  it('figures have the room that they need', () => {
    for (const scale of [linear(0, 7.3), linear(-2e-3, 5e-3), logarithmic(0.3, 4e5)]) {
      const { main } = ruling(scale, 500, 50);
      const px = main.map((value) => 500 * shareOf(scale, value));
      for (let i = 1; i < px.length; i++) expect(px[i]! - px[i - 1]!).toBeGreaterThanOrEqual(50 - 1e-6);
    }
  });
});

describe('a line of many points', () => {
  const chance = uniform(9);
  const x = Float64Array.from({ length: 30_000 }, (_, i) => i);
  const y = Float64Array.from(x, () => chance() - 0.5);
  const box = { leftPx: 10, topPx: 5, widthPx: 300, heightPx: 100 };

  it('keeps the smallest and largest value of every pixel column (seed 9)', () => {
    const path = new Polyline();
    graphPath({ name: '', x, y, look: 'ink' }, linear(0, 29_999), linear(-0.5, 0.5), box, path);
    expect(path.count).toBeLessThanOrEqual(4 * 301);
    const drawn = new Map<number, [number, number]>();
    for (let i = 0; i < path.count; i++) {
      const column = Math.floor(path.x[i]!);
      const [low, high] = drawn.get(column) ?? [Infinity, -Infinity];
      drawn.set(column, [Math.min(low, path.y[i]!), Math.max(high, path.y[i]!)]);
    }
    const meant = new Map<number, [number, number]>();
    for (let i = 0; i < x.length; i++) {
      const column = Math.floor(10 + (x[i]! / 29_999) * 300);
      const py = 5 + (1 - (y[i]! + 0.5)) * 100;
      const [low, high] = meant.get(column) ?? [Infinity, -Infinity];
      meant.set(column, [Math.min(low, py), Math.max(high, py)]);
    }
    expect([...drawn.keys()]).toEqual([...meant.keys()]);
    const worst = [...meant].map(
      ([column, [low, high]]) => Math.abs(low - drawn.get(column)![0]) + Math.abs(high - drawn.get(column)![1]),
    );
    expect(Math.max(...worst)).toBeLessThan(1e-9);
  });

  it('is drawn from the point before the picture to the one after it, and no further', () => {
    const path = new Polyline();
    graphPath({ name: '', x, y, look: 'ink' }, linear(100.5, 103.5), linear(-0.5, 0.5), box, path);
    expect(path.count).toBe(5);
    expect(path.x[0]!).toBeCloseTo(10 - 50, 9);
  });

  it('has a gap where a value is missing, or cannot stand on a logarithmic axis', () => {
    const path = new Polyline();
    graphPath({ name: '', x: [1, 2, 3, 4], y: [1, NaN, 1, 1], look: 'ink' }, linear(0, 5), linear(0, 2), box, path);
    expect([...path.x.subarray(0, path.count)].map(Number.isNaN)).toEqual([false, true, false, false]);
    graphPath({ name: '', x: [0, 1, 10], y: [1, 1, 1], look: 'ink' }, logarithmic(1, 10), linear(0, 2), box, path);
    expect([...path.x.subarray(0, path.count)]).toEqual([10, 310]);
  });
});

it('the nearest point of a rising list is found', () => {
  expect([-5, 0.4, 0.6, 2.5, 99].map((value) => nearestIndex([0, 1, 2, 3], value))).toEqual([0, 0, 1, 2, 3]);
  expect(nearestIndex([], 1)).toBe(-1);
});
