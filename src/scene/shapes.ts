/** Flat outlines that are cut from sheet: rounded bars, slotted lever leaves, toothed wheels. */
import { Path, Shape } from 'three';

function rounded<Outline extends Path>(outline: Outline, x0: number, x1: number, half: number): Outline {
  outline.moveTo(x0 + half, -half);
  outline.lineTo(x1 - half, -half);
  outline.absarc(x1 - half, 0, half, -Math.PI / 2, Math.PI / 2, false);
  outline.lineTo(x0 + half, half);
  outline.absarc(x0 + half, 0, half, Math.PI / 2, (3 * Math.PI) / 2, false);
  return outline;
}

/**
 * One leaf of the lever: a bar along +x whose pin is at 0, with a long slot from `slotFrom` to its end that
 * slides over the pivot, and short openings before it.
 */
export function slottedLeaf(length: number, half: number, slotFrom: number): Shape {
  const leaf = rounded(new Shape(), -half * 1.3, length, half);
  const slotHalf = half * 0.27;
  const hole = (from: number, to: number): void => {
    if (to - from > 4 * slotHalf) leaf.holes.push(rounded(new Path(), from, to, slotHalf));
  };
  const opening = half * 5.6;
  const first = half * 1.6;
  const count = Math.floor((slotFrom - half - first) / (opening + half * 1.7));
  const pitch = count > 0 ? (slotFrom - half - first) / count : 0;
  for (let slot = 0; slot < count; slot++) hole(first + slot * pitch, first + (slot + 1) * pitch - half * 1.7);
  hole(slotFrom, length - half * 0.6);
  return leaf;
}

/** A toothed wheel about the origin; its first tooth points to `phase` [rad]. */
export function toothedWheel(radius: number, teeth: number, phase: number): Shape {
  const wheel = new Shape();
  const root = radius * 0.87;
  const tip = radius * 1.11;
  const step = (2 * Math.PI) / teeth;
  for (let tooth = 0; tooth < teeth; tooth++) {
    const middle = phase + tooth * step;
    for (const [angle, r] of [
      [-0.32, root],
      [-0.16, tip],
      [0.16, tip],
      [0.32, root],
    ] as const) {
      const x = r * Math.cos(middle + angle * step);
      const y = r * Math.sin(middle + angle * step);
      if (tooth === 0 && angle === -0.32) wheel.moveTo(x, y);
      else wheel.lineTo(x, y);
    }
  }
  const hole = new Path();
  hole.absarc(0, 0, radius * 0.3, 0, 2 * Math.PI, true);
  wheel.holes.push(hole);
  return wheel;
}
