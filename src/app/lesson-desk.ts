/**
 * The lessons at the bench: which one lies open, what is passed between its runner and the page, and what of it is kept
 * on the device. Fetched when the lesson sheet is first opened.
 */
import '../ui/lesson-results.ts';
import '../ui/lesson-sheet.ts';
import type {
  Draft,
  LessonAct,
  LessonView,
  PreparedAct,
  QuestionView,
  SketchAxes,
  SketchOnTape,
} from '../contract/lesson.ts';
import { type Drafts, withDraft } from '../lesson/drafts.ts';
import { EXPLANATION, type Lesson, type LessonStep, LINES, type LineName, questionsOf } from '../lesson/lesson.ts';
import { isComplete } from '../lesson/lesson-view.ts';
import { NOTHING_DONE } from '../lesson/progress.ts';
import { LessonRunner } from '../lesson/runner.ts';
import type { PaperNote, Sketch } from '../plot/paper-view.ts';
import { CHANNEL } from '../session/bench-run.ts';
import type { FieldValues } from '../session/handling-values.ts';
import type { Session } from '../session/session.ts';
import type { LessonEntry } from '../ui/lesson-list.ts';
import type { LessonSheetView, OpenLesson } from '../ui/lesson-sheet.ts';
import type { LessonRefusal } from '../ui/lesson-step.ts';
import type { Ink } from '../ui/sketch-picture.ts';
import type { HandlingName, LessonWish, Setting } from '../ui/ui-events.ts';
import { quantityText } from '../units/quantity-text.ts';
import { deviceStorage, lessonLeftOpen } from './device-storage.ts';
import { type InkValues, inkLine, inkValues } from './lesson-ink.ts';
import { lessonsOnTheShelf } from './lesson-shelf.ts';
import { LessonStore } from './lesson-store.ts';

/** What the desk needs of the page, and does at it. */
export interface DeskPage {
  readonly session: () => Session;
  /** How many times slower than life it runs. */
  readonly slowed: () => number;
  /** Run time under the pen [s]. */
  readonly shownS: () => number;
  /** The bench was laid out for a step. */
  readonly laid: (step: LessonStep) => void;
  readonly handle: (handling: HandlingName, fields: FieldValues) => void;
  readonly set: (setting: Setting) => void;
  readonly pull: (timeS: number) => void;
  /** Leads to where a setting is made, by its name on the page. */
  readonly lead: (setting: string) => void;
  /** What the sheet shows has changed. */
  readonly changed: () => void;
}

/** Settings as the page calls them, by their names in a lesson. */
const PAGE_NAMES: Readonly<Record<string, string>> = {
  naturalFrequency: 'frequency',
  dampingRatio: 'damping',
  gap: 'gap',
  gravity: 'gravity',
  dropHeight: 'drop.height',
  padStiffness: 'pad.stiffness',
  padDamping: 'pad.damping',
  air: 'air',
};

/** The run is looked at this often [ms of wall time]. */
const LOOK_EVERY_MS = 150;
/** What is typed is kept on the device at most so much later [ms of wall time]. */
const DRAFT_WAITS_MS = 500;

const NOTHING_YET = 'There is nothing to pull back to yet: first do what stands above.';

/** What is asked of the desk itself. */
export type DeskWish = Exclude<LessonWish, { readonly wish: 'look up' }>;

interface Mark {
  readonly timeS: number;
  readonly run: Session['run'];
}

export class LessonDesk {
  readonly #page: DeskPage;
  readonly #lessons = lessonsOnTheShelf();
  readonly #storage = deviceStorage();
  readonly #store = new LessonStore(this.#storage);
  #leftOpen: string | undefined;
  #runner: LessonRunner | undefined;
  #inks: InkValues = {};
  #drafts: Drafts = {};
  /** Since when something typed waits to be kept [ms of wall time]. */
  #draftedMs: number | undefined;
  #mark: Mark | undefined;
  #refusal: LessonRefusal | undefined;
  #lookedMs = Number.NEGATIVE_INFINITY;
  #keptRevision = -1;
  #sitting = 0;
  #entries: readonly LessonEntry[];
  #view: LessonSheetView | undefined;
  /** The learner's line as it lies under the pen's; undefined: none that belongs on the pen's scale. */
  sketch: Sketch | undefined;
  /** A cross on the paper where the learner set a mark. */
  notes: readonly PaperNote[] = [];

  constructor(page: DeskPage) {
    this.#page = page;
    this.#leftOpen = lessonLeftOpen(this.#storage);
    this.#entries = this.#lessons.map((lesson) => this.#entry(lesson));
    // A page that is hidden draws no more frames, and may never be seen again.
    document.addEventListener('visibilitychange', () => {
      if (document.hidden && this.#draftedMs !== undefined) this.#keep();
    });
  }

  /** Why the bench may not be touched; undefined: it may. */
  get locked(): string | undefined {
    return this.#runner?.locked;
  }

  /** Mass and pen are covered: the run needs no hand to show what is still to be predicted. */
  get covered(): boolean {
    return this.#runner?.locked !== undefined && this.#runner.step.attempt === 'start';
  }

  /** What the sheet shows; the same object until something changes. */
  get view(): LessonSheetView {
    this.#view ??= {
      lessons: this.#entries,
      last: this.#leftOpen,
      open: this.#runner && this.#open(this.#runner),
      trouble: this.#store.trouble,
    };
    return this.#view;
  }

