import { describe, expect, it } from 'vitest';
import type { Prose } from '../../src/contract/lesson.ts';
import { parseExpression } from '../../src/lesson/expression.ts';
import { expectedText, judge, judgeAnswer } from '../../src/lesson/judge.ts';
import type { Judgement, Question, SketchFeature } from '../../src/lesson/lesson.ts';
import { plainText } from '../../src/lesson/prose.ts';
import { usual } from '../../src/lesson/quantity.ts';

const says = (text: string): Prose => [{ kind: 'paragraph', children: [{ kind: 'text', text }] }];
const formula = parseExpression;

function judgement(changed: Partial<Judgement>): Judgement {
  const nothing = { near: undefined, within: undefined, above: undefined, below: undefined, provided: undefined };
  return { ...nothing, says: says('right'), slips: [], otherwise: says('wrong'), ...changed };
}

const within = (text: string) => ({ size: formula(text), relative: text.endsWith('%') });
const lookup = (values: Record<string, number>) => (name: string) => values[name] ?? Number.NaN;
const none = lookup({});

describe('a number', () => {
  const nearTwo = judgement({ near: formula('two'), within: within('10 %') });
  const two = lookup({ two: 2 });

  it.each([
    [1.8, 'passed'],
    [2.2, 'passed'],
    [1.79, 'wrong'],
    [2.21, 'wrong'],
    [Number.POSITIVE_INFINITY, 'wrong'],
    [undefined, 'waiting'],
  ])('%d against 2 within 10 %% is %s', (value, outcome) => {
    expect(judge(nearTwo, value, two).outcome).toBe(outcome);
  });

  it('waits while what it should be is not known', () => {
    expect(judge(nearTwo, 2, none).outcome).toBe('waiting');
    expect(expectedText(nearTwo, usual('dimensionless'), none)).toBe('');
  });

  it('an absolute tolerance does not grow with what is expected', () => {
    const check = judgement({ near: formula('100'), within: within('1') });
    expect(judge(check, 101, none).outcome).toBe('passed');
    expect(judge(check, 101.1, none).outcome).toBe('wrong');
  });

  it('a negative value has a tolerance as wide as its positive twin', () => {
    const check = judgement({ near: formula('-10'), within: within('10 %') });
    expect(judge(check, -11, none).outcome).toBe('passed');
    expect(judge(check, -11.1, none).outcome).toBe('wrong');
  });

  it('above and below', () => {
    const between = judgement({ above: formula('1'), below: formula('2') });
    expect([0.9, 1, 1.5, 2, 2.1].map((value) => judge(between, value, none).outcome)).toEqual([
      'wrong',
      'passed',
      'passed',
      'passed',
      'wrong',
    ]);
  });

  it('is wrong when it is met but the condition does not hold, or is not known', () => {
    const check = judgement({ below: formula('1'), provided: formula('gravity > 5') });
    expect(judge(check, 0, lookup({ gravity: 9 })).outcome).toBe('passed');
    expect(judge(check, 0, lookup({ gravity: 1 })).outcome).toBe('wrong');
    expect(judge(check, 0, none).outcome).toBe('wrong');
  });

  it('a wrong turn is named by the first slip whose condition holds; a right number by none', () => {
    const slips = [
      { name: 'first', when: formula('a > 1'), early: false, says: says('first') },
      { name: 'second', when: formula('a > 0'), early: true, says: says('second') },
    ];
    const check = judgement({ below: formula('1'), slips });
    expect(judge(check, 2, lookup({ a: 2 }))).toEqual({ outcome: 'wrong', reason: 'first', says: says('first') });
    expect(judge(check, 2, lookup({ a: 0.5 })).reason).toBe('second');
    expect(judge(check, 2, lookup({ a: -1 }))).toEqual({ outcome: 'wrong', reason: undefined, says: says('wrong') });
    expect(judge(check, 0, lookup({ a: 2 }))).toEqual({ outcome: 'passed', reason: undefined, says: says('right') });
    // Before anything could be measured only what is to be said early is said.
    expect(judge(check, undefined, lookup({ a: 2 })).reason).toBe('second');
    expect(judge(check, undefined, lookup({ a: -1 })).outcome).toBe('waiting');
  });

  it.each([
    [judgement({ near: formula('1 g'), within: within('5 %') }), '1.00 g ± 0.050 g'],
    [judgement({ below: formula('0.5 g') }), 'below 0.500 g'],
    [judgement({ above: formula('0.5 g') }), 'above 0.500 g'],
    [judgement({ above: formula('0.5 g'), below: formula('1 g') }), '0.500 g to 1.00 g'],
  ])('what it was to be, in words', (check, text) => {
    expect(expectedText(check, usual('acceleration'), none).replaceAll('\u202f', ' ')).toBe(text);
  });
});

