import type { PreparedAct } from '../contract/lesson.ts';
import type { BenchSettings } from '../session/settings.ts';
import { applySettings, benchSettings, LESSON_SETTINGS, type LessonSettingName } from './bench-setup.ts';
import type { Evidence } from './evidence.ts';
import { wasHandled } from './handling-of.ts';
import type { LessonStep } from './lesson.ts';

/** What leaves no trace on the tape. */
export interface Noted {
  readonly slowest: number;
  readonly pulledBack: boolean;
  readonly settings: BenchSettings;
}

/** A setting is where it should be within this share [–]: fields round to three digits or more. */
const SAME_SETTING = 1e-3;

/** Which actions of a step the run shows as done, by their place among them. */
export function doneActions(step: LessonStep, evidence: Evidence, noted: Noted): readonly number[] {
  const actions = step.parts.flatMap((part) => (part.part === 'do' ? part.actions : []));
  return actions.flatMap(({ prepared }, index) => (isDone(prepared, step, evidence, noted) ? [index] : []));
}

function isDone(act: PreparedAct, step: LessonStep, evidence: Evidence, noted: Noted): boolean {
  switch (act.act) {
    case 'handle':
      return wasHandled(act, evidence);
    case 'mark':
      return evidence.marks.length > 0;
    case 'pull back':
      return noted.pulledBack;
    case 'slow':
      return noted.slowest >= act.factor;
    case 'set':
      return areSet(act.settings, benchSettings(step.setup), noted.settings);
  }
}

/** A setting left to the learner is done once it differs from where the step began. */
function areSet(wanted: Readonly<Record<string, number | null>>, start: BenchSettings, now: BenchSettings): boolean {
  return Object.entries(wanted).every(([name, value]) => {
    const setting = name as LessonSettingName;
    const { read } = LESSON_SETTINGS[setting];
    if (value === null) return read(now) !== read(start);
    const there = read(applySettings(start, new Map([[setting, value]])));
    return Math.abs(read(now) - there) <= SAME_SETTING * Math.abs(there);
  });
}
