/** What one block of a lesson says of another: names that must be there, once, and proofs that must be whole. */
import type { Prose } from '../contract/lesson.ts';
import { nearest } from '../scenario/fault.ts';
import type { Expression } from './expression.ts';
import { type LessonFault, quoted } from './fault.ts';
import { KNOWN_NAMES } from './known.ts';
import {
  checksOf,
  type Deed,
  figuresOf,
  type Judgement,
  judgedNames,
  type Lesson,
  type LessonStep,
  type Question,
  questionsOf,
  type Take,
} from './lesson.ts';
import type { StepLines } from './parse-lesson.ts';
import { typedFault } from './proof-schema.ts';
import { inlinesOf } from './prose.ts';

/** In the judgement of a typed number: that number. */
export const ANSWER = 'answer';

export function crossFaults(
  lesson: Lesson,
  linesOf: (step: string) => StepLines,
  terms: ReadonlySet<string>,
): LessonFault[] {
  const faults: LessonFault[] = [];
  const names = lesson.steps.map(({ name }) => name);
  for (const [index, step] of lesson.steps.entries()) {
    const crossing = new Crossing(step, linesOf(step.name), faults, terms);
    if (names.indexOf(step.name) !== index) crossing.fault('', 'a second step of this name', 'names that occur once');
    crossing.check();
  }
  for (const prose of [lesson.summary, lesson.cautions])
    for (const inline of inlinesOf(prose))
      if (inline.kind === 'figure')
        faults.push({
          line: 1,
          path: 'head',
          found: `the figure ${quoted(inline.name)}`,
          allowed: 'no figure outside a step',
        });
      else if (inline.kind === 'term' && !terms.has(inline.term))
        faults.push({ line: 1, path: 'head', ...unknownTerm(inline.term, terms) });
  return faults;
}

class Crossing {
  readonly #step: LessonStep;
  readonly #lines: StepLines;
  readonly #faults: LessonFault[];
  readonly #terms: ReadonlySet<string>;
  readonly #numbers: readonly string[];

  constructor(step: LessonStep, lines: StepLines, faults: LessonFault[], terms: ReadonlySet<string>) {
    this.#step = step;
    this.#lines = lines;
    this.#faults = faults;
    this.#terms = terms;
    const typed = questionsOf(step).flatMap(({ question }) => (question.kind === 'number' ? [question.name] : []));
    this.#numbers = [...figuresOf(step).map(({ name }) => name), ...typed, ...KNOWN_NAMES];
  }

  fault(name: string, found: string, allowed: string): void {
    const path = name === '' ? this.#step.name : `${this.#step.name} · ${name}`;
    this.#faults.push({ line: this.#lines.get(name) ?? this.#lines.get('') ?? 0, path, found, allowed });
  }

