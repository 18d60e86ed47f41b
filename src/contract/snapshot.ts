/**
 * The state at one instant, for views. A live readonly view: valid until the next step; copy to keep.
 * Room frame unless stated; SI units.
 */

import type { RunEvent } from './event.ts';
import type { MotionSpec } from './motion.ts';
import type { ElementSpec } from './run.ts';

export interface HousingSnapshot {
  /** Centre of mass [m]. */
  readonly position: readonly number[];
  /** [m/s] */
  readonly velocity: readonly number[];
  /** Acceleration of the centre of mass in the room [m/s²]. */
  readonly acceleration: readonly number[];
  /** Unit quaternion [x, y, z, w], housing → room. */
  readonly attitude: readonly number[];
  /** Angular velocity, housing frame [rad/s]. */
  readonly angularVelocity: readonly number[];
  /** Specific force felt at the centre of mass, housing frame [m/s²]. */
  readonly specificForce: readonly number[];
  /** Height of the lowest corner above the unloaded pad [m]; negative: it presses the pad in. */
  readonly lowestM: number;
  readonly motion: MotionSpec['kind'];
  /** A corner presses on the pad. */
  readonly inContact: boolean;
}

export interface ElementSnapshot {
  readonly spec: ElementSpec;
  /** x, relative to the housing, from the unloaded position, along the input axis [m]. */
  readonly deflection: number;
  /** [m/s] */
  readonly velocity: number;
  /** Specific force at the mounting point along the input axis: what happened [m/s²]. */
  readonly specificForce: number;
  /** Ideal reading −x/S, S the static deflection per unit specific force [m/s²]: what the mass did. */
  readonly reading: number;
  /** Rests on the stop at +gap (1), at −gap (−1), or on none (0). */
  readonly onStop: -1 | 0 | 1;
  /** Latest sample of the read-out [g_n] and its instant [s]; NaN before the first or without one. */
  readonly reported: number;
  readonly sampleTimeS: number;
}

export interface Snapshot {
  /** Rises with every change of the world. */
  readonly revision: number;
  readonly timeS: number;
  /** [m/s²] */
  readonly gravity: number;
  readonly housing: HousingSnapshot;
  readonly elements: readonly ElementSnapshot[];
  /** All events kept so far, oldest first; append only. */
  readonly events: readonly RunEvent[];
}
