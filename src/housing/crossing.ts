/** Locates the instant at which a smooth quantity changes sign. */

/** Past this many evaluations the bracket has long shrunk to neighbouring numbers. */
const MOST_EVALUATIONS = 100;

/**
 * The end of the bracket [before, after] on which the sign has changed, once it is no wider than 1e-15 of the bracket it
 * began with or the value there is zero. Regula falsi with the Illinois weights (M. Dowell, P. Jarratt, "A modified
 * regula falsi method for computing the root of an equation", BIT 11 (1971) 168–174), bisecting every
 * third time so that the bracket shrinks whatever the curve.
 */
export function signChange(
  quantity: (at: number) => number,
  before: number,
  after: number,
  valueBefore: number,
  valueAfter: number,
): number {
  let low = before;
  let high = after;
  let lowValue = valueBefore;
  let highValue = valueAfter;
  const narrow = 1e-15 * (after - before);
  let side = 0;
  for (let i = 1; i < MOST_EVALUATIONS && highValue !== 0 && high - low > narrow; i++) {
    const cut = (low * highValue - high * lowValue) / (highValue - lowValue);
    const middle = low + (high - low) / 2;
    const at = i % 3 === 0 || !(cut > low && cut < high) ? middle : cut;
    if (at <= low || at >= high) break;
    const value = quantity(at);
    if (value > 0 === lowValue > 0 && value !== 0) {
      low = at;
      lowValue = value;
      if (side === -1) highValue /= 2;
      side = -1;
    } else {
      high = at;
      highValue = value;
      if (side === 1) lowValue /= 2;
      side = 1;
    }
  }
  return high;
}
