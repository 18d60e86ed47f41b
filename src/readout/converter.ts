import type { ReadoutSpec } from '../contract/run.ts';
import { G_N } from '../units/standard-gravity.ts';

/**
 * Range and steps of a read-out. With bits:
 *     lsb = 2·range/2^bits,  code = clip(⌊f/lsb + ½⌋, −2^(bits−1), 2^(bits−1) − 1),  value = code·lsb
 * (two's complement, mid-tread: 0 is a code, the top one lies one step below +range). With a range alone the
 * value is clipped to ±range; without either it passes. Common practice; a uniform quantiser's error is lsb/√12 rms as long as
 * it does not clip (W. R. Bennett, Bell System Technical Journal 27 (1948) 446).
 */
export class Converter {
  /** Size of a step [m/s²]; 0: no steps. */
  readonly lsbMS2: number;
  /** The same in g_n, so that a range of whole g_n reports whole binary fractions of it. */
  readonly #lsbG: number;
  readonly #lowest: number;
  readonly #highest: number;

  constructor({ range, bits }: ReadoutSpec) {
    const limit = range ?? Number.POSITIVE_INFINITY;
    if (bits === undefined) {
      this.lsbMS2 = 0;
      this.#lsbG = 0;
      this.#lowest = -limit;
      this.#highest = limit;
    } else {
      let codes = 1;
      for (let bit = 0; bit < bits; bit += 1) codes *= 2;
      this.lsbMS2 = (2 * limit) / codes;
      this.#lsbG = (2 * (limit / G_N)) / codes;
      this.#lowest = -codes / 2;
      this.#highest = codes / 2 - 1;
    }
  }

  /** Reading [m/s²] → value [m/s²]. */
  convert(readingMS2: number): number {
    return this.lsbMS2 === 0 ? this.#level(readingMS2) : this.#level(readingMS2) * this.lsbMS2;
  }

  /** Reading [m/s²] → value [g_n]. */
  convertToG(readingMS2: number): number {
    return this.lsbMS2 === 0 ? this.#level(readingMS2) / G_N : this.#level(readingMS2) * this.#lsbG;
  }

  /** The value for a reading stands at an end of the range: its lowest or highest code, or ±range. */
  clipped(readingMS2: number): boolean {
    const level = this.#level(readingMS2);
    return level === this.#lowest || level === this.#highest;
  }

  /** The code, or without steps the value itself [m/s²], within its ends. */
  #level(readingMS2: number): number {
    const wanted = this.lsbMS2 === 0 ? readingMS2 : Math.floor(readingMS2 / this.lsbMS2 + 0.5);
    return Math.min(Math.max(wanted, this.#lowest), this.#highest);
  }
}
