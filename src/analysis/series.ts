/** Equally spaced values of one line: number k stands at startS + k/rateHz. */
export interface Series {
  readonly startS: number;
  readonly rateHz: number;
  readonly values: Float64Array;
}

/**
 * Area ∫v dt over [fromS, toS], which must reach less than one step beyond the first and last value. The
 * trapezoid rule between the values, straight lines through the outermost two to the ends: what lies beyond, where a
 * line may jump (a touch, a let-go), is not looked at. Errs by T·h²·|v″|/12 for a smooth line, h the step.
 */
export function area(series: Series, fromS: number, toS: number): number {
  return pieces(series, fromS, toS, (a, b, widthS) => (widthS * (a + b)) / 2);
}

/** Root of the mean square over [fromS, toS], exact for the straight lines that `area` speaks of. */
export function rms(series: Series, fromS: number, toS: number): number {
  const square = pieces(series, fromS, toS, (a, b, widthS) => (widthS * (a * a + a * b + b * b)) / 3);
  return Math.sqrt(square / (toS - fromS));
}

/** Slope of the straight line with the least squared distance from the values [1/s]; at least two values. */
export function slope({ values, rateHz }: Series): number {
  const middle = (values.length - 1) / 2;
  let moment = 0;
  let spread = 0;
  for (let k = 0; k < values.length; k += 1) {
    moment += (k - middle) * values[k]!;
    spread += (k - middle) * (k - middle);
  }
  return (moment / spread) * rateHz;
}

/** Smallest or largest value, with its place; the top is that of the parabola through it and its neighbours. */
export function extreme(series: Series, side: 1 | -1): { readonly value: number; readonly timeS: number } {
  const { values, startS, rateHz } = series;
  let best = 0;
  for (let k = 1; k < values.length; k += 1) if (side * values[k]! > side * values[best]!) best = k;
  const { offset, value } = vertex(values, best);
  return { value, timeS: startS + (best + offset) / rateHz };
}

/** Vertex of the parabola through value k and its neighbours, k itself at an end; `offset` from k in steps. */
export function vertex(values: Float64Array, k: number): { readonly offset: number; readonly value: number } {
  const before = values[k - 1];
  const after = values[k + 1];
  const here = values[k]!;
  if (before === undefined || after === undefined) return { offset: 0, value: here };
  const curvature = before - 2 * here + after;
  if (curvature === 0) return { offset: 0, value: here };
  const offset = (before - after) / (2 * curvature);
  return { offset, value: here - ((before - after) * offset) / 4 };
}

/** Instants [s] at which the line passes a level, on the straight lines between its values. */
export function crossings({ values, startS, rateHz }: Series, level: number, way: 'rising' | 'either'): number[] {
  const found: number[] = [];
  for (let k = 1; k < values.length; k += 1) {
    const a = values[k - 1]! - level;
    const b = values[k]! - level;
    if ((a < 0 && b >= 0) || (way === 'either' && a > 0 && b <= 0)) found.push(startS + (k - 1 + a / (a - b)) / rateHz);
  }
  return found;
}

/**
 * Instant [s] from which on the line stays within `band` of a level up to its last value; Infinity: it ends outside.
 * On the straight line into the band.
 */
export function staysFrom({ values, startS, rateHz }: Series, level: number, band: number): number {
  const outside = (k: number) => Math.abs(values[k]! - level) - band;
  let last = values.length - 1;
  if (!(outside(last) <= 0)) return Number.POSITIVE_INFINITY;
  while (last > 0 && outside(last - 1) <= 0) last -= 1;
  if (last === 0) return startS;
  // Where |v − level| comes down to the band; a line that jumps across it counts from the first value inside.
  const before = outside(last - 1);
  return startS + (last - 1 + before / (before - outside(last))) / rateHz;
}

/** Sums a quantity over the straight pieces from fromS to toS. */
function pieces(
  { values, startS, rateHz }: Series,
  fromS: number,
  toS: number,
  piece: (a: number, b: number, widthS: number) => number,
): number {
  const last = values.length - 1;
  const stepS = 1 / rateHz;
  const headS = startS - fromS;
  const tailS = toS - (startS + last * stepS);
  const first = values[0]!;
  const end = values[last]!;
  let sum = piece(first - (values[1]! - first) * headS * rateHz, first, headS);
  for (let k = 1; k <= last; k += 1) sum += piece(values[k - 1]!, values[k]!, stepS);
  return sum + piece(end, end + (end - values[last - 1]!) * tailS * rateHz, tailS);
}
