import { describe, expect, it } from 'vitest';
import { lessonFaultSentence } from '../../src/lesson/fault.ts';
import { checksOf, figuresOf, questionsOf } from '../../src/lesson/lesson.ts';
import { parseLesson } from '../../src/lesson/parse-lesson.ts';
import { SMALL_LESSON, smallLesson } from './support/small-lesson.ts';

function faultsOf(text: string, terms?: ReadonlySet<string>): string[] {
  const parsed = parseLesson(text, terms);
  return 'faults' in parsed ? parsed.faults.map((fault) => lessonFaultSentence('a.md', fault)) : [];
}

/** The small lesson with one piece replaced, which must be there once. */
function changed(find: string, put: string): string {
  const parts = SMALL_LESSON.split(find);
  expect(parts.length, `${find} stands in the lesson once`).toBe(2);
  return parts.join(put);
}

const lineOf = (text: string, piece: string): number => text.slice(0, text.indexOf(piece)).split('\n').length;

describe('a lesson file', () => {
  it('becomes data: head, steps, parts in their order, SI units', () => {
    const lesson = smallLesson();
    expect(lesson.name).toBe('small');
    expect(lesson.minutes).toBe(5);
    const [drop, look] = lesson.steps;
    expect(drop!.title).toBe('Hold and drop');
    expect(drop!.parts.map(({ part }) => part)).toEqual([
      'text',
      'predict',
      'do',
      'ask',
      'measure',
      'check',
      'explain',
      'hints',
    ]);
    expect(drop!.setup.seed).toBe(7);
    expect([...drop!.setup.settings]).toEqual([
      ['naturalFrequency', 8],
      ['dampingRatio', 0.7],
      ['dropHeight', 0.3],
    ]);
    expect(drop!.attempt).toBe('let go');
    expect(figuresOf(drop!)[1]!.take).toMatchObject({ at: { name: 'touch', offsetS: -0.01 } });
    expect(checksOf(drop!)[0]!.quantity).toEqual({ kind: 'acceleration', unit: 'g' });
    expect(questionsOf(drop!).map(({ question }) => question.kind)).toEqual(['number', 'choice']);
    expect(look!.attempt).toBe('start');
    expect(look!.setup.seed).toBe(1);
    expect(look!.proof).toBeUndefined();
  });

  it('a step can say how much run time lies across the paper, how far it is ruled, and that there is air', () => {
    const plain = smallLesson().steps[0]!;
    expect([plain.paperS, plain.reachMS2, plain.slowed]).toEqual([undefined, undefined, 20]);
    const step = smallLesson((text) =>
      text.replace('dropHeight: 0.3 m }\n', 'dropHeight: 0.3 m, air: true }\npaper: 600 ms\nreach: 0.5 g\n'),
    ).steps[0]!;
    expect([step.paperS, step.reachMS2]).toEqual([0.6, 0.5 * 9.80665]);
    expect(step.setup.settings.get('air')).toBe(1);
  });

  it('is the same with Windows line ends and a byte order mark', () => {
    expect(JSON.stringify(smallLesson((text) => `\uFEFF${text.replaceAll('\n', '\r\n')}`))).toBe(
      JSON.stringify(smallLesson()),
    );
  });
});

