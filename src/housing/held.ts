/** Held: brought to rest along its path, then still, perhaps with the tremor of a hand. */
import type { HeldMotion } from '../contract/motion.ts';
import type { HandOver } from './law.ts';
import { Prescribed, unit } from './prescribed.ts';
import { EasedSine } from './shake-sine.ts';

/** Periods over which a tremor sets in. */
const TREMOR_EASE_PERIODS = 4;

export function held(motion: HeldMotion, from: HandOver): Prescribed {
  const { tremor, within } = motion;
  if (tremor === undefined) return new Prescribed('held', from, { brakeWithinS: within });
  const law = new EasedSine(tremor.frequency, tremor.amplitude, TREMOR_EASE_PERIODS / tremor.frequency);
  return new Prescribed('held', from, { brakeWithinS: within, along: [{ axis: unit(tremor.axis), law }] });
}
