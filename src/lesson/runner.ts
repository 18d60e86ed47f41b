/**
 * A learner's way through a lesson: which step is open, what has been answered and measured, what is locked. It looks at
 * the sitting at the bench and never moves it, except that opening a step lays the bench out anew. To be told
 * of everything by `act`, and to be asked to `look` after it and while the run goes on.
 */
import type { Answer, GivenAnswer, LessonAct, LessonResults, LessonView, Prose } from '../contract/lesson.ts';
import type { Session } from '../session/session.ts';
import { parseQuantity } from '../units/parse.ts';
import { doneActions } from './actions.ts';
import { benchSettings } from './bench-setup.ts';
import { Attempt, type Evidence } from './evidence.ts';
import { expectedText, judge, judgeAnswer, type Verdict } from './judge.ts';
import { KNOWN_NAMES, knownValue } from './known.ts';
import { checksOf, figuresOf, type Lesson, type LessonStep, type Question, questionsOf } from './lesson.ts';
import { lessonView, StepWords } from './lesson-view.ts';
import { measure } from './measure.ts';
import { type LessonProgress, NOTHING_DONE, type StepProgress } from './progress.ts';
import { inlinesOf } from './prose.ts';
import { UNKNOWN } from './quantity.ts';
import { lessonResults } from './results.ts';
import { visibleParts } from './visible-parts.ts';

/** What a lesson needs of a sitting at the bench. */
export type LessonBench = Pick<Session, 'settings' | 'run' | 'keptRuns' | 'choose' | 'asRun'>;

const LOCKED = 'First store your prediction: until then the bench stays locked.';
const PREDICTED = 'A prediction stays as it was made; only so can it be compared.';
const NOT_YET = 'First do what stands above, then say what you saw.';
const RIGHT_ALREADY = 'This is answered.';

type Run = LessonBench['run'];

/** What the present attempt has shown so far. */
interface Present {
  readonly run: Run;
  readonly beganS: number | undefined;
  readonly marks: number;
  readonly values: Map<string, number>;
}

export class LessonRunner {
  readonly lesson: Lesson;
  readonly #bench: LessonBench;
  readonly #steps: Map<string, StepProgress>;
  #open: LessonStep;
  #marks: number[] = [];
  #slowest = 1;
  #pulledBack = false;
  /** Runs from before the step was opened: what they show is none of its doing. */
  #foreign = new WeakSet<Run>();
  #run: Run;
  #present: Present | undefined;
  #attempt: Attempt | undefined;
  #revision = 0;
  #view: { readonly revision: number; readonly view: LessonView } | undefined;

  constructor(lesson: Lesson, bench: LessonBench, saved?: LessonProgress) {
    this.lesson = lesson;
    this.#bench = bench;
    this.#steps = new Map(Object.entries(saved?.steps ?? {}));
    this.#run = bench.run;
    this.#open = lesson.steps.find(({ name }) => name === saved?.open) ?? lesson.steps[0]!;
    this.#lay();
  }

  /** Rises with everything that a sheet shows. */
  get revision(): number {
    return this.#revision;
  }

  get step(): LessonStep {
    return this.#open;
  }

