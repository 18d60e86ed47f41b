/**
 * Root of a continuous function between a and b, where its values have opposite signs (or one is 0). The secant
 * through the ends of the bracket, an end's value halved when it has stayed (the Illinois rule: M. Dowell,
 * P. Jarratt, BIT 11 (1971) 168–174, from memory), never nearer to an end than a unit in the last place, so that
 * the bracket closes from both sides; a bisection whenever three steps have not halved it, so that it always ends.
 * Returns the b side of a bracket at most 2^−51 of its size wide.
 */
export function bracketedRoot(value: (at: number) => number, a: number, b: number): number {
  let low = a;
  let high = b;
  let atLow = value(a);
  let atHigh = value(b);
  if (atLow === 0) return a;
  const sign = Math.sign(atHigh);
  let width = Math.abs(high - low);
  let stayed: 'low' | 'high' | 'neither' = 'neither';
  for (let step = 1; atHigh !== 0; step += 1) {
    const least = Number.EPSILON * Math.max(Math.abs(low), Math.abs(high));
    if (Math.abs(high - low) <= 2 * least) return high;
    let share = atHigh / (atHigh - atLow);
    if (step % 3 === 0) {
      if (Math.abs(high - low) > width / 2) share = 0.5;
      width = Math.abs(high - low);
    }
    const margin = least / Math.abs(high - low);
    const middle = high + Math.min(Math.max(share, margin), 1 - margin) * (low - high);
    const there = value(middle);
    if (there === 0) return middle;
    if (Math.sign(there) === sign) {
      high = middle;
      atHigh = there;
      if (stayed === 'low') atLow /= 2;
      stayed = 'low';
    } else {
      low = middle;
      atLow = there;
      if (stayed === 'high') atHigh /= 2;
      stayed = 'high';
    }
  }
  return high;
}

/** The x with a·x + c·x³ = r, for a > 0 and c ≥ 0: the sum only rises, so there is one. */
export function risingCubicRoot(a: number, c: number, r: number): number {
  const linear = r / a;
  if (c === 0 || r === 0) return linear;
  return bracketedRoot((x) => a * x + c * x * x * x - r, 0, linear);
}

/** First t in [0, length) from which p₀ + p₁t + p₂t² is below 0; −1: it is not below 0 anywhere there. */
export function firstFall(p0: number, p1: number, p2: number, length: number): number {
  if (p0 < 0) return 0;
  const t = fallingRoot(p0, p1, p2);
  return t < length ? t : -1;
}

/** The t ≥ 0 at which the parabola, p₀ ≥ 0, goes below 0; Infinity: it does not. */
function fallingRoot(p0: number, p1: number, p2: number): number {
  const discriminant = p1 * p1 - 4 * p2 * p0;
  if (!(discriminant > 0)) return p0 === 0 && p1 === 0 && p2 < 0 ? 0 : Infinity;
  const root = Math.sqrt(discriminant);
  // The slope there is −√discriminant; of the quadratic's two forms the one that does not subtract equals.
  if (p1 <= 0) return (2 * p0) / (root - p1);
  return p2 < 0 ? (p1 + root) / (-2 * p2) : Infinity;
}
