/**
 * Shaken by a sine whose frequency runs from one value to another:
 *     s = −G sin φ,  G = (A/φ̇²)·S(t/ease),
 * φ̇ rising linearly or exponentially over the sweep, then staying. The acceleration is s″ in full, the
 * derivatives of φ̇ included, so its amplitude is A only to first order in φ̈/φ̇².
 * At the end of the sweep φ̈ drops to zero, and with it G′; the small velocity this would leave over,
 * (2A φ̈/φ̇³) sin φ, is kept and braked like any velocity taken over.
 */
import type { SweepShake } from '../contract/motion.ts';
import { smoothstep, smoothstepArea, smoothstepCurvature, smoothstepSlope } from '../numerics/smoothstep.ts';
import { cos, expm1, ln, sin } from '../numerics/transcendental.ts';
import { BRAKE_WITHIN_S } from './brake.ts';
import type { HandOver } from './law.ts';
import { Prescribed, unit } from './prescribed.ts';
import { firstKnotAfter, type ScalarLaw } from './scalar-law.ts';

export class EasedSweep implements ScalarLaw {
  value = 0;
  rate = 0;
  acceleration = 0;
  readonly steadyAfterS = Number.POSITIVE_INFINITY;
  readonly #amplitude: number;
  readonly #overS: number;
  readonly #easeS: number;
  readonly #startOmega: number;
  readonly #endOmega: number;
  /** ln(end/start)/over of a logarithmic sweep [1/s]; null: linear. */
  readonly #growth: number | null;
  readonly #knotsS: readonly number[];
  /** φ, φ̇, φ̈ and φ⃛ of the last call. */
  #phase = 0;
  #omega = 0;
  #omegaRate = 0;
  #omegaCurvature = 0;
  /** φ at the end of the sweep, and the velocity left over there [m/s]. */
  readonly #endPhase: number;
  readonly #leftover: number;

  constructor(motion: Omit<SweepShake, 'kind' | 'from' | 'axis' | 'law'>) {
    this.#amplitude = motion.amplitude;
    this.#overS = motion.over;
    this.#easeS = motion.ease;
    this.#startOmega = 2 * Math.PI * motion.fromFrequency;
    this.#endOmega = 2 * Math.PI * motion.toFrequency;
    const logarithmic = motion.progression === 'logarithmic' && motion.toFrequency !== motion.fromFrequency;
    this.#growth = logarithmic ? ln(motion.toFrequency / motion.fromFrequency) / motion.over : null;
    this.#knotsS = [motion.over, motion.over + BRAKE_WITHIN_S, motion.ease].sort((a, b) => a - b);
    this.#endPhase = 0;
    this.#leftover = 0;
    this.#sweep(motion.over);
    this.#endPhase = this.#phase;
    this.#shape(motion.over);
    const sweeping = this.rate;
    this.#hold(motion.over);
    this.#shape(motion.over);
    this.#leftover = sweeping - this.rate;
  }

  nextKnotS(afterS: number): number {
    return firstKnotAfter(this.#knotsS, afterS);
  }

  at(timeS: number, sideS: number): void {
    if (sideS < this.#overS) {
      this.#sweep(timeS);
      this.#shape(timeS);
      return;
    }
    this.#hold(timeS);
    this.#shape(timeS);
    const sinceS = timeS - this.#overS;
    const u = sinceS / BRAKE_WITHIN_S;
    this.value += this.#leftover * (sinceS - BRAKE_WITHIN_S * smoothstepArea(u));
    this.rate += this.#leftover * (1 - smoothstep(u));
    this.acceleration -= (this.#leftover * smoothstepSlope(u)) / BRAKE_WITHIN_S;
  }

  #sweep(timeS: number): void {
    const start = this.#startOmega;
    if (this.#growth === null) {
      const slope = (this.#endOmega - start) / this.#overS;
      this.#omega = start + slope * timeS;
      this.#omegaRate = slope;
      this.#omegaCurvature = 0;
      this.#phase = timeS * (start + (slope * timeS) / 2);
      return;
    }
    const grown = expm1(this.#growth * timeS);
    this.#omega = start * (1 + grown);
    this.#omegaRate = this.#growth * this.#omega;
    this.#omegaCurvature = this.#growth * this.#omegaRate;
    this.#phase = (start * grown) / this.#growth;
  }

  #hold(timeS: number): void {
    this.#omega = this.#endOmega;
    this.#omegaRate = 0;
    this.#omegaCurvature = 0;
    this.#phase = this.#endPhase + this.#endOmega * (timeS - this.#overS);
  }

  /** s = −G sin φ and its derivatives. */
  #shape(timeS: number): void {
    const p1 = this.#omega;
    const p2 = this.#omegaRate;
    const u = timeS / this.#easeS;
    const e = smoothstep(u);
    const e1 = smoothstepSlope(u) / this.#easeS;
    const e2 = smoothstepCurvature(u) / (this.#easeS * this.#easeS);
    // W = A/φ̇²,  W′ = −2Aφ̈/φ̇³,  W″ = −2Aφ⃛/φ̇³ + 6Aφ̈²/φ̇⁴
    const w = this.#amplitude / (p1 * p1);
    const w1 = (-2 * w * p2) / p1;
    const w2 = (w * (-2 * this.#omegaCurvature + (6 * p2 * p2) / p1)) / p1;
    const g = w * e;
    const g1 = w1 * e + w * e1;
    const g2 = w2 * e + 2 * w1 * e1 + w * e2;
    const s = sin(this.#phase);
    const c = cos(this.#phase);
    this.value = -g * s;
    this.rate = -(g1 * s + g * p1 * c);
    this.acceleration = -(g2 * s + 2 * g1 * p1 * c + g * (p2 * c - p1 * p1 * s));
  }
}

export function sweepShake(motion: SweepShake, from: HandOver): Prescribed {
  return new Prescribed('shake', from, {
    brakeWithinS: BRAKE_WITHIN_S,
    along: [{ axis: unit(motion.axis), law: new EasedSweep(motion) }],
  });
}