  /** Why the bench may not be touched; undefined: it may. */
  get locked(): string | undefined {
    const progress = this.progressOf(this.#open);
    const parts = visibleParts(this.#open, progress);
    return parts.some((part) => part.part === 'predict' && !progress.answers[part.question.name]) ? LOCKED : undefined;
  }

  get progress(): LessonProgress {
    return { format: 1, lesson: this.lesson.name, open: this.#open.name, steps: Object.fromEntries(this.#steps) };
  }

  progressOf({ name }: LessonStep): StepProgress {
    return this.#steps.get(name) ?? NOTHING_DONE;
  }

  get view(): LessonView {
    if (this.#view?.revision !== this.#revision) {
      const { lesson, locked, progress } = this;
      const state = { progress, locked, attempt: this.#attempt, present: this.#present?.values ?? new Map() };
      this.#view = { revision: this.#revision, view: lessonView(lesson, this.#open, state) };
    }
    return this.#view.view;
  }

  get results(): LessonResults {
    return lessonResults(this.lesson, this.progress);
  }

  /** Run time of a moment of the present attempt [s]. */
  momentS(moment: Parameters<Attempt['at']>[0]): number | undefined {
    return new Attempt(this.#evidence(), this.#open.attempt).at(moment);
  }

  /** Takes what was done; gives the reason when it is refused. */
  act(act: LessonAct): string | undefined {
    const refused = this.#take(act);
    if (refused === undefined) {
      this.#revision += 1;
      this.look();
    }
    return refused;
  }

  /** Looks at the run: measures, judges. To be called while it goes on, ten times a second say, and after each command. */
  look(): void {
    if (this.#bench.run !== this.#run) {
      this.#run = this.#bench.run;
      this.#marks = this.#marks.filter((markS) => markS <= this.#run.world.timeS);
      this.#revision += 1;
    }
    if (this.#foreign.has(this.#run)) return;
    const attempt = new Attempt(this.#evidence(), this.#open.attempt);
    this.#attempt = attempt;
    const present = this.#presentOf(attempt);
    const lookup = this.#lookup(present, attempt);
    for (const { name, take } of figuresOf(this.#open)) {
      if (present.values.has(name)) continue;
      const value = measure(take, attempt, lookup);
      if (value === undefined) continue;
      present.values.set(name, value);
      this.#revision += 1;
    }
    this.#keepValues(present, attempt);
    this.#lookAtActions(attempt.evidence);
    this.#judgeChecks(lookup);
    this.#showQuestions(attempt);
    this.#judgeAnswers(lookup);
  }

  /** An attempt that has begun speaks for itself; before it, and after a reload, what was kept of the last one does. */
  #lookup({ values }: Present, attempt: Attempt): (name: string) => number {
    const now = (name: string) => values.get(name) ?? this.#known(name, attempt);
    const kept = (name: string) => this.progressOf(this.#open).values[name];
    const [first, second] = attempt.beganS === undefined ? [kept, now] : [now, kept];
    return (name) => first(name) ?? second(name) ?? this.#typed(name) ?? Number.NaN;
  }

  #take(act: LessonAct): string | undefined {
    const progress = this.progressOf(this.#open);
    switch (act.kind) {
      case 'open': {
        const step = this.lesson.steps.find(({ name }) => name === act.step);
        if (!step) throw new RangeError(`the lesson has no step “${act.step}”`);
        this.#open = step;
        this.#lay();
        return undefined;
      }
      case 'answer':
        return this.#answer(act.question, act.answer);
      case 'explain':
        this.#keep({ written: act.written.trim() });
        return undefined;
      case 'hint':
        this.#keep({ hints: progress.hints + 1 });
        return undefined;
      case 'mark':
        if (this.locked) return this.locked;
        this.#marks.push(act.timeS);
        return undefined;
      case 'slowed':
        this.#slowest = Math.max(this.#slowest, act.factor);
        return undefined;
      case 'pulled back':
        this.#pulledBack = true;
        return undefined;
    }
  }

  #answer(name: string, given: GivenAnswer): string | undefined {
    const asked = questionsOf(this.#open).find(({ question }) => question.name === name);
    if (!asked) throw new RangeError(`the step has no question “${name}”`);
    const { answers, judged, shown } = this.progressOf(this.#open);
    const { part, question } = asked;
    if (part === 'predict' && answers[name]) return PREDICTED;
    if (part === 'ask' && !shown.includes(name)) return NOT_YET;
    if (judged[name]?.outcome === 'passed') return RIGHT_ALREADY;
    const answer = readAnswer(question, given);
    if ('refused' in answer) return answer.refused;
    const { [name]: _, ...others } = judged;
    this.#keep({ answers: { ...answers, [name]: answer }, judged: others });
    return undefined;
  }

  /** Lays the bench out for the open step; what was marked and done before is none of its doing. */
  #lay(): void {
    for (const run of this.#bench.keptRuns) this.#foreign.add(run);
    this.#foreign.add(this.#bench.run);
    this.#bench.choose(benchSettings(this.#open.setup));
    this.#run = this.#bench.run;
    this.#marks = [];
    this.#slowest = 1;
    this.#pulledBack = false;
    this.#present = undefined;
    this.#attempt = undefined;
    this.#revision += 1;
  }

  #evidence(): Evidence {
    const { run } = this.#bench;
    const { tape, world } = run;
    return { run: this.#bench.asRun(), tape, events: world.events.all, marks: this.#marks, nowS: world.timeS };
  }

  /** What has been measured of this attempt; a new attempt, or a new mark, begins it anew. */
  #presentOf({ beganS }: Attempt): Present {
    const present = this.#present;
    const marks = this.#marks.length;
    if (present?.run === this.#run && present.beganS === beganS && present.marks === marks) return present;
    const fresh: Present = { run: this.#run, beganS, marks, values: new Map() };
    this.#present = fresh;
    this.#revision += 1;
    return fresh;
  }

  /** Once all figures of an attempt are there they are kept together, with the settings they belong to. */
  #keepValues(present: Present, attempt: Attempt): void {
    const figures = figuresOf(this.#open);
    if (!figures.every(({ name }) => present.values.has(name))) return;
    const values: Record<string, number> = {};
    for (const { name } of figures) values[name] = present.values.get(name)!;
    for (const name of KNOWN_NAMES) {
      const value = this.#known(name, attempt);
      if (value !== undefined) values[name] = value;
    }
    values.seed = attempt.evidence.run.seed;
    const kept = this.progressOf(this.#open).values;
    if (Object.keys(values).some((name) => values[name] !== kept[name])) this.#keep({ values });
  }

  #lookAtActions(evidence: Evidence): void {
    const { done } = this.progressOf(this.#open);
    const noted = { slowest: this.#slowest, pulledBack: this.#pulledBack, settings: this.#bench.settings };
    const now = doneActions(this.#open, evidence, noted).filter((index) => !done.includes(index));
    if (now.length > 0) this.#keep({ done: [...done, ...now] });
  }

  #judgeChecks(lookup: (name: string) => number): void {
    if (this.locked) return;
    for (const check of checksOf(this.#open)) {
      const { judged } = this.progressOf(this.#open);
      if (judged[check.name]?.outcome === 'passed') continue;
      const number = check.value.value(lookup);
      const value = Number.isNaN(number) ? undefined : number;
      this.#keepVerdict(check.name, judge(check, value, lookup), value, expectedText(check, check.quantity, lookup));
    }
  }

  #showQuestions(attempt: Attempt): void {
    const { shown } = this.progressOf(this.#open);
    const now = questionsOf(this.#open).filter(({ question: { name, after } }) => {
      if (shown.includes(name)) return false;
      const atS = after ? attempt.at(after) : attempt.beganS;
      return atS !== undefined && atS <= attempt.evidence.nowS;
    });
    if (now.length > 0 && !this.locked) this.#keep({ shown: [...shown, ...now.map(({ question }) => question.name)] });
  }

  #judgeAnswers(lookup: (name: string) => number): void {
    const asked = questionsOf(this.#open);
    for (const [index, { part, question }] of asked.entries()) {
      const { answers, judged, shown } = this.progressOf(this.#open);
      const answer = answers[question.name];
      if (!answer || judged[question.name] || !shown.includes(question.name)) continue;
      // First what was seen, then how it compares with the prediction.
      const next = asked[index + 1];
      if (part === 'predict' && next?.part === 'ask' && !answers[next.question.name]) continue;
      const verdict = judgeAnswer(question, answer, lookup);
      const expected = question.kind === 'number' ? expectedText(question.judgement, question.quantity, lookup) : '';
      this.#keepVerdict(question.name, verdict, answer.kind === 'number' ? answer.value : undefined, expected);
    }
  }

  /** What is said to something right waits for the numbers in it; what is wrong is said at once. */
  #keepVerdict(name: string, { outcome, reason, says }: Verdict, value: number | undefined, expected: string): void {
    const { judged } = this.progressOf(this.#open);
    if (outcome === 'waiting') return;
    const numbers = this.#numbersIn(says);
    const spoken = Object.values(numbers);
    if (outcome === 'passed' && spoken.includes(UNKNOWN)) return;
    const before = judged[name];
    const same = before?.outcome === outcome && before.reason === reason && before.value === value;
    if (same && spoken.join() === Object.values(before.numbers).join()) return;
    this.#keep({ judged: { ...judged, [name]: { outcome, reason, value, expected, numbers } } });
  }

  /** Figures, settings and event values of the present attempt, as far as a text names them. */
  #numbersIn(says: Prose): Record<string, string> {
    const known = new Map(this.#present?.values);
    const named = [...inlinesOf(says)].flatMap((inline) => (inline.kind === 'figure' ? [inline.name] : []));
    for (const name of named) {
      const value = this.#attempt && this.#known(name, this.#attempt);
      if (value !== undefined) known.set(name, value);
    }
    const words = new StepWords(this.#open, this.progressOf(this.#open), known);
    return Object.fromEntries(named.map((name) => [name, words.text(name)]));
  }

  #known(name: string, attempt: Attempt): number | undefined {
    return knownValue(name, attempt, this.#bench.settings);
  }

  #typed(name: string): number | undefined {
    const answer = this.progressOf(this.#open).answers[name];
    return answer?.kind === 'number' ? answer.value : undefined;
  }

  #keep(changed: Partial<StepProgress>): void {
    this.#steps.set(this.#open.name, { ...this.progressOf(this.#open), ...changed });
    this.#revision += 1;
  }
}

function readAnswer(question: Question, given: GivenAnswer): Answer | { readonly refused: string } {
  if (given.kind !== question.kind) throw new RangeError(`“${question.name}” asks for a ${question.kind}`);
  if (given.kind === 'number' && question.kind === 'number') {
    const parsed = parseQuantity(given.typed, question.quantity.kind);
    return 'error' in parsed
      ? { refused: parsed.error }
      : { kind: 'number', typed: given.typed.trim(), value: parsed.value };
  }
  if (
    given.kind === 'choice' &&
    question.kind === 'choice' &&
    question.choices.every(({ name }) => name !== given.choice)
  )
    throw new RangeError(`“${question.name}” has no choice “${given.choice}”`);
  if (given.kind === 'sketch') {
    const points = [...given.points].sort(([a], [b]) => a - b);
    return points.length < 2 ? { refused: 'Draw a line across the sketch first.' } : { kind: 'sketch', points };
  }
  return given as Answer;
}
