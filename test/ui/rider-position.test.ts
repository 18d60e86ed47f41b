import { describe, expect, it } from 'vitest';
import { type RuleRange, riderShare, riderStep, riderValue, ruleMarks } from '../../src/ui/rider-position.ts';

const MASS: RuleRange = { low: 0.005, high: 0.1, spacing: 'linear' };
const FREQUENCY: RuleRange = { low: 1, high: 20_000, spacing: 'logarithmic' };
const RATIO: RuleRange = { low: 0, high: 1.2, spacing: 'linear' };

describe('a rider on its rule', () => {
  it('stands at the ends for the ends, and never beyond', () => {
    for (const range of [MASS, FREQUENCY, RATIO]) {
      expect(riderShare(range.low, range)).toBe(0);
      expect(riderShare(range.high, range)).toBe(1);
      expect(riderShare(range.high * 2, range)).toBe(1);
      expect(riderValue(0, range)).toBe(range.low);
      expect(riderValue(1, range)).toBe(range.high);
      expect(riderValue(-0.2, range)).toBe(range.low);
      expect(riderValue(1.2, range)).toBe(range.high);
    }
  });

  it('moves equal lengths for equal differences or for equal ratios', () => {
    expect(riderShare(0.6, RATIO)).toBeCloseTo(0.5, 12);
    expect(riderShare(10, FREQUENCY)).toBeCloseTo(riderShare(1000, FREQUENCY) - riderShare(100, FREQUENCY), 12);
  });

  it('gives values of a few digits that stand where the hand is, within half a grain', () => {
    for (let share = 0.0137; share < 1; share += 0.0519) {
      // Linear: grain 10⁻² of the range's decade; logarithmic: half a unit of the third digit, at most 0.5 %.
      expect(Math.abs(riderShare(riderValue(share, RATIO), RATIO) - share)).toBeLessThanOrEqual(0.005 / 1.2 + 1e-12);
      const value = riderValue(share, FREQUENCY);
      expect(Math.abs(riderShare(value, FREQUENCY) - share)).toBeLessThanOrEqual(Math.log(1.00501) / Math.log(20_000));
      expect(String(value).replace(/[.0]/gu, '').length).toBeLessThanOrEqual(3);
    }
    expect(String(riderValue(0.1, RATIO))).toBe('0.12');
  });

  it('goes up and down by keys: a step leads back, a coarse one is ten', () => {
    for (const range of [MASS, FREQUENCY, RATIO]) {
      const start = riderValue(0.4, range);
      const up = riderStep(start, range, 1, false);
      expect(up).toBeGreaterThan(start);
      const back = riderShare(riderStep(up, range, -1, false), range);
      expect(Math.abs(back - riderShare(start, range))).toBeLessThan(0.006);
      const coarse = riderShare(riderStep(start, range, 1, true), range) - riderShare(start, range);
      expect(Math.abs(coarse - 0.1)).toBeLessThan(0.006);
      expect(riderStep(range.high, range, 1, true)).toBe(range.high);
    }
  });

  it('marks the decades longer, and stays within the rule', () => {
    const marks = ruleMarks(FREQUENCY);
    expect(marks.filter((mark) => mark.major)).toHaveLength(5); // 1, 10, 100, 1000, 10 000
    for (const { share } of [...marks, ...ruleMarks(MASS)]) {
      expect(share).toBeGreaterThanOrEqual(0);
      expect(share).toBeLessThanOrEqual(1);
    }
  });
});