describe('an answer', () => {
  it('typed is judged as a number, and its slips may ask for it', () => {
    const slips = [{ name: 'double', when: formula('answer > 1.9 * fall'), early: false, says: says('twice') }];
    const question: Question = {
      kind: 'number',
      name: 'q',
      words: [],
      after: undefined,
      quantity: usual('time'),
      judgement: judgement({ near: formula('fall'), within: within('5 %'), slips }),
    };
    const verdict = (value: number) =>
      judgeAnswer(question, { kind: 'number', typed: '', value }, lookup({ fall: 0.3 }));
    expect(verdict(0.31).outcome).toBe('passed');
    expect(verdict(0.6).reason).toBe('double');
    expect(verdict(0.4).reason).toBeUndefined();
  });

  it('chosen is right always, never, or when the run says so', () => {
    const choice = (name: string, right: boolean | string) => ({
      name,
      words: [],
      says: says(name),
      right: typeof right === 'string' ? formula(right) : right,
      otherwise: typeof right === 'string' ? says(`not ${name}`) : undefined,
    });
    const question: Question = {
      kind: 'choice',
      name: 'q',
      words: [],
      after: undefined,
      choices: [choice('a', true), choice('b', false), choice('c', 'low < 0')],
    };
    const verdict = (name: string, low: number) =>
      judgeAnswer(question, { kind: 'choice', choice: name }, lookup({ low }));
    expect(verdict('a', 1)).toEqual({ outcome: 'passed', reason: 'a', says: says('a') });
    expect(verdict('b', 1).outcome).toBe('wrong');
    expect(verdict('c', -1).outcome).toBe('passed');
    expect(verdict('c', 1)).toEqual({ outcome: 'wrong', reason: 'c', says: says('not c') });
  });

  describe('sketched', () => {
    const feature = (changed: Partial<SketchFeature>): SketchFeature => ({
      fromS: 0,
      toS: 1,
      take: 'mean',
      near: formula('0'),
      within: within('0.1'),
      says: says('met'),
      otherwise: says('not met'),
      ...changed,
    });
    const question = (features: readonly SketchFeature[]): Question => ({
      kind: 'sketch',
      name: 'q',
      words: [],
      after: undefined,
      zero: { name: 'let go', offsetS: 0 },
      features,
      axes: {
        kind: 'sketch',
        quantity: 'acceleration',
        unit: 'g',
        line: 'reading',
        fromS: -1,
        toS: 1,
        low: -1,
        high: 1,
        zero: 'let go',
      },
    });
    const judgeSketch = (points: readonly (readonly [number, number])[], ...features: readonly SketchFeature[]) =>
      judgeAnswer(question(features), { kind: 'sketch', points }, none);

    it('a triangle has its mean, its highest and its lowest', () => {
      const triangle = [
        [0, 0],
        [0.5, 1],
        [1, 0],
      ] as const;
      expect(judgeSketch(triangle, feature({ near: formula('0.5'), within: within('1e-9') })).outcome).toBe('passed');
      expect(
        judgeSketch(triangle, feature({ take: 'highest', near: formula('1'), within: within('1e-9') })).outcome,
      ).toBe('passed');
      expect(
        judgeSketch(triangle, feature({ take: 'lowest', near: formula('0'), within: within('1e-9') })).outcome,
      ).toBe('passed');
      expect(judgeSketch(triangle, feature({ fromS: 0.5, near: formula('0.5'), within: within('1e-9') })).outcome).toBe(
        'passed',
      );
    });

    it('beyond its ends the end points hold', () => {
      expect(
        judgeSketch(
          [
            [0.4, 2],
            [0.6, 2],
          ],
          feature({ near: formula('2'), within: within('1e-9') }),
        ).outcome,
      ).toBe('passed');
    });

    it('each feature is answered for itself', () => {
      const verdict = judgeSketch(
        [
          [0, 0],
          [1, 0],
        ],
        feature({}),
        feature({ near: formula('1') }),
      );
      expect(verdict.outcome).toBe('wrong');
      expect(verdict.reason).toBe('yn');
      expect(plainText(verdict.says)).toBe('met not met');
    });

    it('waits while the run has not shown what it is held against', () => {
      expect(
        judgeSketch(
          [
            [0, 0],
            [1, 0],
          ],
          feature({ near: formula('later') }),
        ).outcome,
      ).toBe('waiting');
    });
  });
});
