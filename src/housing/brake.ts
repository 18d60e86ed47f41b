/**
 * Brings what was taken over to rest: v(t) = v₀(1 − S(t/T)), and the turning likewise about its own fixed axis,
 * which is the same axis in the housing and in the room.
 */
import { fromAxisAngle, multiply, quaternion, rotate } from '../numerics/quaternion.ts';
import { smoothstep, smoothstepArea, smoothstepSlope } from '../numerics/smoothstep.ts';
import { norm, scale, vector } from '../numerics/vector.ts';
import type { HandOver } from './law.ts';

/** Motions that do not state a time of their own brake what they take over within this [s]. */
export const BRAKE_WITHIN_S = 0.2;

export class Brake {
  /** T [s]; 0: nothing to brake. */
  readonly withinS: number;
  /** Turning speed taken over [rad/s] and its axis in the room. */
  readonly turnRate: number;
  readonly turnAxis: Float64Array;
  /** Share of the speed kept, its derivative [1/s], and its integral [s]: written by `at`. */
  share = 0;
  shareSlope = 0;
  travelS = 0;
  /** Attitude once at rest. */
  readonly endAttitude: Float64Array;
  readonly #startAttitude: Float64Array;
  readonly #turn = quaternion();

  constructor(from: HandOver, withinS: number) {
    const speed = norm(from.velocity);
    this.turnRate = norm(from.angularVelocity);
    const moves = speed > 0 || this.turnRate > 0;
    if (moves && !(withinS > 0)) {
      throw new RangeError(
        `a moving housing needs a time > 0 s to come to rest, got ${withinS} at ${speed} m/s and ${this.turnRate} rad/s`,
      );
    }
    this.withinS = moves ? withinS : 0;
    this.turnAxis = vector();
    if (this.turnRate > 0) {
      rotate(from.attitude, from.angularVelocity, this.turnAxis);
      scale(1 / norm(this.turnAxis), this.turnAxis, this.turnAxis);
    }
    this.#startAttitude = from.attitude.slice();
    this.endAttitude = from.attitude.slice();
    this.at(this.withinS);
    this.attitude(this.endAttitude);
  }

  at(timeS: number): void {
    const T = this.withinS;
    // From rest there is nothing to brake; an instant may round to just before the hand-over.
    if (timeS >= T || T === 0) {
      this.share = 0;
      this.shareSlope = 0;
      this.travelS = T / 2;
      return;
    }
    const u = timeS / T;
    this.share = 1 - smoothstep(u);
    this.shareSlope = -smoothstepSlope(u) / T;
    this.travelS = timeS - T * smoothstepArea(u);
  }

  /** Attitude at the instant of the last `at`. */
  attitude(out: Float64Array): void {
    if (this.turnRate === 0) {
      out.set(this.#startAttitude);
      return;
    }
    fromAxisAngle(this.turnAxis, this.turnRate * this.travelS, this.#turn);
    multiply(this.#turn, this.#startAttitude, out);
  }
}
