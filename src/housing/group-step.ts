/**
 * One step of fourth order for a rigid body: classical Runge–Kutta for position, velocity and whatever else is a
 * plain number, and for the attitude the commutator-free scheme of the same stages (E. Celledoni, A. Marthinsen,
 * B. Owren, "Commutator-free Lie group methods", Future Generation Computer Systems 19 (2003) 341–352, the
 * fourth-order method; from memory, its order is observed in the tests):
 *     q₂ = exp(½hω₁)q,  q₃ = exp(½hω₂)q,  q₄ = exp(hω₃ − ½hω₁)q₂,
 *     q⁺ = exp(h(−ω₁ + 2ω₂ + 2ω₃ + 3ω₄)/12) exp(h(3ω₁ + 2ω₂ + 2ω₃ − ω₄)/12) q.
 * The attitude stays a turn by construction; a turn at constant ω is exact.
 */

/**
 * Where things lie in a body's state: centre of mass, velocity, attitude, W, extras; and in the rates of a state: angular
 * velocity, acceleration, rate of W, rates of the extras. W is the angular momentum of a free body and the
 * angular velocity of a led one. All in the room frame. Users take these into constants of their own, which
 * some module runners reach faster than an import.
 */
export const LAYOUT = {
  X: 0,
  V: 3,
  Q: 6,
  W: 10,
  EXTRA: 13,
  TURN: 0,
  ACCELERATION: 3,
  W_RATE: 6,
  EXTRA_RATE: 9,
} as const;

const { X, V, Q, W, EXTRA, ACCELERATION, W_RATE, EXTRA_RATE } = LAYOUT;

export interface RateSource {
  /** Angular velocity (room), acceleration, rate of W and of the extras; `sinceS`: since the step's start. */
  rates(state: Float64Array, sinceS: number, out: Float64Array): void;
}

/** Longest turn a step may make [rad]: ten seconds of tumbling at 10 rad/s then err by less than 1e-7. */
export const LONGEST_TURN = 0.01;

/**
 * tan(z)/z for z² ≤ 2.3e-4 (turns of up to 0.03 rad): 1 + z²/3 + 2z⁴/15 + 17z⁶/315; the next term, 62z⁸/2835,
 * is below 6e-17.
 */
export function halfTangent(zSquared: number): number {
  return 1 + zSquared * (1 / 3 + zSquared * (2 / 15 + (zSquared * 17) / 315));
}

/** out = exp(r)·q for a short rotation vector r (room frame) from q at `from` to `to`; |out| = 1 to rounding. */
function turn(q: Float64Array, rx: number, ry: number, rz: number, out: Float64Array): void {
  const half = 0.5 * halfTangent(0.25 * (rx * rx + ry * ry + rz * rz));
  const ax = half * rx;
  const ay = half * ry;
  const az = half * rz;
  const x = q[Q]!;
  const y = q[Q + 1]!;
  const z = q[Q + 2]!;
  const w = q[Q + 3]!;
  const nx = x + ax * w + ay * z - az * y;
  const ny = y + ay * w + az * x - ax * z;
  const nz = z + az * w + ax * y - ay * x;
  const nw = w - ax * x - ay * y - az * z;
  const s = 1 / Math.sqrt(nx * nx + ny * ny + nz * nz + nw * nw);
  out[Q] = nx * s;
  out[Q + 1] = ny * s;
  out[Q + 2] = nz * s;
  out[Q + 3] = nw * s;
}

export class GroupStep {
  /** Results: mean acceleration and velocity over the step, the rate of W and of the extras, the two turns [rad]. */
  readonly meanAcceleration = new Float64Array(3);
  readonly meanVelocity = new Float64Array(3);
  readonly meanWRate = new Float64Array(3);
  readonly meanExtraRate: Float64Array;
  readonly firstTurn = new Float64Array(3);
  readonly secondTurn = new Float64Array(3);
  readonly #extras: number;
  readonly #k: readonly [Float64Array, Float64Array, Float64Array, Float64Array];
  readonly #second: Float64Array;
  readonly #stage: Float64Array;

  constructor(extras: number) {
    this.#extras = extras;
    const rates = (): Float64Array => new Float64Array(EXTRA_RATE + extras);
    this.#k = [rates(), rates(), rates(), rates()];
    this.#second = new Float64Array(EXTRA + extras);
    this.#stage = new Float64Array(EXTRA + extras);
    this.meanExtraRate = new Float64Array(extras);
  }

  /**
   * Evaluates the stages of a step of `h` [s] from `start`; `extras` false: they stand still. `startRates`: the rates of the
   * start, if they are known.
   */
  run(source: RateSource, start: Float64Array, h: number, extras: boolean, startRates?: Float64Array): void {
    const [k1, k2, k3, k4] = this.#k;
    const second = this.#second;
    const stage = this.#stage;
    if (startRates === undefined) source.rates(start, 0, k1);
    else for (let i = 0; i < k1.length; i++) k1[i] = startRates[i]!;
    turn(start, 0.5 * h * k1[0]!, 0.5 * h * k1[1]!, 0.5 * h * k1[2]!, second);
    this.#move(start, start, k1, 0.5 * h, extras, second);
    source.rates(second, 0.5 * h, k2);
    turn(start, 0.5 * h * k2[0]!, 0.5 * h * k2[1]!, 0.5 * h * k2[2]!, stage);
    this.#move(start, second, k2, 0.5 * h, extras, stage);
    source.rates(stage, 0.5 * h, k3);
    // the last stage starts from the second, its velocity from the third
    this.#move(start, stage, k3, h, extras, stage);
    turn(second, h * k3[0]! - 0.5 * h * k1[0]!, h * k3[1]! - 0.5 * h * k1[1]!, h * k3[2]! - 0.5 * h * k1[2]!, stage);
    source.rates(stage, h, k4);
    this.#combine(start, h, extras);
  }

