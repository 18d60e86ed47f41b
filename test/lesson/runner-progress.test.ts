import { describe, expect, it } from 'vitest';
import { progressText, readProgress } from '../../src/lesson/progress.ts';
import { plainText } from '../../src/lesson/prose.ts';
import { LESSON, sitting } from './support/sitting.ts';

describe('progress', () => {
  function halfway() {
    const place = sitting();
    place.answer('guess', '175 ms');
    place.drop();
    place.choose('seen', 'zero');
    place.runner.act({ kind: 'explain', written: 'Nothing “pushes”.' });
    return place;
  }

  it('survives being stored as text: the same sheet, but for the tape', () => {
    const { runner } = halfway();
    const text = progressText(runner.progress);
    const again = sitting(LESSON, readProgress(text, 'small'));
    again.run(0.1);
    expect(progressText(again.runner.progress)).toBe(text);
    expect(again.runner.view).toEqual(runner.view);
    expect(again.runner.results).toEqual(runner.results);
    expect(again.runner.locked).toBeUndefined();
  });

  it('an answer given after a reload is judged by what was measured before it', () => {
    const first = sitting();
    first.answer('guess', '175 ms');
    first.drop();
    const saved = readProgress(progressText(first.runner.progress), 'small');
    const { choose, part } = sitting(LESSON, saved);
    expect(choose('seen', 'zero')).toBeUndefined();
    expect(part('ask').question.outcome).toBe('passed');
    expect(plainText(part('predict').question.says)).toBe('There is a two in it.');
  });

  it('infinity survives as well', () => {
    const { runner } = halfway();
    const step = runner.progress.steps.drop!;
    const never = { ...runner.progress, steps: { drop: { ...step, values: { fallTime: Number.POSITIVE_INFINITY } } } };
    expect(readProgress(progressText(never), 'small')!.steps.drop!.values.fallTime).toBe(Number.POSITIVE_INFINITY);
  });

  it.each([
    ['nothing', ''],
    ['no JSON', '{'],
    ['another lesson’s', progressText({ format: 1, lesson: 'other', open: 'drop', steps: {} })],
    ['another format’s', '{"format":2,"lesson":"small","open":"drop","steps":{}}'],
    ['a list', '[]'],
    ['one without steps', '{"format":1,"lesson":"small","open":"drop"}'],
  ])('%s is not taken: one begins anew', (_, text) => {
    expect(readProgress(text, 'small')).toBeUndefined();
  });

  it('what is not as it should be is dropped, the rest is kept', () => {
    const step = {
      answers: { guess: { kind: 'number', typed: '1 s', value: 1 }, seen: { kind: 'choice', choice: 7 }, odd: null },
      shown: ['seen', 3],
      judged: { seen: { outcome: 'passed' }, check: { outcome: 'perhaps' } },
      values: { a: 1, b: 'x' },
      written: 5,
      hints: -1,
      done: [0, 'x'],
    };
    const text = JSON.stringify({ format: 1, lesson: 'small', open: 'gone', steps: { drop: step, other: 3 } });
    const { steps } = readProgress(text, 'small')!;
    expect(Object.keys(steps)).toEqual(['drop']);
    expect(steps.drop).toEqual({
      answers: { guess: step.answers.guess },
      shown: ['seen'],
      judged: { seen: { outcome: 'passed', reason: undefined, value: undefined, expected: '', numbers: {} } },
      values: { a: 1 },
      written: '',
      hints: 0,
      done: [0],
    });
    // A step that is no more: the lesson opens with its first.
    expect(sitting(LESSON, readProgress(text, 'small')).runner.step.name).toBe('drop');
  });
});

describe('the result sheet', () => {
  it('has the prediction under what came out, settings, seed and figures', () => {
    const { runner, answer, choose, drop } = sitting();
    answer('guess', '175 ms');
    drop();
    choose('seen', 'zero');
    const { steps, passed, checks } = runner.results;
    const [first] = steps;
    expect([passed, checks]).toEqual([2, 2]);
    expect(first!.predictions).toMatchObject([{ answer: '175 ms', outcome: 'wrong' }]);
    expect(first!.answers).toMatchObject([{ answer: 'It went to zero.', outcome: 'passed' }]);
    expect(first!.figures.map(({ text }) => text)).toContain('247\u202fms');
    const settings = Object.fromEntries(
      first!.settings.map(({ words, text }) => [words, text.replaceAll('\u202f', ' ')]),
    );
    expect(settings).toMatchObject({
      'natural frequency': '8.00 Hz',
      'damping ratio': '0.700',
      'height of letting go': '0.300 m',
      seed: '7',
    });
    expect(first!.explanation!.written).toBe('');
  });

  it('of a lesson not begun says so', () => {
    const { runner } = sitting();
    expect(runner.results.passed).toBe(0);
    expect(runner.results.steps[0]).toMatchObject({ predictions: [], answers: [], settings: [] });
    expect(runner.results.steps[0]!.figures.every(({ text }) => text === '—')).toBe(true);
  });
});
