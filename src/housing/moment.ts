/** A free body at one instant: its state, the rates of that, and what is felt. */
import { BRISTLES } from './forces.ts';
import { LAYOUT } from './group-step.ts';

const { EXTRA, EXTRA_RATE } = LAYOUT;

/** Numbers of a state: place, velocity, attitude, angular momentum, bristles. */
export const STATE = EXTRA + BRISTLES;

/** Where what is felt stands behind the state: housing frame, but for the acceleration, three numbers each. */
export const FELT = {
  SPECIFIC_FORCE: STATE,
  ANGULAR_VELOCITY: STATE + 3,
  ANGULAR_ACCELERATION: STATE + 6,
  ACCELERATION: STATE + 9,
} as const;

/** Numbers of a moment. */
export const MOMENT = STATE + 12;

export class Moment {
  /** The state, then what is felt. */
  readonly numbers: Float64Array = new Float64Array(MOMENT);
  /** Rates of the state, as `RateSource` writes them. */
  readonly rates: Float64Array = new Float64Array(EXTRA_RATE + BRISTLES);
  /** Views of `numbers`. */
  readonly specificForce: Float64Array = this.numbers.subarray(FELT.SPECIFIC_FORCE, FELT.ANGULAR_VELOCITY);
  readonly angularVelocity: Float64Array = this.numbers.subarray(FELT.ANGULAR_VELOCITY, FELT.ANGULAR_ACCELERATION);
  readonly angularAcceleration: Float64Array = this.numbers.subarray(FELT.ANGULAR_ACCELERATION, FELT.ACCELERATION);
  readonly acceleration: Float64Array = this.numbers.subarray(FELT.ACCELERATION, MOMENT);

  /** Whether both have the same state, bit for bit (−0 and 0 are one). */
  equals({ numbers }: Moment): boolean {
    for (let i = 0; i < STATE; i++) if (this.numbers[i] !== numbers[i]) return false;
    return true;
  }
}
