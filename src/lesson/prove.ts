/**
 * Shows that a lesson can be solved and cannot be solved by accident: the model answer of each step passes all its
 * checks, doing nothing passes none, answering without touching the bench passes none and is blamed for none, and each
 * wrong turn fails the one check that it names, for the reason that it names, and no other (the rest passes, or waits
 * where the learner stops). Steps lay the bench out anew, so they are proved one by one.
 */
import { Session } from '../session/session.ts';
import { applySettings } from './bench-setup.ts';
import { handlingOf } from './handling-of.ts';
import { checksOf, type Deed, judgedNames, type Lesson, type LessonStep } from './lesson.ts';
import type { Judged } from './progress.ts';
import { UNKNOWN } from './quantity.ts';
import { LessonRunner } from './runner.ts';

export interface ProofLine {
  readonly lesson: string;
  readonly step: string;
  /** What was played. */
  readonly played: string;
  /** What should come of it, and what did; equal when the proof holds. */
  readonly expected: string;
  readonly found: string;
  readonly holds: boolean;
}

/** Someone who does nothing watches for so long [s]. */
const IDLE_S = 3;
/** Longest wait for a moment that may never come [s], and how often it is looked for [s]. */
const LONGEST_WAIT_S = 60;
const LOOK_EVERY_S = 0.02;

export function proveLesson(lesson: Lesson): readonly ProofLine[] {
  return lesson.steps.flatMap((step) => proveStep(lesson, step));
}

function proveStep(lesson: Lesson, step: LessonStep): ProofLine[] {
  const names = judgedNames(step);
  if (!step.proof || names.length === 0) return [];
  const line = (played: string, expected: string, found: string): ProofLine => ({
    lesson: lesson.name,
    step: step.name,
    played,
    expected,
    found,
    holds: expected === found,
  });
  const { model, wrong } = step.proof;
  const result = (deeds: readonly Deed[]) => inWords(names, play(lesson, step, deeds));
  const lines = [
    line('model answer', 'all pass', result(model)),
    line('nothing', 'none passes', onlyPassed(names, play(lesson, step, [{ deed: 'wait', forS: IDLE_S }]))),
  ];
  // Where the bench shows what is asked for without being touched, looking is enough.
  const answering = model.filter(
    ({ deed }) => deed !== 'act' && deed !== 'set' && deed !== 'mark' && deed !== 'wait until',
  );
  if (step.attempt !== 'start')
    lines.push(
      line(
        'answers without the bench',
        'none passes',
        untouched(step, play(lesson, step, [...answering, { deed: 'wait', forS: IDLE_S }])),
      ),
    );
  for (const { words, fails, as, stops, deeds } of wrong) {
    const played = play(lesson, step, deeds);
    lines.push(line(words, `${fails}: ${as}`, inWords(stops ? names.filter((name) => played[name]) : names, played)));
  }
  return lines;
}

/** Plays the whole lesson by its model answers, one step after the other, with one runner. */
export function playLesson(lesson: Lesson): LessonRunner {
  const session = new Session();
  const runner = new LessonRunner(lesson, session);
  for (const step of lesson.steps) {
    runner.act({ kind: 'open', step: step.name });
    playDeeds(runner, session, step.proof?.model ?? []);
  }
  return runner;
}

type Result = Readonly<Record<string, Judged>>;

function play(lesson: Lesson, step: LessonStep, deeds: readonly Deed[]): Result {
  const session = new Session();
  const runner = new LessonRunner(lesson, session);
  runner.act({ kind: 'open', step: step.name });
  playDeeds(runner, session, deeds);
  return runner.progressOf(step).judged;
}

function playDeeds(runner: LessonRunner, session: Session, deeds: readonly Deed[]): void {
  for (const deed of deeds) {
    playDeed(runner, session, deed);
    runner.look();
  }
}

/** As the page would: what is refused is not done. */
function playDeed(runner: LessonRunner, session: Session, deed: Deed): void {
  switch (deed.deed) {
    case 'act':
      if (deed.act.act === 'slow') runner.act({ kind: 'slowed', factor: deed.act.factor });
      else if (deed.act.act === 'pull back') pullBack(runner, session);
      else if (deed.act.act === 'handle' && !runner.locked) session.handle(handlingOf(deed.act));
      return;
    case 'set':
      if (!runner.locked) session.set(applySettings(session.settings, deed.settings));
      return;
    case 'wait':
      runFor(runner, session, deed.forS);
      return;
    case 'wait until': {
      const untilS = session.run.world.timeS + LONGEST_WAIT_S;
      const came = () => {
        const momentS = runner.momentS(deed.moment);
        return momentS !== undefined && momentS <= session.run.world.timeS;
      };
      while (!came() && session.run.world.timeS < untilS) runFor(runner, session, LOOK_EVERY_S);
      return;
    }
    case 'mark': {
      const timeS = runner.momentS(deed.at);
      if (timeS !== undefined) runner.act({ kind: 'mark', timeS });
      return;
    }
    case 'choose':
      runner.act({ kind: 'answer', question: deed.question, answer: { kind: 'choice', choice: deed.choice } });
      return;
    case 'type':
      runner.act({ kind: 'answer', question: deed.question, answer: { kind: 'number', typed: deed.typed } });
      return;
    case 'sketch':
      runner.act({ kind: 'answer', question: deed.question, answer: { kind: 'sketch', points: deed.points } });
      return;
    case 'explain':
      runner.act({ kind: 'explain', written: deed.written });
  }
}

function runFor(runner: LessonRunner, session: Session, forS: number): void {
  session.advanceTo(session.run.world.timeS + forS);
  runner.look();
}

/** Pulls the paper back by half of what was written, looks, and goes back to the newest ink. */
function pullBack(runner: LessonRunner, session: Session): void {
  const timeS = session.run.world.timeS / 2;
  session.pullTo(timeS);
  runner.act({ kind: 'pulled back', timeS });
  session.toNewest();
}

/** What did not pass, with its reason, and what was said without its number; "all pass" when there is nothing. */
function inWords(names: readonly string[], result: Result): string {
  const failed = names.filter((name) => result[name]?.outcome !== 'passed');
  const reasons = failed.map((name) => `${name}: ${result[name]?.reason ?? (result[name] ? 'wrong' : 'waiting')}`);
  const gaps = Object.entries(result).flatMap(([name, { numbers }]) =>
    Object.keys(numbers).flatMap((number) => (numbers[number] === UNKNOWN ? [`${name}: says no ${number}`] : [])),
  );
  const words = [...reasons, ...gaps];
  return words.length === 0 ? 'all pass' : words.join(', ');
}

/** What passed, or was found wrong, although the bench was not touched. */
function untouched(step: LessonStep, result: Result): string {
  const blamed = checksOf(step).flatMap(({ name }) => (result[name]?.outcome === 'wrong' ? [name] : []));
  const passed = onlyPassed(judgedNames(step), result);
  return blamed.length === 0 ? passed : `${passed}, wrong: ${blamed.join(', ')}`;
}

function onlyPassed(names: readonly string[], result: Result): string {
  const passed = names.filter((name) => result[name]?.outcome === 'passed');
  return passed.length === 0 ? 'none passes' : `passed: ${passed.join(', ')}`;
}
