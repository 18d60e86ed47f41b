import type { ChunkRing } from './chunk-ring.ts';
import { CHUNK_LENGTH, type Column } from './column.ts';

/**
 * Minimum and maximum of the items [from, to) in `buckets` equal parts, as [min, max] pairs in `out`.
 * Part b holds the items k with from + b·w ≤ k < from + (b + 1)·w, w = (to − from)/buckets; the bounds need not be
 * whole, so parts can be the pixel columns of any window of time. A part without kept values is NaN, NaN.
 * Of the first item of all only the value counts, not what its own extremes tell of the time before it.
 * A part costs at most 90 cells whatever its width, beside one cell for each chunk that it spans.
 */
export function envelope<Chunk>(
  ring: ChunkRing<Chunk>,
  columnOf: (chunk: Chunk) => Column,
  from: number,
  to: number,
  buckets: number,
  out: Float64Array,
): void {
  if (!(from <= to)) throw new RangeError(`an envelope runs from a row to a later one, got ${from} to ${to}`);
  if (!(Number.isInteger(buckets) && buckets >= 1 && out.length >= 2 * buckets))
    throw new RangeError(`an envelope of ${buckets} buckets does not fit into ${out.length} values`);
  const begin = kept(ring, from);
  let item = begin;
  for (let bucket = 0; bucket < buckets; bucket += 1) {
    const at = 2 * bucket;
    out[at] = Number.POSITIVE_INFINITY;
    out[at + 1] = Number.NEGATIVE_INFINITY;
    const stop = kept(ring, bucket + 1 === buckets ? to : from + ((to - from) * (bucket + 1)) / buckets);
    if (item === begin && item < stop) {
      const value = columnOf(ring.chunkOf(item)).values[ring.offsetOf(item)]!;
      if (!Number.isNaN(value)) out.fill(value, at, at + 2);
      item += 1;
    }
    while (item < stop) {
      const offset = ring.offsetOf(item);
      const length = Math.min(CHUNK_LENGTH - offset, stop - item);
      columnOf(ring.chunkOf(item)).widen(offset, offset + length, out, at);
      item += length;
    }
    if (out[at]! > out[at + 1]!) out.fill(Number.NaN, at, at + 2);
  }
}

/** The first whole item at or after a bound, within what is kept. */
function kept(ring: ChunkRing<unknown>, bound: number): number {
  return Math.min(Math.max(Math.ceil(bound), ring.first), ring.end);
}
