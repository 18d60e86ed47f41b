/** Largest finite 32-bit float; a tape takes no value beyond it. */
export const MAX_FLOAT32 = 3.4028234663852886e38;

/** Smallest positive 32-bit float, 2⁻¹⁴⁹. */
const TINY_FLOAT32 = 1.401298464324817e-45;

const float = new Float32Array(1);
const bits = new Int32Array(float.buffer);

/** Largest 32-bit float that is not above `value`, for |value| ≤ MAX_FLOAT32. */
export function float32Down(value: number): number {
  const near = Math.fround(value);
  return near > value ? neighbour(near, -1) : near;
}

/** Smallest 32-bit float that is not below `value`, for |value| ≤ MAX_FLOAT32. */
export function float32Up(value: number): number {
  const near = Math.fround(value);
  return near < value ? neighbour(near, 1) : near;
}

/** The next 32-bit float down (−1) or up (1): one step of the bit pattern, whose order is that of the magnitude. */
function neighbour(value: number, direction: 1 | -1): number {
  if (value === 0) return direction * TINY_FLOAT32;
  float[0] = value;
  bits[0]! += value > 0 ? direction : -direction;
  return float[0]!;
}