  take(wish: DeskWish): void {
    if (wish.wish === 'draft') {
      this.#draft(wish.of, wish.draft);
      return;
    }
    this.#refusal = undefined;
    switch (wish.wish) {
      case 'open':
        this.#begin(wish.lesson);
        break;
      case 'leave':
        this.#leave();
        break;
      case 'anew':
        this.#forget();
        break;
      case 'print':
        this.#print();
        break;
      case 'prepare':
        this.#prepare(wish.act);
        break;
      case 'tell':
        this.#tell(wish.act);
        break;
    }
    this.#changed();
  }

  /** Looks at the run as it goes on. */
  frame(wallMs: number): void {
    const runner = this.#runner;
    if (!runner || Math.abs(wallMs - this.#lookedMs) < LOOK_EVERY_MS) return;
    this.#lookedMs = wallMs;
    if (this.#draftedMs !== undefined && wallMs - this.#draftedMs >= DRAFT_WAITS_MS) this.#keep();
    runner.look();
    if (runner.revision !== this.#keptRevision) this.#changed();
  }

  /** The page was slowed down or hurried on. */
  slowed(factor: number): void {
    this.#runner?.act({ kind: 'slowed', factor });
  }

  pulledBack(timeS: number): void {
    this.#runner?.act({ kind: 'pulled back', timeS });
  }

  #begin(name: string): void {
    const lesson = this.#lessons.find((each) => each.name === name);
    if (!lesson) throw new RangeError(`there is no lesson “${name}”`);
    const kept = this.#store.read(name);
    this.#inks = kept?.inks ?? {};
    this.#drafts = kept?.drafts ?? {};
    this.#runner = new LessonRunner(lesson, this.#page.session(), kept?.progress);
    this.#keptRevision = -1;
    this.#sitting += 1;
    this.#store.noteOpen(name);
    this.#laid(this.#runner);
  }

  #leave(): void {
    this.#keep();
    this.#runner = undefined;
    this.#mark = undefined;
    this.#leftOpen = undefined;
    this.#store.noteOpen(undefined);
    this.#entries = this.#lessons.map((lesson) => this.#entry(lesson));
  }

  #forget(): void {
    const runner = this.#runner;
    if (!runner) return;
    this.#store.forget(runner.lesson.name);
    this.#begin(runner.lesson.name);
  }

  /** The runner has laid the bench out anew. */
  #laid(runner: LessonRunner): void {
    this.#mark = undefined;
    this.#page.laid(runner.step);
    runner.act({ kind: 'slowed', factor: this.#page.slowed() });
  }

  #tell(act: LessonAct): void {
    const runner = this.#runner;
    if (!runner) return;
    const step = runner.step.name;
    const refused = runner.act(act);
    if (refused === undefined) this.#drafts = withoutKept(this.#drafts, step, act);
    if (refused !== undefined) this.#refusal = { about: act.kind === 'answer' ? act.question : '', says: refused };
    else if (act.kind === 'open') this.#laid(runner);
    else if (act.kind === 'mark') this.#mark = { timeS: act.timeS, run: this.#page.session().run };
  }

  #prepare(act: PreparedAct): void {
    const page = this.#page;
    switch (act.act) {
      case 'handle':
        page.handle(act.handling, act.fields);
        break;
      case 'mark':
        this.#tell({ kind: 'mark', timeS: page.shownS() });
        break;
      case 'pull back':
        this.#pullBack();
        break;
      case 'slow':
        page.set({ name: 'slowdown', value: act.factor, final: true });
        break;
      case 'set':
        for (const [name, value] of Object.entries(act.settings)) {
          const setting = PAGE_NAMES[name] ?? name;
          if (value === null) page.lead(setting);
          else page.set({ name: setting, value: setting === 'air' ? value > 0 : value, final: true });
        }
        break;
    }
  }

