import { cos, exp, ln, sin } from '../numerics/transcendental.ts';
import { leastSquares } from './least-squares.ts';
import { type Series, vertex } from './series.ts';

/** A free ring-down, v = level + e^(−σt)·(a cos ω_d t + b sin ω_d t). */
export interface RingDown {
  /** Frequency at which it rings, ω_d/2π [Hz]. */
  readonly frequencyHz: number;
  /** Logarithmic decrement: ln of one swing over the next on the same side, 2πσ/ω_d [–]. */
  readonly decrement: number;
  /** ζ = σ/√(σ² + ω_d²) [–]. */
  readonly dampingRatio: number;
  /** Undamped natural frequency √(σ² + ω_d²)/2π [Hz]. */
  readonly naturalFrequencyHz: number;
  /** Value at which it comes to rest, in the line's unit. */
  readonly level: number;
  /** Root of the mean squared distance between line and fit, in the line's unit. */
  readonly residual: number;
}

/** A swing back by less than this share of the whole range is taken for noise [–]. */
const NOISE_SHARE = 0.05;
const LEAST_EXTREMES = 3;
const MOST_ROUNDS = 40;
/** Change of σ and ω_d, relative to ω_d, at which the fit has settled [–]: a few units of rounding. */
const SETTLED = 1e-13;
/** A fit that leaves more than this share of the range is of something else [–]. */
const MOST_RESIDUAL_SHARE = 0.2;

/**
 * Fits a ring-down to a line that swings freely; undefined when fewer than three turning points stand out or when it
 * does not ring down.
 *
 * The start comes from the turning points p_k, which alternate about the level and shrink by e^(−δ/2) each:
 * level = (p₀p₂ − p₁²)/(p₀ + p₂ − 2p₁), δ and ω_d from the first and the last. Then all values are fitted at
 * once (Gauss and Newton). Measured on clean rings: decrement and frequency to 1e-9; with noise of 2 % of the
 * first swing, see the test.
 *
 * Source of decrement and ζ: ISO 2041:2018, vocabulary of vibration (logarithmic decrement); S. S. Rao, Mechanical
 * Vibrations, free damped vibration (both from memory).
 */
export function ringDown(series: Series): RingDown | undefined {
  const { values, rateHz } = series;
  const extremes = turningPoints(values);
  const [first, second, third] = extremes;
  if (extremes.length < LEAST_EXTREMES || !first || !second || !third) return undefined;

  const last = extremes[extremes.length - 1]!;
  const bend = first.value + third.value - 2 * second.value;
  const level = (first.value * third.value - second.value * second.value) / bend;
  const halfSwings = extremes.length - 1;
  const spanS = (last.at - first.at) / rateHz;
  let omega = (Math.PI * halfSwings) / spanS;
  let sigma = ln(Math.abs((first.value - level) / (last.value - level))) / spanS;
  if (!(Number.isFinite(sigma) && omega > 0)) return undefined;

  let fit = amplitudes(series, sigma, omega);
  for (let round = 0; round < MOST_ROUNDS; round += 1) {
    const step = gaussNewton(series, fit, sigma, omega);
    sigma += step.sigma;
    omega += step.omega;
    if (!(omega > 0 && Number.isFinite(sigma))) return undefined;
    fit = amplitudes(series, sigma, omega);
    if (Math.abs(step.sigma) + Math.abs(step.omega) <= SETTLED * omega) break;
  }
  const residual = residualOf(series, fit, sigma, omega);
  if (!(residual < MOST_RESIDUAL_SHARE * rangeOf(values))) return undefined;
  const natural = Math.sqrt(sigma * sigma + omega * omega);
  return {
    frequencyHz: omega / (2 * Math.PI),
    decrement: (2 * Math.PI * sigma) / omega,
    dampingRatio: sigma / natural,
    naturalFrequencyHz: natural / (2 * Math.PI),
    level: fit.level,
    residual,
  };
}

interface Turn {
  /** Place in steps from the first value. */
  readonly at: number;
  readonly value: number;
}

/** Alternating peaks and troughs that stand out of the noise; the ends of the line are none. */
function turningPoints(values: Float64Array): Turn[] {
  const least = NOISE_SHARE * rangeOf(values);
  const turns: Turn[] = [];
  let high = 0;
  let low = 0;
  let way: 1 | -1 | 0 = 0;
  for (let k = 1; k < values.length; k += 1) {
    if (values[k]! > values[high]!) high = k;
    if (values[k]! < values[low]!) low = k;
    if (way !== -1 && values[high]! - values[k]! > least) {
      if (way === 1 || high > 0) turns.push(turnAt(values, high));
      way = -1;
      low = k;
    } else if (way !== 1 && values[k]! - values[low]! > least) {
      if (way === -1 || low > 0) turns.push(turnAt(values, low));
      way = 1;
      high = k;
    }
  }
  return turns;
}

function turnAt(values: Float64Array, k: number): Turn {
  const { offset, value } = vertex(values, k);
  return { at: k + offset, value };
}

function rangeOf(values: Float64Array): number {
  let low = values[0]!;
  let high = low;
  for (const value of values) {
    if (value < low) low = value;
    if (value > high) high = value;
  }
  return high - low;
}

interface Amplitudes {
  readonly level: number;
  readonly a: number;
  readonly b: number;
}

/** level, a and b that fit best for given σ and ω_d. */
function amplitudes({ values, rateHz }: Series, sigma: number, omega: number): Amplitudes {
  const fit = leastSquares(values.length, 3, (k, columns) => {
    const t = k / rateHz;
    const shrink = exp(-sigma * t);
    columns[0] = 1;
    columns[1] = shrink * cos(omega * t);
    columns[2] = shrink * sin(omega * t);
    return values[k]!;
  });
  return { level: fit[0]!, a: fit[1]!, b: fit[2]! };
}

/** One step of all five unknowns; times in units of 1/ω_d, so that the columns are of one size. */
function gaussNewton(
  { values, rateHz }: Series,
  { level, a, b }: Amplitudes,
  sigma: number,
  omega: number,
): { readonly sigma: number; readonly omega: number } {
  const step = leastSquares(values.length, 5, (k, columns) => {
    const t = k / rateHz;
    const shrink = exp(-sigma * t);
    const c = shrink * cos(omega * t);
    const s = shrink * sin(omega * t);
    const swing = a * c + b * s;
    columns[0] = 1;
    columns[1] = c;
    columns[2] = s;
    columns[3] = -omega * t * swing;
    columns[4] = omega * t * (b * c - a * s);
    return values[k]! - level - swing;
  });
  return { sigma: step[3]! * omega, omega: step[4]! * omega };
}

function residualOf({ values, rateHz }: Series, { level, a, b }: Amplitudes, sigma: number, omega: number): number {
  let sum = 0;
  for (let k = 0; k < values.length; k += 1) {
    const t = k / rateHz;
    const off = values[k]! - level - exp(-sigma * t) * (a * cos(omega * t) + b * sin(omega * t));
    sum += off * off;
  }
  return Math.sqrt(sum / values.length);
}
