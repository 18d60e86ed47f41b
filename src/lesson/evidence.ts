import type { RunEvent } from '../contract/event.ts';
import type { MotionSpec } from '../contract/motion.ts';
import type { RunSpec } from '../contract/run.ts';
import type { TapeView } from '../contract/tape.ts';

/** What a run left behind and what the learner marked on it: all that checks may look at. */
export interface Evidence {
  /** The run so far, with the motions and changes that have taken effect. */
  readonly run: RunSpec;
  readonly tape: TapeView;
  readonly events: readonly RunEvent[];
  /** Marks on the paper, in the order in which they were made [s]. */
  readonly marks: readonly number[];
  /** Run time reached [s]. */
  readonly nowS: number;
}

/** Instants that a lesson can name. */
export const MOMENTS = [
  'start',
  'held',
  'lift',
  'lifted',
  'tilt',
  'tilted',
  'push',
  'shake',
  'eased',
  'swept',
  'let go',
  'thrown',
  'top',
  'touch',
  'lift-off',
  'at rest',
  'stop hit',
  'mark',
] as const;

export type MomentName = (typeof MOMENTS)[number];

/** A named instant and a time from it, e.g. `let go + 20 ms`. */
export interface Moment {
  readonly name: MomentName;
  readonly offsetS: number;
}

/** Let go faster upward than this counts as thrown [m/s]: it rises 5 mm. */
const THROWN_MS = 0.3;

/**
 * The instants of one attempt: it begins with the last occurrence of its own moment; of every other moment the first
 * occurrence from then on counts, of the marks the last one made.
 */
export class Attempt {
  readonly evidence: Evidence;
  /** Its beginning [s]; undefined: there has been none yet. */
  readonly beganS: number | undefined;

  constructor(evidence: Evidence, begins: MomentName) {
    this.evidence = evidence;
    this.beganS = occurrences(begins, evidence).at(-1);
  }

  /** Run time of a moment [s]; undefined while it has not come. */
  at({ name, offsetS }: Moment): number | undefined {
    if (name === 'mark') {
      const mark = this.evidence.marks.at(-1);
      return mark === undefined ? undefined : mark + offsetS;
    }
    const { beganS } = this;
    if (beganS === undefined) return undefined;
    const found = occurrences(name, this.evidence).find((timeS) => timeS >= beganS);
    return found === undefined ? undefined : found + offsetS;
  }

  /** The first event of a kind from the beginning on. */
  event<K extends RunEvent['kind']>(kind: K): Extract<RunEvent, { kind: K }> | undefined {
    const { beganS } = this;
    if (beganS === undefined) return undefined;
    return this.evidence.events.find(
      (event): event is Extract<RunEvent, { kind: K }> => event.kind === kind && event.timeS >= beganS,
    );
  }

  /** A setting was changed after the beginning and before an instant [s]: what it shows there is of two settings. */
  changedBefore(timeS: number): boolean {
    const { beganS } = this;
    if (beganS === undefined) return false;
    return this.evidence.run.changes.some(({ at }) => at > beganS && at < timeS);
  }

  /** The motion that leads the housing at the beginning. */
  get motion(): MotionSpec | undefined {
    const { beganS } = this;
    return beganS === undefined ? undefined : this.evidence.run.motions.findLast(({ from }) => from <= beganS);
  }
}

function occurrences(name: MomentName, evidence: Evidence): readonly number[] {
  const { events, run, marks } = evidence;
  switch (name) {
    case 'start':
      return [0];
    case 'held':
      // The clamp that holds it from the beginning is the start.
      return run.motions.filter(({ kind, from }) => kind === name && from > 0).map(({ from }) => from);
    case 'tilt':
    case 'push':
    case 'shake':
      return run.motions.filter(({ kind }) => kind === name).map(({ from }) => from);
    case 'lift':
      return run.motions.filter(({ kind }) => kind === 'move').map(({ from }) => from);
    case 'lifted':
      return ends(evidence, (motion) => (motion.kind === 'move' ? motion.over : undefined));
    case 'tilted':
      return ends(evidence, (motion) => (motion.kind === 'tilt' ? motion.over : undefined));
    case 'eased':
      return ends(evidence, (motion) => (motion.kind === 'shake' ? motion.ease : undefined));
    case 'swept':
      return ends(evidence, (motion) => (motion.kind === 'shake' && motion.law === 'sweep' ? motion.over : undefined));
    case 'thrown':
      return events.flatMap((event) =>
        event.kind === 'let go' && event.verticalSpeedMS > THROWN_MS ? [event.timeS] : [],
      );
    case 'top':
      return tops(evidence);
    case 'mark':
      return marks;
    default:
      return events.filter(({ kind }) => kind === name).map(({ timeS }) => timeS);
  }
}

/** Where parts of motions end, as far as they have come and nothing took over before. */
function ends({ run, nowS }: Evidence, lasts: (motion: MotionSpec) => number | undefined): number[] {
  return run.motions.flatMap((motion, index) => {
    const over = lasts(motion);
    if (over === undefined) return [];
    const endS = motion.from + over;
    const untilS = run.motions[index + 1]?.from ?? Number.POSITIVE_INFINITY;
    return endS <= nowS && endS <= untilS ? [endS] : [];
  });
}

/** Where a flight's vertical velocity passes through zero: on the straight line between two rows. */
function tops({ events, tape, nowS }: Evidence): number[] {
  const channel = tape.channels.findIndex(({ name }) => name === 'velocity');
  return events.flatMap((event, index) => {
    if ((event.kind !== 'let go' && event.kind !== 'lift-off') || event.verticalSpeedMS <= 0) return [];
    const next = events.slice(index + 1).find(({ kind }) => kind === 'touch' || kind === 'motion');
    const endS = next?.timeS ?? nowS;
    const last = Math.min(tape.endRow - 1, Math.floor(endS * tape.rateHz));
    for (let row = Math.ceil(event.timeS * tape.rateHz) + 1; row <= last; row += 1) {
      const before = tape.value(channel, row - 1);
      const after = tape.value(channel, row);
      if (before > 0 && after <= 0) return [(row - 1 + before / (before - after)) / tape.rateHz];
    }
    return [];
  });
}
