import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { projectRoot } from '../../src/command/install.mjs';
import { checksOf, judgedNames, questionsOf } from '../../src/lesson/lesson.ts';
import { parseLesson } from '../../src/lesson/parse-lesson.ts';
import { playLesson, proveLesson } from '../../src/lesson/prove.ts';
import { STARTING_BENCHES } from '../../src/session/starting-benches.ts';
import { smallLesson } from './support/small-lesson.ts';

const FOLDER = join(projectRoot, 'lessons');
const lessons = readdirSync(FOLDER)
  .filter((name) => name.endsWith('.md'))
  .map((name) => {
    const parsed = parseLesson(readFileSync(join(FOLDER, name), 'utf8'));
    if ('faults' in parsed) throw new Error(`${name}: ${JSON.stringify(parsed.faults[0])}`);
    return { file: name, lesson: parsed.lesson };
  });

/** Paper up to the pen at 1024 × 768, at least; the browser test of the lessons measures it [px]. */
const SMALLEST_PAPER_PX = 300;

it('there are lessons', () => expect(lessons.length).toBeGreaterThanOrEqual(3));

describe.each(lessons)('$file', ({ file, lesson }) => {
  it('is called after its file', () => expect(`${lesson.name}.md`).toBe(file));

  it('each model answer passes all, doing nothing passes none, each wrong turn fails the one check that it names', {
    timeout: 180_000,
  }, () => {
    const lines = proveLesson(lesson);
    expect(lines.filter(({ holds }) => !holds)).toEqual([]);
    expect(lines.length).toBeGreaterThan(2 * lesson.steps.length);
  });

  it('played from end to end by its model answers, every step is complete', { timeout: 180_000 }, () => {
    const runner = playLesson(lesson);
    expect(runner.view.steps.filter(({ complete }) => !complete)).toEqual([]);
    expect(runner.results.passed).toBe(runner.results.checks);
  });

  it('measures at least five things and catches at least three wrong turns', () => {
    const wrong = lesson.steps.flatMap(({ proof }) => proof?.wrong ?? []);
    expect(lesson.steps.flatMap(judgedNames).length).toBeGreaterThanOrEqual(5);
    expect(new Set(wrong.map(({ fails, as }) => `${fails} ${as}`)).size).toBeGreaterThanOrEqual(3);
  });

  it('most of the slips that it can name are proved by a wrong turn', () => {
    // The others are guesses about learners.
    const proved = new Set(
      lesson.steps.flatMap(({ proof }) => proof?.wrong ?? []).map(({ fails, as }) => `${fails} ${as}`),
    );
    const slips = lesson.steps.flatMap((step) => [
      ...checksOf(step).flatMap(({ name, slips }) => slips.map((slip) => `${name} ${slip.name}`)),
      ...questionsOf(step).flatMap(({ part, question }) =>
        part === 'ask' && question.kind === 'number'
          ? question.judgement.slips.map((slip) => `${question.name} ${slip.name}`)
          : [],
      ),
    ]);
    expect(slips.filter((slip) => proved.has(slip)).length).toBeGreaterThan(slips.length / 2);
  });
});

describe('what is to be marked on the paper', () => {
  const marked = lessons.flatMap(({ lesson }) =>
    lesson.steps.flatMap((step) =>
      checksOf(step)
        .filter(({ value }) => value.names.includes('markAfter'))
        .map((check) => ({ where: `${step.name} · ${check.name}`, step, check })),
    ),
  );

  it('there is something', () => expect(marked.length).toBeGreaterThanOrEqual(2));

  it.each(marked)('$where: two pixels of the smallest bench lie within its tolerance', ({ step, check }) => {
    const { paperS, setup } = step;
    const pxS = (paperS ?? STARTING_BENCHES[setup.bench].paperSpanS) / SMALLEST_PAPER_PX;
    expect(check.within?.relative).toBe(false);
    expect(check.within!.size.value(() => Number.NaN)).toBeGreaterThanOrEqual(2 * pxS);
  });
});

describe('the proof finds', () => {
  const broken = (find: string, put: string) =>
    proveLesson(smallLesson((text) => text.replace(find, put)))
      .filter(({ holds }) => !holds)
      .map(({ played, found }) => `${played}: ${found}`);

  it('nothing in a lesson that is sound', () => expect(broken('nothing to find', '')).toEqual([]));

  it('a check that the model answer does not pass', () => {
    expect(broken('within: 0.02 g', 'within: 1e-9 g')).toEqual(['model answer: zeroAtEnd: wrong']);
  });

  it('a check that is passed by answering alone, or by doing nothing', () => {
    const check = / {2}value: endReading\n[\s\S]*?0\.1 s\n/u;
    const always = (text: string) =>
      text
        .replace(check, '  value: gravity\n  as: { kind: acceleration }\n  above: 0.5 g\n')
        .replace('says: Right, `=endReading`.', 'says: Right.');
    const unasked = (text: string) =>
      always(text)
        .replace(/```predict[\s\S]*?```\n/u, '')
        .replaceAll(/ {2,6}- \{ act: type.*\n/gu, '');
    const passed = (changed: (text: string) => string) =>
      proveLesson(smallLesson(changed)).flatMap(({ holds, played, found }) => (holds ? [] : [`${played}: ${found}`]));
    expect(passed(always)).toEqual(['answers without the bench: passed: zeroAtEnd', 'rings: all pass']);
    expect(passed(unasked)).toContain('nothing: passed: zeroAtEnd');
  });

  it('a learner who is blamed before anything was tried', () => {
    const blamed = broken('if: gravity < 1 m/s²', 'if: gravity > 1 m/s²\n      early: true');
    expect(blamed).toContain('answers without the bench: none passes, wrong: zeroAtEnd');
  });

  it('a number that is missing in what is said', () => {
    const gap = proveLesson(
      smallLesson((text) => text.replace('says: It still rings.', 'says: It still rings, `=liftOffSpeed`.')),
    ).filter(({ holds }) => !holds);
    expect(gap.map(({ found }) => found)).toEqual(['zeroAtEnd: ringing, zeroAtEnd: says no liftOffSpeed']);
  });

  it('a wrong turn that is not caught, caught for another reason, or fails something else as well', () => {
    expect(broken('dampingRatio: 0.02 }', 'dampingRatio: 0.6 }')).toEqual(['rings: all pass']);
    expect(broken('if: dampingRatio < 0.3', 'if: dampingRatio < 0.01')).toEqual(['rings: zeroAtEnd: wrong']);
    expect(
      broken(
        '      - { act: choose, question: seen, choice: zero }',
        '      - { act: choose, question: seen, choice: one }',
      ),
    ).toEqual(['rings: seen: one, zeroAtEnd: ringing']);
  });

  it('a wrong turn at which the learner stops need not pass the rest', () => {
    const stops = (text: string) =>
      text
        .replace('    as: ringing\n', '    as: ringing\n    stops: true\n')
        .replace('      - { act: choose, question: seen, choice: zero }\n', '');
    expect(proveLesson(smallLesson(stops)).every(({ holds }) => holds)).toBe(true);
    expect(broken('      - { act: choose, question: seen, choice: zero }\n', '')).toEqual([
      'rings: seen: waiting, zeroAtEnd: ringing',
    ]);
  });

  it('a bench that is touched before the prediction: it stays locked', () => {
    const early = broken('  - { act: type, question: guess, typed: 247 ms }\n  - { act: drop }', '  - { act: drop }');
    expect(early).toEqual(['model answer: seen: waiting, zeroAtEnd: waiting']);
  });
});
