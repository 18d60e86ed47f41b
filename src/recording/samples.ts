import type { SampleView } from '../contract/tape.ts';
import { ChunkRing } from './chunk-ring.ts';
import { CHUNK_LENGTH, Column } from './column.ts';
import { envelope } from './envelope.ts';
import { MAX_FLOAT32 } from './float32.ts';
import { Hash64 } from './hash64.ts';

interface SampleChunk {
  readonly times: Float64Array;
  readonly values: Column;
  /** One bit a sample. */
  readonly clipped: Uint8Array;
}

/** What the record of samples needs, beside the samples, to go on from an earlier instant; plain JSON. */
export interface SamplesSave {
  readonly end: number;
  readonly hash: readonly number[];
}

/**
 * Every sample that one read-out delivered, at its own instant. 16.7 bytes a sample: ten minutes at 2 kHz take
 * 20 MB.
 */
export class Samples implements SampleView {
  readonly element: string;
  readonly #ring: ChunkRing<SampleChunk>;
  readonly #hash = new Hash64();

  /** `capacity`: samples that must stay; up to 2 × 4096 more are kept before the oldest chunk goes. */
  constructor({ element, capacity }: { readonly element: string; readonly capacity: number }) {
    this.element = element;
    this.#ring = new ChunkRing(capacity, () => ({
      times: new Float64Array(CHUNK_LENGTH),
      values: new Column('f64', false),
      clipped: new Uint8Array(CHUNK_LENGTH / 8),
    }));
  }

  get first(): number {
    return this.#ring.first;
  }

  get end(): number {
    return this.#ring.end;
  }

  /** Hash over time, value and clipping of every sample ever appended: 16 hexadecimal digits. */
  get hash(): string {
    return this.#hash.hex;
  }

  /** Memory of the samples kept [bytes]. */
  get byteLength(): number {
    return this.#ring.chunks.reduce(
      (sum, { times, values, clipped }) => sum + times.byteLength + values.byteLength + clipped.byteLength,
      0,
    );
  }

  /** Appends the sample taken at an instant [s], later than the one before; value in g_n, finite. */
  append(timeS: number, valueG: number, clipped: boolean): void {
    if (!(Math.abs(valueG) <= MAX_FLOAT32))
      throw new RangeError(`a sample of ${this.element} must lie within ±${MAX_FLOAT32} g, got ${valueG}`);
    const { end } = this.#ring;
    if (this.#ring.has(end - 1) ? !(timeS > this.timeS(end - 1)) : Number.isNaN(timeS))
      throw new RangeError(
        `a sample of ${this.element} at ${timeS} s does not follow the one at ${this.timeS(end - 1)} s`,
      );
    const chunk = this.#ring.claim();
    const offset = this.#ring.offsetOf(end);
    chunk.times[offset] = timeS;
    chunk.values.write(offset, valueG, valueG, valueG);
    const bit = 1 << (offset & 7);
    if (clipped) chunk.clipped[offset >> 3]! |= bit;
    else chunk.clipped[offset >> 3]! &= ~bit;
    this.#hash.addFloat64(timeS);
    this.#hash.addFloat64(valueG);
    this.#hash.addByte(clipped ? 1 : 0);
  }

  /** Instant of a sample [s]; NaN for one that is not kept. */
  timeS(sample: number): number {
    if (!this.#ring.has(sample)) return Number.NaN;
    return this.#ring.chunkOf(sample).times[this.#ring.offsetOf(sample)]!;
  }

  /** Reported value [g_n]; NaN for a sample that is not kept. */
  valueG(sample: number): number {
    if (!this.#ring.has(sample)) return Number.NaN;
    return this.#ring.chunkOf(sample).values.values[this.#ring.offsetOf(sample)]!;
  }

  clipped(sample: number): boolean {
    if (!this.#ring.has(sample)) return false;
    const offset = this.#ring.offsetOf(sample);
    return ((this.#ring.chunkOf(sample).clipped[offset >> 3]! >> (offset & 7)) & 1) === 1;
  }

  /** First kept sample at or after an instant [s]; `end` when there is none. */
  firstAtOrAfter(timeS: number): number {
    let low = this.#ring.first;
    let high = this.#ring.end;
    while (low < high) {
      const middle = Math.floor((low + high) / 2);
      if (this.timeS(middle) < timeS) low = middle + 1;
      else high = middle;
    }
    return low;
  }

  /** Minimum and maximum of the values [g_n] over samples [from, to) in equal parts, as the tape's envelope. */
  envelope(from: number, to: number, buckets: number, out: Float64Array): void {
    envelope(this.#ring, ({ values }) => values, from, to, buckets, out);
  }

  /** Samples that go on from before an instant [s] with the past of these; both may go on. */
  forkBefore(timeS: number): Samples {
    const fork = new Samples({ element: this.element, capacity: this.#ring.capacity });
    fork.#ring.forkFrom(this.#ring, this.firstAtOrAfter(timeS), ({ times, values, clipped }) => ({
      times: times.slice(),
      values: values.copy(),
      clipped: clipped.slice(),
    }));
    return fork;
  }

  save(): SamplesSave {
    return { end: this.#ring.end, hash: this.#hash.save() };
  }

  /** Stands where `save` was called: later samples go; if the earlier ones were never here, it begins there empty. */
  restore(saved: SamplesSave): void {
    this.#ring.goOnAt(saved.end);
    this.#hash.restore(saved.hash);
  }
}
