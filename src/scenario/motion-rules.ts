/** The rules that join the keys of the motions: their order, what begins only once, what needs a housing at rest. */
import { pathTo, type Report } from './fault.ts';
import type { MotionValue } from './keys.ts';
import type { Loose } from './schema.ts';

export interface Findings {
  readonly report: Report;
  /** Whether the path itself has been found faulty. */
  faulty(path: string): boolean;
}

type LooseMotion = Loose<MotionValue>;

export function checkMotions(motions: readonly (LooseMotion | undefined)[], findings: Findings): void {
  const { report } = findings;
  let latest: { readonly from: number; readonly path: string } | undefined;
  let firstFree: string | undefined;
  let resting: RestingSince = 0;
  for (const [i, motion] of motions.entries()) {
    const path = `motions[${i}]`;
    const from = motion?.from;
    if (from !== undefined) {
      if (i === 0 && from !== 0) report(`${path}.from`, `${from}`, '0 for the first motion');
      if (latest !== undefined && from < latest.from)
        report(`${path}.from`, `${from}`, `not before ${latest.path} (${latest.from} s)`);
      latest = { from, path: `${path}.from` };
    }
    if (motion === undefined) {
      resting = 'unknown';
      continue;
    }
    if (motion.kind === 'free') {
      if (firstFree !== undefined) checkLaterFree(motion, path, firstFree, report);
      firstFree ??= path;
    }
    checkMotion(motion, path, findings);
    if (
      motion.kind === 'held' &&
      motion.within === 0 &&
      (resting === 'never' || (resting !== 'unknown' && from !== undefined && from < resting))
    ) {
      report(`${path}.within`, '0', 'above 0 s, for the housing is not certain to be at rest here');
    }
    resting = restingAfter(motion, resting);
  }
}

/** The instant [s] from which the housing is certain to be at rest, or that none is certain; unknown beside a fault. */
type RestingSince = number | 'never' | 'unknown';

/** Time in which motions other than push, free and a recorded acceleration bring what they took over to rest [s]. */
const BRAKED_WITHIN_S = 0.2;

/**
 * What is certain without running: a held housing rests once its time is over (a tremor never does), a move or tilt
 * once it and the braking of what it took over have ended, and a felt record leaves the housing where it is.
 */
function restingAfter(motion: LooseMotion, before: RestingSince): RestingSince {
  const { from } = motion;
  if (from === undefined || before === 'unknown') return 'unknown';
  const began = before !== 'never' && before <= from;
  switch (motion.kind) {
    case 'held':
      if (motion.tremor !== undefined) return 'never';
      if (motion.within === undefined) return 'unknown';
      return began ? from : from + motion.within;
    case 'move':
    case 'tilt':
      if (motion.over === undefined) return 'unknown';
      return from + (began ? motion.over : Math.max(motion.over, BRAKED_WITHIN_S));
    case 'recorded':
      if (motion.is !== 'specificForce') return 'never';
      return began ? from : from + BRAKED_WITHIN_S;
    default:
      return 'never';
  }
}

function checkLaterFree(
  motion: Loose<Extract<MotionValue, { kind: 'free' }>>,
  path: string,
  first: string,
  report: Report,
): void {
  for (const key of ['height', 'attitude'] as const) {
    if (motion[key] === undefined) continue;
    const given = key === 'height' ? `${motion.height}` : 'an attitude';
    report(
      `${path}.${key}`,
      given,
      `only in the first free motion, ${first}: a later one goes on from where the housing is`,
    );
  }
}

function checkMotion(motion: LooseMotion, path: string, { report, faulty }: Findings): void {
  if (motion.kind === 'shake') {
    const laws = (['sine', 'sweep', 'random'] as const).filter(
      (law) => motion[law] !== undefined || faulty(`${path}.${law}`),
    );
    if (laws.length !== 1)
      report(
        path,
        laws.length === 0 ? 'none of sine, sweep, random' : laws.join(' and '),
        'exactly one of sine, sweep, random',
      );
    const { random } = motion;
    if (random?.from !== undefined && random.to !== undefined && random.to <= random.from) {
      report(`${path}.random.to`, `${random.to}`, `above from (${random.from} Hz)`);
    }
  } else if (motion.kind === 'recorded') {
    const count = motion.columns?.length;
    if (count === 2) report(`${path}.columns`, 'a list of 2', 'one column, with axis, or three: x, y, z');
    if (count === 1 && motion.axis === undefined && !faulty(`${path}.axis`))
      report(`${path}.axis`, 'nothing', 'the direction of the single column');
    if (count === 3 && motion.axis !== undefined)
      report(`${path}.axis`, 'an axis', 'none beside three columns, which are x, y, z');
  } else if (motion.kind === 'hand') {
    let latest = motion.from ?? 0;
    for (const [i, target] of (motion.targets ?? []).entries()) {
      const at = target?.at ?? latest;
      if (at < latest)
        report(
          pathTo(`${path}.targets`, i),
          `at ${at}`,
          `not before ${latest} s: the motion's from, or the target before`,
        );
      latest = Math.max(at, latest);
    }
  }
}
