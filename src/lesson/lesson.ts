/** A lesson as it is read from its file: data only. SI units; `Moment` in evidence.ts, `Expression` in expression.ts. */
import type { PreparedAct, Prose, QuestionForm } from '../contract/lesson.ts';
import type { BenchSetup, LessonSettings } from './bench-setup.ts';
import type { Moment, MomentName } from './evidence.ts';
import type { Expression } from './expression.ts';
import type { Quantity } from './quantity.ts';

export interface Lesson {
  readonly name: string;
  readonly title: string;
  readonly summary: Prose;
  readonly minutes: number;
  readonly cautions: Prose;
  readonly steps: readonly LessonStep[];
}

export interface LessonStep {
  readonly name: string;
  readonly title: string;
  readonly setup: BenchSetup;
  /** How much slower than life it starts; undefined: as the page stands. */
  readonly slowed: number | undefined;
  /** Run time across the paper at its beginning [s]; undefined: as the starting bench has it. */
  readonly paperS: number | undefined;
  /** Up to where the paper is ruled [m/s²]; undefined: as far as needed. */
  readonly reachMS2: number | undefined;
  /** Where an attempt begins: what is measured belongs to the last one. */
  readonly attempt: MomentName;
  /** In the order of the file. */
  readonly parts: readonly Part[];
  readonly proof: Proof | undefined;
}

export type Part =
  | { readonly part: 'text'; readonly text: Prose }
  | { readonly part: 'predict' | 'ask'; readonly question: Question }
  | { readonly part: 'do'; readonly actions: readonly Action[] }
  | { readonly part: 'measure'; readonly figures: readonly Figure[] }
  | { readonly part: 'check'; readonly checks: readonly Check[] }
  | { readonly part: 'explain'; readonly name: string; readonly words: Prose; readonly model: Prose }
  | { readonly part: 'hints'; readonly hints: readonly Prose[] };

/** Name of a step's explanation among what is kept of it. */
export const EXPLANATION = 'explanation';

export interface Action {
  readonly words: Prose;
  readonly prepared: PreparedAct;
}

/** When a number is right, and what is said to it. */
export interface Judgement {
  readonly near: Expression | undefined;
  readonly within: Tolerance | undefined;
  readonly above: Expression | undefined;
  readonly below: Expression | undefined;
  /** Must hold as well. */
  readonly provided: Expression | undefined;
  /** Said when it is right. */
  readonly says: Prose;
  /** Wrong turns with their reasons; the first whose condition holds is named. */
  readonly slips: readonly Slip[];
  /** Said when it is wrong in no known way. */
  readonly otherwise: Prose;
}

export interface Slip {
  readonly name: string;
  readonly when: Expression;
  /** Named before anything is measured as well: what is measured might never come. */
  readonly early: boolean;
  readonly says: Prose;
}

export interface Tolerance {
  readonly size: Expression;
  /** A share of what is expected. */
  readonly relative: boolean;
}

export interface Check extends Judgement {
  readonly name: string;
  readonly words: Prose;
  readonly value: Expression;
  readonly quantity: Quantity;
}

export type Question = {
  readonly name: string;
  readonly words: Prose;
  /** Not answered, or a prediction not judged, before this instant of the attempt; undefined: its beginning. */
  readonly after: Moment | undefined;
} & (ChoiceQuestion | NumberQuestion | SketchQuestion);

export interface ChoiceQuestion {
  readonly kind: 'choice';
  readonly choices: readonly Choice[];
}

export interface Choice {
  readonly name: string;
  readonly words: Prose;
  /** Right always, or when a condition on the run holds. */
  readonly right: Expression | boolean;
  readonly says: Prose;
  /** Said instead when a condition makes it wrong. */
  readonly otherwise: Prose | undefined;
}

export interface NumberQuestion {
  readonly kind: 'number';
  readonly quantity: Quantity;
  readonly judgement: Judgement;
}

export interface SketchQuestion {
  readonly kind: 'sketch';
  readonly axes: Extract<QuestionForm, { readonly kind: 'sketch' }>;
  /** The instant that stands at time 0. */
  readonly zero: Moment;
  readonly features: readonly SketchFeature[];
}

/** What to look at in a sketch: a span of it, brought to one number, held against what the tape shows. */
export interface SketchFeature {
  /** Counted from the sketch's zero [s]. */
  readonly fromS: number;
  readonly toS: number;
  readonly take: 'mean' | 'highest' | 'lowest';
  readonly near: Expression;
  readonly within: Tolerance;
  readonly says: Prose;
  readonly otherwise: Prose;
}

