import { float32Down, float32Up } from './float32.ts';

/** Items to a chunk: a power of the factor between levels, so that every cell lies within one chunk. */
export const CHUNK_LENGTH = 4096;

/** Levels above the items: cells of 16, 256 and 4096. */
const TOP_LEVEL = 3;
const FACTOR_BITS = 4;
const FACTOR = 1 << FACTOR_BITS;

/** Where the cells of each level begin in the arrays of extremes, the items' own cells being level 0. */
const LEVEL_START = [0, CHUNK_LENGTH, CHUNK_LENGTH + 256, CHUNK_LENGTH + 256 + 16] as const;
const CELLS = LEVEL_START[TOP_LEVEL] + 1;

/**
 * One channel over one chunk: the values, and their minima and maxima by levels. A cell is written when the
 * last of its items comes in and read only while all of them are kept, so dropping items leaves nothing to
 * mend. Extremes are 32-bit floats rounded outward: they may be wide by one part in 2²³, never narrow.
 * A missing value is NaN; a cell without values holds +∞ and −∞.
 */
export class Column {
  readonly values: Float64Array | Float32Array;
  readonly #minima: Float32Array;
  readonly #maxima: Float32Array;
  /** What the arrays of extremes leave out: the items' own cells, when an item's value is all there is to it. */
  readonly #omitted: number;

  /** With `ownExtremes` an item's minimum and maximum may go beyond its value. */
  constructor(keep: 'f64' | 'f32', ownExtremes: boolean) {
    this.values = keep === 'f64' ? new Float64Array(CHUNK_LENGTH) : new Float32Array(CHUNK_LENGTH);
    this.#omitted = ownExtremes ? 0 : CHUNK_LENGTH;
    this.#minima = new Float32Array(CELLS - this.#omitted);
    this.#maxima = new Float32Array(CELLS - this.#omitted);
  }

  copy(): Column {
    const copy = new Column(this.values instanceof Float64Array ? 'f64' : 'f32', this.#omitted === 0);
    copy.values.set(this.values);
    copy.#minima.set(this.#minima);
    copy.#maxima.set(this.#maxima);
    return copy;
  }

  get byteLength(): number {
    return this.values.byteLength + this.#minima.byteLength + this.#maxima.byteLength;
  }

  /** Writes the item at `offset`, the one after the last written. Without own extremes the last two are ignored. */
  write(offset: number, value: number, minimum: number, maximum: number): void {
    this.values[offset] = value;
    if (this.#omitted === 0) {
      this.#minima[offset] = float32Down(minimum);
      this.#maxima[offset] = float32Up(maximum);
    }
    const written = offset + 1;
    for (let level = 1; level <= TOP_LEVEL; level += 1) {
      if (written & ((1 << (FACTOR_BITS * level)) - 1)) return;
      this.#close(level, (written >> (FACTOR_BITS * level)) - 1);
    }
  }

  /** Widens the pair [minimum, maximum] at `out[at]` by the items [from, to), from the coarsest cells that fit. */
  widen(from: number, to: number, out: Float64Array, at: number): void {
    let minimum = out[at]!;
    let maximum = out[at + 1]!;
    for (let item = from; item < to; ) {
      let level = 0;
      let bits = 0;
      for (let next = FACTOR_BITS; level < TOP_LEVEL; next += FACTOR_BITS) {
        if (item & ((1 << next) - 1) || item + (1 << next) > to) break;
        level += 1;
        bits = next;
      }
      const low = this.#minimum(level, item >> bits);
      const high = this.#maximum(level, item >> bits);
      if (low < minimum) minimum = low;
      if (high > maximum) maximum = high;
      item += 1 << bits;
    }
    out[at] = minimum;
    out[at + 1] = maximum;
  }

  #minimum(level: number, cell: number): number {
    if (level === 0 && this.#omitted) return this.values[cell]!;
    return this.#minima[LEVEL_START[level]! + cell - this.#omitted]!;
  }

  #maximum(level: number, cell: number): number {
    if (level === 0 && this.#omitted) return this.values[cell]!;
    return this.#maxima[LEVEL_START[level]! + cell - this.#omitted]!;
  }

  #close(level: number, cell: number): void {
    let minimum = Number.POSITIVE_INFINITY;
    let maximum = Number.NEGATIVE_INFINITY;
    const first = cell * FACTOR;
    for (let child = first; child < first + FACTOR; child += 1) {
      const low = this.#minimum(level - 1, child);
      const high = this.#maximum(level - 1, child);
      if (low < minimum) minimum = low;
      if (high > maximum) maximum = high;
    }
    const place = LEVEL_START[level]! + cell - this.#omitted;
    this.#minima[place] = float32Down(minimum);
    this.#maxima[place] = float32Up(maximum);
  }
}
