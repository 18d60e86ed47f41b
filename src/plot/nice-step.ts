/** Round steps for scales, found by comparison rather than by logarithm so that 1, 2 and 5 come out exact. */

/** 1, 2, 5 × powers of ten, 10⁻⁹…5·10⁹, smallest first. */
const STEPS: readonly number[] = Array.from({ length: 57 }, (_, k) => {
  const power = Math.floor(k / 3) - 9;
  const lead = [1, 2, 5][k % 3]!;
  return Number(`${lead}e${power}`);
});

/** Smallest step of the 1-2-5 row that is at least `least`; the largest one beyond its end. */
export function niceStep(least: number): number {
  for (const step of STEPS) if (step >= least * (1 - 1e-12)) return step;
  return STEPS[STEPS.length - 1]!;
}

/** Decimals needed to tell multiples of a step apart. */
export function stepDecimals(step: number): number {
  for (let places = 0, size = 1; places <= 9; places++, size /= 10) if (step >= size * (1 - 1e-9)) return places;
  return 9;
}

/** Parts into which a step of the 1-2-5 row is divided by finer lines: five, or four where that is rounder. */
export function stepParts(step: number): number {
  const lead = Number(step.toExponential(0)[0]);
  return lead === 2 ? 4 : 5;
}

/** Multiples of a step within [from, to], appended to nothing: a short new list. */
export function multiples(from: number, to: number, step: number): number[] {
  const list: number[] = [];
  const first = Math.ceil(from / step - 1e-9);
  const last = Math.floor(to / step + 1e-9);
  const inverse = step < 1 ? Math.round(1 / step) : 0;
  for (let k = first; k <= last; k++) list.push(inverse > 0 ? k / inverse : k * step); // k/n rounds once: 0.3, not 0.30000000000000004
  return list;
}
