import type { Vector } from '../contract/geometry.ts';
import type { RecordedMotion } from '../contract/motion.ts';
import type { Handling } from './handling.ts';

/** What stands in the fields of the handling sentence, by name (`drop.height`), SI or words. */
export type FieldValues = Readonly<Record<string, number | string>>;

export type HandlingKind = Handling['kind'];

const DIRECTIONS: Readonly<Record<string, Vector>> = {
  up: [0, 1, 0],
  down: [0, -1, 0],
  right: [1, 0, 0],
  left: [-1, 0, 0],
  toward: [0, 0, 1],
  away: [0, 0, -1],
  'up and down': [0, 1, 0],
  sideways: [1, 0, 0],
  'to and fro': [0, 0, 1],
  upright: [0, 1, 0],
};

/** Axes of the room about which a tilt leans the housing that way: right-hand rule, y up. */
const TILT_AXES: Readonly<Record<string, Vector>> = {
  right: [0, 0, -1],
  left: [0, 0, 1],
  toward: [1, 0, 0],
  away: [-1, 0, 0],
};

/** Periods over which a shake is eased in. */
const EASE_PERIODS = 4;

/** The handling that a key asks for with what stands in its fields; undefined: no record has been chosen. */
export function handlingFrom(
  kind: HandlingKind,
  values: FieldValues,
  record: Omit<RecordedMotion, 'from' | 'kind'> | undefined,
): Handling | undefined {
  const number = (name: string): number => Number(values[name]);
  const direction = (name: string): Vector => DIRECTIONS[String(values[name])] ?? [0, 1, 0];
  switch (kind) {
    case 'hold':
      return { kind, by: values['hold.by'] === 'hand' ? 'hand' : 'clamp', within: number('hold.within') };
    case 'drop':
      return { kind };
    case 'throw':
      return { kind, speed: number('throw.speed') };
    case 'tilt': {
      const axis = TILT_AXES[String(values['tilt.direction'])] ?? [0, 0, 1];
      return { kind, axis, angle: number('tilt.angle'), over: number('tilt.over') };
    }
    case 'move':
      return { kind, axis: direction('move.direction'), distance: number('move.distance'), over: number('move.over') };
    case 'push':
      return { kind, axis: direction('push.direction'), acceleration: number('push.acceleration') };
    case 'spin':
      return { kind, axis: direction('spin.axis'), rate: number('spin.rate') };
    case 'recorded':
      return record && { kind, record };
    case 'shake':
      return { kind, shake: shakeFrom(values, direction('shake.direction')) };
  }
}

type Shake = Extract<Handling, { kind: 'shake' }>['shake'];

function shakeFrom(values: FieldValues, axis: Vector): Shake {
  const number = (name: string): number => Number(values[name]);
  if (values['shake.law'] === 'sweep') {
    const fromFrequency = number('shake.sweepFrom');
    return {
      law: 'sweep',
      axis,
      fromFrequency,
      toFrequency: number('shake.sweepTo'),
      amplitude: number('shake.strength'),
      over: number('shake.over'),
      progression: 'logarithmic',
      ease: EASE_PERIODS / fromFrequency,
    };
  }
  if (values['shake.law'] === 'random') {
    // The two ends may be typed in either order; the mean square is the density times the band.
    const [fromFrequency, toFrequency] = [number('shake.randomFrom'), number('shake.randomTo')].sort(
      (a, b) => a - b,
    ) as [number, number];
    const rms = number('shake.rms');
    return {
      law: 'random',
      axis,
      density: (rms * rms) / Math.max(toFrequency - fromFrequency, 1e-3),
      fromFrequency,
      toFrequency: Math.max(toFrequency, fromFrequency + 1e-3),
      ease: EASE_PERIODS / fromFrequency,
    };
  }
  const frequency = number('shake.frequency');
  return { law: 'sine', axis, frequency, amplitude: number('shake.strength'), ease: EASE_PERIODS / frequency };
}
