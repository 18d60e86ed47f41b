/**
 * Shape of a cantilever loaded at its tip, as a share of the tip's deflection. `share` runs from the
 * clamp (0) to the tip (1).
 *     v(s) = s²(3 − s)/2,   v′(s) = 3s(2 − s)/2,   v′(1) = 3/2
 * Small deflections: the drawn arm keeps its horizontal extent, so heights are exact and its length is not.
 * Source: Euler–Bernoulli beam, clamped–free, end load: v = F(3Lz² − z³)/6EI, v(L) = FL³/3EI (any handbook's beam table).
 */
export function cantileverShape(share: number): number {
  return (share * share * (3 - share)) / 2;
}

/** Slope per tip deflection, in units of 1/length. */
export function cantileverSlope(share: number): number {
  return (3 * share * (2 - share)) / 2;
}

/** Slope at the tip per tip deflection, in units of 1/length. */
export const TIP_SLOPE = 1.5;

/** The share of the length at which the shape reaches `part` (0 … 1) of the tip's deflection; by halving, to 1e-4. */
export function shareWithShape(part: number): number {
  let low = 0;
  let high = 1;
  while (high - low > 1e-4) {
    const middle = (low + high) / 2;
    if (cantileverShape(middle) < part) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}
