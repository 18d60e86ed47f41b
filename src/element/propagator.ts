/**
 * Runs the equations of one `Mechanics` along an arc: exactly where they are linear, else by one step of Runge–Kutta.
 */
import { type LinearStep, LinearSystem, newLinearStep } from '../numerics/linear-system.ts';
import { oscillatorStep, STEP_NUMBERS } from '../numerics/oscillator.ts';
import { type Rates, RungeKutta } from '../numerics/runge-kutta.ts';
import { FORCE, FREE, HELD, LAW, SPIN, STATE, STILL } from './arcs.ts';
import type { Mechanics } from './mechanics.ts';

/**
 * Error tolerated in one Runge–Kutta step, as a share of the amplitude that the state and the force give each
 * coordinate. A period of free swing then takes about 400 steps, so errors stay below 1e-9 over ten periods.
 */
const TOLERANCE = 1e-12;

export class Propagator {
  readonly mechanics: Mechanics;
  /** x [m] and ẋ [m/s] of the last `observe`. */
  deflection = 0;
  velocity = 0;
  readonly #modes: ExactSteps<Float64Array>;
  readonly #coupled: ExactSteps<LinearStep> | undefined;
  readonly #held: ExactSteps<LinearStep> | undefined;
  readonly #rungeKutta: RungeKutta;
  readonly #start: Float64Array;
  #data: Float64Array = new Float64Array(0);
  #at = 0;

  constructor(mechanics: Mechanics, tickS: number) {
    this.mechanics = mechanics;
    const { modes, size, mount, single, gapM } = mechanics;
    this.#modes = new ExactSteps<Float64Array>(tickS, () => new Float64Array(STEP_NUMBERS * modes), this.#stepModes);
    if (mount) this.#coupled = linearSteps(new LinearSystem(mechanics.a, [mechanics.b], mechanics.rate), tickS);
    if (!single && gapM !== Infinity) this.#held = linearSteps(heldSystem(mechanics), tickS);
    this.#rungeKutta = new RungeKutta(size);
    this.#start = new Float64Array(size);
  }

  /** The state `elapsedS` after the start of the arc whose numbers stand in `data` from `at`. */
  reach(data: Float64Array, at: number, elapsedS: number, out: Float64Array): void {
    const law = data[at + LAW]!;
    if (law === STILL || elapsedS === 0) {
      for (let i = 0; i < this.mechanics.size; i += 1) out[i] = data[at + STATE + i]!;
    } else if (law === FREE) {
      if (this.#coupled) this.#reachCoupled(data, at, this.#coupled.of(elapsedS), out);
      else this.#reachModes(data, at, this.#modes.of(elapsedS), out);
    } else if (law === HELD) this.#reachHeld(data, at, this.#held!.of(elapsedS), out);
    else this.#rungeKuttaStep(data, at, elapsedS, out);
  }

  /** As `reach` for a nonlinear arc, returning the error as a share of the tolerated one. */
  tryStep(data: Float64Array, at: number, elapsedS: number, out: Float64Array): number {
    this.#rungeKuttaStep(data, at, elapsedS, out);
    const { modes, size, omega, participation, mount } = this.mechanics;
    const { error } = this.#rungeKutta;
    const force = Math.abs(data[at + FORCE]!) + Math.abs(data[at + FORCE + 1]! * elapsedS);
    let most = 0;
    for (let i = 0; i < size; i += 2) {
      const n = i / 2;
      const w = n < modes ? omega[n]! : mount!.omega;
      const drive = n < modes ? Math.abs(participation[n]!) : 1 + mount!.massRatio;
      const amplitude = Math.max(
        Math.abs(data[at + STATE + i]!),
        Math.abs(data[at + STATE + i + 1]!) / w,
        (drive * force) / (w * w),
      );
      const worst = Math.max(Math.abs(error[i]!), Math.abs(error[i + 1]!) / w);
      if (worst > 0) most = Math.max(most, worst / (TOLERANCE * amplitude));
    }
    return most;
  }

  /** Works out x and ẋ of a state `elapsedS` into an arc. */
  observe(data: Float64Array, at: number, elapsedS: number, state: Float64Array): void {
    const { single, size, deflectionRow, deflectionInput, velocityRow, velocityInput } = this.mechanics;
    if (single) {
      this.deflection = state[0]!;
      this.velocity = state[1]!;
      return;
    }
    const f = forceAt(data, at + FORCE, elapsedS);
    let x = deflectionInput * f;
    let v = velocityInput * f + deflectionInput * slopeAt(data, at + FORCE, elapsedS);
    for (let i = 0; i < size; i += 1) {
      x += deflectionRow[i]! * state[i]!;
      v += velocityRow[i]! * state[i]!;
    }
    this.deflection = x;
    this.velocity = v;
  }

  /** Writes z′ of a state `elapsedS` into an arc, nothing held, and returns ẍ [m/s²]. */
  freeRates(data: Float64Array, at: number, elapsedS: number, state: Float64Array, out: Float64Array): number {
    const { single, omega, zeta, participation, cubic } = this.mechanics;
    const f = forceAt(data, at + FORCE, elapsedS);
    const softening = forceAt(data, at + SPIN, elapsedS);
    if (single) {
      const w = omega[0]!;
      const q = state[0]!;
      const v = state[1]!;
      out[0] = v;
      out[1] = -participation[0]! * f - 2 * zeta[0]! * w * v - (w * w - softening + cubic * q * q) * q;
      return out[1]!;
    }
    const { size, a, b, spring, deflectionRow, deflectionInput, velocityRow, velocityInput } = this.mechanics;
    let x = deflectionInput * f;
    for (let i = 0; i < size; i += 1) x += deflectionRow[i]! * state[i]!;
    const pull = (softening - cubic * x * x) * x;
    let acceleration = velocityInput * slopeAt(data, at + FORCE, elapsedS) + deflectionInput * data[at + FORCE + 2]!;
    for (let i = 0; i < size; i += 1) {
      let rate = b[i]! * f + spring[i]! * pull;
      for (let k = 0; k < size; k += 1) rate += a[i * size + k]! * state[k]!;
      out[i] = rate;
      acceleration += velocityRow[i]! * rate;
    }
    return acceleration;
  }

  #rungeKuttaStep(data: Float64Array, at: number, elapsedS: number, out: Float64Array): void {
    this.#data = data;
    this.#at = at;
    const start = this.#start;
    for (let i = 0; i < start.length; i += 1) start[i] = data[at + STATE + i]!;
    this.#rungeKutta.step(this.#rates, 0, start, elapsedS, out);
  }

