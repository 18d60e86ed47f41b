const OFFSET_BASIS_HIGH = 0xcbf29ce4 | 0;
const OFFSET_BASIS_LOW = 0x84222325 | 0;
/** 2⁸ + 0xb3, the prime without its 2⁴⁰. */
const PRIME_LOW = 0x1b3;
const QUIET_NAN_HIGH = 0x7ff80000;

/**
 * Fingerprint of a stream of numbers: FNV-1a, 64 bit. Equal bytes in equal order give equal hashes on every
 * machine: 32-bit integer arithmetic only, numbers taken as little-endian IEEE 754 whatever the machine's
 * own order, every NaN as the one quiet NaN 0x7ff8000000000000, −0 apart from 0. It tells runs apart; it is no
 * protection against forgery.
 * Source: G. Fowler, L. C. Noll, K.-P. Vo, D. Eastlake, "The FNV Non-Cryptographic Hash Algorithm" (IETF
 * draft-eastlake-fnv), 64-bit prime 2⁴⁰ + 2⁸ + 0xb3 and offset basis 0xcbf29ce484222325 (from memory; the
 * tests hold published hashes of short texts).
 */
export class Hash64 {
  #high = OFFSET_BASIS_HIGH;
  #low = OFFSET_BASIS_LOW;
  readonly #bytes = new DataView(new ArrayBuffer(8));

  addByte(byte: number): void {
    const low = this.#low ^ byte;
    // state·(2⁴⁰ + 435) mod 2⁶⁴ in two words: the high one gains the carry of low·435 and low·2⁸.
    this.#high = (Math.imul(this.#high, PRIME_LOW) + carry(low) + (low << 8)) | 0;
    this.#low = Math.imul(low, PRIME_LOW);
  }

  addFloat64(value: number): void {
    if (Number.isNaN(value)) {
      this.#addWord(0);
      this.#addWord(QUIET_NAN_HIGH);
      return;
    }
    this.#bytes.setFloat64(0, value, true);
    this.#addWord(this.#bytes.getInt32(0, true));
    this.#addWord(this.#bytes.getInt32(4, true));
  }

  /** The hash so far as 16 hexadecimal digits. */
  get hex(): string {
    return hexWord(this.#high) + hexWord(this.#low);
  }

  /** Two whole numbers, −2³¹ … 2³¹ − 1. */
  save(): number[] {
    return [this.#high, this.#low];
  }

  restore(saved: readonly number[]): void {
    this.#high = saved[0]!;
    this.#low = saved[1]!;
  }

  #addWord(word: number): void {
    for (let shift = 0; shift < 32; shift += 8) this.addByte((word >>> shift) & 0xff);
  }
}

/** ⌊low·435 / 2³²⌋ of an unsigned 32-bit word, in 16-bit halves so that no product leaves the whole numbers. */
function carry(low: number): number {
  return ((low >>> 16) * PRIME_LOW + (((low & 0xffff) * PRIME_LOW) >>> 16)) >>> 16;
}

function hexWord(word: number): string {
  return (word >>> 0).toString(16).padStart(8, '0');
}
