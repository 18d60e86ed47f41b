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

/**
 * What a resting body's numbers (SI) may change in a step and still count as standing: far below the rounding of place and attitude, and
 * 10⁻¹⁴ m/s² where they are velocities. Tilted a hair, a box would go on trembling by this for ever, by rounding alone.
 */
const NOTHING = 1e-18;

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

  /** Whether the states differ by no more than a rest may change in a step. */
  standsAt({ numbers }: Moment): boolean {
    for (let i = 0; i < STATE; i++) if (Math.abs(this.numbers[i]! - numbers[i]!) > NOTHING) return false;
    return true;
  }
}
