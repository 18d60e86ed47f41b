import { describe, expect, it } from 'vitest';
import { plainText } from '../../src/lesson/prose.ts';
import { LESSON, sitting } from './support/sitting.ts';
import { smallLesson } from './support/small-lesson.ts';

describe('a step', () => {
  it('lays the bench out as its file says, and keeps the run that was there', () => {
    const { session } = sitting();
    expect(session.settings.dampingRatio).toBe(0.7);
    expect(session.settings.dropHeightM).toBe(0.3);
    expect(session.settings.seed).toBe(7);
    expect(Math.sqrt(session.settings.stiffnessNM / session.settings.massKg) / (2 * Math.PI)).toBeCloseTo(8, 12);
    expect(session.keptRuns.length).toBe(1);
  });

  it('is locked until the prediction is stored, and shows nothing beyond it', () => {
    const { runner, answer, parts } = sitting();
    expect(runner.locked).toContain('prediction');
    expect(runner.view.step.locked).toBe(runner.locked);
    expect(parts().map(({ part }) => part)).toEqual(['text', 'predict']);
    expect(answer('guess', '0.2')).toContain('no unit');
    expect(runner.locked).toBeDefined();
    expect(answer('guess', '200 ms')).toBeUndefined();
    expect(runner.locked).toBeUndefined();
    expect(parts().map(({ part }) => part)).toEqual(['text', 'predict', 'do', 'ask']);
  });

  it('keeps a prediction as it was made', () => {
    const { answer, part } = sitting();
    answer('guess', '200 ms');
    expect(answer('guess', '247 ms')).toContain('as it was made');
    expect(part('predict').question.answer).toEqual({ kind: 'number', typed: '200 ms', value: 0.2 });
    expect(part('predict').question.open).toBe(false);
  });

  it('while locked nothing that the bench does counts', () => {
    const { runner, session, run, part, answer } = sitting();
    session.handle({ kind: 'drop' }); // behind the page's back
    run(0.3);
    expect(runner.progressOf(LESSON.steps[0]!).judged).toEqual({});
    expect(runner.act({ kind: 'mark', timeS: 0.1 })).toContain('prediction');
    answer('guess', '247 ms');
    expect(part('do').actions.map(({ done }) => done)[1]).toBe(false);
  });

  it('asks what was seen only after it could be seen, and tells of the prediction only after that', () => {
    const { answer, choose, drop, part, parts } = sitting();
    answer('guess', '247 ms');
    expect(choose('seen', 'zero')).toContain('First do what stands above');
    drop();
    expect(part('predict').question.outcome).toBe('waiting');
    expect(choose('seen', 'one')).toBeUndefined();
    expect(part('ask').question).toMatchObject({ outcome: 'wrong', open: true });
    expect(plainText(part('ask').question.says)).toBe('Look again.');
    expect(part('predict').question.outcome).toBe('passed');
    expect(choose('seen', 'zero')).toBeUndefined();
    expect(part('ask').question).toMatchObject({ outcome: 'passed', open: false });
    expect(choose('seen', 'one')).toContain('answered');
    expect(parts().map((each) => each.part)).toEqual([
      'text',
      'predict',
      'do',
      'ask',
      'measure',
      'check',
      'explain',
      'hints',
    ]);
  });

  it('measures, judges and says why at once, with the numbers in the text', () => {
    const { answer, choose, drop, part } = sitting();
    answer('guess', '175 ms');
    drop();
    choose('seen', 'zero');
    const [fall, end] = part('measure').figures;
    // √(2h/g) of 0.3 m.
    expect(fall!.value! - Math.sqrt(0.6 / 9.80665)).toBeCloseTo(0, 6);
    expect(fall!.text).toBe('247\u202fms');
    expect(Math.abs(end!.value!)).toBeLessThan(0.05);
    const [check] = part('check').checks;
    expect(check).toMatchObject({ outcome: 'passed', slip: undefined, expected: '0.000\u202fg ± 0.020\u202fg' });
    expect(plainText(check!.says)).toBe(`Right, ${end!.text}.`);
    expect(plainText(part('predict').question.says)).toBe('There is a two in it.');
  });

  it('names the wrong turn, and what has passed once stays passed with the numbers it had', () => {
    const { session, run, answer, choose, drop, part } = sitting();
    answer('guess', '247 ms');
    session.set({ dampingRatio: 0.02 });
    run(0.1);
    drop();
    choose('seen', 'zero');
    expect(part('check').checks[0]).toMatchObject({ outcome: 'wrong', slip: 'ringing' });
    session.handle({ kind: 'hold', by: 'clamp', within: 0.1 });
    run(2);
    session.set({ dampingRatio: 0.7 });
    run(0.5);
    drop();
    const [passed] = part('check').checks;
    expect(passed).toMatchObject({ outcome: 'passed', slip: undefined });
    session.handle({ kind: 'hold', by: 'clamp', within: 0.1 });
    run(2);
    session.set({ dampingRatio: 0.02 });
    run(0.1);
    drop();
    expect(part('check').checks[0]).toEqual(passed);
  });

  it('ticks off what was done, and only then', () => {
    const { session, runner, run, answer, drop, part } = sitting();
    answer('guess', '247 ms');
    const done = () => part('do').actions.map((action) => action.done);
    expect(done()).toEqual([false, false, false, false, false]);
    runner.act({ kind: 'slowed', factor: 20 });
    expect(done()[3]).toBe(false);
    runner.act({ kind: 'slowed', factor: 100 });
    runner.act({ kind: 'mark', timeS: 0.01 });
    runner.act({ kind: 'pulled back', timeS: 0.01 });
    expect(done()).toEqual([false, true, false, true, true]);
    session.set({ dropHeightM: 0.35 });
    run(0.01);
    drop();
    session.advanceTo(2);
    runner.look();
    expect(done()).toEqual([true, true, true, true, true]);
  });

  it('what is said to something right waits for its numbers, of later figures and of events alike', () => {
    const later = smallLesson((text) =>
      text
        .replace('says: Right, `=endReading`.', 'says: It touched at `=touchSpeed` and then read `=after`.')
        .replace(
          'unit: ms\n- name: endReading',
          'unit: ms\n- name: after\n  words: Later\n  take: value\n  of: felt\n  at: touch + 0.1 s\n- name: endReading',
        ),
    );
    const { runner, run, answer, drop, choose, part } = sitting(later);
    answer('guess', '247 ms');
    drop();
    choose('seen', 'zero');
    expect(runner.progressOf(later.steps[0]!).judged.zeroAtEnd).toBeUndefined();
    run(0.1);
    const [check] = part('check').checks;
    expect(check!.outcome).toBe('passed');
    // A fall of 0.3 m ends at √(2·9.80665·0.3) = 2.4257 m/s.
    expect(plainText(check!.says)).toMatch(/^It touched at −2\.43\u202fm\/s and then read −?\d/u);
  });

  it('says so when a setting was changed in the middle of an attempt', () => {
    const { session, runner, run, answer } = sitting();
    answer('guess', '247 ms');
    session.handle({ kind: 'drop' });
    run(0.1);
    expect(runner.view.step.notice).toBeUndefined();
    session.set({ dampingRatio: 0.3 });
    run(0.3);
    expect(runner.view.step.notice).toContain('setting was changed');
    expect(runner.progressOf(LESSON.steps[0]!).judged).toEqual({});
  });

  it('what an older run shows is none of its doing', () => {
    const { session, runner, run, answer, drop } = sitting();
    answer('guess', '247 ms');
    drop();
    runner.act({ kind: 'open', step: 'drop' });
    const older = session.keptRuns.findIndex((each) => each.world.events.all.some(({ kind }) => kind === 'touch'));
    const judged = runner.progressOf(LESSON.steps[0]!);
    session.bringBack(older);
    run(0.1);
    expect(runner.progressOf(LESSON.steps[0]!)).toEqual(judged);
  });

  it('goes on from where the paper was pulled back to: marks that lie ahead are gone', () => {
    const { session, runner, run, answer } = sitting();
    answer('guess', '247 ms');
    run(1);
    runner.act({ kind: 'mark', timeS: 0.2 });
    runner.act({ kind: 'mark', timeS: 0.9 });
    session.pullTo(0.5);
    session.goOn();
    runner.look();
    expect(runner.momentS({ name: 'mark', offsetS: 0 })).toBe(0.2);
  });

  it('gives hints one at a time and counts them', () => {
    const { runner, answer, choose, drop, part } = sitting();
    answer('guess', '247 ms');
    drop();
    choose('seen', 'zero');
    expect(part('hints')).toMatchObject({ shown: [], left: 2 });
    runner.act({ kind: 'hint' });
    expect(part('hints').shown.map(plainText)).toEqual(['Look at the pen.']);
    runner.act({ kind: 'hint' });
    expect(part('hints').left).toBe(0);
    expect(runner.results.steps[0]!.hints).toBe(2);
  });

  it('is complete once all is right, predicted and explained; another wording is shown only then', () => {
    const { runner, answer, choose, drop, part } = sitting();
    answer('guess', '247 ms');
    drop();
    choose('seen', 'zero');
    expect(part('explain')).toMatchObject({ written: '', model: [] });
    expect(runner.view.step.complete).toBe(false);
    runner.act({ kind: 'explain', written: '  Nothing pushes it. ' });
    expect(part('explain').written).toBe('Nothing pushes it.');
    expect(plainText(part('explain').model)).toBe('Because nothing pushes it.');
    expect(runner.view.step.complete).toBe(true);
    expect(runner.view.steps.map(({ complete, open }) => [complete, open])).toEqual([
      [true, true],
      [true, false], // it asks for nothing
    ]);
  });

  it('an unknown question, choice or step is a mistake of the page and throws', () => {
    const { runner, answer, choose } = sitting();
    expect(() => answer('nothing', '1 s')).toThrow('no question “nothing”');
    expect(() => choose('guess', 'zero')).toThrow('asks for a number');
    answer('guess', '247 ms');
    expect(() => runner.act({ kind: 'open', step: 'nowhere' })).toThrow('no step “nowhere”');
  });
});

