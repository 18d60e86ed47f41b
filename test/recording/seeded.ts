/** Uniform deviates in [0, 1) from a seed: xorshift, G. Marsaglia, Journal of Statistical Software 8 (2003) 14. */
export function seeded(seed: number): () => number {
  let state = (seed * 2654435761 + 1) | 0 || 1;
  return () => {
    state ^= state << 13;
    state ^= state >>> 17;
    state ^= state << 5;
    return (state >>> 0) / 4294967296;
  };
}

/** A whole number from `low` to `high`, both included. */
export function whole(random: () => number, low: number, high: number): number {
  return low + Math.floor(random() * (high - low + 1));
}

/** Numbers of every size that 32 bits can hold: sign, exponent and digits at random; some 0 and −0. */
export function anySize(random: () => number): number {
  const pick = random();
  if (pick < 0.02) return 0;
  if (pick < 0.04) return -0;
  const sign = random() < 0.5 ? -1 : 1;
  return sign * (0.5 + 0.5 * random()) * 2 ** whole(random, -160, 128);
}
