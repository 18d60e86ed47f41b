import { describe, expect, it } from 'vitest';
import { AutoRange, magnitudeKept } from '../../src/plot/auto-range.ts';
import { uniform } from './support/tape-of.ts';

describe('automatic range', () => {
  it('takes only round ranges', () => {
    const range = new AutoRange();
    const taken = new Set<number>();
    for (let need = 0.93; need < 93; need *= 1.03) taken.add(range.update(need));
    expect([...taken]).toEqual([1, 1.5, 2, 3, 5, 7, 10, 15, 20, 30, 50, 70, 100]);
  });

  it('holds 1 g at rest in ±1.5 g and stops at 6 g in ±7 g', () => {
    expect(new AutoRange().update(1)).toBe(1.5);
    expect(new AutoRange().update(6)).toBe(7);
  });

  it('always holds what is needed', () => {
    const chance = uniform(3);
    const range = new AutoRange();
    for (let i = 0; i < 2000; i++) {
      const need = 10 ** (6 * chance() - 3);
      expect(range.update(need)).toBeGreaterThan(need);
    }
  });

  it('does not change to and fro when what is needed trembles about a limit', () => {
    const range = new AutoRange();
    const seen = new Set<number>();
    for (let i = 0; i < 200; i++) seen.add(range.update(4.7 * (1 + 0.1 * Math.sin(i))));
    expect(seen.size).toBeLessThanOrEqual(2);
    const settled = range.current;
    for (let i = 0; i < 200; i++) expect(range.update(4.7 * (1 + 0.1 * Math.sin(i)))).toBe(settled);
  });

  it('comes down once values could grow by a quarter and still fit', () => {
    const range = new AutoRange();
    range.update(4.8); // ±7
    expect(range.update(4)).toBe(7); // 4·1.25 = 5 > 0.94·5
    expect(range.update(3.7)).toBe(5);
  });

  it('comes down to a known limit without further room', () => {
    const range = new AutoRange();
    range.update(50);
    expect(range.update(6, 6)).toBe(7);
    expect(new AutoRange().update(6, 6)).toBe(7);
  });

  it('depends on the sequence of needs only', () => {
    const needs = Array.from({ length: 50 }, (_, i) => 3 + 2.5 * Math.sin(i / 4));
    const run = () => {
      const range = new AutoRange();
      return needs.map((need) => range.update(need));
    };
    expect(run()).toEqual(run());
  });
});

describe('magnitude that all but a few values keep to', () => {
  it('is the (spare + 1)-th largest magnitude, as a full sort finds it (seed 11)', () => {
    const chance = uniform(11);
    for (let length = 1; length < 200; length += 7) {
      const values = Float64Array.from({ length }, () => Math.round(20 * (chance() - 0.5)) / 2);
      const sorted = [...values].map(Math.abs).sort((a, b) => b - a);
      const scratch = new Float64Array(length);
      for (const spare of [0, 1, Math.floor(length / 3)]) {
        expect(magnitudeKept(values, length, spare, scratch)).toBe(sorted[Math.min(spare, length - 1)]);
      }
    }
  });

  it('a 50 g landing on 2 % of the columns leaves ±1.2 g as it was', () => {
    const values = Float64Array.from({ length: 1000 }, (_, i) => (i >= 400 && i < 420 ? 50 : 1.2 * Math.sin(i / 30)));
    const kept = magnitudeKept(values, values.length, 40, new Float64Array(1000));
    expect(kept).toBeLessThanOrEqual(1.2);
    expect(kept).toBeGreaterThan(1.15);
  });

  it('a missing value asks for nothing', () => {
    expect(magnitudeKept(Float64Array.of(NaN, 2, NaN, -3), 4, 0, new Float64Array(4))).toBe(3);
  });
});