  check(): void {
    this.#once();
    const before = new Set<string>();
    for (const figure of figuresOf(this.#step)) {
      // A formula must not ask for itself, nor for what comes after it.
      for (const formula of formulasOf(figure.take))
        this.#formula(
          figure.name,
          formula,
          figuresOf(this.#step)
            .filter(({ name }) => !before.has(name))
            .map(({ name }) => name),
        );
      before.add(figure.name);
      this.#prose(figure.name, figure.words);
    }
    for (const each of checksOf(this.#step)) {
      this.#formula(each.name, each.value);
      this.#judgement(each.name, each);
      this.#prose(each.name, each.words);
    }
    for (const { part, question } of questionsOf(this.#step)) this.#question(part, question);
    for (const part of this.#step.parts) {
      if (part.part === 'text') this.#prose('', part.text);
      if (part.part === 'explain') for (const prose of [part.words, part.model]) this.#prose('', prose);
      if (part.part === 'hints') for (const prose of part.hints) this.#prose('', prose);
      if (part.part === 'do') for (const { words } of part.actions) this.#prose('', words);
    }
    if (this.#step.parts.filter(({ part }) => part === 'explain').length > 1)
      this.fault('', 'two explain blocks', 'one for each step');
    this.#proof();
  }

  #once(): void {
    const names = [
      ...figuresOf(this.#step),
      ...checksOf(this.#step),
      ...questionsOf(this.#step).map(({ question }) => question),
    ].map(({ name }) => name);
    for (const name of names) {
      if (names.indexOf(name) !== names.lastIndexOf(name))
        this.fault(name, `the name ${quoted(name)} more than once`, 'names that occur once in a step');
      if (KNOWN_NAMES.includes(name) || name === ANSWER)
        this.fault(name, `the name ${quoted(name)}`, 'names that are not taken by a setting or an event');
    }
  }

  #formula(name: string, { names }: Expression, notYet: readonly string[] = [], more: readonly string[] = []): void {
    const known = [...this.#numbers, ...more].filter((each) => !notYet.includes(each));
    for (const asked of names) {
      if (known.includes(asked)) continue;
      const likely = nearest(asked, known);
      this.fault(
        name,
        `${quoted(asked)} in a formula`,
        `a figure or a number of this step, or ${KNOWN_NAMES.join(', ')}${likely ? `; did you mean ${likely}?` : ''}`,
      );
    }
  }

  #judgement(name: string, judged: Judgement, more: readonly string[] = []): void {
    const { near, within, above, below, provided, slips, says, otherwise } = judged;
    for (const formula of [near, within?.size, above, below, provided, ...slips.map(({ when }) => when)])
      if (formula) this.#formula(name, formula, [], more);
    for (const prose of [says, otherwise, ...slips.map((slip) => slip.says)]) this.#prose(name, prose);
    const named = slips.map((slip) => slip.name);
    for (const slip of named)
      if (named.indexOf(slip) !== named.lastIndexOf(slip))
        this.fault(name, `the slip ${quoted(slip)} twice`, 'slips by names that occur once');
  }

  #question(part: 'predict' | 'ask', question: Question): void {
    this.#prose(question.name, question.words);
    if (question.kind === 'number') this.#judgement(question.name, question.judgement, [ANSWER]);
    if (question.kind === 'choice') {
      for (const { name, right, says, otherwise, words } of question.choices) {
        if ((typeof right === 'object') !== (otherwise !== undefined))
          this.fault(
            question.name,
            `the choice ${quoted(name)}`,
            '`otherwise` where a condition decides what is right, and only there',
          );
        if (otherwise) this.#prose(question.name, otherwise);
        if (typeof right === 'object') this.#formula(question.name, right);
        this.#prose(question.name, says);
        this.#prose(question.name, words);
      }
      if (!question.choices.some(({ right }) => right !== false))
        this.fault(question.name, 'no right choice', 'at least one choice with right');
    }
    if (question.kind === 'sketch') {
      const { fromS, toS, low, high } = question.axes;
      if (part === 'ask') this.fault(question.name, 'a sketch after the run', 'sketches as predictions');
      if (!(toS > fromS && high > low))
        this.fault(question.name, 'axes that do not rise', 'from before to, low below high');
      for (const { near, within, says, otherwise } of question.features) {
        for (const formula of [near, within.size]) this.#formula(question.name, formula);
        for (const prose of [says, otherwise]) this.#prose(question.name, prose);
      }
    }
  }

  #prose(name: string, prose: Prose): void {
    for (const inline of inlinesOf(prose)) {
      if (inline.kind === 'figure' && !this.#numbers.includes(inline.name))
        this.fault(
          name,
          `the figure ${quoted(inline.name)}`,
          `a figure or a number of this step, or ${KNOWN_NAMES.join(', ')}`,
        );
      if (inline.kind === 'term' && !this.#terms.has(inline.term)) {
        const { found, allowed } = unknownTerm(inline.term, this.#terms);
        this.fault(name, found, allowed);
      }
    }
  }

  #proof(): void {
    const { proof } = this.#step;
    const judged = judgedNames(this.#step);
    if (!proof) {
      if (judged.length > 0) this.fault('', 'checks without a proof', 'a proof block that shows how they are passed');
      return;
    }
    for (const deed of proof.model) this.#deed(deed);
    for (const { words, fails, as, deeds } of proof.wrong) {
      for (const deed of deeds) this.#deed(deed);
      if (!judged.includes(fails)) {
        this.fault('', `the wrong turn ${quoted(words)}, which fails ${quoted(fails)}`, `one of ${judged.join(', ')}`);
        continue;
      }
      const reasons = this.#reasons(fails);
      if (!reasons.includes(as))
        this.fault(fails, `the wrong turn ${quoted(words)} as ${quoted(as)}`, `one of ${reasons.join(', ')}`);
    }
  }

  /** Names of the ways in which something can be wrong that are told apart. */
  #reasons(name: string): string[] {
    const check = checksOf(this.#step).find((each) => each.name === name);
    if (check) return check.slips.map((slip) => slip.name);
    const question = questionsOf(this.#step).find((each) => each.question.name === name)?.question;
    if (question?.kind === 'number') return question.judgement.slips.map((slip) => slip.name);
    return question?.kind === 'choice'
      ? question.choices.filter(({ right }) => right !== true).map((each) => each.name)
      : [];
  }

  #deed(deed: Deed): void {
    if (deed.deed !== 'choose' && deed.deed !== 'type' && deed.deed !== 'sketch') return;
    const question = questionsOf(this.#step).find((each) => each.question.name === deed.question)?.question;
    const form = { choose: 'choice', type: 'number', sketch: 'sketch' }[deed.deed];
    if (question?.kind !== form) {
      this.fault('', `a proof that answers ${quoted(deed.question)}`, `the name of a question with ${form}`);
      return;
    }
    if (
      deed.deed === 'choose' &&
      question.kind === 'choice' &&
      !question.choices.some(({ name }) => name === deed.choice)
    )
      this.fault(
        question.name,
        `the choice ${quoted(deed.choice)}`,
        `one of ${question.choices.map(({ name }) => name).join(', ')}`,
      );
    if (deed.deed === 'type' && question.kind === 'number') {
      const fault = typedFault(deed.typed, question.quantity.kind);
      if (fault) this.fault(question.name, `${quoted(deed.typed)} typed in a proof`, fault);
    }
  }
}

function unknownTerm(term: string, terms: ReadonlySet<string>): Pick<LessonFault, 'found' | 'allowed'> {
  const likely = nearest(term, [...terms]);
  return {
    found: `the term ${quoted(term)}`,
    allowed: `a term of the glossary: ${[...terms].join(', ')}${likely ? `; did you mean ${likely}?` : ''}`,
  };
}

function formulasOf(take: Take): Expression[] {
  if (take.take === 'formula') return [take.value];
  const found: (Expression | undefined)[] = [];
  if ('minus' in take) found.push(take.minus);
  if ('level' in take) found.push(take.level);
  if ('band' in take) found.push(take.band);
  if ('frequency' in take) found.push(take.frequency);
  return found.filter((each) => each !== undefined);
}
