/**
 * One step of the fifth-order Runge–Kutta pair RK5(4)7M with an error estimate of fourth order: J. R. Dormand,
 * P. J. Prince, J. Comput. Appl. Math. 6 (1980) 19–26, table 2 (citation from memory; the order conditions are
 * tested). The step is local: an instant inside an accepted step is reached by a shorter step from its start.
 */
import { pow } from './transcendental.ts';

/** Writes z′ at (τ, z) into `out`. */
export type Rates = (tauS: number, state: Float64Array, out: Float64Array) => void;

/** Times of the stages, and their weights on the stages before, row by row. */
export const NODES = [0, 1 / 5, 3 / 10, 4 / 5, 8 / 9, 1, 1] as const;
export const STAGES = [
  [],
  [1 / 5],
  [3 / 40, 9 / 40],
  [44 / 45, -56 / 15, 32 / 9],
  [19372 / 6561, -25360 / 2187, 64448 / 6561, -212 / 729],
  [9017 / 3168, -355 / 33, 46732 / 5247, 49 / 176, -5103 / 18656],
  [35 / 384, 0, 500 / 1113, 125 / 192, -2187 / 6784, 11 / 84],
] as const;
/** Fifth-order weights less fourth-order ones. */
export const ERROR_WEIGHTS = [71 / 57600, 0, -71 / 16695, 71 / 1920, -17253 / 339200, 22 / 525, -1 / 40] as const;

/** Steps grow and shrink by at most these; what the estimate advises is taken a little shorter (common practice). */
const LEAST_FACTOR = 0.2;
const MOST_FACTOR = 5;
const SAFETY = 0.9;

export class RungeKutta {
  /** Estimated error of each component of the last step. */
  readonly error: Float64Array;
  readonly #stages: readonly Float64Array[];
  readonly #point: Float64Array;

  constructor(size: number) {
    this.error = new Float64Array(size);
    this.#stages = NODES.map(() => new Float64Array(size));
    this.#point = new Float64Array(size);
  }

  /** From `state` at τ over `stepS` into `out`, which may be `state`. */
  step(rates: Rates, tauS: number, state: Float64Array, stepS: number, out: Float64Array): void {
    const point = this.#point;
    const n = point.length;
    for (let stage = 0; stage < NODES.length; stage += 1) {
      const weights = STAGES[stage]!;
      for (let i = 0; i < n; i += 1) {
        let sum = 0;
        for (let k = 0; k < weights.length; k += 1) sum += weights[k]! * this.#stages[k]![i]!;
        point[i] = state[i]! + stepS * sum;
      }
      rates(tauS + NODES[stage]! * stepS, point, this.#stages[stage]!);
    }
    // The last stage stands at the end of the step.
    out.set(point);
    for (let i = 0; i < n; i += 1) {
      let sum = 0;
      for (let k = 0; k < NODES.length; k += 1) sum += ERROR_WEIGHTS[k]! * this.#stages[k]![i]!;
      this.error[i] = stepS * sum;
    }
  }
}

/** Factor for the next step when the last one's error was `share` of what is tolerated. */
export function stepFactor(share: number): number {
  return Math.min(MOST_FACTOR, Math.max(LEAST_FACTOR, SAFETY * pow(share, -1 / 5)));
}
