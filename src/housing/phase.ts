/** Random phases as a function of (seed, start of the motion, number), so that seeking and replay cannot shift them. */

const bits = new DataView(new ArrayBuffer(8));

/** A 32-bit mixer with full avalanche (multiply, xor-shift; constants of the finaliser of MurmurHash3, from memory). */
function mix(x: number): number {
  let h = x;
  h = Math.imul(h ^ (h >>> 16), 0x85ebca6b);
  h = Math.imul(h ^ (h >>> 13), 0xc2b2ae35);
  return (h ^ (h >>> 16)) >>> 0;
}

/** Phase number n in [0, 2π) [rad]. Two random motions of one run that start at different instants differ. */
export function phase(seed: number, startS: number, n: number): number {
  bits.setFloat64(0, startS, true);
  let h = mix(seed ^ 0x9e3779b9);
  h = mix(h ^ bits.getUint32(0, true));
  h = mix(h ^ bits.getUint32(4, true));
  h = mix(h ^ mix(n + 1));
  return (2 * Math.PI * h) / 4294967296;
}
