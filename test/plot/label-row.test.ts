import { describe, expect, it } from 'vitest';
import { placeLabels, type RowLabel } from '../../src/plot/label-row.ts';
import { uniform } from './support/tape-of.ts';

const label = (markPx: number, widthPx: number, rank = 0): RowLabel => ({
  text: '',
  markPx,
  widthPx,
  rank,
  leftPx: NaN,
});
const GAP = 9;

describe('names over their marks', () => {
  it('stand in the middle where there is room', () => {
    const labels = [label(100, 40), label(300, 50)];
    placeLabels(labels, 0, 500, GAP);
    expect(labels.map(({ leftPx }) => leftPx)).toEqual([80, 275]);
  });

  it('of one rank make room for each other without leaving their marks', () => {
    const labels = [label(100, 40), label(125, 40)];
    placeLabels(labels, 0, 500, GAP);
    expect(labels[1]!.leftPx).toBe(125 - 3);
    expect(labels[0]!.leftPx).toBe(125 - 3 - GAP - 40);
  });

  it('are left out where two would need the room of one, the later of them', () => {
    const labels = [label(100, 40), label(106, 40)];
    placeLabels(labels, 0, 500, GAP);
    expect(labels.map(({ leftPx }) => leftPx)).toEqual([80, NaN]);
  });

  it('yield by rank: the lifted gives way to the touch that comes later', () => {
    const labels = [label(100, 40, 2), label(103, 40, 0)];
    placeLabels(labels, 0, 500, GAP);
    expect(labels[1]!.leftPx).toBe(83);
    expect(labels[0]!.leftPx).toBeNaN();
  });

  it('never overlap, never leave the paper, never leave their marks (seed 5)', () => {
    const chance = uniform(5);
    for (let trial = 0; trial < 300; trial++) {
      const labels = Array.from({ length: 2 + Math.floor(20 * chance()) }, () =>
        label(-10 + 520 * chance(), 20 + 60 * chance(), Math.floor(3 * chance())),
      );
      placeLabels(labels, 4, 496, GAP);
      const placed = labels.filter(({ leftPx }) => !Number.isNaN(leftPx)).sort((a, b) => a.leftPx - b.leftPx);
      expect(placed.length).toBeGreaterThan(0);
      const right = placed.map(({ leftPx, widthPx }) => leftPx + widthPx);
      expect(placed[0]!.leftPx).toBeGreaterThanOrEqual(4 - 1e-6);
      expect(right[right.length - 1]!).toBeLessThanOrEqual(496 + 1e-6);
      expect(placed.every((each, i) => each.markPx > each.leftPx && each.markPx < right[i]!)).toBe(true);
      expect(placed.every((each, i) => i === 0 || each.leftPx - right[i - 1]! >= GAP - 1e-6)).toBe(true);
    }
  });

  it('what is placed by rank is the same whatever of lower rank is added', () => {
    const strong = [label(100, 40), label(130, 40), label(300, 40)];
    placeLabels(strong, 0, 500, GAP);
    const places = strong.map(({ leftPx }) => leftPx);
    placeLabels([label(90, 60, 2), ...strong, label(290, 60, 2)], 0, 500, GAP);
    expect(strong.map(({ leftPx }) => leftPx)).toEqual(places);
  });
});
