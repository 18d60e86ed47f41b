import { describe, expect, it } from 'vitest';
import type { SketchPoint } from '../../src/contract/lesson.ts';
import { valueAt, withoutNearest, withPoint, withStroke } from '../../src/ui/sketch-line.ts';

const SPAN_S = 0.4;
const LINE: readonly SketchPoint[] = [
  [-0.1, 10],
  [0, 10],
  [0.1, -5],
  [0.3, 0],
];

describe('a sketched line', () => {
  it('takes a point in its place in time', () => {
    expect(withPoint(LINE, [0.05, 3], SPAN_S).map(([timeS]) => timeS)).toEqual([-0.1, 0, 0.05, 0.1, 0.3]);
  });

  it('has one value at an instant: a point set on another replaces it', () => {
    // A four-hundredth of 0.4 s is 1 ms.
    expect(withPoint(LINE, [0.1005, 2], SPAN_S)).toEqual([LINE[0], LINE[1], [0.1005, 2], LINE[3]]);
    expect(withPoint(LINE, [0.102, 2], SPAN_S)).toHaveLength(5);
  });

  it.each(['forward', 'backward'])('a stroke drawn %s replaces what lay between its ends', (direction) => {
    const ends: [SketchPoint, SketchPoint] = [
      [0, 10],
      [0.2, 1],
    ];
    const [from, to] = direction === 'forward' ? ends : [ends[1], ends[0]];
    const drawn = withStroke(withPoint(LINE, from, SPAN_S), from, to, SPAN_S);
    expect(drawn).toEqual([LINE[0], ends[0], ends[1], LINE[3]]);
  });

  it('loses the point nearest in time', () => {
    expect(withoutNearest(LINE, 0.21)).toEqual(LINE.slice(0, 3));
    expect(withoutNearest(LINE, 0.19)).toEqual([LINE[0], LINE[1], LINE[3]]);
    expect(withoutNearest([], 0)).toEqual([]);
  });

  it('runs straight from point to point and level beyond its ends', () => {
    expect(valueAt(LINE, 0.05)).toBeCloseTo(2.5, 12);
    expect(valueAt(LINE, 0.1)).toBe(-5);
    expect(valueAt(LINE, -1)).toBe(10);
    expect(valueAt(LINE, 1)).toBe(0);
    expect(valueAt([], 0)).toBeUndefined();
  });
});
