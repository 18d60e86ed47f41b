/** Spun: a rate about a room axis through the housing's origin, reached by S; other turning is braked meanwhile. */
import type { SpinMotion } from '../contract/motion.ts';
import { EasedRate } from './eased.ts';
import type { HandOver } from './law.ts';
import { Prescribed, unit } from './prescribed.ts';

export function spin(motion: SpinMotion, from: HandOver): Prescribed {
  return new Prescribed('spin', from, {
    brakeWithinS: motion.within,
    about: () => ({ axis: unit(motion.axis), law: new EasedRate(motion.rate, motion.within) }),
  });
}
