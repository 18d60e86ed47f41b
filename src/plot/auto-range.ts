/** Chooses how far the pen's scale reaches, from what is in view. */

/** Ranges that the scale may take, ± in the unit shown: few and round, so that a change is seen as one. */
const RANGES: readonly number[] = Array.from({ length: 90 }, (_, k) => {
  const power = Math.floor(k / 6) - 7;
  return Number(`${[1, 1.5, 2, 3, 5, 7][k % 6]}e${power}`);
});

/** A value may fill this share of the range before the next one is taken [–]. */
const FILL = 0.94;
/** A smaller range is taken only when values could grow by this factor and still fit it [–]: no see-saw. */
export const SLACK = 1.25;

/** Index of the smallest range that holds a magnitude. */
function rangeFor(magnitude: number): number {
  for (let i = 0; i < RANGES.length; i++) if (magnitude <= FILL * RANGES[i]!) return i;
  return RANGES.length - 1;
}

/** A range that follows what is needed, with hysteresis. Depends on nothing but the sequence of needs. */
export class AutoRange {
  #index = -1;

  /**
   * Range for a magnitude that must be held. `mayGrowTo`: what it may soon be, for which room is kept rather
   * than that the range goes to and fro; where a limit is known it is that limit.
   */
  update(magnitude: number, mayGrowTo: number = magnitude * SLACK): number {
    const needed = rangeFor(magnitude);
    if (this.#index < 0 || needed > this.#index) this.#index = needed;
    else this.#index = Math.min(this.#index, rangeFor(Math.max(magnitude, mayGrowTo)));
    return RANGES[this.#index]!;
  }

  /** The range as it stands: kept while a pointer is marking, so that the paper does not move under it. */
  get current(): number {
    return RANGES[Math.max(0, this.#index)]!;
  }

  /** Forgets: another unit, another run. */
  reset(): void {
    this.#index = -1;
  }
}

/**
 * The magnitude that all but `spare` of the values stay within: the (spare + 1)-th largest |value|.
 * A landing that fills few pixel columns may so leave the paper instead of flattening the rest of the line;
 * looked at closely it fills more columns than that and is held.
 * `scratch` is overwritten and must hold `count` values.
 */
export function magnitudeKept(values: Float64Array, count: number, spare: number, scratch: Float64Array): number {
  if (count === 0) return 0;
  for (let i = 0; i < count; i++) {
    const size = Math.abs(values[i]!);
    scratch[i] = Number.isNaN(size) ? 0 : size; // a missing value asks for no room
  }
  return select(scratch, count, Math.max(0, count - 1 - spare));
}

/** The k-th smallest of the first `count` values (Hoare's FIND, Comm. ACM 4 (1961) 321: citation from memory); reorders them. */
function select(values: Float64Array, count: number, k: number): number {
  let left = 0;
  let right = count - 1;
  while (left < right) {
    const pivot = values[k]!;
    let i = left;
    let j = right;
    while (i <= j) {
      while (values[i]! < pivot) i++;
      while (pivot < values[j]!) j--;
      if (i <= j) {
        const swapped = values[i]!;
        values[i] = values[j]!;
        values[j] = swapped;
        i++;
        j--;
      }
    }
    if (j < k) left = i;
    if (k < i) right = j;
  }
  return values[k]!;
}
