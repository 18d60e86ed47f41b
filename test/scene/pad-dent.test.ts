import { describe, expect, it } from 'vitest';
import type { Quaternion } from '../../src/contract/geometry.ts';
import { PadDent } from '../../src/scene/pad-dent.ts';
import { housingCorners, lowestCorner } from '../../src/scene/room-layout.ts';
import { HOUSING, numbers } from './snapshots.ts';

const FLAT: Quaternion = [0, 0, 0, 1];

function quaternion(random: () => number, most: number): Quaternion {
  const [x, y, z] = [(random() - 0.5) * most, random() - 0.5, (random() - 0.5) * most];
  const length = Math.hypot(x, y, z, 1);
  return [x / length, y / length, z / length, 1 / length];
}

/** Presses a housing whose lowest corner is at `lowest` [m]; returns its corners. */
function press(dent: PadDent, attitude: Quaternion, lowest: number, x = 0, z = 0): Float64Array {
  const corners = new Float64Array(24);
  housingCorners([0, 0, 0], attitude, HOUSING, corners);
  const y = lowest - corners[lowestCorner(corners) * 3 + 1]!;
  housingCorners([x, y, z], attitude, HOUSING, corners);
  dent.press(corners, [x, y, z], attitude, HOUSING);
  return corners;
}

describe('the pad’s drawn top', () => {
  // heights are kept as float32: 17 mm is exact to 2⁻²⁴·17 mm ≈ 1 nm
  const TOLERANCE_M = 2e-9;

  it('lies at the lowest corner while it is pressed, at 60 attitudes and places (seed 4)', () => {
    const random = numbers(4);
    for (const [columns, rows] of [
      [41, 29],
      [25, 15],
    ] as const) {
      const dent = new PadDent(0.25, 0.17, columns, rows);
      for (let run = 0; run < 60; run++) {
        const lowest = -0.0002 - 0.017 * random();
        const corners = press(dent, quaternion(random, 0.8), lowest, (random() - 0.5) * 0.06, (random() - 0.5) * 0.03);
        const at = lowestCorner(corners) * 3;
        expect(corners[at + 1]).toBeCloseTo(lowest, 12);
        const x = corners[at]!;
        const z = corners[at + 2]!;
        if (Math.abs(x) > 0.125 || Math.abs(z) > 0.085) continue; // beside the pad
        expect(Math.abs(dent.heightAt(x, z) - lowest)).toBeLessThan(TOLERANCE_M);
      }
    }
  });

  it('is nowhere inside the housing: under a flat one it is flat and as deep', () => {
    const dent = new PadDent(0.25, 0.17, 41, 29);
    press(dent, FLAT, -0.01);
    for (let x = -0.07; x <= 0.07; x += 0.01) {
      for (let z = -0.05; z <= 0.05; z += 0.01) expect(dent.heightAt(x, z)).toBeCloseTo(-0.01, 8);
    }
  });

  it('rises to its level away from the housing and never above it', () => {
    const dent = new PadDent(0.4, 0.4, 61, 61);
    press(dent, FLAT, -0.01);
    expect(dent.heightAt(0.19, 0)).toBeGreaterThan(-0.001);
    expect(dent.heightAt(0.085, 0)).toBeLessThan(-0.005);
    expect(Math.max(...dent.heights)).toBeLessThanOrEqual(0);
    expect(dent.heightAt(1, 1)).toBe(0);
  });

  it('is level again when the housing has left, and says when nothing changed', () => {
    const dent = new PadDent(0.25, 0.17, 41, 29);
    const corners = press(dent, FLAT, -0.01);
    expect(dent.heights.some((height) => height < 0)).toBe(true);
    housingCorners([0, 0.5, 0], FLAT, HOUSING, corners);
    expect(dent.press(corners, [0, 0.5, 0], FLAT, HOUSING)).toBe(true);
    expect(dent.heights.every((height) => height === 0)).toBe(true);
    expect(dent.press(corners, [0, 0.5, 0], FLAT, HOUSING)).toBe(false);
  });
});
