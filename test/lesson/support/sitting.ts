import type { LessonPart } from '../../../src/contract/lesson.ts';
import { LessonRunner } from '../../../src/lesson/runner.ts';
import { Session } from '../../../src/session/session.ts';
import { smallLesson } from './small-lesson.ts';

export const LESSON = smallLesson();

/** A lesson at a bench, and short ways to take it. */
export function sitting(lesson = LESSON, saved?: ConstructorParameters<typeof LessonRunner>[2]) {
  const session = new Session();
  const runner = new LessonRunner(lesson, session, saved);
  const run = (forS: number) => {
    session.advanceTo(session.run.world.timeS + forS);
    runner.look();
  };
  const answer = (question: string, typed: string) =>
    runner.act({ kind: 'answer', question, answer: { kind: 'number', typed } });
  const choose = (question: string, choice: string) =>
    runner.act({ kind: 'answer', question, answer: { kind: 'choice', choice } });
  /** As the page does it: not while it is locked. */
  const drop = () => {
    if (!runner.locked) session.handle({ kind: 'drop' });
    run(0.3);
  };
  const parts = () => runner.view.step.parts;
  const part = <P extends LessonPart['part']>(wanted: P) =>
    parts().find((each): each is Extract<LessonPart, { part: P }> => each.part === wanted)!;
  return { session, runner, run, answer, choose, drop, parts, part };
}
