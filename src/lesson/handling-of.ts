import type { RunEvent } from '../contract/event.ts';
import type { PreparedAct } from '../contract/lesson.ts';
import type { MotionSpec } from '../contract/motion.ts';
import type { Handling } from '../session/handling.ts';
import { handlingFrom } from '../session/handling-values.ts';
import type { Evidence } from './evidence.ts';

type Handled = Extract<PreparedAct, { act: 'handle' }>;

/** What a key press with these fields asks of the housing. */
export function handlingOf({ handling, fields }: Handled): Handling {
  const asked = handlingFrom(handling, fields, undefined);
  if (!asked) throw new RangeError(`no handling is made of ${handling}`);
  return asked;
}

/** Let go faster upward than this is a throw, slower a drop [m/s]. */
const THROWN_MS = 0.3;

/** Whether the run shows that the housing was handled so; how strongly is for the checks. */
export function wasHandled({ handling, fields }: Handled, { run, events }: Evidence): boolean {
  switch (handling) {
    case 'drop':
      return events.some((event) => isLetGo(event) && event.verticalSpeedMS <= THROWN_MS);
    case 'throw':
      return events.some((event) => isLetGo(event) && event.verticalSpeedMS > THROWN_MS);
    case 'hold':
      return run.motions.some(
        (motion) =>
          motion.kind === 'held' && motion.from > 0 && (motion.tremor !== undefined) === (fields['hold.by'] === 'hand'),
      );
    case 'shake':
      return run.motions.some((motion) => motion.kind === 'shake' && motion.law === fields['shake.law']);
    default:
      return run.motions.some(({ kind }: MotionSpec) => kind === handling);
  }
}

function isLetGo(event: RunEvent): event is Extract<RunEvent, { kind: 'let go' }> {
  return event.kind === 'let go';
}