  readonly #rates: Rates = (tauS, state, out) => {
    this.freeRates(this.#data, this.#at, tauS, state, out);
  };

  readonly #stepModes = (durationS: number, out: Float64Array): void => {
    const { omega, zeta } = this.mechanics;
    for (let n = 0; n < omega.length; n += 1) oscillatorStep(omega[n]!, zeta[n]!, durationS, out, STEP_NUMBERS * n);
  };

  #reachModes(data: Float64Array, at: number, step: Float64Array, out: Float64Array): void {
    const { omega, participation } = this.mechanics;
    const f0 = data[at + FORCE]!;
    const f1 = data[at + FORCE + 1]!;
    const f2 = data[at + FORCE + 2]!;
    for (let n = 0; n < omega.length; n += 1) {
      const w = omega[n]!;
      const gamma = participation[n]!;
      const q = data[at + STATE + 2 * n]!;
      const v = data[at + STATE + 2 * n + 1]!;
      const k = STEP_NUMBERS * n;
      const i0 = step[k]!;
      const i1 = step[k + 2]!;
      const i2 = step[k + 3]!;
      const g0 = gamma * f0 + w * w * q;
      const g1 = gamma * f1;
      const g2 = gamma * f2;
      out[2 * n] = q + (v * i0 - g0 * i1 - g1 * i2 - g2 * step[k + 4]!);
      out[2 * n + 1] = v + (v * step[k + 1]! - g0 * i0 - g1 * i1 - g2 * i2);
    }
  }

  #reachCoupled(data: Float64Array, at: number, step: LinearStep, out: Float64Array): void {
    const { size } = this.mechanics;
    const { change, input0, input1, input2 } = step;
    const f0 = data[at + FORCE]!;
    const f1 = data[at + FORCE + 1]!;
    const f2 = data[at + FORCE + 2]!;
    for (let i = 0; i < size; i += 1) {
      let sum = f0 * input0[i]! + f1 * input1[i]! + f2 * input2[i]!;
      for (let k = 0; k < size; k += 1) sum += change[i * size + k]! * data[at + STATE + k]!;
      out[i] = data[at + STATE + i]! + sum;
    }
  }

  /** A held pick-off: its second input is v_f·f′ + x_f·f″. */
  #reachHeld(data: Float64Array, at: number, step: LinearStep, out: Float64Array): void {
    this.#reachCoupled(data, at, step, out);
    const { size, velocityInput, deflectionInput } = this.mechanics;
    const value = velocityInput * data[at + FORCE + 1]! + deflectionInput * data[at + FORCE + 2]!;
    const slope = velocityInput * data[at + FORCE + 2]!;
    for (let i = 0; i < size; i += 1) out[i]! += value * step.input0[size + i]! + slope * step.input1[size + i]!;
  }
}

/** The exact numbers of a step: those of a whole tick are kept, those of another duration until the next is asked for. */
class ExactSteps<Step> {
  readonly #tickS: number;
  readonly #tick: Step;
  readonly #other: Step;
  readonly #write: (durationS: number, out: Step) => void;
  #otherS = Number.NaN;

  constructor(tickS: number, create: () => Step, write: (durationS: number, out: Step) => void) {
    this.#tickS = tickS;
    this.#tick = create();
    this.#other = create();
    this.#write = write;
    write(tickS, this.#tick);
  }

  of(durationS: number): Step {
    if (durationS === this.#tickS) return this.#tick;
    if (durationS !== this.#otherS) {
      this.#write(durationS, this.#other);
      this.#otherS = durationS;
    }
    return this.#other;
  }
}

function linearSteps(system: LinearSystem, tickS: number): ExactSteps<LinearStep> {
  return new ExactSteps(
    tickS,
    () => newLinearStep(system.size, system.inputs),
    (durationS, out) => system.step(durationS, out),
  );
}

function heldSystem({ heldA, heldRate, kick, velocityRow, b }: Mechanics): LinearSystem {
  const along = velocityRow.reduce((sum, value, i) => sum + value * b[i]!, 0);
  return new LinearSystem(
    heldA,
    [b.map((value, i) => value - kick[i]! * along), kick.map((value) => -value)],
    heldRate,
  );
}

/** Value of a parabola whose value, slope and curvature stand from `at`. */
export function forceAt(data: Float64Array, at: number, elapsedS: number): number {
  return data[at]! + elapsedS * (data[at + 1]! + (elapsedS / 2) * data[at + 2]!);
}

export function slopeAt(data: Float64Array, at: number, elapsedS: number): number {
  return data[at + 1]! + elapsedS * data[at + 2]!;
}
