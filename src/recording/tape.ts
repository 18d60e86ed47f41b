import type { TapeChannel, TapeView } from '../contract/tape.ts';
import { ChunkRing } from './chunk-ring.ts';
import { Column } from './column.ts';
import { envelope } from './envelope.ts';
import { MAX_FLOAT32 } from './float32.ts';
import { Hash64 } from './hash64.ts';

export interface StoredChannel extends TapeChannel {
  /** Precision of the kept values; a 32-bit one is rounded to the nearest. Extremes are 32-bit, rounded outward. */
  readonly keep: 'f64' | 'f32';
}

export interface TapeOptions {
  readonly rateHz: number;
  readonly channels: readonly StoredChannel[];
  /** Rows that must stay; up to 2 × 4096 more are kept before the oldest chunk goes. */
  readonly capacityRows: number;
}

/** What a tape needs, beside its rows, to go on from an earlier instant; plain JSON. */
export interface TapeSave {
  readonly endRow: number;
  readonly hash: readonly number[];
  /** Extremes of the ticks since the last row, by channel; null: none. */
  readonly minima: readonly (number | null)[];
  readonly maxima: readonly (number | null)[];
}

/**
 * What a run left behind, row by row, with the extremes of the ticks between the rows.
 * Call `tick` with the values at the end of each tick and `row` with those at the exact instant of each row,
 * in the order of run time. NaN is a missing value; anything beyond ±3.4e38 is refused.
 *
 * Memory: a row costs 16.5 bytes for a 64-bit channel and 12.5 for a 32-bit one, levels included. Ten minutes at
 * 2 kHz of three elements (specific force and deflection in 64 bit) with three 32-bit channels of the
 * housing: 165 MB.
 */
export class Tape implements TapeView {
  readonly rateHz: number;
  readonly channels: readonly StoredChannel[];
  readonly #ring: ChunkRing<readonly Column[]>;
  readonly #hash = new Hash64();
  readonly #minima: Float64Array;
  readonly #maxima: Float64Array;
  #revision = 0;

  constructor({ rateHz, channels, capacityRows }: TapeOptions) {
    if (!(rateHz > 0 && rateHz <= Number.MAX_VALUE)) throw new RangeError(`row rate must be > 0 Hz, got ${rateHz}`);
    const names = new Set(channels.map(({ name }) => name));
    if (names.size !== channels.length) throw new RangeError('two channels of a tape have the same name');
    this.rateHz = rateHz;
    this.channels = channels;
    this.#ring = new ChunkRing(capacityRows, () => channels.map(({ keep }) => new Column(keep, true)));
    this.#minima = new Float64Array(channels.length).fill(Number.POSITIVE_INFINITY);
    this.#maxima = new Float64Array(channels.length).fill(Number.NEGATIVE_INFINITY);
  }

  get revision(): number {
    return this.#revision;
  }

  get firstRow(): number {
    return this.#ring.first;
  }

  get endRow(): number {
    return this.#ring.end;
  }

  /** Hash over all values of all rows ever appended, in full precision, dropped ones too: 16 hexadecimal digits. */
  get hash(): string {
    return this.#hash.hex;
  }

  /** Memory of the rows kept and their levels [bytes]. */
  get byteLength(): number {
    return this.#ring.chunks.reduce(
      (sum, columns) => columns.reduce((all, { byteLength }) => all + byteLength, sum),
      0,
    );
  }

  /** Notes the values at the end of a tick; they widen the extremes of the next row. */
  tick(values: Float64Array): void {
    const minima = this.#minima;
    const maxima = this.#maxima;
    for (let channel = 0; channel < minima.length; channel += 1) {
      const value = values[channel]!;
      // An infinity would pass for an empty extreme, and what 32 bits cannot hold would become one.
      if (Math.abs(value) > MAX_FLOAT32) this.#refuse(channel, value);
      if (value < minima[channel]!) minima[channel] = value;
      if (value > maxima[channel]!) maxima[channel] = value;
    }
  }

  /** Appends the row `endRow` with its exact values, one for each channel. */
  row(values: Float64Array): void {
    this.tick(values);
    const columns = this.#ring.claim();
    const offset = this.#ring.offsetOf(this.#ring.end - 1);
    for (let channel = 0; channel < columns.length; channel += 1) {
      const value = values[channel]!;
      this.#hash.addFloat64(value);
      columns[channel]!.write(offset, value, this.#minima[channel]!, this.#maxima[channel]!);
    }
    this.#minima.fill(Number.POSITIVE_INFINITY);
    this.#maxima.fill(Number.NEGATIVE_INFINITY);
    this.#revision += 1;
  }

  /** Value of a channel at a row; NaN where it is missing or the row is not kept. */
  value(channel: number, row: number): number {
    if (!this.#ring.has(row)) return Number.NaN;
    return this.#ring.chunkOf(row)[channel]!.values[this.#ring.offsetOf(row)]!;
  }

  /**
   * As the contract says. Bounds need not be whole: bucket b holds the rows k with from + b·w ≤ k < from + (b + 1)·w,
   * and the ticks since row k − 1 belong to row k. A bucket without values is NaN, NaN.
   */
  envelope(channel: number, fromRow: number, toRow: number, buckets: number, out: Float64Array): void {
    envelope(this.#ring, (columns) => columns[channel]!, fromRow, toRow, buckets, out);
  }

  /**
   * Drops the rows from `row` on; a run goes on from there. Hash and pending extremes still belong to what
   * was dropped until `restore` brings back those of that instant.
   */
  truncate(row: number): void {
    if (!(row <= this.#ring.end)) throw new RangeError(`no row ${row} to go back to; rows so far: ${this.#ring.end}`);
    this.#ring.goOnAt(row);
    this.#revision += 1;
  }

  /**
   * A tape that goes on from before row `row` with this one's past, which the two share in memory; both may go on. Hash and pending extremes begin anew: the world keeps its own hash.
   */
  forkBefore(row: number): Tape {
    const fork = new Tape({ rateHz: this.rateHz, channels: this.channels, capacityRows: this.#ring.capacity });
    fork.#ring.forkFrom(this.#ring, Math.min(row, this.#ring.end), (columns) => columns.map((column) => column.copy()));
    return fork;
  }

  save(): TapeSave {
    return {
      endRow: this.#ring.end,
      hash: this.#hash.save(),
      minima: Array.from(this.#minima, (value) => (Number.isFinite(value) ? value : null)),
      maxima: Array.from(this.#maxima, (value) => (Number.isFinite(value) ? value : null)),
    };
  }

  /** Stands where `save` was called. Rows since then go; if the rows before it are not here, it begins there empty. */
  restore(saved: TapeSave): void {
    this.#ring.goOnAt(saved.endRow);
    this.#hash.restore(saved.hash);
    for (let channel = 0; channel < this.channels.length; channel += 1) {
      this.#minima[channel] = saved.minima[channel] ?? Number.POSITIVE_INFINITY;
      this.#maxima[channel] = saved.maxima[channel] ?? Number.NEGATIVE_INFINITY;
    }
    this.#revision += 1;
  }

  #refuse(channel: number, value: number): never {
    const { name } = this.channels[channel]!;
    throw new RangeError(`${name} must lie within ±${MAX_FLOAT32} or be missing (NaN), got ${value}`);
  }
}
