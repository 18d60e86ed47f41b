/** What is felt at a point of the housing. */
import type { Vector } from '../contract/geometry.ts';
import type { Kinematics } from './kinematics.ts';

/**
 * Specific force [m/s²] along the unit axis e at the point r, both in the housing frame:
 *     e · (f + α × r + ω × (ω × r))
 * Exact for a rigid housing. Positive along the axis that points up when the housing stands still.
 */
export function specificForceAlong(k: Kinematics, at: Vector, axis: Vector): number {
  const f = k.specificForce;
  const along = f[0]! * axis[0] + f[1]! * axis[1] + f[2]! * axis[2];
  if (k.uniform) return along + 0; // −0 + 0 = +0: a fall reads plain zero
  const w = k.angularVelocity;
  const alpha = k.angularAcceleration;
  const rx = at[0];
  const ry = at[1];
  const rz = at[2];
  const wx = w[0]!;
  const wy = w[1]!;
  const wz = w[2]!;
  const ax = alpha[0]!;
  const ay = alpha[1]!;
  const az = alpha[2]!;
  // ω × (ω × r) = ω(ω·r) − r|ω|²
  const wr = wx * rx + wy * ry + wz * rz;
  const w2 = wx * wx + wy * wy + wz * wz;
  const x = ay * rz - az * ry + (wx * wr - rx * w2);
  const y = az * rx - ax * rz + (wy * wr - ry * w2);
  const z = ax * ry - ay * rx + (wz * wr - rz * w2);
  return along + (x * axis[0] + y * axis[1] + z * axis[2]) + 0;
}

/**
 * ω⊥² = |ω|² − (ω·e)² [1/s²], formed as |ω × e|²: by so much a turn about anything but the axis softens the
 * spring of a mass that moves along it.
 */
export function spinSquaredAcross(k: Kinematics, axis: Vector): number {
  if (k.uniform) return 0;
  const w = k.angularVelocity;
  const x = w[1]! * axis[2] - w[2]! * axis[1];
  const y = w[2]! * axis[0] - w[0]! * axis[2];
  const z = w[0]! * axis[1] - w[1]! * axis[0];
  return x * x + y * y + z * z;
}
