/** The lowest positive roots of a frequency equation. */
import { bracketedRoot } from '../numerics/root.ts';

/** Smallest root looked for: a mass 1e11 times that of its spring (3e-6), or of its arm. */
const LEAST = 1e-6;
/** Roots lie further apart than this factor below 1, and than this step above. */
const FACTOR = 1.25;
const STEP = 0.1;

export function firstRoots(equation: (b: number) => number, count: number): number[] {
  const roots: number[] = [];
  let low = LEAST;
  let atLow = equation(low);
  while (roots.length < count) {
    const high = Math.min(low * FACTOR, low + STEP);
    const atHigh = equation(high);
    if (Math.sign(atHigh) !== Math.sign(atLow)) roots.push(bracketedRoot(equation, low, high));
    low = high;
    atLow = atHigh;
  }
  return roots;
}
