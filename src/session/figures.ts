import { cos, exp, sin } from '../numerics/transcendental.ts';
import { G_N } from '../units/standard-gravity.ts';

/** What a designer reads off an element at a glance. SI units. */
export interface ElementFigures {
  /** Undamped natural frequency [Hz]. */
  readonly naturalFrequencyHz: number;
  /** Frequency at which it rings, f₀√(1 − ζ²) [Hz]; undefined when it does not ring (ζ ≥ 1). */
  readonly ringsAtHz: number | undefined;
  /** Static deflection under 1 g_n, g_n/ω₀² [m]. */
  readonly sagPerGM: number;
  /** Time after a step from which on the deflection stays within 2 % of the step [s]; undefined: it rings for ever. */
  readonly settlesS: number | undefined;
  /** Specific force at which the mass reaches a stop, gap·ω₀² [m/s²]; undefined without stops. */
  readonly reachesStopMS2: number | undefined;
}

/** Settling is counted to this share of the step [–]. */
export const SETTLING_BAND = 0.02;

export function elementFigures(frequencyHz: number, zeta: number, gapM: number | null | undefined): ElementFigures {
  const omega = 2 * Math.PI * frequencyHz;
  return {
    naturalFrequencyHz: frequencyHz,
    ringsAtHz: zeta < 1 ? frequencyHz * Math.sqrt(1 - zeta * zeta) : undefined,
    sagPerGM: G_N / (omega * omega),
    settlesS: zeta > 0 ? settlingTime(omega, zeta, SETTLING_BAND) : undefined,
    reachesStopMS2: gapM == null ? undefined : gapM * omega * omega,
  };
}

/**
 * Time [s] after which the step response stays within ± band of its final value, from the closed form of
 *     1 − y(t) = e^(−ζωt)·(cos ω_d t + (ζω/ω_d)·sin ω_d t)   (ζ < 1; likewise with cosh, sinh above 1).
 * Found by bisection before the last swing that leaves the band; relative error below 1e-9.
 * Source: K. Ogata, Modern Control Engineering, transient response (from memory); the values are checked
 * against computed ones.
 */
export function settlingTime(omega: number, zeta: number, band: number): number {
  const off = (t: number) => Math.abs(offset(omega, zeta, t));
  // The envelope bounds what is to come: past this instant nothing leaves the band.
  const slowest = zeta < 1 ? zeta * omega : omega / (zeta + Math.sqrt(zeta * zeta - 1));
  let inside = 0;
  for (let t = 4 / slowest; ; t *= 1.5)
    if (bound(omega, zeta, t) < band) {
      inside = t;
      break;
    }
  const stepS = zeta < 1 ? Math.PI / (omega * Math.sqrt(1 - zeta * zeta)) / 64 : inside / 4096;
  let outside = inside;
  while (outside > 0 && off(outside) <= band) outside -= stepS;
  let low = Math.max(0, outside);
  let high = low + stepS;
  for (let k = 0; k < 60; k += 1) {
    const middle = (low + high) / 2;
    if (off(middle) > band) low = middle;
    else high = middle;
  }
  return high;
}

function offset(omega: number, zeta: number, t: number): number {
  const decay = zeta * omega;
  const under = 1 - zeta * zeta;
  if (Math.abs(under) < 1e-12) return exp(-omega * t) * (1 + omega * t);
  if (under > 0) {
    const damped = omega * Math.sqrt(under);
    return exp(-decay * t) * (cos(damped * t) + (decay / damped) * sin(damped * t));
  }
  const root = omega * Math.sqrt(-under);
  const slow = decay - root;
  const fast = decay + root;
  return (fast * exp(-slow * t) - slow * exp(-fast * t)) / (fast - slow);
}

/** Envelope of the offset, never below it. */
function bound(omega: number, zeta: number, t: number): number {
  if (zeta >= 1) return Math.abs(offset(omega, zeta, t));
  return exp(-zeta * omega * t) / Math.sqrt(1 - zeta * zeta);
}
