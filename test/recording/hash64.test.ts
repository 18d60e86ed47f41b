import { describe, expect, it } from 'vitest';
import { Hash64 } from '../../src/recording/hash64.ts';
import { anySize, seeded } from './seeded.ts';

function ofText(text: string): string {
  const hash = new Hash64();
  for (const byte of new TextEncoder().encode(text)) hash.addByte(byte);
  return hash.hex;
}

function ofNumbers(values: Iterable<number>): string {
  const hash = new Hash64();
  for (const value of values) hash.addFloat64(value);
  return hash.hex;
}

/** FNV-1a in whole numbers of any length: slow, and nothing to get wrong. */
function byDefinition(bytes: Uint8Array): string {
  let hash = 0xcbf29ce484222325n;
  for (const byte of bytes) hash = ((hash ^ BigInt(byte)) * 0x100000001b3n) & 0xffffffffffffffffn;
  return hash.toString(16).padStart(16, '0');
}

describe('hash of a tape', () => {
  // FNV-1a 64-bit test vectors of its authors (IETF draft-eastlake-fnv), from memory.
  it.each([
    ['', 'cbf29ce484222325'],
    ['a', 'af63dc4c8601ec8c'],
    ['b', 'af63df4c8601f1a5'],
    ['foobar', '85944171f73967e8'],
    ['chongo was here!\n', '46810940eff5f915'],
  ])('of the text %j is the published one', (text, published) => {
    expect(ofText(text)).toBe(published);
  });

  it('of numbers is that of their little-endian bytes, seed 1', () => {
    const random = seeded(1);
    const values = Array.from({ length: 3000 }, () => anySize(random) * anySize(random));
    const bytes = new DataView(new ArrayBuffer(8 * values.length));
    values.forEach((value, index) => bytes.setFloat64(8 * index, value, true));
    expect(ofNumbers(values)).toBe(byDefinition(new Uint8Array(bytes.buffer)));
  });

  // Computed once with another language's big integers: FNV-1a over struct.pack('<d', k*0.1), k = 0 … 999 (Python 3).
  it('is the same in every language and on every machine', () => {
    expect(ofNumbers(Array.from({ length: 1000 }, (_, k) => k * 0.1))).toBe('a594443a0f5c8dd5');
    expect(ofNumbers([0, -0, 5e-324, -Number.MAX_VALUE, 9.80665, Number.NaN])).toBe('7a197e9c86f53220');
  });

  it('takes every NaN as one and tells −0 from 0', () => {
    const odd = new Float64Array(new Uint32Array([0xdeadbeef, 0xfff8dead]).buffer)[0]!;
    expect(odd).toBeNaN();
    expect(ofNumbers([odd])).toBe(ofNumbers([Number.NaN]));
    expect(ofNumbers([-0])).not.toBe(ofNumbers([0]));
  });

  it('goes on from a saved state as if never interrupted', () => {
    const first = new Hash64();
    for (let k = 0; k < 10; k += 1) first.addFloat64(k / 7);
    const second = new Hash64();
    second.restore(JSON.parse(JSON.stringify(first.save())) as number[]);
    first.addFloat64(1);
    second.addFloat64(1);
    expect(second.hex).toBe(first.hex);
  });
});