/** Lines of the tape by the names that lessons give them. */
export const LINES = {
  reading: { channel: 'reading', kind: 'acceleration' },
  felt: { channel: 'specificForce', kind: 'acceleration' },
  acceleration: { channel: 'acceleration', kind: 'acceleration' },
  velocity: { channel: 'velocity', kind: 'speed' },
  height: { channel: 'height', kind: 'length' },
  deflection: { channel: 'deflection', kind: 'length' },
} as const;

export type LineName = keyof typeof LINES;

/** A number measured on the tape. */
export interface Figure {
  readonly name: string;
  readonly words: Prose;
  readonly quantity: Quantity;
  readonly take: Take;
}

/** A stretch of one line; `minus` is taken off every value first. */
export interface Stretch {
  readonly of: LineName;
  readonly from: Moment;
  readonly to: Moment;
  readonly minus: Expression | undefined;
}

export type Take =
  | { readonly take: 'value'; readonly of: LineName; readonly at: Moment; readonly minus: Expression | undefined }
  | ({ readonly take: 'mean' | 'rms' | 'area' | 'slope' | 'highest' | 'lowest' | 'whenHighest' } & Stretch)
  | { readonly take: 'duration'; readonly from: Moment; readonly to: Moment }
  /** How often the line rises through a level. */
  | ({ readonly take: 'swings'; readonly level: Expression } & Stretch)
  /** Time from the beginning of the stretch to the first passage through a level, either way. */
  | ({ readonly take: 'crossing'; readonly level: Expression } & Stretch)
  /** Time from the beginning of the stretch until it stays within a band about a level up to the stretch's end. */
  | ({ readonly take: 'settling'; readonly level: Expression; readonly band: Expression } & Stretch)
  /** Of a free ring-down. */
  | ({ readonly take: 'ringFrequency' | 'decrement' | 'damping' } & Stretch)
  /** Of the steady sine of a known frequency; gain and phase against another line. */
  | ({ readonly take: 'amplitude'; readonly frequency: Expression } & Stretch)
  | ({ readonly take: 'gain' | 'phase'; readonly frequency: Expression; readonly against: LineName } & Stretch)
  | { readonly take: 'formula'; readonly value: Expression };

/** How it is shown that a step can be solved, and that each wrong turn is caught. */
export interface Proof {
  readonly model: readonly Deed[];
  readonly wrong: readonly WrongTurn[];
}

export interface WrongTurn {
  readonly words: string;
  /** The one check or question that must fail, and the slip or choice that must be named. */
  readonly fails: string;
  readonly as: string;
  /** The learner stops there: the other checks may still be waiting. Else they pass. */
  readonly stops: boolean;
  readonly deeds: readonly Deed[];
}

/** What a scripted learner does. */
export type Deed =
  | { readonly deed: 'act'; readonly act: PreparedAct }
  | { readonly deed: 'set'; readonly settings: LessonSettings }
  | { readonly deed: 'wait'; readonly forS: number }
  | { readonly deed: 'wait until'; readonly moment: Moment }
  | { readonly deed: 'mark'; readonly at: Moment }
  | { readonly deed: 'choose'; readonly question: string; readonly choice: string }
  | { readonly deed: 'type'; readonly question: string; readonly typed: string }
  | { readonly deed: 'sketch'; readonly question: string; readonly points: readonly (readonly [number, number])[] }
  | { readonly deed: 'explain'; readonly written: string };

/** The parts of a step of one sort. */
export function questionsOf(
  step: LessonStep,
): readonly { readonly part: 'predict' | 'ask'; readonly question: Question }[] {
  return step.parts.flatMap((part) => (part.part === 'predict' || part.part === 'ask' ? [part] : []));
}

export function figuresOf(step: LessonStep): readonly Figure[] {
  return step.parts.flatMap((part) => (part.part === 'measure' ? part.figures : []));
}

export function checksOf(step: LessonStep): readonly Check[] {
  return step.parts.flatMap((part) => (part.part === 'check' ? part.checks : []));
}

/** Names of all that is judged right or wrong in a step: its checks and what is asked after the run. */
export function judgedNames(step: LessonStep): readonly string[] {
  return [
    ...questionsOf(step).flatMap(({ part, question }) => (part === 'ask' ? [question.name] : [])),
    ...checksOf(step).map(({ name }) => name),
  ];
}
