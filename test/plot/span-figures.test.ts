import { describe, expect, it } from 'vitest';
import { spanFigures } from '../../src/plot/span-figures.ts';
import { tapeOf } from './support/tape-of.ts';

/** Round-off of a sum over n pieces, in units of the largest term: n·2⁻⁵³ with room for the few operations of each. */
const ROUND_OFF = 1e-12;

describe('figures of a straight line are exact, also with ends between rows', () => {
  const tape = tapeOf((t) => 3 + 2 * t, 1000, 2001);
  for (const [from, to] of [
    [0.2, 1.4],
    [0.20037, 1.39971],
    [0.5001, 0.5004],
    [0, 2],
  ] as const) {
    it(`${from} to ${to} s`, () => {
      const figures = spanFigures(tape, 0, from, to)!;
      const a = 3 + 2 * from;
      const b = 3 + 2 * to;
      const duration = to - from;
      expect(figures.durationS).toBeCloseTo(duration, 14);
      expect(figures.area).toBeCloseTo(((a + b) / 2) * duration, 11);
      expect(figures.mean).toBeCloseTo((a + b) / 2, 11);
      expect(figures.rms).toBeCloseTo(Math.sqrt((a * a + a * b + b * b) / 3), 11);
      expect(Math.abs(figures.slope - 2)).toBeLessThan((ROUND_OFF * 10) / duration);
      expect(figures.minimum).toEqual({ value: expect.closeTo(a, 11), timeS: from, withinS: 0 });
      expect(figures.maximum.value).toBeCloseTo(b, 11);
      expect(figures.maximum.timeS).toBeCloseTo(to, 12);
      expect([figures.slopeUnit, figures.areaUnit]).toEqual(['m/s³', 'm/s']);
    });
  }
});

describe('figures of a sine', () => {
  const w = 2 * Math.PI * 8;
  const rate = 2000;
  const tape = tapeOf((t) => 5 * Math.sin(w * t), rate, 4001, 4);

  it('over whole periods: mean 0, rms A/√2, area 0', () => {
    const figures = spanFigures(tape, 0, 0.125, 1.125)!;
    // Straight lines between rows fall short of the sine by A(ωh)²/12 in the mean.
    const short = (5 * (w / rate) ** 2) / 12;
    expect(Math.abs(figures.mean)).toBeLessThan(ROUND_OFF);
    expect(figures.rms).toBeLessThan(5 / Math.SQRT2);
    expect(5 / Math.SQRT2 - figures.rms).toBeLessThan(short);
  });

  it('over half a period: area 2A/ω to the trapezoid rule’s own error, of second order', () => {
    const errors = [250, 500, 1000, 2000].map((rateHz) => {
      const half = spanFigures(
        tapeOf((t) => 5 * Math.sin(w * t), rateHz, 300),
        0,
        0,
        0.0625,
      )!;
      return Math.abs(half.area - 10 / w);
    });
    for (let i = 1; i < errors.length; i++) expect(Math.log2(errors[i - 1]! / errors[i]!)).toBeCloseTo(2, 0);
    expect(errors[3]!).toBeLessThan((0.0625 * 5 * (w / 2000) ** 2) / 12);
  });

  it('slope over one period of a sine from its zero is −6A/(πT)', () => {
    // ∫(t − T/2)·A sin ωt dt over a period = −A·T/ω, times 12/T³, with ω = 2π/T.
    const figures = spanFigures(tape, 0, 0, 0.125)!;
    expect(figures.slope / ((-6 * 5) / (Math.PI * 0.125))).toBeCloseTo(1, 3);
  });

  it('finds the extremes and their instants', () => {
    const figures = spanFigures(tape, 0, 0.1, 1.99)!;
    expect(figures.maximum.value).toBeCloseTo(5, 4);
    expect(figures.minimum.value).toBeCloseTo(-5, 4);
    // Any crest will do; it must be one: sin ωt = 1 to the resolution of a row.
    expect(Math.sin(w * figures.maximum.timeS)).toBeGreaterThan(1 - (w / rate) ** 2 / 2);
    expect(Math.sin(w * figures.minimum.timeS)).toBeLessThan(-1 + (w / rate) ** 2 / 2);
  });
});

describe('peaks are those of the ticks', () => {
  const spike = tapeOf((t) => (Math.abs(t - 3.0005) < 1e-6 ? 40 : Math.abs(t - 4) < 1e-6 ? 30 : 1), 500, 3000, 4);

  it('a tick between rows is found, with half a row of doubt about its instant', () => {
    const { maximum } = spanFigures(spike, 0, 1, 5)!;
    expect(maximum.value).toBe(40);
    expect(Math.abs(maximum.timeS - 3.0005)).toBeLessThanOrEqual(maximum.withinS);
    expect(maximum.withinS).toBe(0.001);
  });

  it('a row is found exactly', () => {
    expect(spanFigures(spike, 0, 3.5, 5)!.maximum).toEqual({ value: 30, timeS: 4, withinS: 0 });
  });

  it('what lies outside the span is not counted, though inside the row at its edge', () => {
    expect(spanFigures(spike, 0, 3.0012, 3.9)!.maximum.value).toBe(1);
    expect(spanFigures(spike, 0, 2, 3.0003)!.maximum.value).toBe(1);
  });
});

it('a span beyond the tape is cut to what there is, and nothing is left of one outside', () => {
  const tape = tapeOf(() => 2, 100, 101, 1, 'm/s');
  const figures = spanFigures(tape, 0, -5, 50)!;
  expect([figures.fromS, figures.toS, figures.rows]).toEqual([0, 1, 101]);
  expect(figures.area).toBeCloseTo(2, 12);
  expect([figures.slopeUnit, figures.areaUnit]).toEqual(['m/s²', 'm']);
  expect(spanFigures(tape, 0, 2, 3)).toBeUndefined();
  expect(spanFigures(tape, 0, 0.5, 0.5)).toBeUndefined();
});
