import { CHUNK_LENGTH } from './column.ts';

/**
 * A long row of items kept in chunks of CHUNK_LENGTH. Items are numbered from 0 for ever; once `capacity`
 * items are safe without it, the oldest chunk goes, and its memory becomes the newest.
 */
export class ChunkRing<Chunk> {
  readonly #capacity: number;
  readonly #create: () => Chunk;
  readonly #chunks: Chunk[] = [];
  #first = 0;
  #end = 0;
  /** Chunks at the front that another ring holds too; their memory must not be written again. */
  #shared = 0;

  constructor(capacity: number, create: () => Chunk) {
    if (!(Number.isSafeInteger(capacity) && capacity >= 1))
      throw new RangeError(`capacity must be a whole number of at least 1, got ${capacity}`);
    this.#capacity = capacity;
    this.#create = create;
  }

  /** First item kept. */
  get first(): number {
    return this.#first;
  }

  /** One past the last. */
  get end(): number {
    return this.#end;
  }

  get capacity(): number {
    return this.#capacity;
  }

  get chunks(): readonly Chunk[] {
    return this.#chunks;
  }

  /** Makes room for one more item: its chunk; the item stands at `offsetOf(end - 1)` in it. */
  claim(): Chunk {
    if (this.#end - this.#first === this.#chunks.length * CHUNK_LENGTH) {
      let chunk: Chunk | undefined;
      while (this.#end - this.#first - CHUNK_LENGTH >= this.#capacity) {
        const oldest = this.#chunks.shift();
        if (this.#shared > 0) this.#shared -= 1;
        else chunk = oldest;
        this.#first += CHUNK_LENGTH;
      }
      this.#chunks.push(chunk ?? this.#create());
    }
    this.#end += 1;
    return this.#chunks[this.#chunks.length - 1]!;
  }

  has(item: number): boolean {
    return item >= this.#first && item < this.#end;
  }

  /** The chunk of an item that is kept. */
  chunkOf(item: number): Chunk {
    return this.#chunks[Math.floor((item - this.#first) / CHUNK_LENGTH)]!;
  }

  offsetOf(item: number): number {
    return (item - this.#first) % CHUNK_LENGTH;
  }

  /**
   * Takes over the items of another ring before `end`: full chunks are shared, the last one is copied. Both
   * may go on; neither writes into what they share.
   */
  forkFrom(other: ChunkRing<Chunk>, end: number, copy: (chunk: Chunk) => Chunk): void {
    this.#first = Math.min(other.#first, end);
    this.#end = end;
    const full = Math.floor((end - this.#first) / CHUNK_LENGTH);
    this.#chunks.push(...other.#chunks.slice(0, full));
    this.#shared = full;
    other.#shared = Math.max(other.#shared, full);
    if (full * CHUNK_LENGTH < end - this.#first) this.#chunks.push(copy(other.#chunks[full]!));
  }

  /** Goes on at item `end`: drops it and what follows; when nothing before it is known, keeps nothing. */
  goOnAt(end: number): void {
    if (!(Number.isSafeInteger(end) && end >= 0))
      throw new RangeError(`the next item must be a whole number of at least 0, got ${end}`);
    if (end < this.#first || end > this.#end) this.#first = end;
    this.#end = end;
    this.#chunks.length = Math.ceil((end - this.#first) / CHUNK_LENGTH);
    this.#shared = Math.min(this.#shared, Math.floor((end - this.#first) / CHUNK_LENGTH));
  }
}
