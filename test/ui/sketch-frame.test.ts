import { describe, expect, it } from 'vitest';
import { keyStep, pointAt, sketchFrame, ticks, timeUnit, xOf, yOf } from '../../src/ui/sketch-frame.ts';
import { G_N } from '../../src/units/standard-gravity.ts';

const AXES = {
  line: 'reading',
  quantity: 'acceleration',
  unit: 'g',
  fromS: -0.1,
  toS: 0.3,
  low: -1.5 * G_N,
  high: 1.5 * G_N,
  zero: 'let go',
};
const FRAME = sketchFrame(AXES, 240, 180);

describe('the frame of a sketch', () => {
  it.each([
    [-0.1, -1.5],
    [0, 1],
    [0.13, -0.2],
    [0.3, 1.5],
  ])('a point at %f s and %f g is found again where it was drawn', (timeS, g) => {
    const [foundS, value] = pointAt(FRAME, xOf(FRAME, timeS), yOf(FRAME, g * G_N));
    expect(foundS).toBeCloseTo(timeS, 12);
    expect(value / G_N).toBeCloseTo(g, 12);
  });

  it('upward is more, to the right is later', () => {
    expect(yOf(FRAME, G_N)).toBeLessThan(yOf(FRAME, 0));
    expect(xOf(FRAME, 0.1)).toBeGreaterThan(xOf(FRAME, 0));
  });

  it('a place beyond the edge belongs to the edge', () => {
    expect(pointAt(FRAME, -50, 1000)).toEqual([AXES.fromS, AXES.low]);
    expect(pointAt(FRAME, 999, -50)).toEqual([AXES.toS, AXES.high]);
  });
});

describe('what is written at its edges', () => {
  it('round values in their own unit, with a true minus', () => {
    expect(ticks(AXES.low, AXES.high, 'acceleration', 'g', 4).map(({ text }) => text)).toEqual(['\u22121', '0', '1']);
    expect(ticks(AXES.low, AXES.high, 'acceleration', 'g', 7).map(({ text }) => text)).toEqual([
      '\u22121.5',
      '\u22121.0',
      '\u22120.5',
      '0.0',
      '0.5',
      '1.0',
      '1.5',
    ]);
    expect(ticks(-0.1, 0.3, 'time', 'ms', 4).map(({ text }) => text)).toEqual(['\u2212100', '0', '100', '200', '300']);
  });

  it('each at its SI value', () => {
    const [first, , last] = ticks(AXES.low, AXES.high, 'acceleration', 'g', 4);
    expect(first!.value).toBeCloseTo(-9.80665, 12);
    expect(last!.value).toBeCloseTo(9.80665, 12);
  });

  it('milliseconds below a second', () => {
    expect(timeUnit(AXES)).toBe('ms');
    expect(timeUnit({ ...AXES, toS: 4 })).toBe('s');
  });
});

it('keys move in round steps: 10 ms and 0.1 g here', () => {
  expect(keyStep(AXES.fromS, AXES.toS, 'time', 'ms')).toBeCloseTo(0.01, 15);
  expect(keyStep(AXES.low, AXES.high, 'acceleration', 'g')).toBeCloseTo(0.1 * G_N, 12);
});
