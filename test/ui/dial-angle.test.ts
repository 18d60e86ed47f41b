import { describe, expect, it } from 'vitest';
import {
  dialAngle,
  LARGEST_SLOWDOWN,
  parseSlowdown,
  pointerAngle,
  slowdownAtAngle,
  slowdownText,
  steppedSlowdown,
} from '../../src/ui/dial-angle.ts';

describe('the dial of the speed lever', () => {
  it('has true speed at the left end and one ten-thousandth at the right', () => {
    expect(dialAngle(1)).toBe(180);
    expect(dialAngle(LARGEST_SLOWDOWN)).toBe(0);
  });

  it('turns by equal angles for equal ratios', () => {
    const turned = (from: number, to: number) => dialAngle(from) - dialAngle(to);
    expect(turned(1, 10)).toBeCloseTo(45, 12);
    expect(turned(37, 370)).toBeCloseTo(45, 12);
    expect(turned(2, 4)).toBeCloseTo(turned(1000, 2000), 12);
  });

  it('gives back the slowdown under the lever, to two digits', () => {
    for (const slowdown of [1, 1.3, 2, 20, 47, 350, 1000, 9900, 10_000]) {
      expect(slowdownAtAngle(dialAngle(slowdown))).toBe(slowdown);
    }
    expect(slowdownAtAngle(dialAngle(1234))).toBe(1200);
  });

  it('keeps to its ends when the hand goes beyond', () => {
    expect(slowdownAtAngle(200)).toBe(1);
    expect(slowdownAtAngle(-10)).toBe(LARGEST_SLOWDOWN);
  });

  it('does not jump across when the pointer slips under the hub', () => {
    expect(pointerAngle(0, -5)).toBeCloseTo(90, 12);
    expect(pointerAngle(-5, -5)).toBeCloseTo(135, 12);
    expect(pointerAngle(-5, 3)).toBe(180);
    expect(pointerAngle(5, 3)).toBe(0);
  });

  it('steps along 1, 2, 5, 10 and stops at the ends', () => {
    const up: number[] = [1];
    while ((up.at(-1) ?? 0) < LARGEST_SLOWDOWN) up.push(steppedSlowdown(up.at(-1) ?? 1, 1));
    expect(up).toEqual([1, 2, 5, 10, 20, 50, 100, 200, 500, 1000, 2000, 5000, 10_000]);
    expect(steppedSlowdown(LARGEST_SLOWDOWN, 1)).toBe(LARGEST_SLOWDOWN);
    expect(steppedSlowdown(1, -1)).toBe(1);
    expect(steppedSlowdown(37, 1)).toBe(50);
    expect(steppedSlowdown(37, -1)).toBe(20);
  });
});

describe('a typed slowdown', () => {
  it.each([
    ['20', 20],
    ['20 times', 20],
    ['slowed 20 times', 20],
    ['×20', 20],
    ['1/250', 250],
    ['10\u202f000 times', 10_000],
    ['1,5', 1.5],
  ])('is read from “%s”', (text, slowdown) => {
    expect(parseSlowdown(text)).toEqual({ slowdown });
  });

  it.each(['', 'times', 'fast', '0.5', '0', '-3', '10001', '1e9', '∞'])('is refused with a sentence: “%s”', (text) => {
    const read = parseSlowdown(text);
    expect('reason' in read && read.reason).toMatch(/^[A-Z].*\.$/u);
  });

  it('is read again from what is printed', () => {
    for (const slowdown of [1, 2.5, 20, 999, 1000, 4700, 10_000]) {
      expect(parseSlowdown(slowdownText(slowdown))).toEqual({ slowdown });
    }
  });
});
