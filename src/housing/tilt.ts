/**
 * Tilted: the shortest arc to an absolute attitude, angle·S(t/over), about the housing's origin. The arc starts from
 * the attitude the housing has once the turning taken over is braked, so it ends exactly at the attitude
 * asked for.
 */
import type { AxisAngle, Quaternion } from '../contract/geometry.ts';
import type { TiltMotion } from '../contract/motion.ts';
import { fromAxisAngle, normalize, quaternion, toRotationVector, turnBetween } from '../numerics/quaternion.ts';
import { norm, scale, vector } from '../numerics/vector.ts';
import { BRAKE_WITHIN_S } from './brake.ts';
import { EasedStep } from './eased.ts';
import type { HandOver } from './law.ts';
import { type Along, Prescribed, unit } from './prescribed.ts';

export function tilt(motion: TiltMotion, from: HandOver): Prescribed {
  const to = attitudeOf(motion.to);
  return new Prescribed('tilt', from, {
    brakeWithinS: BRAKE_WITHIN_S,
    about: (endAttitude) => arc(endAttitude, to, motion.over),
  });
}

function arc(start: Float64Array, end: Float64Array, overS: number): Along {
  const between = quaternion();
  turnBetween(start, end, between);
  const turn = vector();
  toRotationVector(between, turn);
  const angle = norm(turn);
  if (angle > 0) scale(1 / angle, turn, turn);
  return { axis: turn, law: new EasedStep(angle, overS) };
}

function attitudeOf(to: Quaternion | AxisAngle): Float64Array {
  const out = quaternion();
  if ('axis' in to) fromAxisAngle(unit(to.axis), to.angle, out);
  else out.set(to);
  normalize(out);
  return out;
}
