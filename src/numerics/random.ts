/**
 * Random deviates as functions, not streams: a deviate depends only on what it is named by, so seeking, replay
 * and the order of asking cannot shift it.
 *
 * Bits: Philox4x32-10, a counter-based generator (J. K. Salmon, M. A. Moraes, R. O. Dror, D. E. Shaw, "Parallel
 * random numbers: as easy as 1, 2, 3", SC '11 (2011), section 4.3). Normal deviates: G. E. P. Box,
 * M. E. Muller, Ann. Math. Statist. 29 (1958) 610–611. (Both citations from memory; the generator's published test
 * vectors are checked.)
 */
import { cos, ln, sin } from './transcendental.ts';

const MULTIPLIER_0 = 0xd2511f53;
const MULTIPLIER_1 = 0xcd9e8d57;
const KEY_STEP_0 = 0x9e3779b9;
const KEY_STEP_1 = 0xbb67ae85;
const ROUNDS = 10;

/** Upper 32 bits of the 64-bit product of two unsigned 32-bit numbers. */
function multiplyHigh(a: number, b: number): number {
  const aLow = a & 0xffff;
  const aHigh = a >>> 16;
  const bLow = b & 0xffff;
  const bHigh = b >>> 16;
  const middle = aHigh * bLow + ((aLow * bLow) >>> 16);
  return aHigh * bHigh + (middle >>> 16) + ((aLow * bHigh + (middle & 0xffff)) >>> 16);
}

/** Encrypts the four 32-bit words of `block` in place under a key of two. */
export function philox(block: Uint32Array, key0: number, key1: number): void {
  let c0 = block[0]!;
  let c1 = block[1]!;
  let c2 = block[2]!;
  let c3 = block[3]!;
  let k0 = key0;
  let k1 = key1;
  for (let round = 0; round < ROUNDS; round += 1) {
    const high0 = multiplyHigh(MULTIPLIER_0, c0);
    const low0 = Math.imul(MULTIPLIER_0, c0);
    const high1 = multiplyHigh(MULTIPLIER_1, c2);
    const low1 = Math.imul(MULTIPLIER_1, c2);
    c0 = (high1 ^ c1 ^ k0) >>> 0;
    c1 = low1 >>> 0;
    c2 = (high0 ^ c3 ^ k1) >>> 0;
    c3 = low0 >>> 0;
    k0 = (k0 + KEY_STEP_0) >>> 0;
    k1 = (k1 + KEY_STEP_1) >>> 0;
  }
  block[0] = c0;
  block[1] = c1;
  block[2] = c2;
  block[3] = c3;
}

const block = new Uint32Array(4);
const pair = new Float64Array(2);

/**
 * Two independent normal deviates (mean 0, variance 1) into `out` from `at`. They are named by a seed, a stream
 * and a part (whole numbers below 2³²) and a number n (whole, below 2⁵³).
 */
export function gaussianPairAt(
  seed: number,
  stream: number,
  n: number,
  part: number,
  out: Float64Array,
  at: number,
): void {
  block[0] = n % 4294967296;
  block[1] = Math.floor(n / 4294967296);
  block[2] = stream;
  block[3] = part;
  philox(block, seed, 0);
  // 53 bits each, in the middle of their steps: never 0, so the logarithm is finite.
  const u = ((block[0] >>> 5) * 67108864 + (block[1] >>> 6) + 0.5) / 9007199254740992;
  const v = ((block[2] >>> 5) * 67108864 + (block[3] >>> 6) + 0.5) / 9007199254740992;
  const radius = Math.sqrt(-2 * ln(u));
  const angle = 2 * Math.PI * v;
  out[at] = radius * cos(angle);
  out[at + 1] = radius * sin(angle);
}

/** Normal deviate number n of a stream. */
export function gaussianAt(seed: number, stream: number, n: number): number {
  gaussianPairAt(seed, stream, n, 0, pair, 0);
  return pair[0]!;
}
