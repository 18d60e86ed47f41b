/** What a housing does at one instant. */
import { quaternion } from '../numerics/quaternion.ts';
import { type Components, vector } from '../numerics/vector.ts';

export interface Kinematics {
  /** Centre of mass, room frame [m], [m/s], [m/s²]. */
  readonly position: Float64Array;
  readonly velocity: Float64Array;
  readonly acceleration: Float64Array;
  /** Unit quaternion [x, y, z, w], housing → room. */
  readonly attitude: Float64Array;
  /** Housing frame [rad/s], [rad/s²]. */
  readonly angularVelocity: Float64Array;
  readonly angularAcceleration: Float64Array;
  /** Specific force at the centre of mass, housing frame [m/s²]. */
  readonly specificForce: Float64Array;
  /** The specific force is a record taken as felt by every point: turning adds nothing to it. */
  uniform: boolean;
}

export function newKinematics(): Kinematics {
  return {
    position: vector(),
    velocity: vector(),
    acceleration: vector(),
    attitude: quaternion(),
    angularVelocity: vector(),
    angularAcceleration: vector(),
    specificForce: vector(),
    uniform: false,
  };
}

/** Height [m] of the lowest corner of a box with half edges `half` at centre height `y`, turned by q. */
export function lowestCorner(y: number, q: Components, half: Components): number {
  const qx = q[0]!;
  const qy = q[1]!;
  const qz = q[2]!;
  const qw = q[3]!;
  // middle row of the rotation matrix: what each housing axis contributes to the height
  const r10 = 2 * (qx * qy + qz * qw);
  const r11 = 1 - 2 * (qx * qx + qz * qz);
  const r12 = 2 * (qy * qz - qx * qw);
  return y - (Math.abs(r10) * half[0]! + Math.abs(r11) * half[1]! + Math.abs(r12) * half[2]!);
}
