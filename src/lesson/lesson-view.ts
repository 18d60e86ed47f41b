/** Makes what a sheet shows out of a lesson and a learner's progress. */
import type {
  CheckView,
  FigureView,
  LessonPart,
  LessonStepView,
  LessonView,
  Outcome,
  Prose,
  QuestionForm,
  QuestionView,
  SketchOnTape,
} from '../contract/lesson.ts';
import { isLessonSetting, settingText } from './bench-setup.ts';
import type { Attempt } from './evidence.ts';
import { saidTo, saidToNumber } from './judge.ts';
import { quantityOfKnown } from './known.ts';
import {
  type Check,
  figuresOf,
  judgedNames,
  type Lesson,
  type LessonStep,
  type Part,
  type Question,
  questionsOf,
} from './lesson.ts';
import { type LessonProgress, NOTHING_DONE, type StepProgress } from './progress.ts';
import { fillFigures } from './prose.ts';
import { printed, type Quantity } from './quantity.ts';
import { visibleParts } from './visible-parts.ts';

export interface ViewState {
  readonly progress: LessonProgress;
  readonly locked: string | undefined;
  /** The attempt looked at last; undefined before the first look. */
  readonly attempt: Attempt | undefined;
  /** Figures of the attempt that is going on. */
  readonly present: ReadonlyMap<string, number>;
}

export function lessonView(lesson: Lesson, open: LessonStep, state: ViewState): LessonView {
  const { progress } = state;
  return {
    lesson: lesson.name,
    title: lesson.title,
    summary: lesson.summary,
    minutes: lesson.minutes,
    cautions: lesson.cautions,
    steps: lesson.steps.map((step) => ({
      name: step.name,
      title: step.title,
      open: step === open,
      complete: isComplete(step, progress.steps[step.name] ?? NOTHING_DONE),
    })),
    step: stepView(open, progress.steps[open.name] ?? NOTHING_DONE, state),
  };
}

/** Everything judged is right, every prediction made, the explanation written. */
export function isComplete(step: LessonStep, { answers, judged, written }: StepProgress): boolean {
  const predicted = questionsOf(step).every(({ part, question }) => part === 'ask' || answers[question.name]);
  const explained = written !== '' || !step.parts.some(({ part }) => part === 'explain');
  return predicted && explained && judgedNames(step).every((name) => judged[name]?.outcome === 'passed');
}

function stepView(step: LessonStep, progress: StepProgress, { locked, attempt, present }: ViewState): LessonStepView {
  const words = new StepWords(step, progress, present);
  return {
    name: step.name,
    title: step.title,
    locked,
    notice: isSpoilt(step, attempt, present) ? SPOILT : undefined,
    parts: partViews(step, progress, words),
    sketches: sketchesOf(step, progress, attempt),
    complete: isComplete(step, progress),
  };
}

const SPOILT =
  'A setting was changed while this attempt ran, so it shows neither the one nor the other. Try once more.';

function isSpoilt(step: LessonStep, attempt: Attempt | undefined, present: ReadonlyMap<string, number>): boolean {
  if (!attempt || present.size === figuresOf(step).length) return false;
  return attempt.changedBefore(attempt.evidence.nowS);
}

/** Counts actions through the step, as the progress does. */
function partViews(step: LessonStep, progress: StepProgress, words: StepWords): LessonPart[] {
  let actions = 0;
  return visibleParts(step, progress).map((part): LessonPart => {
    if (part.part !== 'do') return partView(part, progress, words);
    return {
      part: 'do',
      actions: part.actions.map(({ words: said, prepared }) => ({
        words: words.fill(said),
        prepared,
        done: progress.done.includes(actions++),
      })),
    };
  });
}

