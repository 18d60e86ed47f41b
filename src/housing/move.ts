/** Moved: distance·S(t/over) along the axis. */
import type { MoveMotion } from '../contract/motion.ts';
import { BRAKE_WITHIN_S } from './brake.ts';
import { EasedStep } from './eased.ts';
import type { HandOver } from './law.ts';
import { Prescribed, unit } from './prescribed.ts';

export function move(motion: MoveMotion, from: HandOver): Prescribed {
  return new Prescribed('move', from, {
    brakeWithinS: BRAKE_WITHIN_S,
    along: [{ axis: unit(motion.axis), law: new EasedStep(motion.distance, motion.over) }],
  });
}
