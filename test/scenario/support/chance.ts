/** Seeded chance for tests: the same seed gives the same cases on every machine. */
export interface Chance {
  /** 0 ≤ u < 1 */
  unit(): number;
  between(low: number, high: number): number;
  /** low … high, both included. */
  whole(low: number, high: number): number;
  pick<T>(from: readonly T[]): T;
}

/** Weyl sequence through a 32-bit finaliser (the constants of MurmurHash3's fmix32, from memory): plenty for choosing cases. */
export function chance(seed: number): Chance {
  let state = seed >>> 0;
  const unit = (): number => {
    state = (state + 0x9e3779b9) >>> 0;
    let z = state;
    z = Math.imul(z ^ (z >>> 16), 0x85ebca6b);
    z = Math.imul(z ^ (z >>> 13), 0xc2b2ae35);
    return ((z ^ (z >>> 16)) >>> 0) / 4294967296;
  };
  const whole = (low: number, high: number): number => low + Math.floor(unit() * (high - low + 1));
  return {
    unit,
    whole,
    between: (low, high) => low + (high - low) * unit(),
    pick: (from) => from[whole(0, from.length - 1)]!,
  };
}
