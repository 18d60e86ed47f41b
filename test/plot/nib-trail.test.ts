import { describe, expect, it } from 'vitest';
import { NibTrail } from '../../src/plot/nib-trail.ts';
import { Trace } from '../../src/plot/trace.ts';

function rowsAt(...times: number[]): Trace {
  const trace = new Trace();
  trace.reserve(times.length);
  for (const timeS of times) trace.add(timeS, 100 * timeS);
  return trace;
}

function merged(trail: NibTrail, rows: Trace): [number, number][] {
  const out = new Trace();
  trail.merge(rows, out);
  return Array.from({ length: out.count }, (_, i) => [out.timeS[i]!, out.value[i]!]);
}

describe('the nib’s path between rows', () => {
  it('stands between the rows that it was drawn between, and nowhere else', () => {
    const trail = new NibTrail();
    for (const timeS of [0.5, 1.2, 1.8, 2.5, 3.5]) trail.add(timeS, 7);
    expect(merged(trail, rowsAt(1, 2, 3))).toEqual([
      [1, 100],
      [1.2, 7],
      [1.8, 7],
      [2, 200],
      [2.5, 7],
      [3, 300],
    ]);
  });

  it('yields to a row at the same instant', () => {
    const trail = new NibTrail();
    trail.add(2, 7);
    expect(merged(trail, rowsAt(1, 2, 3))).toEqual([
      [1, 100],
      [2, 200],
      [3, 300],
    ]);
  });

  it('is forgotten from the instant that a run went back to', () => {
    const trail = new NibTrail();
    for (const timeS of [1.2, 1.4, 1.6, 1.8]) trail.add(timeS, 7);
    trail.add(1.5, 8);
    expect(merged(trail, rowsAt(1, 2))).toEqual([
      [1, 100],
      [1.2, 7],
      [1.4, 7],
      [1.5, 8],
      [2, 200],
    ]);
  });

  it('keeps the newest points when there are too many', () => {
    const trail = new NibTrail();
    for (let i = 0; i < 5000; i++) trail.add(i, i);
    const points = merged(trail, rowsAt(-1, 6000));
    expect(points).toHaveLength(2048 + 2);
    expect(points[1]).toEqual([5000 - 2048, 5000 - 2048]);
  });

  it('is empty after another run began', () => {
    const trail = new NibTrail();
    trail.add(1, 1);
    trail.clear();
    expect(trail.empty).toBe(true);
    expect(merged(trail, rowsAt(0, 2))).toHaveLength(2);
  });
});
