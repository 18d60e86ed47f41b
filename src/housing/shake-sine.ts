/** Shaken by a sine: s = −(A/Ω²)·S(t/ease)·sin Ωt, so that once eased in the acceleration is A sin Ωt. */
import type { SineShake } from '../contract/motion.ts';
import { smoothstep, smoothstepCurvature, smoothstepSlope } from '../numerics/smoothstep.ts';
import { cos, sin } from '../numerics/transcendental.ts';
import { BRAKE_WITHIN_S } from './brake.ts';
import type { HandOver } from './law.ts';
import { Prescribed, unit } from './prescribed.ts';
import type { ScalarLaw } from './scalar-law.ts';

export class EasedSine implements ScalarLaw {
  value = 0;
  rate = 0;
  acceleration = 0;
  readonly steadyAfterS = Number.POSITIVE_INFINITY;
  readonly #omega: number;
  readonly #displacement: number;
  readonly #easeS: number;

  constructor(frequencyHz: number, amplitudeMS2: number, easeS: number) {
    this.#omega = 2 * Math.PI * frequencyHz;
    this.#displacement = amplitudeMS2 / (this.#omega * this.#omega);
    this.#easeS = easeS;
  }

  nextKnotS(afterS: number): number {
    return this.#easeS > afterS ? this.#easeS : Number.POSITIVE_INFINITY;
  }

  at(timeS: number): void {
    const omega = this.#omega;
    const u = timeS / this.#easeS;
    const ease = smoothstep(u);
    const slope = smoothstepSlope(u) / this.#easeS;
    const curvature = smoothstepCurvature(u) / (this.#easeS * this.#easeS);
    const s = sin(omega * timeS);
    const c = cos(omega * timeS);
    const d = this.#displacement;
    this.value = -d * ease * s;
    this.rate = -d * (slope * s + ease * omega * c);
    this.acceleration = -d * (curvature * s + 2 * slope * omega * c - ease * omega * omega * s);
  }
}

export function sineShake(motion: SineShake, from: HandOver): Prescribed {
  const law = new EasedSine(motion.frequency, motion.amplitude, motion.ease);
  return new Prescribed('shake', from, {
    brakeWithinS: BRAKE_WITHIN_S,
    along: [{ axis: unit(motion.axis), law }],
  });
}
