/** From the scenario as written, free of faults, to the run it stands for. */
import type { HandTarget, MotionSpec, RecordedData, ShakeMotion } from '../contract/motion.ts';
import type { Change, ElementChange, ElementSpec, RunSpec } from '../contract/run.ts';
import { toQuaternion } from './attitude.ts';
import type { ChangeValue, ElementValue, MotionValue, ScenarioValue } from './keys.ts';

/** Periods of the first (or lowest) frequency in which a shake is eased in unless the scenario says a time. */
const EASE_PERIODS = 4;

/** `records` holds what was read for each recorded motion, by its place among the motions. */
export function buildRun(value: ScenarioValue, records: ReadonlyMap<number, RecordedData>): RunSpec {
  return {
    ...value,
    elements: value.elements.map(buildElement),
    motions: value.motions.map((motion, i) => buildMotion(motion, records.get(i))),
    changes: value.changes.map(buildChange),
  };
}

/** A design has become numbers before; the run knows only these. */
function buildElement({ design: _design, naturalFrequency, dampingRatio, ...rest }: ElementValue): ElementSpec {
  if (naturalFrequency === undefined || dampingRatio === undefined)
    throw new Error(`the element ${rest.name} without a frequency or damping passed the rules`);
  return { naturalFrequency, dampingRatio, ...rest };
}

function buildMotion(motion: MotionValue, record: RecordedData | undefined): MotionSpec {
  switch (motion.kind) {
    case 'shake':
      return buildShake(motion);
    case 'free':
      return { ...motion, attitude: motion.attitude && toQuaternion(motion.attitude) };
    case 'hand':
      return {
        ...motion,
        targets: motion.targets.map(
          (target): HandTarget => ({ ...target, attitude: target.attitude && toQuaternion(target.attitude) }),
        ),
      };
    case 'recorded':
      if (record === undefined) throw new Error(`the record ${motion.file} was not read`);
      return { ...motion, data: record };
    default:
      return motion;
  }
}

function buildShake({ kind, from, axis, sine, sweep, random }: Extract<MotionValue, { kind: 'shake' }>): ShakeMotion {
  const base = { kind, from, axis };
  if (sine) return { ...base, law: 'sine', ...sine, ease: sine.ease ?? EASE_PERIODS / sine.frequency };
  if (sweep) {
    return {
      ...base,
      law: 'sweep',
      fromFrequency: sweep.from,
      toFrequency: sweep.to,
      amplitude: sweep.amplitude,
      over: sweep.over,
      progression: sweep.law,
      ease: sweep.ease ?? EASE_PERIODS / sweep.from,
    };
  }
  if (random) {
    return {
      ...base,
      law: 'random',
      density: random.density,
      fromFrequency: random.from,
      toFrequency: random.to,
      ease: random.ease ?? EASE_PERIODS / random.from,
    };
  }
  throw new Error('a shake without a law passed the rules');
}

function buildChange({ at, gravity, element, set, pad }: ChangeValue): Change {
  if (gravity !== undefined) return { at, gravity };
  if (pad !== undefined) return { at, pad };
  if (element === undefined || set === undefined) throw new Error('a change of nothing passed the rules');
  return { at, element, set: buildSet(set) };
}

/** Only what is set, for to an element a key with undefined is a change too: null takes the mount away. */
function buildSet(set: NonNullable<ChangeValue['set']>): ElementChange {
  const given = Object.entries(set).filter(([, value]) => value !== undefined);
  return Object.fromEntries(
    given.map(([key, value]) => [key, key === 'mount' ? (value ?? undefined) : value]),
  ) as ElementChange;
}