function partView(part: Exclude<Part, { part: 'do' }>, progress: StepProgress, words: StepWords): LessonPart {
  switch (part.part) {
    case 'text':
      return { part: 'text', text: words.fill(part.text) };
    case 'predict':
    case 'ask':
      return { part: part.part, question: words.question(part.part, part.question) };
    case 'measure':
      return { part: 'measure', figures: part.figures.map(({ name }) => words.figure(name)) };
    case 'check':
      return { part: 'check', checks: part.checks.map((check) => words.check(check)) };
    case 'explain': {
      const { written } = progress;
      const model = written === '' ? [] : words.fill(part.model);
      return { part: 'explain', name: part.name, words: words.fill(part.words), written, model };
    }
    case 'hints': {
      const shown = part.hints.slice(0, progress.hints);
      return { part: 'hints', shown: shown.map((hint) => words.fill(hint)), left: part.hints.length - shown.length };
    }
  }
}

function sketchesOf(step: LessonStep, { answers }: StepProgress, attempt: Attempt | undefined): SketchOnTape[] {
  return questionsOf(step).flatMap(({ question }) => {
    const answer = answers[question.name];
    const zeroS = question.kind === 'sketch' ? attempt?.at(question.zero) : undefined;
    if (question.kind !== 'sketch' || answer?.kind !== 'sketch' || zeroS === undefined) return [];
    return [{ line: question.axes.line, points: answer.points, zeroS }];
  });
}

/** The texts of a step with its numbers filled in. */
export class StepWords {
  readonly #step: LessonStep;
  readonly #progress: StepProgress;
  readonly #present: ReadonlyMap<string, number>;

  constructor(step: LessonStep, progress: StepProgress, present: ReadonlyMap<string, number>) {
    this.#step = step;
    this.#progress = progress;
    this.#present = present;
  }

  /** `then`: numbers as they stood when it was said. */
  fill(prose: Prose, then: Readonly<Record<string, string>> = {}): Prose {
    return fillFigures(prose, (name) => then[name] ?? this.text(name));
  }

  /** A number of the step with its unit, as it stands now. */
  text(name: string): string {
    const answer = this.#progress.answers[name];
    if (answer?.kind === 'number') return answer.typed;
    const value = this.#value(name);
    if (value !== undefined && isLessonSetting(name)) return settingText(name, value);
    return printed(value, this.#quantity(name));
  }

  figure(name: string): FigureView {
    const { words, quantity } = figuresOf(this.#step).find((figure) => figure.name === name)!;
    const value = this.#value(name);
    return {
      name,
      words: this.fill(words),
      quantity: quantity.kind,
      unit: quantity.unit,
      value,
      text: printed(value, quantity),
    };
  }

  check(check: Check): CheckView {
    const { name, words, quantity } = check;
    const judged = this.#progress.judged[name];
    return {
      name,
      words: this.fill(words),
      outcome: judged?.outcome ?? 'waiting',
      slip: judged?.reason,
      says: judged ? this.fill(saidToNumber(check, judged.outcome, judged.reason), judged.numbers) : [],
      measured: judged ? printed(judged.value, quantity) : '',
      expected: judged?.expected ?? '',
    };
  }

  question(part: 'predict' | 'ask', question: Question): QuestionView {
    const { name, words } = question;
    const answer = this.#progress.answers[name];
    const judged = this.#progress.judged[name];
    const outcome: Outcome = judged?.outcome ?? 'waiting';
    const says = judged ? this.fill(saidTo(question, judged.outcome, judged.reason), judged.numbers) : [];
    const open = part === 'predict' ? !answer : outcome !== 'passed';
    return { name, words: this.fill(words), form: this.#form(question), answer, outcome, open, says };
  }

  #form(question: Question): QuestionForm {
    if (question.kind === 'number')
      return { kind: 'number', quantity: question.quantity.kind, unit: question.quantity.unit };
    if (question.kind === 'sketch') return question.axes;
    return { kind: 'choice', choices: question.choices.map(({ name, words }) => ({ name, words: this.fill(words) })) };
  }

  #value(name: string): number | undefined {
    const answer = this.#progress.answers[name];
    return (
      this.#present.get(name) ?? this.#progress.values[name] ?? (answer?.kind === 'number' ? answer.value : undefined)
    );
  }

  #quantity(name: string): Quantity {
    return figuresOf(this.#step).find((figure) => figure.name === name)?.quantity ?? quantityOfKnown(name)!;
  }
}
