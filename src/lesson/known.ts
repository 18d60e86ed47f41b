/** What the formulas of a step may ask for beside its figures and answers: settings and events of the attempt. */
import type { Change, ElementSpec } from '../contract/run.ts';
import type { BenchSettings } from '../session/settings.ts';
import { isLessonSetting, LESSON_SETTINGS } from './bench-setup.ts';
import type { Attempt } from './evidence.ts';
import { type Quantity, usual } from './quantity.ts';

interface EventValue {
  readonly quantity: Quantity;
  readonly read: (attempt: Attempt) => number | undefined;
}

/** Values of the attempt's events; NaN before they have happened. Speeds upward. */
export const EVENT_VALUES = {
  letGoHeight: { quantity: usual('length'), read: (attempt) => attempt.event('let go')?.heightM },
  letGoSpeed: { quantity: usual('speed'), read: (attempt) => attempt.event('let go')?.verticalSpeedMS },
  touchSpeed: { quantity: usual('speed'), read: (attempt) => attempt.event('touch')?.verticalSpeedMS },
  liftOffSpeed: { quantity: usual('speed'), read: (attempt) => attempt.event('lift-off')?.verticalSpeedMS },
  contactTime: { quantity: usual('time', 'ms'), read: (attempt) => attempt.event('lift-off')?.landing.contactS },
  landingArea: { quantity: usual('speed'), read: (attempt) => attempt.event('lift-off')?.landing.areaMS },
  landingPeak: { quantity: usual('acceleration'), read: (attempt) => attempt.event('lift-off')?.landing.peakMS2 },
  driveFrequency: { quantity: usual('frequency'), read: (attempt) => sine(attempt)?.frequency },
  driveStrength: { quantity: usual('acceleration'), read: (attempt) => drive(attempt)?.amplitude },
  sweepFrom: { quantity: usual('frequency'), read: (attempt) => sweep(attempt)?.fromFrequency },
  sweepTo: { quantity: usual('frequency'), read: (attempt) => sweep(attempt)?.toFrequency },
  sweepOver: { quantity: usual('time'), read: (attempt) => sweep(attempt)?.over },
  stopHits: { quantity: usual('dimensionless'), read: stopHits },
  /** From the attempt's beginning to the mark [s]; negative: it lies before. */
  markAfter: { quantity: usual('time'), read: markAfter },
} as const satisfies Readonly<Record<string, EventValue>>;

type EventValueName = keyof typeof EVENT_VALUES;

/** Names that every formula may use. */
export const KNOWN_NAMES: readonly string[] = [...Object.keys(LESSON_SETTINGS), ...Object.keys(EVENT_VALUES)];

export function quantityOfKnown(name: string): Quantity | undefined {
  if (isLessonSetting(name)) return LESSON_SETTINGS[name].quantity;
  return Object.hasOwn(EVENT_VALUES, name) ? EVENT_VALUES[name as EventValueName].quantity : undefined;
}

/** The value of such a name; undefined for others. Settings are those in force when the attempt began. */
export function knownValue(name: string, attempt: Attempt, settings: BenchSettings): number | undefined {
  if (isLessonSetting(name)) return settingThen(name, attempt) ?? LESSON_SETTINGS[name].read(settings);
  return Object.hasOwn(EVENT_VALUES, name) ? EVENT_VALUES[name as EventValueName].read(attempt) : undefined;
}

/** A setting at the attempt's beginning, from the run itself; undefined for one that the run does not hold. */
function settingThen(name: string, attempt: Attempt): number | undefined {
  const { beganS, evidence } = attempt;
  if (beganS === undefined) return undefined;
  const { run } = evidence;
  const before = run.changes.filter(({ at }) => at <= beganS);
  switch (name) {
    case 'naturalFrequency':
      return elementThen(run.elements[0]!, before, 'naturalFrequency') ?? undefined;
    case 'dampingRatio':
      return elementThen(run.elements[0]!, before, 'dampingRatio') ?? undefined;
    case 'gap':
      return elementThen(run.elements[0]!, before, 'gap') ?? Number.POSITIVE_INFINITY;
    case 'gravity': {
      const last = before.findLast((change) => 'gravity' in change);
      return last && 'gravity' in last ? last.gravity : run.gravity;
    }
    case 'dropHeight':
      return attempt.event('let go')?.heightM;
    case 'air':
      return airThen(attempt);
    default:
      return undefined;
  }
}

/** Air is a part of the fall: what holds is that of the fall with which the attempt begins, or of the first one in it. */
function airThen({ beganS = 0, evidence, motion }: Attempt): number | undefined {
  const falls = evidence.run.motions.flatMap((each) => (each.kind === 'free' ? [each] : []));
  const fall = motion?.kind === 'free' ? motion : falls.find(({ from }) => from >= beganS);
  return fall && Number(fall.airDrag !== undefined);
}

function elementThen(
  spec: ElementSpec,
  changes: readonly Change[],
  key: 'naturalFrequency' | 'dampingRatio' | 'gap',
): number | null | undefined {
  const last = changes.findLast((change) => 'set' in change && change.set[key] !== undefined);
  return last && 'set' in last ? last.set[key] : spec[key];
}

function drive(attempt: Attempt) {
  const { motion } = attempt;
  return motion?.kind === 'shake' && motion.law !== 'random' ? motion : undefined;
}

function sine(attempt: Attempt) {
  const motion = drive(attempt);
  return motion?.law === 'sine' ? motion : undefined;
}

function sweep(attempt: Attempt) {
  const motion = drive(attempt);
  return motion?.law === 'sweep' ? motion : undefined;
}

function stopHits({ beganS, evidence }: Attempt): number | undefined {
  if (beganS === undefined) return undefined;
  return evidence.events.filter(({ kind, timeS }) => kind === 'stop hit' && timeS >= beganS).length;
}

function markAfter({ beganS, evidence }: Attempt): number | undefined {
  const mark = evidence.marks.at(-1);
  return beganS === undefined || mark === undefined ? undefined : mark - beganS;
}
