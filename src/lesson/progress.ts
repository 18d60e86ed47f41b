/** What is kept of a learner's way through a lesson: plain data, to be stored on the device. */
import type { Answer, SketchPoint } from '../contract/lesson.ts';

export interface Judged {
  readonly outcome: 'passed' | 'wrong';
  /** As in a verdict: the slip or the choice by its name, or which features of a sketch were met. */
  readonly reason: string | undefined;
  /** SI; Infinity: it never came about. */
  readonly value: number | undefined;
  /** What it was to be, in words. */
  readonly expected: string;
  /** Numbers in what was said to it, as they stood then: a later attempt does not change them. */
  readonly numbers: Readonly<Record<string, string>>;
}

export interface StepProgress {
  readonly answers: Readonly<Record<string, Answer>>;
  /** Questions that may be judged: what they ask about has been on the tape. */
  readonly shown: readonly string[];
  readonly judged: Readonly<Record<string, Judged>>;
  /** Figures, settings and event values of the last attempt that was measured [SI]. */
  readonly values: Readonly<Record<string, number>>;
  readonly written: string;
  readonly hints: number;
  /** Actions done, by their place among the step's actions. */
  readonly done: readonly number[];
}

export interface LessonProgress {
  readonly format: 1;
  readonly lesson: string;
  readonly open: string;
  readonly steps: Readonly<Record<string, StepProgress>>;
}

export const NOTHING_DONE: StepProgress = {
  answers: {},
  shown: [],
  judged: {},
  values: {},
  written: '',
  hints: 0,
  done: [],
};

/** As JSON; JSON knows no infinity, so one is written as the text "never". */
export function progressText(progress: LessonProgress): string {
  return JSON.stringify(progress, (_, value: unknown) => (value === Number.POSITIVE_INFINITY ? 'never' : value));
}

/** What was stored, or undefined when it is not the progress of this lesson or cannot be read: then one begins anew. */
export function readProgress(text: string, lesson: string): LessonProgress | undefined {
  let stored: unknown;
  try {
    stored = JSON.parse(text);
  } catch {
    return undefined;
  }
  if (!isRecord(stored) || stored.format !== 1 || stored.lesson !== lesson) return undefined;
  const { open, steps } = stored;
  if (typeof open !== 'string' || !isRecord(steps)) return undefined;
  return { format: 1, lesson, open, steps: mapped(steps, readStep) };
}

function readStep(stored: unknown): StepProgress | undefined {
  if (!isRecord(stored)) return undefined;
  const { answers, shown, judged, values, written, hints, done } = stored;
  return {
    answers: mapped(answers, readAnswer),
    shown: Array.isArray(shown) ? shown.filter((name) => typeof name === 'string') : [],
    judged: mapped(judged, readJudged),
    values: mapped(values, readNumber),
    written: readText(written) ?? '',
    hints: typeof hints === 'number' && hints >= 0 ? Math.floor(hints) : 0,
    done: Array.isArray(done) ? done.filter((index) => Number.isInteger(index)) : [],
  };
}

function readAnswer(stored: unknown): Answer | undefined {
  if (!isRecord(stored)) return undefined;
  const { kind, choice, typed, value, points } = stored;
  if (kind === 'choice' && typeof choice === 'string') return { kind, choice };
  if (kind === 'number' && typeof typed === 'string' && typeof value === 'number') return { kind, typed, value };
  if (kind === 'sketch' && Array.isArray(points) && points.every(isPoint)) return { kind, points };
  return undefined;
}

export function isPoint(stored: unknown): stored is SketchPoint {
  return Array.isArray(stored) && stored.length === 2 && stored.every((value) => typeof value === 'number');
}

function readJudged(stored: unknown): Judged | undefined {
  if (!isRecord(stored)) return undefined;
  const { outcome, reason, value, expected, numbers } = stored;
  if (outcome !== 'passed' && outcome !== 'wrong') return undefined;
  return {
    outcome,
    reason: readText(reason),
    value: readNumber(value),
    expected: readText(expected) ?? '',
    numbers: mapped(numbers, readText),
  };
}

function readNumber(stored: unknown): number | undefined {
  if (stored === 'never') return Number.POSITIVE_INFINITY;
  return typeof stored === 'number' ? stored : undefined;
}

function readText(stored: unknown): string | undefined {
  return typeof stored === 'string' ? stored : undefined;
}

export function isRecord(stored: unknown): stored is Record<string, unknown> {
  return typeof stored === 'object' && stored !== null && !Array.isArray(stored);
}

/** The members that can be read; the rest is dropped. */
export function mapped<T>(stored: unknown, read: (value: unknown) => T | undefined): Record<string, T> {
  if (!isRecord(stored)) return {};
  return Object.fromEntries(
    Object.entries(stored).flatMap(([name, value]) => {
      const each = read(value);
      return each === undefined ? [] : [[name, each]];
    }),
  );
}