  /** out = start + h·(velocity of `at`, rates k), all but the attitude; out may be `at`. */
  #move(start: Float64Array, at: Float64Array, k: Float64Array, h: number, extras: boolean, out: Float64Array): void {
    for (let i = 0; i < 3; i++) {
      out[X + i] = start[X + i]! + h * at[V + i]!;
      out[V + i] = start[V + i]! + h * k[ACCELERATION + i]!;
      out[W + i] = start[W + i]! + h * k[W_RATE + i]!;
    }
    if (!extras) return;
    for (let i = 0; i < this.#extras; i++) out[EXTRA + i] = start[EXTRA + i]! + h * k[EXTRA_RATE + i]!;
  }

  #combine(start: Float64Array, h: number, extras: boolean): void {
    const [k1, k2, k3, k4] = this.#k;
    for (let i = 0; i < 3; i++) {
      const a = ACCELERATION + i;
      this.meanAcceleration[i] = (k1[a]! + 2 * (k2[a]! + k3[a]!) + k4[a]!) / 6;
      this.meanVelocity[i] = start[V + i]! + (h * (k1[a]! + k2[a]! + k3[a]!)) / 6;
      const w = W_RATE + i;
      this.meanWRate[i] = (k1[w]! + 2 * (k2[w]! + k3[w]!) + k4[w]!) / 6;
      const middle = 2 * (k2[i]! + k3[i]!);
      this.firstTurn[i] = (h * (3 * k1[i]! + middle - k4[i]!)) / 12;
      this.secondTurn[i] = (h * (-k1[i]! + middle + 3 * k4[i]!)) / 12;
    }
    if (!extras) return;
    for (let i = 0; i < this.#extras; i++) {
      const e = EXTRA_RATE + i;
      this.meanExtraRate[i] = (k1[e]! + 2 * (k2[e]! + k3[e]!) + k4[e]!) / 6;
    }
  }

  /**
   * The state in the middle of the step just run, from what is known at both ends: place by the quintic, the other
   * numbers by the cubic through values and rates, the attitude by the parabola through the stages' angular velocities and
   * Magnus's second term (W. Magnus, Comm. Pure Appl. Math. 7 (1954) 649–673, from memory). Errors of fourth order, h⁴v⁗/384.
   */
  middle(
    start: Float64Array,
    end: Float64Array,
    endRates: Float64Array,
    h: number,
    extras: boolean,
    out: Float64Array,
  ): void {
    const [k1, k2, k3, k4] = this.#k;
    const eighth = h / 8;
    for (let i = 0; i < 3; i++) {
      const a0 = k1[ACCELERATION + i]!;
      const a1 = endRates[ACCELERATION + i]!;
      const v0 = start[V + i]!;
      const v1 = end[V + i]!;
      out[X + i] = (start[X + i]! + end[X + i]!) / 2 + ((5 * h) / 32) * (v0 - v1) + ((h * h) / 64) * (a0 + a1);
      out[V + i] = (v0 + v1) / 2 + eighth * (a0 - a1);
      out[W + i] = (start[W + i]! + end[W + i]!) / 2 + eighth * (k1[W_RATE + i]! - endRates[W_RATE + i]!);
    }
    for (let i = 0; i < this.#extras; i++) {
      const mean = (start[EXTRA + i]! + end[EXTRA + i]!) / 2;
      out[EXTRA + i] = extras ? mean + eighth * (k1[EXTRA_RATE + i]! - endRates[EXTRA_RATE + i]!) : mean;
    }
    const share = h / 24;
    const second = (h * h) / 96;
    const x = share * (5 * k1[0]! + 4 * (k2[0]! + k3[0]!) - k4[0]!) - second * (k1[1]! * k4[2]! - k1[2]! * k4[1]!);
    const y = share * (5 * k1[1]! + 4 * (k2[1]! + k3[1]!) - k4[1]!) - second * (k1[2]! * k4[0]! - k1[0]! * k4[2]!);
    const z = share * (5 * k1[2]! + 4 * (k2[2]! + k3[2]!) - k4[2]!) - second * (k1[0]! * k4[1]! - k1[1]! * k4[0]!);
    turn(start, x, y, z, out);
  }

  /** Applies the results: out = state at the end of the step. */
  finish(start: Float64Array, h: number, extras: boolean, out: Float64Array): void {
    const a = this.firstTurn;
    const b = this.secondTurn;
    turn(start, a[0]!, a[1]!, a[2]!, out);
    turn(out, b[0]!, b[1]!, b[2]!, out);
    for (let i = 0; i < 3; i++) {
      out[X + i] = start[X + i]! + h * this.meanVelocity[i]!;
      out[V + i] = start[V + i]! + h * this.meanAcceleration[i]!;
    }
    this.finishRest(start, h, extras, out);
  }

  /** The part of `finish` that is neither place nor attitude nor velocity. */
  finishRest(start: Float64Array, h: number, extras: boolean, out: Float64Array): void {
    for (let i = 0; i < 3; i++) out[W + i] = start[W + i]! + h * this.meanWRate[i]!;
    for (let i = 0; i < this.#extras; i++) {
      out[EXTRA + i] = extras ? start[EXTRA + i]! + h * this.meanExtraRate[i]! : start[EXTRA + i]!;
    }
  }
}
