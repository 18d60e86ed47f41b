import { describe, expect, it } from 'vitest';
import type { Vector } from '../../src/contract/geometry.ts';
import { gravityInView, turned, turnedBack, uprightTo } from '../../src/scene/axis-frame.ts';
import { G } from './snapshots.ts';

const out = new Float64Array(3);
const about = (axis: Vector, degrees: number): readonly number[] => {
  const half = (degrees * Math.PI) / 360;
  return [axis[0] * Math.sin(half), axis[1] * Math.sin(half), axis[2] * Math.sin(half), Math.cos(half)];
};

describe('the upright frame of an element', () => {
  it('has the axis upward, for all six sides and a slanted axis', () => {
    const third = Math.sqrt(1 / 3);
    for (const axis of [
      [0, 1, 0],
      [0, -1, 0],
      [1, 0, 0],
      [-1, 0, 0],
      [0, 0, 1],
      [0, 0, -1],
      [third, third, third],
    ] as const) {
      turned(uprightTo(axis), 0, 1, 0, out);
      for (let side = 0; side < 3; side++) expect(out[side]).toBeCloseTo(axis[side]!, 12);
    }
  });

  it('turning back undoes turning', () => {
    const attitude = about([0.6, 0, 0.8], 77);
    turned(attitude, 1, 2, 3, out);
    turnedBack(attitude, out[0]!, out[1]!, out[2]!, out);
    expect([...out].map((value) => Math.round(value * 1e12) / 1e12)).toEqual([1, 2, 3]);
  });
});

describe('gravity in the riding view', () => {
  it('points straight down while the housing is level', () => {
    gravityInView([0, 0, 0, 1], uprightTo([0, 1, 0]), G, out);
    expect([out[0], out[1]]).toEqual([0, -G]);
  });

  it('leans by the tilt: turned 30° to the left, g cos 30° down the axis and g sin 30° to the left', () => {
    gravityInView(about([0, 0, 1], 30), uprightTo([0, 1, 0]), G, out);
    expect(out[1]).toBeCloseTo(-G * Math.cos(Math.PI / 6), 12);
    expect(out[0]).toBeCloseTo(-G * 0.5, 12);
  });

  it('lies across a level housing’s x axis', () => {
    gravityInView([0, 0, 0, 1], uprightTo([1, 0, 0]), G, out);
    expect(out[1]).toBeCloseTo(0, 12);
    expect(Math.abs(out[0]!)).toBeCloseTo(G, 12);
  });
});
