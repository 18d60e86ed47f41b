import { describe, expect, it } from 'vitest';
import { multiples, niceStep, stepDecimals, stepParts } from '../../src/plot/nice-step.ts';
import { isFollowing, pulledTo, zoomed } from '../../src/plot/paper-window.ts';
import { tapeOf } from './support/tape-of.ts';

const tape = tapeOf(() => 0, 100, 1001);
const LIMITS = { shortestSpanS: 0.001, longestSpanS: 60 };
const view = (endS: number, spanS: number) => ({ tape, nowS: 10, endS, spanS });

describe('zoom', () => {
  it('keeps the instant under the pointer where it is', () => {
    for (const factor of [0.3, 0.9, 1.4]) {
      const after = zoomed(view(6, 4), factor, 5, LIMITS);
      expect((after.endS - 5) / after.spanS).toBeCloseTo((6 - 5) / 4, 12);
      expect(after.spanS).toBeCloseTo(4 * factor, 12);
    }
  });

  it('keeps a running paper under the pen', () => {
    expect(zoomed(view(10, 4), 0.5, 7, LIMITS)).toEqual({ endS: 10, spanS: 2 });
  });

  it('stays within its limits', () => {
    expect(zoomed(view(6, 4), 1e-9, 5, LIMITS).spanS).toBe(0.001);
    expect(zoomed(view(6, 4), 1e9, 5, LIMITS).spanS).toBe(60);
  });

  it('in and out again is where it was', () => {
    const closer = zoomed(view(6, 4), 0.2, 5, LIMITS);
    const again = zoomed({ ...view(closer.endS, closer.spanS) }, 5, 5, LIMITS);
    expect(again.endS).toBeCloseTo(6, 12);
    expect(again.spanS).toBeCloseTo(4, 12);
  });
});

describe('pulling', () => {
  it('ends at now and at the oldest row', () => {
    expect(pulledTo(view(6, 4), 99)).toBe(10);
    expect(pulledTo(view(6, 4), -3)).toBe(0);
    expect(pulledTo(view(6, 4), 3)).toBe(3);
  });

  it('is over when the newest instant is under the nib', () => {
    expect(isFollowing(view(10, 4))).toBe(true);
    expect(isFollowing(view(9.9, 4))).toBe(false);
  });
});

describe('steps', () => {
  it('are 1, 2, 5 and no smaller than asked', () => {
    expect([0.03, 0.05, 0.4, 1, 1.01, 340].map(niceStep)).toEqual([0.05, 0.05, 0.5, 1, 2, 500]);
  });

  it('have the decimals that tell their multiples apart', () => {
    expect([500, 1, 0.5, 0.2, 0.05, 0.001].map(stepDecimals)).toEqual([0, 0, 1, 1, 2, 3]);
  });

  it('have exact multiples: no 0.30000000000000004', () => {
    expect(multiples(-0.2, 0.71, 0.1)).toEqual([-0.2, -0.1, 0, 0.1, 0.2, 0.3, 0.4, 0.5, 0.6, 0.7]);
    expect(multiples(1, 9, 5)).toEqual([5]);
  });

  it('divide into round parts', () => {
    expect([1, 0.2, 50].map(stepParts)).toEqual([5, 4, 5]);
  });
});
