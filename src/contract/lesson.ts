/**
 * What a lesson sheet shows and says. The runner in `lesson` makes a view after every change; the sheet draws it and
 * answers with acts. Text is a small tree of our own: there is nothing in it that could run. SI units throughout.
 */

export type Inline =
  | { readonly kind: 'text'; readonly text: string }
  | { readonly kind: 'emphasis' | 'strong'; readonly children: readonly Inline[] }
  /** Leads to a term of the glossary, by its name in addresses, e.g. `specific-force`. */
  | { readonly kind: 'term'; readonly term: string; readonly children: readonly Inline[] }
  /** A measured figure. In a file `text` is empty; in a view it holds the number with its unit, "—" while it is not known. */
  | { readonly kind: 'figure'; readonly name: string; readonly text: string };

export type TextBlock =
  | { readonly kind: 'paragraph'; readonly children: readonly Inline[] }
  | { readonly kind: 'list'; readonly ordered: boolean; readonly items: readonly Prose[] }
  /** Set apart from the rest: a caution, a remark. */
  | { readonly kind: 'note'; readonly children: Prose };

export type Prose = readonly TextBlock[];

/** An instant and a value of a sketched line; time counted from what the sketch is laid against [s]. */
export type SketchPoint = readonly [timeS: number, value: number];

/** The unit symbol is one of `units`; the kind one of its quantities. */
export interface PrintedQuantity {
  readonly quantity: string;
  readonly unit: string;
}

export interface SketchAxes extends PrintedQuantity {
  /** Line of the tape under which the sketch is laid. */
  readonly line: string;
  readonly fromS: number;
  readonly toS: number;
  readonly low: number;
  readonly high: number;
  /** What time 0 stands for, in words. */
  readonly zero: string;
}

/** An answer as it is kept. */
export type Answer =
  | { readonly kind: 'choice'; readonly choice: string }
  /** As typed, and its SI value. */
  | { readonly kind: 'number'; readonly typed: string; readonly value: number }
  | { readonly kind: 'sketch'; readonly points: readonly SketchPoint[] };

/** An answer as it is given. */
export type GivenAnswer =
  | { readonly kind: 'choice'; readonly choice: string }
  | { readonly kind: 'number'; readonly typed: string }
  | { readonly kind: 'sketch'; readonly points: readonly SketchPoint[] };

/** `waiting`: the tape does not show it yet, or it is not answered. */
export type Outcome = 'waiting' | 'passed' | 'wrong';

/** What is chosen, typed, drawn or written and not kept as an answer yet. */
export type Draft = GivenAnswer | { readonly kind: 'words'; readonly written: string };

/** A term of the trade: in one line, where it comes from, and where on the bench to see it move. */
export interface GlossaryTerm {
  /** In addresses, `[specific force](term:specific-force)`. */
  readonly id: string;
  readonly term: string;
  readonly line: string;
  readonly source: string;
  readonly see: string;
}

export type QuestionForm =
  | { readonly kind: 'choice'; readonly choices: readonly { readonly name: string; readonly words: Prose }[] }
  | ({ readonly kind: 'number' } & PrintedQuantity)
  | ({ readonly kind: 'sketch' } & SketchAxes);

export interface QuestionView {
  readonly name: string;
  readonly words: Prose;
  readonly form: QuestionForm;
  readonly answer: Answer | undefined;
  /** A prediction once the run has shown what happens; otherwise at once. */
  readonly outcome: Outcome;
  readonly says: Prose;
  /** May still be answered, or answered anew. */
  readonly open: boolean;
}

/** Something to do at the bench; a page may fill its fields from `prepared`. */
export interface ActionView {
  readonly words: Prose;
  readonly done: boolean;
  readonly prepared: PreparedAct;
}

export type PreparedAct =
  /** A way of handling, and what is to stand in the fields of its sentence, by their names (`shake.frequency`). */
  | {
      readonly act: 'handle';
      readonly handling: 'hold' | 'drop' | 'throw' | 'shake' | 'tilt' | 'move';
      readonly fields: Readonly<Record<string, number | string>>;
    }
  | { readonly act: 'mark' | 'pull back' }
  | { readonly act: 'slow'; readonly factor: number }
  /** Settings by their names in a lesson; null: left to the learner. */
  | { readonly act: 'set'; readonly settings: Readonly<Record<string, number | null>> };