  /** To where the attempt began; on from there the learner goes alone. */
  #pullBack(): void {
    const runner = this.#runner;
    const beganS = runner?.momentS({ name: runner.step.attempt, offsetS: 0 });
    if (beganS === undefined) this.#refusal = { about: '', says: NOTHING_YET };
    else this.#page.pull(beganS);
  }

  /** A mark belongs to the run on which it was set. */
  get #markHere(): Mark | undefined {
    return this.#mark?.run === this.#page.session().run ? this.#mark : undefined;
  }

  /** Keeps what there is on the device and has the sheet drawn anew. */
  #changed(): void {
    const runner = this.#runner;
    if (runner && runner.revision !== this.#keptRevision) {
      this.#keepInks(runner);
      this.#keptRevision = runner.revision;
      this.#keep();
    }
    this.sketch = sketchOf(runner?.view.step.sketches ?? []);
    this.notes = notesOf(this.#markHere);
    this.#view = undefined;
    this.#page.changed();
  }

  /** Writes down what there is. */
  #keep(): void {
    const progress = this.#runner?.progress;
    if (progress) this.#store.write({ progress, inks: this.#inks, drafts: this.#drafts });
    this.#draftedMs = undefined;
  }

  #draft(of: string, draft: Draft): void {
    if (!this.#runner) return;
    this.#drafts = withDraft(this.#drafts, this.#runner.step.name, of, draft);
    this.#draftedMs ??= this.#lookedMs;
  }

  #keepInks(runner: LessonRunner): void {
    const { tape } = this.#page.session().run;
    const { step } = runner.view;
    for (const { name, axes, points } of sketched(runner.view)) {
      const zeroS = step.sketches.find((onTape) => onTape.points === points)?.zeroS;
      const channel = tape.channels.findIndex((each) => each.name === LINES[axes.line as LineName].channel);
      const values = zeroS === undefined ? undefined : inkValues(tape, channel, axes, zeroS);
      if (values) this.#inks = { ...this.#inks, [step.name]: { ...this.#inks[step.name], [name]: values } };
    }
  }

  #entry(lesson: Lesson): LessonEntry {
    const { name, title, summary, minutes, steps } = lesson;
    const progress = this.#store.read(name)?.progress;
    const of = (step: string) => progress?.steps[step] ?? NOTHING_DONE;
    return {
      name,
      title,
      summary,
      minutes,
      steps: steps.length,
      done: steps.filter((step) => isComplete(step, of(step.name))).length,
      begun: steps.some((step) => Object.keys(of(step.name).answers).length > 0),
    };
  }

  #open({ view, lesson }: LessonRunner): OpenLesson {
    const mark = this.#markHere;
    const inks = sketched(view).map(({ name, axes }) => [name, this.#ink(view.step.name, name, axes)] as const);
    return {
      view,
      place: this.#lessons.indexOf(lesson) + 1,
      sitting: this.#sitting,
      refusal: this.#refusal,
      inks: Object.fromEntries(inks),
      drafts: this.#drafts[view.step.name] ?? {},
      marked: mark ? quantityText(mark.timeS, 'time', 's') : '',
    };
  }

  #ink(step: string, question: string, axes: SketchAxes): Ink {
    const values = this.#inks[step]?.[question];
    return values ? inkLine(values, axes) : [];
  }

  /** Puts the results on a sheet that is seen on paper only, and asks the browser to print. */
  #print(): void {
    const runner = this.#runner;
    if (!runner) return;
    const sheet = document.createElement('lesson-results');
    sheet.results = runner.results;
    sheet.inks = runner.lesson.steps.map((step) => {
      const { answers } = runner.progressOf(step);
      return questionsOf(step)
        .filter(({ part, question }) => part === 'predict' && answers[question.name])
        .map(({ question }) => (question.kind === 'sketch' ? this.#ink(step.name, question.name, question.axes) : []));
    });
    document.querySelector('lesson-results')?.remove();
    document.body.append(sheet);
    window.addEventListener('afterprint', () => sheet.remove(), { once: true });
    void sheet.updateComplete.then(() => window.print());
  }
}

/** What was kept as an answer is no draft any more. */
function withoutKept(drafts: Drafts, step: string, act: LessonAct): Drafts {
  if (act.kind === 'answer') return withDraft(drafts, step, act.question, undefined);
  return act.kind === 'explain' ? withDraft(drafts, step, EXPLANATION, undefined) : drafts;
}

interface Sketched {
  readonly name: string;
  readonly axes: SketchAxes;
  readonly points: SketchOnTape['points'];
}

/** The sketches of the open step that have been drawn. */
function sketched({ step }: LessonView): readonly Sketched[] {
  return step.parts.flatMap((part) => (part.part === 'predict' || part.part === 'ask' ? sketchIn(part.question) : []));
}

function sketchIn({ name, form, answer }: QuestionView): readonly Sketched[] {
  return form.kind === 'sketch' && answer?.kind === 'sketch' ? [{ name, axes: form, points: answer.points }] : [];
}

/** The first that belongs on the pen's scale. */
function sketchOf(sketches: readonly SketchOnTape[]): Sketch | undefined {
  const onTape = sketches.find(({ line }) => LINES[line as LineName].kind === 'acceleration');
  if (!onTape) return undefined;
  const { points, zeroS } = onTape;
  return { timeS: points.map(([timeS]) => zeroS + timeS), valueMS2: points.map(([, value]) => value) };
}

function notesOf(mark: Mark | undefined): readonly PaperNote[] {
  if (!mark) return [];
  const { timeS, run } = mark;
  const { tape } = run;
  const row = Math.min(tape.endRow - 1, Math.max(tape.firstRow, Math.round(timeS * tape.rateHz)));
  return [{ timeS, valueMS2: tape.value(CHANNEL.reading, row), text: '×' }];
}