describe('what is wrong is said with its line, what was found and what is allowed', () => {
  it.each([
    // The head.
    ['lesson: small\n', '', 'head: found no “lesson”', 'lesson must be there'],
    ['format: 1', 'format: 2', 'head.format: found 2', 'a whole number from 1 to 1'],
    ['minutes: 5', 'minutes: long', 'head.minutes: found "long"', 'from 1 to 240'],
    ['title: A small lesson', 'titel: A small lesson', 'the name "titel"', 'did you mean title?'],
    ['summary: Drop it.', 'summary: Drop `=fallTime`.', 'the figure "fallTime"', 'no figure outside a step'],
    // Steps and blocks.
    ['```measure', '```measures', 'a block called "measures"', 'step, predict, do, ask'],
    ['## Look', '# Look', 'found "# Look"', 'headings of the second level'],
    ['bench: table-top\nsettings', 'bench: desk\nsettings', 'found "desk"', 'table-top, stiff, chip'],
    ['name: look', 'name: drop', 'a second step of this name', 'names that occur once'],
    ['attempt: let go', 'attempt: letgo', 'found "letgo"', 'let go'],
    ['dampingRatio: 0.7,', 'damping: 0.7,', 'found "damping"', 'dampingRatio'],
    ['dampingRatio: 0.7,', 'dampingRatio: -1,', 'found "-1"', 'from 0 to 10'],
    ['dropHeight: 0.3 m }', 'dropHeight: 0.3 }', 'found "0.3"', 'has no unit'],
    ['dropHeight: 0.3 m }', 'air: 1 }', 'found 1', 'true or false'],
    ['seed: 7', 'seed: 1.5', 'found 1.5', 'a whole number from 0 to 4294967295'],
    ['seed: 7', 'paper: 1 ms', 'found "1 ms"', 'time from 0.02 to 600'],
    ['seed: 7', 'reach: 1 m', 'found "1 m"', 'an acceleration in m/s²'],
    // Questions.
    ['within: 5 %\n', '', 'no measure of right and wrong', 'near with within'],
    ['number: { kind: time, unit: ms }', 'number: { kind: time, unit: kg }', 'found "kg"', 'a unit of time'],
    ['number: { kind: time, unit: ms }', 'number: { kind: age }', 'found "age"', 'time, frequency'],
    ['right: true', 'right: fallTime > 0 s', 'the choice "zero"', 'where a condition decides'],
    ['    right: true\n', '', 'no right choice', 'at least one choice with right'],
    ['  - name: one\n    words: It stayed.\n    says: Look again.\n', '', 'a list of 1', 'at least 2'],
    ['name: guess', 'name: Guess', 'found "Guess"', 'a small letter first'],
    ['name: guess', 'name: min', 'found "min"', 'a name of letters'],
    ['name: guess', 'name: constructor', 'found "constructor"', 'a name of letters'],
    ['name: guess', 'name: gravity', 'the name "gravity"', 'not taken by a setting'],
    // Figures.
    ['take: duration', 'take: length', 'found "length"', 'value, mean'],
    ['  of: reading', '  of: needle', 'found "needle"', 'reading, felt'],
    ['at: touch - 10 ms', 'at: touch - 10', 'found "touch - 10"', 'let go + 20 ms'],
    ['at: touch - 10 ms', 'at: landing', 'found "landing"', 'also with a time'],
    ['  unit: ms\n- name', '  unit: g\n- name', 'found "g"', 'a unit of time'],
    [
      '  take: value\n  of: reading\n',
      '  take: area\n  of: height\n  from: let go\n  to: touch\n',
      'the name "at"',
      'of, from, to',
    ],
    // Checks and formulas.
    ['value: endReading', 'value: endReeding', '"endReeding", of no stated kind', 'did you mean endReading?'],
    ['near: fallTime', 'near: fellTime', '"fellTime" in a formula', 'did you mean fallTime?'],
    ['value: endReading', 'value: endReading * 2', 'of no stated kind', '`as` with its kind'],
    ['provided: fallTime > 0.1 s', 'provided: fallTime >', 'a formula that breaks off', 'a formula of numbers'],
    ['provided: fallTime > 0.1 s', 'provided: eval(fallTime)', 'where the formula should end', 'a formula of numbers'],
    ['within: 0.02 g', 'within: 0.02 furlong', '“furlong”, which is no unit', 'a formula of numbers'],
    ['- name: noGravity', '- name: ringing', 'the slip "ringing" twice', 'occur once'],
    // Text.
    ['The box is held.', 'The box <b>is</b> held.', 'HTML; "<b>"', 'paragraphs, lists'],
    ['The box is held.', '<script>alert(1)</script>', 'HTML;', 'paragraphs, lists'],
    ['The box is held.', 'See [here](https://example.org).', 'a link out of the page', '[a term](term:its-name)'],
    ['The box is held.', 'See https://example.org now.', 'a link out of the page', '[a term](term:its-name)'],
    ['The box is held.', '![box](box.svg)', '"![box](box.svg)"', 'paragraphs, lists'],
    ['The box is held.', '| a | b |\n|---|---|\n| 1 | 2 |', 'found "| a', 'paragraphs, lists'],
    ['The box is held.', '~~The box~~', '"~~The box~~"', 'paragraphs, lists'],
    ['The box is held.', '- [ ] task', '"- [ ] task"', 'paragraphs, lists'],
    ['The box is held.', '    indented code', '"indented code"', 'paragraphs, lists'],
    ['The box is held.', 'It is `fallTime`.', '"`fallTime`"', '`=figure`'],
    ['The box is held.', 'It is `=fellTime`.', 'the figure "fellTime"', 'a figure or a number'],
    ['says: It did.', 'says: It <i>did</i>.', 'HTML; "<i>"', 'paragraphs, lists'],
    // Actions.
    ['- act: mark', '- act: sing', 'found "sing"', 'act: hold, drop'],
    ['  words: Mark the touch.\n', '', 'no “words”', 'words must be there'],
    ['  to: 50', '  to: 0', 'found 0', 'from 1 to 10000'],
    // Proofs.
    ['fails: zeroAtEnd', 'fails: guess', 'which fails "guess"', 'one of seen, zeroAtEnd'],
    ['as: ringing', 'as: noise', 'as "noise"', 'one of ringing, noGravity'],
    [
      '  - { act: explain, written: Nothing pushes. }\n',
      '  - { act: sleep }\n',
      'found a list of names and values',
      'hold, drop, throw',
    ],
    [
      '  - { act: choose, question: seen, choice: zero }\n  - { act: explain',
      '  - { act: choose, question: seen, choice: two }\n  - { act: explain',
      'the choice "two"',
      'one of zero, one',
    ],
    [
      '  - { act: choose, question: seen, choice: zero }\n  - { act: explain',
      '  - { act: type, question: seen, typed: 3 s }\n  - { act: explain',
      'a proof that answers "seen"',
      'a question with number',
    ],
    ['typed: 247 ms }\n  - { act: drop }', 'typed: 247 }\n  - { act: drop }', '"247" typed in a proof', 'has no unit'],
    ['words: What did the pen do?', 'words: What: the pen?', 'what is no YAML', 'indented below'],
  ])('%j → %j', (find, put, found, allowed) => {
    const text = changed(find, put);
    const faults = faultsOf(text);
    expect(faults.length).toBeGreaterThan(0);
    expect(faults[0]).toMatch(/^a\.md:\d+: /);
    expect(
      faults.find((fault) => fault.includes(found) && fault.includes(allowed)),
      faults.join('\n'),
    ).toBeDefined();
  });

  it.each([
    ['no head', 'Just text.\n', 'a YAML head between lines of ---'],
    ['no step', SMALL_LESSON.slice(0, SMALL_LESSON.indexOf('## Hold')), 'at least one heading'],
    [
      'text before the first step',
      changed('## Hold and drop', 'Hello.\n\n## Hold and drop'),
      'nothing before the first heading',
    ],
    ['a heading without its step block', `${SMALL_LESSON}\n## Alone\n\nText.\n`, 'one below each heading'],
    ['checks without a proof', SMALL_LESSON.replace(/```proof[\s\S]*?```/u, ''), 'a proof block that shows how'],
    ['a sketch after the run', SMALL_LESSON.replace(/```ask\n[\s\S]*?```/u, SKETCH('ask')), 'sketches as predictions'],
    [
      'a formula that asks for what comes later',
      changed(
        'take: duration\n  from: let go\n  to: touch\n  unit: ms',
        'take: formula\n  value: 2 * endReading\n  as: { kind: time }',
      ),
      'a figure or a number of this step',
    ],
  ])('%s', (_, text, allowed) => {
    expect(faultsOf(text).join('\n')).toContain(allowed);
  });

  it('the line is that of the very word in a block', () => {
    const text = changed('  of: reading', '  of: needle');
    expect(faultsOf(text)[0]).toContain(`a.md:${lineOf(text, 'of: needle')}: drop · measure[1].of`);
    const prose = changed('The box is held.', 'The box\nis held.\n\nThen\n\n- one\n- <b>two</b>');
    expect(faultsOf(prose)[0]).toContain(`a.md:${lineOf(prose, '- <b>two</b>')}:`);
  });

  it('all faults come at once', () => {
    const text = changed('minutes: 5', 'minutes: 0').replace('of: reading', 'of: needle').replace('seed: 7', 'seed: x');
    expect(faultsOf(text).length).toBe(3);
  });

  it('a term must be in the glossary, in the head as well', () => {
    const text = changed('The box is held.', 'The [specific force](term:specific-force) on it.');
    expect(faultsOf(text)).toEqual([]);
    expect(faultsOf(text, new Set(['pen']))[0]).toContain(
      'the term "specific-force"; allowed: a term of the glossary: pen',
    );
    const misspelt = changed('The box is held.', 'The [specific force](term:specific-forse) on it.');
    expect(faultsOf(misspelt)[0]).toContain('did you mean specific-force?');
    const head = changed('summary: Drop it.', "summary: '[Drop](term:dropp) it.'");
    expect(faultsOf(head)[0]).toContain('the term "dropp"');
  });
});

function SKETCH(part: string): string {
  return `\`\`\`${part}
name: seen
words: Draw it.
sketch: { line: reading, zero: let go, zeroWords: let go, from: 0 s, to: 0.2 s, low: -1 g, high: 1 g }
features:
  - { take: mean, from: 0 s, to: 0.2 s, near: 0 g, within: 0.1 g, says: Yes., otherwise: No. }
\`\`\``;
}