export interface FigureView extends PrintedQuantity {
  readonly name: string;
  readonly words: Prose;
  /** SI; undefined while the tape does not show it. Infinite: never. */
  readonly value: number | undefined;
  /** With its unit; "—" while it is not known. */
  readonly text: string;
}

export interface CheckView {
  readonly name: string;
  readonly words: Prose;
  readonly outcome: Outcome;
  /** The wrong turn that was recognised, by its name. */
  readonly slip: string | undefined;
  /** Why, at once; empty while waiting. */
  readonly says: Prose;
  /** What was measured and what was to be, with units; empty while waiting. */
  readonly measured: string;
  readonly expected: string;
}

/** Parts in the order in which they stand on the sheet; what a question still hides is not among them. */
export type LessonPart =
  | { readonly part: 'text'; readonly text: Prose }
  | { readonly part: 'predict'; readonly question: QuestionView }
  | { readonly part: 'do'; readonly actions: readonly ActionView[] }
  | { readonly part: 'ask'; readonly question: QuestionView }
  | { readonly part: 'measure'; readonly figures: readonly FigureView[] }
  | { readonly part: 'check'; readonly checks: readonly CheckView[] }
  | {
      readonly part: 'explain';
      readonly name: string;
      readonly words: Prose;
      /** In the learner's own words; empty: not written yet. */
      readonly written: string;
      /** Another wording to compare with, once something is written. */
      readonly model: Prose;
    }
  | { readonly part: 'hints'; readonly shown: readonly Prose[]; readonly left: number };

/** A sketch to be laid under the pen's line. */
export interface SketchOnTape {
  readonly line: string;
  readonly points: readonly SketchPoint[];
  /** Run time on which its time 0 falls [s]. */
  readonly zeroS: number;
}

export interface LessonStepView {
  readonly name: string;
  readonly title: string;
  readonly parts: readonly LessonPart[];
  /** Why the bench is locked; undefined: it is free. */
  readonly locked: string | undefined;
  /** Something to know about the attempt that is going on, e.g. that it cannot be measured. */
  readonly notice: string | undefined;
  readonly sketches: readonly SketchOnTape[];
  /** Nothing is left to do in it. */
  readonly complete: boolean;
}

export interface LessonView {
  readonly lesson: string;
  readonly title: string;
  readonly summary: Prose;
  readonly minutes: number;
  readonly cautions: Prose;
  readonly steps: readonly {
    readonly name: string;
    readonly title: string;
    readonly open: boolean;
    readonly complete: boolean;
  }[];
  readonly step: LessonStepView;
}

/** What a learner does on the sheet, and what the page tells of handling that leaves no trace on the tape. */
export type LessonAct =
  | { readonly kind: 'open'; readonly step: string }
  | { readonly kind: 'answer'; readonly question: string; readonly answer: GivenAnswer }
  | { readonly kind: 'explain'; readonly written: string }
  | { readonly kind: 'hint' }
  /** A mark on the paper at an instant of run time [s]. */
  | { readonly kind: 'mark'; readonly timeS: number }
  | { readonly kind: 'slowed'; readonly factor: number }
  | { readonly kind: 'pulled back'; readonly timeS: number };

/** What is printed at the end. */
export interface LessonResults {
  readonly lesson: string;
  readonly title: string;
  readonly passed: number;
  readonly checks: number;
  readonly steps: readonly LessonStepResults[];
}

export interface LessonStepResults {
  readonly title: string;
  /** The prediction stands under what came out. */
  readonly predictions: readonly AnsweredQuestion[];
  readonly answers: readonly AnsweredQuestion[];
  readonly figures: readonly { readonly words: Prose; readonly text: string }[];
  readonly checks: readonly CheckView[];
  readonly explanation: { readonly words: Prose; readonly written: string } | undefined;
  readonly hints: number;
  /** Settings and seed of the attempt that was judged, in words; empty before one. */
  readonly settings: readonly { readonly words: string; readonly text: string }[];
}

export interface AnsweredQuestion {
  readonly words: Prose;
  /** The answer in words; empty for a sketch. */
  readonly answer: string;
  readonly sketch: { readonly axes: SketchAxes; readonly points: readonly SketchPoint[] } | undefined;
  readonly outcome: Outcome;
  readonly says: Prose;
}
