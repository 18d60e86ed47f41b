/** The eased laws of a move or tilt (a step), a spin (a rate) and a push (an acceleration). */
import {
  smoothstep,
  smoothstepArea,
  smoothstepCurvature,
  smoothstepSecondArea,
  smoothstepSlope,
} from '../numerics/smoothstep.ts';
import type { ScalarLaw } from './scalar-law.ts';

/** total·S(t/over) */
export class EasedStep implements ScalarLaw {
  value = 0;
  rate = 0;
  acceleration = 0;
  readonly steadyAfterS: number;
  readonly #total: number;
  readonly #overS: number;

  constructor(total: number, overS: number) {
    this.#total = total;
    this.#overS = overS;
    this.steadyAfterS = overS;
  }

  nextKnotS(afterS: number): number {
    return this.#overS > afterS ? this.#overS : Number.POSITIVE_INFINITY;
  }

  at(timeS: number): void {
    const u = timeS / this.#overS;
    this.value = this.#total * smoothstep(u);
    this.rate = (this.#total * smoothstepSlope(u)) / this.#overS;
    this.acceleration = (this.#total * smoothstepCurvature(u)) / (this.#overS * this.#overS);
  }
}

/** A rate reached as rate·S(t/within), then kept. */
export class EasedRate implements ScalarLaw {
  value = 0;
  rate = 0;
  acceleration = 0;
  readonly steadyAfterS = Number.POSITIVE_INFINITY; // the angle goes on
  readonly #rate: number;
  readonly #withinS: number;

  constructor(rate: number, withinS: number) {
    this.#rate = rate;
    this.#withinS = withinS;
  }

  nextKnotS(afterS: number): number {
    return this.#withinS > afterS ? this.#withinS : Number.POSITIVE_INFINITY;
  }

  at(timeS: number): void {
    const u = timeS / this.#withinS;
    this.value = this.#rate * this.#withinS * smoothstepArea(u);
    this.rate = this.#rate * smoothstep(u);
    this.acceleration = (this.#rate * smoothstepSlope(u)) / this.#withinS;
  }
}

/** An acceleration reached as acceleration·S(t/within), then kept; at once if within is 0. */
export class EasedAcceleration implements ScalarLaw {
  value = 0;
  rate = 0;
  acceleration = 0;
  readonly steadyAfterS: number;
  readonly #acceleration: number;
  readonly #withinS: number;

  constructor(acceleration: number, withinS: number) {
    this.#acceleration = acceleration;
    this.#withinS = withinS;
    this.steadyAfterS = withinS;
  }

  nextKnotS(afterS: number): number {
    return this.#withinS > afterS ? this.#withinS : Number.POSITIVE_INFINITY;
  }

  at(timeS: number): void {
    const a = this.#acceleration;
    const within = this.#withinS;
    if (within === 0) {
      this.value = (a * timeS * timeS) / 2;
      this.rate = a * timeS;
      this.acceleration = a;
      return;
    }
    const u = timeS / within;
    this.value = a * within * within * smoothstepSecondArea(u);
    this.rate = a * within * smoothstepArea(u);
    this.acceleration = a * smoothstep(u);
  }
}