describe('a sketch', () => {
  const SKETCH = `name: guess
words: Draw it.
after: touch
sketch: { line: reading, zero: let go, zeroWords: let go, from: -0.1 s, to: 0.2 s, low: -1 g, high: 1 g }
features:
  - { take: mean, from: 0.1 s, to: 0.2 s, near: endReading, within: 0.2 g, says: Yes., otherwise: No. }
\`\`\``;
  const lesson = smallLesson((text) =>
    text.replace(/name: guess\n[\s\S]*?```/u, SKETCH).replaceAll(/ {2,6}- \{ act: type.*\n/gu, ''),
  );

  it('is stored in order of time and laid under the line at the attempt', () => {
    const { runner, drop, run, part, choose } = sitting(lesson);
    const sketch = (points: readonly (readonly [number, number])[]) =>
      runner.act({ kind: 'answer', question: 'guess', answer: { kind: 'sketch', points } });
    expect(sketch([[0, 1]])).toContain('Draw a line');
    expect(
      sketch([
        [0.2, 0],
        [-0.1, 9.8],
        [0, 9.8],
        [0.05, 0],
      ]),
    ).toBeUndefined();
    expect(part('predict').question.form).toMatchObject({
      kind: 'sketch',
      low: -9.80665,
      high: 9.80665,
      zero: 'let go',
    });
    expect(runner.view.step.sketches).toEqual([]);
    run(0.2);
    drop();
    const [laid] = runner.view.step.sketches;
    expect(laid!.points.map(([timeS]) => timeS)).toEqual([-0.1, 0, 0.05, 0.2]);
    expect(laid!.zeroS).toBeCloseTo(0.2002, 9);
    choose('seen', 'zero');
    expect(part('predict').question.outcome).toBe('passed');
    expect(runner.results.steps[0]!.predictions[0]!.sketch!.points.length).toBe(4);
  });
});
