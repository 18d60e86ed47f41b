/** What a lesson keeps locked until a prediction is stored: all that moves or changes what stands on the bench. */
import type { Act, Setting } from '../ui/ui-events.ts';
import { isLimited } from './slider-specs.ts';

const TOUCHING: ReadonlySet<Act['what']> = new Set([
  'handle',
  'go on',
  'one tick on',
  'fresh run',
  'clear',
  'undo',
  'redo',
  'starting bench',
  'bring back',
  'open run',
]);

export function touchesBench({ what }: Act): boolean {
  return TOUCHING.has(what);
}

const PLACES: ReadonlySet<string> = new Set([
  'place',
  'latitude',
  'placeHeight',
  'air',
  'stops',
  'senses',
  'readout.bits',
]);

/** Moves or changes what stands on the bench. */
export function touches(asked: Act | Setting): boolean {
  return 'what' in asked ? touchesBench(asked) : settingTouchesBench(asked.name);
}

export function settingTouchesBench(name: string): boolean {
  return isLimited(name) || PLACES.has(name);
}
