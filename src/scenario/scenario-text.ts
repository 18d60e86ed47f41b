/**
 * Writes a run as a scenario that `simulate` replays: every default spelt out, every number in the fewest digits
 * that give it back. A live run is written after `World.asRun`, which turns its command log into motions and
 * changes. Reading the text again gives the same run bit for bit; a recorded motion refers to its file by name.
 */
import type { MotionSpec, ShakeMotion } from '../contract/motion.ts';
import type { Change, RunSpec } from '../contract/run.ts';

export function scenarioText(run: RunSpec): string {
  const { motions, changes } = run;
  const written = { ...run, motions: motions.map(motionAsWritten), changes: changes.map(changeAsWritten) };
  return `${JSON.stringify(written, undefined, 2)}\n`;
}

/** JSON has no undefined: a mount taken away is written as null. */
function changeAsWritten(change: Change): object {
  if (!('set' in change) || !('mount' in change.set)) return change;
  return { ...change, set: { ...change.set, mount: change.set.mount ?? null } };
}

function motionAsWritten(motion: MotionSpec): object {
  if (motion.kind === 'shake') return shakeAsWritten(motion);
  if (motion.kind !== 'recorded') return motion;
  const { data: _data, ...written } = motion;
  return written;
}

function shakeAsWritten(motion: ShakeMotion): object {
  const { kind, from, axis, law, ...rest } = motion;
  switch (motion.law) {
    case 'sine':
      return { kind, from, axis, sine: rest };
    case 'sweep': {
      const { fromFrequency, toFrequency, amplitude, over, progression, ease } = motion;
      return {
        kind,
        from,
        axis,
        sweep: { from: fromFrequency, to: toFrequency, amplitude, over, law: progression, ease },
      };
    }
    case 'random': {
      const { density, fromFrequency, toFrequency, ease } = motion;
      return { kind, from, axis, random: { density, from: fromFrequency, to: toFrequency, ease } };
    }
  }
}
