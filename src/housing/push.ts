/** Pushed: an acceleration along the axis, reached by S and kept. The velocity taken over is kept, turning braked. */
import type { PushMotion } from '../contract/motion.ts';
import { BRAKE_WITHIN_S } from './brake.ts';
import { EasedAcceleration } from './eased.ts';
import type { HandOver } from './law.ts';
import { Prescribed, unit } from './prescribed.ts';

export function push(motion: PushMotion, from: HandOver): Prescribed {
  return new Prescribed('push', from, {
    brakeWithinS: BRAKE_WITHIN_S,
    keepsVelocity: true,
    along: [{ axis: unit(motion.axis), law: new EasedAcceleration(motion.acceleration, motion.within) }],
  });
}
