/**
 * What an element answers to standard motions, from closed forms: its reading for a unit of specific force. With
 * modes q̈ + 2ζωq̇ + ω²q = −Γf, x = Σφq − S_rest·f, the reading is −x/S, S = S_rest + ΣφΓ/ω²; so
 *     H(ω) = (S_rest + Σ φΓ/(ω_n² − ω² + 2iζ_nω_nω))/S                  (any text on modal superposition)
 * and the answer to a step is S_rest + ΣφΓ·I₁(t) over S, I₁ as in numerics/oscillator.ts. Linear: no stops, no cubic spring.
 */
import type { ElementSpec, ModeSpec } from '../contract/run.ts';
import { oscillatorStep, STEP_NUMBERS } from '../numerics/oscillator.ts';
import { atan2, cos, pow, sin } from '../numerics/transcendental.ts';

export type ModalForm = Pick<ElementSpec, 'naturalFrequency' | 'dampingRatio' | 'modes' | 'staticRemainder'>;

export interface FrequencyPoint {
  /** Indicated over applied [–]. */
  readonly gain: number;
  /** Phase of the reading relative to what is applied [rad]: negative lags; −π to π. */
  readonly phaseRad: number;
}

interface Mode {
  readonly omega: number;
  readonly zeta: number;
  /** φΓ/S: its share of the static reading is this over ω². */
  readonly weight: number;
}

const TURN = 2 * Math.PI;

export class Response {
  readonly #modes: readonly Mode[];
  /** S_rest/S: what follows at once [–]. */
  readonly #prompt: number;
  readonly #numbers = new Float64Array(STEP_NUMBERS);

  constructor(form: ModalForm) {
    const { naturalFrequency, dampingRatio, staticRemainder } = form;
    const modes: readonly Pick<ModeSpec, 'naturalFrequency' | 'dampingRatio' | 'participation' | 'shape'>[] =
      form.modes ?? [{ naturalFrequency, dampingRatio, participation: 1, shape: 1 }];
    const parts = modes.map((mode) => ({
      omega: TURN * mode.naturalFrequency,
      zeta: mode.dampingRatio,
      weight: mode.shape * mode.participation,
    }));
    const compliance = parts.reduce((sum, { omega, weight }) => sum + weight / (omega * omega), staticRemainder);
    if (!(compliance > 0))
      throw new RangeError(`static deflection per unit specific force must be > 0, got ${compliance} s²`);
    this.#modes = parts.map((mode) => ({ ...mode, weight: mode.weight / compliance }));
    this.#prompt = staticRemainder / compliance;
  }

  /** The answer to a lasting sine of a frequency [Hz] ≥ 0. */
  atFrequency(frequencyHz: number): FrequencyPoint {
    const w = TURN * frequencyHz;
    let real = this.#prompt;
    let imaginary = 0;
    for (const { omega, zeta, weight } of this.#modes) {
      const a = omega * omega - w * w;
      const b = 2 * zeta * omega * w;
      const share = weight / (a * a + b * b);
      real += share * a;
      imaginary -= share * b;
    }
    // The lag is taken from +0, so that beyond an undamped resonance it is half a turn behind, not ahead.
    return { gain: Math.sqrt(real * real + imaginary * imaginary), phaseRad: -atan2(0 - imaginary, real) };
  }

  /** Reading a time [s] after a unit step; before it 0. 1 less it is the reading after a release. */
  afterStep(timeS: number): number {
    if (timeS < 0) return 0;
    let sum = this.#prompt;
    for (const { omega, zeta, weight } of this.#modes) {
      oscillatorStep(omega, zeta, timeS, this.#numbers, 0);
      sum += weight * this.#numbers[2]!;
    }
    return sum;
  }

  /**
   * Reading a time [s] after the start of a unit half-sine of a duration [s]. Particular plus free motion: with
   * u_p = α sin Ωt + β cos Ωt, α = (ω² − Ω²)/D, β = −2ζωΩ/D, D = (ω² − Ω²)² + (2ζωΩ)²; afterwards free.
   */
  afterHalfSine(durationS: number, timeS: number): number {
    if (timeS <= 0) return 0;
    const drive = Math.PI / durationS;
    const during = timeS <= durationS;
    let sum = during ? this.#prompt * sin(drive * timeS) : 0;
    for (const { omega, zeta, weight } of this.#modes) {
      // At resonance without damping the particular solution has no bound: a hair beside it is the same pulse.
      const w = zeta === 0 && Math.abs(omega / drive - 1) < 1e-7 ? omega * (1 + 1e-7) : omega;
      const a = w * w - drive * drive;
      const b = 2 * zeta * w * drive;
      const d = a * a + b * b;
      const alpha = a / d;
      const beta = -b / d;
      if (during) {
        const free = this.#free(w, zeta, -beta, -alpha * drive, timeS);
        sum += weight * (alpha * sin(drive * timeS) + beta * cos(drive * timeS) + free.x);
      } else {
        const end = this.#free(w, zeta, -beta, -alpha * drive, durationS);
        const after = this.#free(w, zeta, end.x - beta, end.v - alpha * drive, timeS - durationS);
        sum += weight * after.x;
      }
    }
    return sum;
  }

  #free(omega: number, zeta: number, x: number, v: number, timeS: number): { readonly x: number; readonly v: number } {
    const n = this.#numbers;
    oscillatorStep(omega, zeta, timeS, n, 0);
    const g = omega * omega * x;
    return { x: x + v * n[0]! - g * n[2]!, v: v + v * n[1]! - g * n[0]! };
  }
}

/**
 * Frequency [Hz] up to which the gain stays within ± `share` of 1, from `lowHz` on; 0: not even there, Infinity: beyond `highHz`. Found on
 * 400 steps a decade, then by halving; a resonance narrower than a step (ζ < 0.003) could hide in the
 * band only where the gain has long left it.
 */
export function flatUpTo(response: Response, share: number, lowHz: number, highHz: number): number {
  return lastInside((f) => Math.abs(response.atFrequency(f).gain - 1) <= share, lowHz, highHz);
}

/** Frequency [Hz] at which the gain has fallen by 3 dB, to 1/√2, for the first time; Infinity: beyond `highHz`. */
export function halfPowerAt(response: Response, lowHz: number, highHz: number): number {
  return lastInside((f) => response.atFrequency(f).gain >= Math.SQRT1_2, lowHz, highHz);
}

/** 10^(1/400): 400 steps a decade. */
const STEP = 1.005773063;

function lastInside(inside: (frequencyHz: number) => boolean, lowHz: number, highHz: number): number {
  if (!inside(lowHz)) return 0;
  for (let f = lowHz; f < highHz; f *= STEP) {
    if (inside(f * STEP)) continue;
    let low = f;
    let high = f * STEP;
    for (let k = 0; k < 50; k += 1) {
      const middle = (low + high) / 2;
      if (inside(middle)) low = middle;
      else high = middle;
    }
    return low;
  }
  return Number.POSITIVE_INFINITY;
}

/** So many frequencies [Hz] from one to another, both included, in equal ratios. */
export function frequencies(lowHz: number, highHz: number, count: number): Float64Array {
  return Float64Array.from({ length: count }, (_, k) => lowHz * pow(highHz / lowHz, k / (count - 1)));
}
