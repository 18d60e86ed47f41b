import { describe, expect, it } from 'vitest';
import { area, crossings, extreme, rms, type Series, slope, staysFrom } from '../../src/analysis/series.ts';

const RATE = 1000;

/** Values of a line from the first row at or after `fromS` to the last at or before `toS`. */
function rows(line: (timeS: number) => number, fromS: number, toS: number): Series {
  const first = Math.ceil(fromS * RATE - 1e-6);
  const last = Math.floor(toS * RATE + 1e-6);
  return {
    startS: first / RATE,
    rateHz: RATE,
    values: Float64Array.from({ length: last - first + 1 }, (_, k) => line((first + k) / RATE)),
  };
}

describe('area, rms and slope', () => {
  it('are exact for a straight line, ends between rows included', () => {
    const [from, to] = [0.01234, 0.09876];
    const line = rows((t) => 3 + 5 * t, from, to);
    const exact = 3 * (to - from) + 2.5 * (to * to - from * from);
    expect(Math.abs(area(line, from, to) - exact)).toBeLessThan(1e-14);
    const square = ((3 + 5 * to) ** 3 - (3 + 5 * from) ** 3) / 15;
    expect(Math.abs(rms(line, from, to) - Math.sqrt(square / (to - from)))).toBeLessThan(1e-13);
    expect(Math.abs(slope(line) - 5)).toBeLessThan(1e-11);
  });

  it('of a half-sine err by the trapezoid rule’s T·h²·|v″|/12 at most', () => {
    const pulse = (t: number) => 500 * Math.sin((Math.PI * t) / 0.02);
    // Half-sine of 0.02 s: area 2AT/π, rms A/√2.
    const bound = (0.02 * 500 * (Math.PI / 0.02) ** 2) / 12 / RATE ** 2;
    expect(Math.abs(area(rows(pulse, 0, 0.02), 0, 0.02) - (2 * 500 * 0.02) / Math.PI)).toBeLessThan(bound);
    // A chord under a sine loses (Ωh)²/12 of its rms.
    const lost = (Math.PI / 0.02 / RATE) ** 2 / 12;
    expect(Math.abs(1 - rms(rows(pulse, 0, 0.02), 0, 0.02) / (500 / Math.SQRT2) - lost)).toBeLessThan(0.01 * lost);
  });

  it('do not look across the ends, where a line may jump', () => {
    const [from, to] = [0.0105, 0.0305];
    const inside = rows((t) => 7 + t, from, to);
    const exact = 7 * (to - from) + (to * to - from * from) / 2;
    expect(Math.abs(area(inside, from, to) - exact)).toBeLessThan(1e-15);
  });
});

describe('extremes, crossings and settling', () => {
  const swing = (t: number) => Math.cos(2 * Math.PI * 8 * t) * Math.exp(-3 * t);

  it('the lowest point of a swing is found between the rows', () => {
    const { value, timeS } = extreme(rows(swing, 0, 0.5), -1);
    // Turning point of e^(−st)cos ωt: tan ωt = −s/ω.
    const omega = 2 * Math.PI * 8;
    const exact = (Math.PI - Math.atan(3 / omega)) / omega;
    expect(Math.abs(timeS - exact)).toBeLessThan(1e-5);
    // A parabola through three values errs by |v‴|h³/(9√3) at most.
    expect(Math.abs(value - swing(exact))).toBeLessThan((omega / RATE) ** 3 / (9 * Math.sqrt(3)));
  });

  it('an extreme at an end is that end', () => {
    expect(
      extreme(
        rows((t) => t, 0, 0.1),
        1,
      ),
    ).toEqual({ value: 0.1, timeS: 0.1 });
  });

  it('crossings come at the zeros of the cosine, rising ones at every other', () => {
    const found = crossings(rows(swing, 0, 0.3), 0, 'either');
    expect(found.length).toBe(5);
    found.forEach((timeS, k) => {
      expect(Math.abs(timeS - (2 * k + 1) / 32)).toBeLessThan(1e-5);
    });
    expect(crossings(rows(swing, 0, 0.3), 0, 'rising').length).toBe(2);
  });

  it('it stays within a band from the last time it enters it', () => {
    // The envelope e^(−3t) is not the answer: the last swing beyond the band is.
    const line = rows(swing, 0, 1);
    const found = staysFrom(line, 0, 0.2);
    expect(Math.abs(swing(found))).toBeCloseTo(0.2, 3);
    for (let t = found + 1e-3; t < 1; t += 1e-3) expect(Math.abs(swing(t))).toBeLessThanOrEqual(0.2);
  });

  it('a line that ends outside never stays; one that was never outside stays from its first value', () => {
    expect(
      staysFrom(
        rows((t) => t, 0, 1),
        0,
        0.5,
      ),
    ).toBe(Number.POSITIVE_INFINITY);
    expect(
      staysFrom(
        rows(() => 0, 0.25, 1),
        0,
        0.5,
      ),
    ).toBe(0.25);
  });
});
