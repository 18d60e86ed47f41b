import { describe, expect, it } from 'vitest';
import type { PaperScale } from '../../src/contract/view.ts';
import { ruleTicks } from '../../src/ui/rule-ticks.ts';
import { G_N } from '../../src/units/standard-gravity.ts';

const paper = (pxPerG: number): PaperScale => ({
  zeroYPx: 200,
  pxPerMS2: pxPerG / G_N,
  topYPx: 0,
  bottomYPx: 400,
});

const numbers = (scale: PaperScale, unit: 'g' | 'm/s²' = 'g') =>
  ruleTicks(scale, unit).flatMap((tick) => (tick.text === undefined ? [] : [{ text: tick.text, yPx: tick.yPx }]));

describe('the pen’s rule', () => {
  it('has its numbers where the paper has the values', () => {
    for (const { text, yPx } of numbers(paper(25))) {
      const value = Number(text.replace('\u2212', '-'));
      expect(yPx).toBeCloseTo(200 - 25 * value, 9);
    }
    expect(numbers(paper(25)).map(({ text }) => text)).toContain('\u22127');
    expect(numbers(paper(25)).map(({ text }) => text)).toContain('+8');
  });

  it('prints signs, and none on 0', () => {
    for (const { text } of numbers(paper(25))) expect(text).toMatch(/^(0|[+\u2212][0-9.]+)$/u);
    expect(numbers(paper(25)).filter(({ text }) => text === '0')).toHaveLength(1);
  });

  it.each([0.03, 0.4, 3, 7, 19, 25, 60, 333, 5000])('can be read at %f px per g', (pxPerG) => {
    for (const unit of ['g', 'm/s²'] as const) {
      const marks = ruleTicks(paper(pxPerG), unit);
      const printed = numbers(paper(pxPerG), unit);
      expect(printed.length).toBeGreaterThanOrEqual(3);
      expect(marks.length).toBeLessThanOrEqual(101);
      for (let index = 1; index < printed.length; index += 1) {
        expect(Math.abs(printed[index]!.yPx - printed[index - 1]!.yPx)).toBeGreaterThanOrEqual(21 - 1e-6);
      }
      for (const { yPx } of marks) {
        expect(yPx).toBeGreaterThanOrEqual(-1e-6);
        expect(yPx).toBeLessThanOrEqual(400 + 1e-6);
      }
    }
  });

  it('turns with the sign', () => {
    const turned = numbers({ ...paper(25), pxPerMS2: -25 / G_N });
    expect(turned.find(({ text }) => text === '+2')?.yPx).toBeCloseTo(250, 9);
  });

  it('gives both units the same place: +1 g stands at +9.80665 m/s²', () => {
    const perMS2 = numbers(paper(25 * G_N), 'm/s²').find(({ text }) => text === '+1');
    expect(perMS2?.yPx).toBeCloseTo(200 - 25, 9);
  });
});
