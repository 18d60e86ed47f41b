import type { LessonStep, Part } from './lesson.ts';
import type { StepProgress } from './progress.ts';

/**
 * The parts that a learner sees: everything up to and including the first question that is not answered, or
 * explanation that is not written. One prompt at a time, and nothing that gives away what is still asked. Hints belong
 * to what stands before them and are seen with it.
 */
export function visibleParts({ parts }: LessonStep, progress: StepProgress): readonly Part[] {
  const gate = parts.findIndex((part) => isGate(part, progress));
  if (gate === -1) return parts;
  const after = parts.slice(gate + 1);
  const more = after.findIndex(({ part }) => part !== 'hints');
  return parts.slice(0, gate + 1 + (more === -1 ? after.length : more));
}

function isGate(part: Part, { answers, written }: StepProgress): boolean {
  if (part.part === 'predict' || part.part === 'ask') return !answers[part.question.name];
  return part.part === 'explain' && written === '';
}
